// Fields of all draws at once against each draw asked by itself.
#include "fit/surface_field.h"

#include <catch2/catch.hpp>
#include <random>

#include "fit/rooms_by_hand.h"

using namespace nook;
using namespace nook::by_hand;

namespace {

RoomShape with_weights(RoomShape room, const std::shared_ptr<const FieldBasis>& basis,
                       std::vector<double> weights) {
  room.walls[0].field = {basis, std::move(weights)};
  return room;
}

}  // namespace

TEST_CASE("surface field: draws in pairs or not, each has its own height", "[property]") {
  std::mt19937 random(3);
  std::normal_distribution<double> normal;
  const auto basis = std::make_shared<FieldBasis>(Vec2{0, 0}, Vec2{2000, 2000}, 400);
  std::vector<double> middle(basis->size());
  for (double& w : middle) w = 100 * normal(random);
  const RoomShape room = with_weights(corner(90).room, basis, middle);
  for (const bool paired : {true, false}) {
    std::vector<RoomShape> draws;
    for (int pair = 0; pair < 5; ++pair) {
      std::vector<double> more(middle), less(middle);
      for (int k = 0; k < basis->size(); ++k) {
        const double off = 50 * normal(random);
        more[k] += off;
        less[k] -= paired ? off : off + normal(random);
      }
      draws.push_back(with_weights(room, basis, more));
      draws.push_back(with_weights(room, basis, less));
    }
    SurfaceField fields(room, draws);
    const Surface wall{Surface::Kind::wall, 0};
    const int low = fields.add(wall, {300, 200}, true), high = fields.add(wall, {1700, 1900}, true);
    fields.fill_draws();
    for (int r = 1; r < fields.rooms(); ++r)
      for (const int spot : {low, high})
        CHECK(fields.value(spot, r) ==
              Approx(field_height(draws[r - 1], wall, fields.at(spot))).margin(1e-9));
  }
}
