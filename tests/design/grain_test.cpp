// Which stock is solid wood, and which way its grain runs.
#include "design/grain.h"

#include <catch2/catch.hpp>

using namespace nook;

namespace {

Stock stock(StockKind kind, const std::string& given) {
  Stock made;
  made.kind = kind;
  made.kind_given = given;
  return made;
}

Part rectangle(double width, double height) {
  Part part;
  part.outline = {{0, 0}, {width, 0}, {width, height}, {0, height}};
  return part;
}

}  // namespace

TEST_CASE("grain: lumber and boards move, plywood and boards of chips and fibers do not") {
  CHECK(solid_wood(stock(StockKind::lumber, "lumber")));
  CHECK(solid_wood(stock(StockKind::board, "board")));
  CHECK(solid_wood(stock(StockKind::board, "oak board")));
  CHECK_FALSE(solid_wood(stock(StockKind::plywood, "plywood")));
  for (const char* given : {"mdf", "MDF board", "Particle board", "chipboard", "fibreboard",
                            "fiber board", "oriented strand board", "melamine board"}) {
    INFO(given);
    CHECK_FALSE(solid_wood(stock(StockKind::board, given)));
  }
}

TEST_CASE("grain: along the longer side of a board, always along u of a stick") {
  const Stock board = stock(StockKind::board, "board"), stick = stock(StockKind::lumber, "lumber");
  CHECK(grain_along_v(rectangle(300, 900), board));
  CHECK_FALSE(grain_along_v(rectangle(900, 300), board));
  CHECK_FALSE(grain_along_v(rectangle(300, 900), stick));  // a stick shorter than it is wide
}
