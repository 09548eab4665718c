// What of a piece a contact in design.toml is about: a side, an edge, a face.
#include <catch2/catch.hpp>

#include "base/diagnostic.h"
#include "job/job.h"

using namespace nook;

namespace {

tl::expected<Design, Diagnostics> ledger_meets(const std::string& where) {
  return parse_design(
      "corner = ['left', 'right']\n[stock.ply]\nkind = 'plywood'\nthickness = '3/4'\n"
      "[[part]]\nname = 'ledger'\nstock = 'ply'\nshape = { size = [40, 4] }\n"
      "place = { at = [40, 0, 30], u = '-x', v = '+z' }\n"
      "[[contact]]\npart = 'ledger'\nmeets = 'left wall'\n" +
          where + "\n",
      "design.toml");
}

std::string fault(const std::string& where) {
  const auto read = ledger_meets(where);
  return read ? "" : read.error().at(0).what;
}

}  // namespace

TEST_CASE("contact: a face is the one that is named") {
  const auto back = ledger_meets("face = 'back'"), front = ledger_meets("face = 'front'");
  REQUIRE((back && front));
  CHECK(std::get<PieceFace>(back->contacts.at(0).edge) == PieceFace::back);
  CHECK(std::get<PieceFace>(front->contacts.at(0).edge) == PieceFace::front);
  CHECK(back->contacts[0].edge_given == "back");
}

TEST_CASE("contact: each side is the one that is named") {
  const std::pair<const char*, EdgeSide> sides[] = {{"left", EdgeSide::left},
                                                    {"right", EdgeSide::right},
                                                    {"bottom", EdgeSide::bottom},
                                                    {"top", EdgeSide::top}};
  for (const auto& [word, side] : sides) {
    const auto design = ledger_meets("edge = '" + std::string(word) + "'");
    REQUIRE(design);
    CHECK(std::get<EdgeSide>(design->contacts.at(0).edge) == side);
  }
}

TEST_CASE("contact: neither edge nor face, both, or another word are refused") {
  CHECK(fault("") == "neither 'edge' nor 'face' is there");
  CHECK(fault("edge = 'left'\nface = 'back'") == "'edge' and 'face' together");
  CHECK(fault("face = 'left'") == "face cannot be 'left'");
  CHECK(fault("edge = 'back'") == "edge cannot be 'back'");
  CHECK(fault("edge = 4") == "'ledger' has no edge 4");
}
