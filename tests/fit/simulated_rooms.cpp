// Gaussian fields on the room's own functions; everything else evenly random.
#include "simulated_rooms.h"

namespace nook::by_hand {
namespace {

Field wavy(Random& random, double length, double sd) {
  Field field;
  field.basis = std::make_shared<FieldBasis>(Vec2{-200, -100}, Vec2{length + 200, 2500}, 400);
  for (double prior : field.basis->prior_sd())
    field.weights.push_back(sd * prior * gaussian(random));
  return field;
}

Field wavy_floor(Random& random, double sd) {
  Field field;
  field.basis = std::make_shared<FieldBasis>(Vec2{-300, -300}, Vec2{3300, 3300}, 1000);
  for (double prior : field.basis->prior_sd())
    field.weights.push_back(sd * prior * gaussian(random));
  return field;
}

WallShape wall(Random& random, const Wildness& wild, const std::string& name) {
  WallShape shape;
  shape.name = name;
  shape.length = 3000;
  shape.lean = even(random, -wild.lean, wild.lean);
  shape.field = wavy(random, shape.length, even(random, 0, wild.field));
  return shape;
}

Wall surveyed(Random& random, const std::string& name) {
  Wall wall;
  wall.name = name;
  if (even(random, 0, 1) < 0.8)
    add_board(wall, even(random, 80, 160), even(random, 9, 20),
              even(random, 0, 1) < 0.5 ? 0 : even(random, 8, 15));
  if (wall.baseboard && even(random, 0, 1) < 0.5) {
    const double t = wall.baseboard->thickness.mm, h = wall.baseboard->height.mm;
    wall.baseboard->profile = {
        {{0}, {t}}, {{0.7 * h}, {t}}, {{0.85 * h}, {0.6 * t}}, {{h}, {0.4 * t}}};
  }
  return wall;
}

void set_floor(Random& random, const Wildness& wild, RoomShape& room) {
  room.floor.slope = {even(random, -wild.slope, wild.slope), even(random, -wild.slope, wild.slope)};
  room.floor.field = wavy_floor(random, 2);
  room.line_z = 1000;
}

Vec2 turned(Vec2 v, double deg) {
  const double a = deg * std::acos(-1.0) / 180;
  return {std::cos(a) * v.x - std::sin(a) * v.y, std::sin(a) * v.x + std::cos(a) * v.y};
}

Contact fitted(Contact contact, Random& random) {
  static const Fitting kinds[] = {Fitting::butt, Fitting::caulk, Fitting::scribe, Fitting::taper,
                                  Fitting::trim};
  contact.by = kinds[static_cast<int>(even(random, 0, 4.999))];
  return contact;
}

void add_panel(Random& random, Design& d) {
  const double x = even(random, 300, 1400);
  d.parts.push_back(
      panel("panel", {even(random, 300, 900), even(random, 600, 2000)}, {x, 0, 0}, kY, kZ));
  Contact c = fitted(meet("panel", EdgeSide::left, "left wall"), random);
  c.notch = true;
  c.notch_profile = even(random, 0, 1) < 0.5;
  d.contacts.push_back(c);
  d.contacts.push_back(meet("panel", EdgeSide::bottom, "floor"));
}

void add_deck(Random& random, Design& d) {
  d.parts.push_back(panel("deck", {even(random, 500, 1500), even(random, 400, 1200)},
                          {0, 0, even(random, 300, 1600)}, kX, kY));
  d.contacts.push_back(fitted(meet("deck", EdgeSide::bottom, "left wall"), random));
  d.contacts.push_back(fitted(meet("deck", EdgeSide::left, "right wall"), random));
  if (even(random, 0, 1) < 0.7) d.groups.push_back(tight("deck", {"left wall"}));
}

void add_ledger(Random& random, Design& d, bool left) {
  const double z = even(random, 300, 1600), length = even(random, 300, 1200);
  const std::string name = left ? "left ledger" : "right ledger";
  Part p = left ? panel(name, {length, 90}, {length + 100, 0, z}, {-1, 0, 0}, kZ)
                : panel(name, {length, 90}, {0, 100, z}, kY, kZ);
  d.parts.push_back(p);
  d.contacts.push_back(
      meet(name, PieceFace::back, left ? "left wall" : "right wall", Fitting::shim));
}

// A panel square to the left wall and one behind it, butting its back.
void add_pair(Random& random, Design& d) {
  add_panel(random, d);
  const double x = d.parts[0].place_in_room.at.x;
  d.parts.push_back(panel("side", {x - 60, 500}, {x, 250, 0}, {-1, 0, 0}, kZ));
  d.contacts.push_back(meet("side", EdgeSide::left, "panel"));
  d.contacts.push_back(meet("side", EdgeSide::bottom, "floor"));
}

}  // namespace

double even(Random& random, double low, double high) {
  return low + (high - low) * static_cast<double>(random() >> 11) * 0x1p-53;
}

double gaussian(Random& random) {
  const double u = even(random, 1e-12, 1), v = even(random, 0, 1);
  return std::sqrt(-2 * std::log(u)) * std::cos(2 * std::acos(-1.0) * v);
}

Found simulated_corner(Random& random, const Wildness& wild) {
  Found found;
  WallShape left = wall(random, wild, "left"), right = wall(random, wild, "right");
  left.along = {1, 0};
  left.out = {0, 1};
  right.along = turned({1, 0}, 90 + even(random, -wild.angle_deg, wild.angle_deg));
  right.out = turned(right.along, -90);
  found.room.walls = {left, right};
  set_floor(random, wild, found.room);
  found.survey.walls = {surveyed(random, "left"), surveyed(random, "right")};
  return found;
}

Found simulated_alcove(Random& random, const Wildness& wild) {
  Found found;
  WallShape left = wall(random, wild, "left"), back = wall(random, wild, "back"),
            right = wall(random, wild, "right");
  left.along = {1, 0};
  left.out = {0, 1};
  back.along = turned({1, 0}, 90 + even(random, -wild.angle_deg, wild.angle_deg));
  back.out = turned(back.along, -90);
  back.length = even(random, 900, 1800);
  right.start = back.length * back.along;
  right.along = turned(back.along, -90 + even(random, -wild.angle_deg, wild.angle_deg));
  right.out = turned(right.along, -90);
  found.room.walls = {left, back, right};
  set_floor(random, wild, found.room);
  found.survey.walls = {surveyed(random, "left"), surveyed(random, "back"),
                        surveyed(random, "right")};
  return found;
}

Design simulated_design(Random& random, int kind) {
  Design d = empty_design(even(random, 12, 30));
  switch (kind) {
    case 0:
      add_panel(random, d);
      break;
    case 1:
      add_deck(random, d);
      break;
    case 2:
      add_ledger(random, d, true);
      break;
    case 3:
      add_ledger(random, d, false);
      break;
    case 4:
      add_pair(random, d);
      break;
    case 5: {
      add_panel(random, d);
      Group g = tight("panel", {"left wall"});
      g.parallel_to = "right wall";
      d.groups.push_back(g);
      break;
    }
    default:
      add_deck(random, d);
      add_panel(random, d);
      break;
  }
  return d;
}

Design simulated_shelf(Random& random, double width) {
  Design d = empty_design(even(random, 12, 30));
  d.corner[0] = "left";
  d.corner[1] = "back";
  d.parts.push_back(panel("shelf", {width + even(random, -15, 5), even(random, 150, 400)},
                          {0, 0, even(random, 300, 1600)}, kY, {-1, 0, 0}));
  Part& shelf = d.parts.back();
  shelf.place_in_room.at.x = shelf.outline[2].y;
  shelf.place_in_room.at.y = (width - shelf.outline[1].x) / 2;
  d.contacts.push_back(meet("shelf", EdgeSide::top, "back wall"));
  d.contacts.push_back(meet("shelf", EdgeSide::left, "left wall"));
  d.contacts.push_back(meet("shelf", EdgeSide::right, "right wall"));
  d.groups.push_back(tight("shelf", {"back wall"}));
  return d;
}

}  // namespace nook::by_hand
