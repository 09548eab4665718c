// What a check measurement says of each of its repeats.
#include <catch2/catch.hpp>

#include "job/job.h"

using namespace nook;

TEST_CASE("pieces: each repeat keeps the sd that was stated of it, in either order") {
  for (const bool first : {true, false}) {
    const std::string sure = "{ is = '300', sd = '0.1' }", plain = "'301'";
    const auto read = parse_pieces("units = 'mm'\n[[piece]]\npart = 'shelf'\nwidths = [['50', [" +
                                       (first ? sure + ", " + plain : plain + ", " + sure) +
                                       ", { is = '900', sd = '2', struck = true }]]]\n",
                                   "f");
    REQUIRE(read);
    const CheckedAt& width = read->pieces.at(0).widths.at(0);
    REQUIRE(width.measured.size() == 2);
    REQUIRE(width.sd.size() == 2);
    const std::size_t stated = first ? 0 : 1;
    CHECK(width.measured[stated].mm == 300);
    REQUIRE(width.sd[stated]);
    CHECK(width.sd[stated]->mm == Approx(0.1));
    CHECK_FALSE(width.sd[1 - stated]);
  }
}
