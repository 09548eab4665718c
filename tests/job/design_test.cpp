// design.toml and pieces.toml read whole into plain values.
#include <catch2/catch.hpp>

#include "base/diagnostic.h"
#include "job/job.h"
#include "job/samples.h"

using namespace nook;

namespace {

Design design(const std::string& text) {
  const auto read = parse_design(text, "design.toml");
  if (!read)
    for (const Diagnostic& fault : read.error()) UNSCOPED_INFO(message(fault, text));
  REQUIRE(read);
  return *read;
}

// A design of one part with the given shape and contact lines.
Design with_part(const std::string& shape, const std::string& rest = "") {
  return design(
      "corner = ['left', 'right']\n[stock.ply]\nkind = 'plywood'\nthickness = '3/4'\n"
      "[[part]]\nname = 'p'\nstock = 'ply'\nplace = { at = [0, 0, 0], u = '+y', v = '+z' }\n"
      "shape = " +
      shape + "\n" + rest);
}

}  // namespace

TEST_CASE("design: use and stock, in file order") {
  const Design loft = design(kDesign);
  CHECK(loft.corner[0] == "left");
  CHECK(loft.use.by == User::child);
  CHECK(*loft.use.ages[1] == 8);
  CHECK(loft.use.purpose == Purpose::play);
  CHECK(loft.use.mattress->mm == 0);
  REQUIRE(loft.stock.size() == 3);
  CHECK(loft.stock[0].name == "ply");
  CHECK(loft.stock[0].kind_given == "plywood");
  CHECK(in_inches(*loft.stock[0].sheet[1]) == Approx(96));
  CHECK(*loft.stock[0].density == Approx(576.66).epsilon(1e-4));
  CHECK(loft.stock[1].kind == StockKind::lumber);
  CHECK(in_inches(loft.stock[1].thickness) == Approx(1.25));
  CHECK(in_inches(*loft.stock[1].width) == Approx(3));
  CHECK(*loft.stock[1].gravity == 0.5);
}

TEST_CASE("design: parts with outline, cutout, place, repeat and group") {
  const Design loft = design(kDesign);
  REQUIRE(loft.parts.size() == 5);
  const Part& panel = loft.parts[0];
  CHECK(panel.name == "front panel");
  CHECK(panel.group == "front");
  CHECK(panel.rectangle);
  REQUIRE(panel.outline.size() == 4);
  CHECK(panel.outline[2].x == Approx(37.25 * 25.4));
  CHECK(panel.outline[2].y == Approx(84 * 25.4));
  REQUIRE(panel.cutouts.size() == 1);
  CHECK(panel.cutouts[0].name == "porthole");
  CHECK(in_inches(*panel.cutouts[0].diameter) == Approx(9.25));
  CHECK(panel.place_in_room.at.x == Approx(47 * 25.4));
  CHECK(panel.place_in_room.u == Vec3{0, 1, 0});
  CHECK(loft.parts[1].group == "side panel");
  CHECK(loft.parts[2].repeat->count == 3);
  CHECK(loft.parts[2].repeat->step.z == Approx(10.5 * 25.4));
  CHECK(loft.parts[2].outline[2].x == Approx(14 * 25.4));
  CHECK(loft.parts[2].outline[2].y == Approx(1.25 * 25.4));
}

TEST_CASE("design: groups, contacts, covers, fastenings, feet") {
  const Design loft = design(kDesign);
  const Group& group = loft.groups.at(0);
  CHECK(*group.order == 4);
  CHECK(*group.turn == false);
  CHECK(group.tight_to == std::vector<std::string>{"left wall"});
  CHECK(*group.parallel_to == "right wall");
  CHECK(group.height_from == HeightFrom::floor);
  const Contact& contact = loft.contacts.at(0);
  CHECK(contact.by == Fitting::scribe);
  CHECK(contact.notch);
  CHECK(contact.meets == "left wall");
  CHECK(std::get<EdgeSide>(contact.edge) == EdgeSide::left);
  CHECK(in_inches(*contact.allow) == Approx(0.125));
  CHECK(loft.covered.at(0).behind == "front panel");
  const Fastening& screws = loft.fastenings.at(0);
  CHECK(screws.face == PieceFace::back);
  CHECK(screws.screw.gauge == 10);
  CHECK(*screws.load_n == Approx(2224.11).epsilon(1e-5));
  CHECK(screws.prebored);
  const Fastening& pulled = loft.fastenings.at(1);
  CHECK_FALSE(pulled.load_n);
  CHECK(*pulled.pull_n == Approx(88.964).epsilon(1e-5));
  CHECK(in_inches(*pulled.load_at) == Approx(40));
  CHECK(*loft.feet.at(0).load_n == Approx(889.64).epsilon(1e-5));
}

TEST_CASE("design: an outline typed clockwise is turned, and edge numbers keep their meaning") {
  const std::string contact =
      "[[contact]]\npart = 'p'\nmeets = 'left wall'\nedge = [1, 2]\n[[contact]]\npart = 'p'\n"
      "meets = 'floor'\nedge = 4\n";
  // A house: floor, right wall, roof right, roof left, left wall.
  const Design there =
      with_part("{ points = [[0, 0], [10, 0], [10, 8], [5, 12], [0, 8]] }", contact);
  const Design back =
      with_part("{ points = [[0, 0], [0, 8], [5, 12], [10, 8], [10, 0]] }", contact);
  CHECK_FALSE(there.parts[0].typed_clockwise);
  CHECK(back.parts[0].typed_clockwise);
  CHECK(back.parts[0].outline == there.parts[0].outline);
  const EdgeRun run = std::get<EdgeRun>(there.contacts[0].edge);
  CHECK((run.first == 1 && run.last == 2));
  // Typed edges 1 and 2 of the clockwise ring are the roof: edges 2 and 3 anticlockwise.
  const EdgeRun turned = std::get<EdgeRun>(back.contacts[0].edge);
  CHECK((turned.first == 2 && turned.last == 3));
  CHECK(std::get<EdgeRun>(back.contacts[1].edge).first == 0);
  CHECK(std::get<EdgeRun>(there.contacts[1].edge).first == 4);
  CHECK(back.contacts[0].edge_given == "edges 1 to 2");
  CHECK(back.contacts[1].edge_given == "edge 4");
}

TEST_CASE("design: a first point repeated at the end is left out") {
  CHECK(with_part("{ points = [[0, 0], [10, 0], [10, 8], [0, 0]] }").parts[0].outline.size() == 3);
}

TEST_CASE("design: copies can be named") {
  const Design loft =
      design(std::string(kDesign) +
             "[[contact]]\npart = 'rung 2'\nedge = 'left'\nmeets = 'ladder rail'\n"
             "[[contact]]\npart = 'rung 1'\nedge = 'top'\nmeets = 'rung 2'\nby = 'clear'\n");
  CHECK(loft.contacts.at(1).part == "rung 2");
  CHECK(loft.contacts.at(2).by == Fitting::clear);
}

TEST_CASE("design: mentions of walls keep their places") {
  const Design loft = design(kDesign);
  REQUIRE(loft.walls_named.size() == 6);
  CHECK(loft.walls_named[0].name == "left");
  CHECK(loft.walls_named[0].place.line == 3);
  CHECK(loft.walls_named[0].place.column == 11);
}

TEST_CASE("pieces: as cut") {
  const auto read = parse_pieces(kPieces, "pieces.toml");
  REQUIRE(read);
  const PieceAsCut& piece = read->pieces.at(0);
  CHECK(piece.part == "front panel");
  CHECK(piece.show_face_up);
  CHECK(in_inches(piece.widths.at(1).at) == Approx(82));
  CHECK(in_inches(piece.widths.at(1).measured.at(0)) == Approx(37.3125));
  CHECK(in_inches(piece.diagonals.at(1).measured.at(0)) == Approx(91.9375));
  CHECK(piece.notches.at(0).corner == "lower left");
  CHECK(in_inches(*piece.notches[0].height) == Approx(5.5));
}

TEST_CASE("between: the samples know each other") {
  const auto survey = parse_room(kRoom, "room.toml");
  const Design loft = design(kDesign);
  const auto cut = parse_pieces(kPieces, "pieces.toml");
  CHECK(faults_between(*survey, loft, {"room.toml", "design.toml", ""}).empty());
  CHECK(faults_between(loft, *cut, {"", "design.toml", "pieces.toml"}).empty());
  CHECK(corner_of(*survey, loft) == 0);
}

TEST_CASE("between: names that the other file does not know are filed where they stand") {
  std::string text = kDesign;
  text.replace(text.find("right wall"), 10, "rihgt wall");
  const auto survey = parse_room(kAlcove, "room.toml");
  const Diagnostics faults =
      faults_between(*survey, design(text), {"room.toml", "design.toml", ""});
  REQUIRE(faults.size() == 2);
  CHECK(faults[0].what == "'left' and 'right' share no corner in this order");
  CHECK(faults[0].place.line == 3);
  CHECK(faults[1].what == "room.toml has no wall 'rihgt'");
  CHECK(faults[1].help == "did you mean 'right'?");
  PiecesAsCut cut;
  cut.pieces.push_back({"front panle", true, {}, {}, {}, {}, {2, 8, 13}});
  const Diagnostics more = faults_between(design(kDesign), cut, {"", "", "pieces.toml"});
  REQUIRE(more.size() == 1);
  CHECK(more[0].what == "design.toml has no part 'front panle'");
}

TEST_CASE("between: where no name is near, the ones that are there are said") {
  const auto survey = parse_room(kAlcove, "room.toml");
  std::string text = kDesign;
  text.replace(text.find("right wall"), 10, "chimney wall");
  const FileNames names{"room.toml", "design.toml", "pieces.toml"};
  const Diagnostics faults = faults_between(*survey, design(text), names);
  REQUIRE(faults.size() == 2);
  CHECK(faults[1].what == "room.toml has no wall 'chimney'");
  CHECK(faults[1].help == "it has: left, back, right");
  PiecesAsCut cut;
  cut.pieces.push_back({"zzzzzzzz", true, {}, {}, {}, {}, {2, 8, 8}});
  CHECK(
      faults_between(design(kDesign), cut, names).at(0).help.starts_with("it has: front panel, "));
  const Design many = with_part("{ size = [9, 9] }",
                                "[[part]]\nname = 'q'\nstock = 'ply'\n"
                                "place = { at = [20, 0, 0], u = '+y', v = '+z' }\n"
                                "shape = { size = [9, 9] }\n"
                                "repeat = { count = 9, step = [0, 0, 10] }\n");
  CHECK(faults_between(many, cut, names).at(0).help == "check the name there");
}

TEST_CASE("between: a design in millimeters that is read as inches is not worked out") {
  const auto survey = parse_room(kRoom, "room.toml");
  const FileNames names{"room.toml", "design.toml", ""};
  Design loft = design(kDesign);
  double longest = 0;  // of a piece that is let be: five times the room's usual height
  for (const Wall& wall : survey->walls)
    for (const Reading& reading : wall.length) longest = std::max(longest, reading.value.mm);
  longest = 5 * std::max(longest, 2440.0);
  loft.parts[0].outline = {{0, 0}, {longest, 0}, {longest, 300}, {0, 300}};
  CHECK(faults_between(*survey, loft, names).empty());
  loft.parts[0].outline = {{0, 0}, {longest + 1, 0}, {longest + 1, 300}, {0, 300}};
  const Diagnostics faults = faults_between(*survey, loft, names);
  REQUIRE(faults.size() == 1);
  CHECK(faults[0].code == "absurd-size");
  CHECK(faults[0].file == "design.toml");
  CHECK(faults[0].what.find("'" + loft.parts[0].name + "' is ") == 0);
  Survey unmeasured = *survey;
  for (Wall& wall : unmeasured.walls) wall.length.clear();
  CHECK(faults_between(unmeasured, loft, names).empty());
}

TEST_CASE("between: what the room says is installed is a piece or a wall of these files") {
  const Design loft = design(kDesign);
  const FileNames names{"room.toml", "design.toml", ""};
  auto survey = *parse_room(kRoom, "room.toml");
  survey.parts_named = {{"front panel", {7, 1, 4}}, {"left wall", {8, 1, 4}}};
  CHECK(faults_between(survey, loft, names).empty());
  survey.parts_named = {{"back panel", {7, 1, 4}}, {"back wall", {8, 1, 4}}};
  const Diagnostics faults = faults_between(survey, loft, names);
  REQUIRE(faults.size() == 2);
  CHECK(faults[0].file == "room.toml");
  CHECK(faults[0].what == "design.toml has no part 'back panel'");
  CHECK(faults[1].what == "room.toml has no wall 'back'");
}
