// What gives under a foot and what does not.
#include "room/covering.h"

#include <catch2/catch.hpp>

using namespace nook;

TEST_CASE("covering: carpets give, boards do not, and what sank under a test does") {
  Floor floor;
  CHECK_FALSE(gives(floor));
  for (const char* soft : {"carpet", "Wool rug", "felt on concrete"}) {
    floor.covering = Covering{soft, {12}, {}};
    CHECK(gives(floor));
  }
  for (const char* hard : {"oak", "pine boards", "tiles", "laminate"}) {
    floor.covering = Covering{hard, {20}, {}};
    CHECK_FALSE(gives(floor));
  }
  floor.squash.push_back({800, {{75}, {30}}, {1}, {}});
  CHECK(gives(floor));
}
