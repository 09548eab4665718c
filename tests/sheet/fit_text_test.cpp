// A fit in the words of the trade.
#include "sheet/fit_text.h"

#include <catch2/catch.hpp>

#include "fit/rooms_by_hand.h"

using namespace nook;
using namespace nook::by_hand;
using Catch::Contains;

namespace {

std::string flat(const std::string& text) {
  std::string one;
  for (char c : text) {
    if (c == '\n') c = ' ';
    if (c == ' ' && !one.empty() && one.back() == ' ') continue;
    one += c;
  }
  return one;
}

std::string text_of(const Found& found, const Design& design) {
  return flat(fit_text(fit_exactly(found, design), Style{}));
}

Design deck(Fitting by) {
  Design d = empty_design();
  d.parts.push_back(panel("deck", {46 * in, 36 * in}, {0, 0, 40 * in}, kX, kY));
  d.contacts.push_back(meet("deck", EdgeSide::bottom, "left wall"));
  d.contacts.push_back(meet("deck", EdgeSide::left, "right wall", by));
  d.contacts[1].edge_given = "left";
  d.groups.push_back(tight("deck", {"left wall"}));
  return d;
}

}  // namespace

TEST_CASE("fit text: an open corner without wood says how wide to rip the blank") {
  CHECK_THAT(text_of(corner(91.4), deck(Fitting::taper)),
             Contains("DOES NOT FIT") && Contains("deck, left edge at the right wall") &&
                 Contains("gap 0\" to 7/8\"") && Contains("rip the blank 46 7/8\""));
}

TEST_CASE("fit text: a stick is crosscut to length, not ripped") {
  // Long and short, and a strip of plywood, which has no ends.
  for (const double length : {46.0, 12.0})
    for (const bool lumber : {true, false}) {
      Design d = deck(Fitting::taper);
      d.parts[0] = panel("deck", {length * in, 3 * in}, {0, 0, 40 * in}, kX, kY);
      if (lumber) d.stock[0].kind = StockKind::lumber;
      CHECK_THAT(text_of(corner(100), d),
                 Contains(lumber ? "crosscut the blank" : "rip the blank"));
    }
}

TEST_CASE("fit text: a leaning wall says where to touch and how to set the scribers") {
  Found c = corner(90, -0.375 / 96);
  add_board(c.survey.walls[0], 5.25 * in, 9.0 / 16 * in);
  Design d = empty_design();
  d.parts.push_back(panel("panel", {30 * in, 70 * in}, {47 * in, 0, 0}, kY, kZ));
  Contact how = meet("panel", EdgeSide::left, "left wall", Fitting::scribe);
  how.notch = true;
  d.contacts.push_back(how);
  CHECK_THAT(text_of(c, d),
             Contains("hold it plumb, touching at 5 3/8\", set the scribers to 1/4\"") &&
                 // 9/16 + .021 + 1/8 = .709: 11/16 would eat the clearance.
                 Contains("panel: 3/4\" wide, 5 3/8\" high, for the left wall baseboard"));
}

TEST_CASE("fit text: no line is wider than 80 columns and no decimals stand in an inch job") {
  const std::string text = fit_text(fit_exactly(corner(93), deck(Fitting::butt)), Style{});
  std::size_t start = 0;
  while (start < text.size()) {
    const std::size_t end = text.find('\n', start);
    CHECK(end - start <= 80);
    start = end + 1;
  }
  for (std::size_t i = 1; i + 1 < text.size(); ++i)
    CHECK_FALSE((text[i] == '.' && std::isdigit(text[i - 1]) && std::isdigit(text[i + 1]) &&
                 text.compare(i + 2, 8, " degrees") != 0));
}

TEST_CASE(
    "fit text: an overlap at a contact is told once, a shelf too wide says what to take off") {
  Found c = corner(90);
  c.room.walls[1].length = 1000;
  c.room.walls.push_back({"far", {0, 1000}, {1, 0}, {0, -1}, 3000, 0, {}, 0, 0, 0, 0});
  c.survey.walls.resize(3);
  c.survey.walls[2].name = "far";
  Design d = empty_design();
  d.parts.push_back(panel("shelf", {1000 + in / 4, 300}, {300, -in / 8, 500}, kY, {-1, 0, 0}));
  d.contacts.push_back(meet("shelf", EdgeSide::left, "left wall"));
  d.contacts.push_back(meet("shelf", EdgeSide::right, "far wall"));
  const std::string text = text_of(c, d);
  CHECK_THAT(text, Contains("too big by 1/8\"") && Contains("take 1/8\" off this edge"));
  CHECK_THAT(text, !Contains("they overlap"));
}

TEST_CASE("fit text: a finding that does not fit never asks for nothing") {
  Design d = deck(Fitting::clear);
  d.groups.clear();
  d.contacts[0].by = Fitting::clear;
  for (double lacks : {0.45, 0.7, 3.0}) {
    INFO("it lacks " << lacks << " mm");
    d.contacts[1].gap = millimetres(lacks);
    const std::string text = text_of(corner(90), d);
    CHECK_THAT(text, Contains("DOES NOT FIT") && Contains("move it"));
    CHECK_THAT(text, !Contains("move it 0\""));
  }
}

TEST_CASE("fit text: what is in the wall at a scribe says how much to cut back") {
  Found c = corner(90);
  c.room.walls[1].length = 1000;
  c.room.walls.push_back({"far", {0, 1000}, {1, 0}, {0, -1}, 3000, 0, {}, 0, 0, 0, 0});
  c.survey.walls.resize(3);
  c.survey.walls[2].name = "far";
  Design d = empty_design();
  d.parts.push_back(panel("front", {1000 + in / 4, 300}, {300, -in / 8, 500}, kY, kZ));
  d.contacts.push_back(meet("front", EdgeSide::left, "left wall", Fitting::scribe));
  d.contacts.push_back(meet("front", EdgeSide::right, "far wall", Fitting::scribe));
  CHECK_THAT(text_of(c, d), Contains("cut it back along the left wall, up to 1/8\"") &&
                                Contains("both ends are trapped") &&
                                !Contains("nothing to scribe"));
}

TEST_CASE("fit text: a room without readings says so for each contact") {
  const Found c = corner(90);
  const Design d = deck(Fitting::butt);
  const std::vector<RoomShape> none;
  const std::string text = flat(fit_text(fit({c.survey, d, c.room, none, 0.95, false}), Style{}));
  CHECK_THAT(text, Contains("CANNOT TELL") && Contains("readings are missing"));
}

TEST_CASE("fit text: a group that does not come to rest says so and what to do") {
  FitAnswer fit;
  fit.verdict = Verdict::cannot_tell;
  fit.groups = {{"ladder", {0}, {}, 0, {}, in / 16}};
  CHECK_THAT(
      flat(fit_text(fit, Style{})),
      Contains("ladder: where it comes to rest cannot be told: pushed home again it slides on "
               "by 1/16\"") &&
          Contains("name what else it is tight to"));
}

TEST_CASE("fit text: a piece that would go in before what carries it is told, though it fits") {
  FitAnswer fit;
  fit.early = {{0, "shelf", {"left cleat", "right cleat"}}};
  CHECK_THAT(flat(fit_text(fit, Style{})),
             Contains("shelf: it would go in before what carries it: left cleat, right cleat") &&
                 Contains("give its group a higher 'order'"));
}

TEST_CASE("fit text: an overlap with a copy is told by the contact that names all copies") {
  Design d = empty_design();
  d.parts.push_back(panel("post", {50, 900}, {500, 100, 0}, kY, kZ));
  d.parts[0].repeat = Repeat{2, {0, 300, 0}};
  d.parts.push_back(panel("shelf", {497, 500}, {21, 50, 500}, kX, kY));  // ends 18 mm short of it
  d.contacts.push_back(meet("shelf", EdgeSide::right, "post"));
  d.contacts[0].edge_given = "right";
  d.groups = {tight("post", {}), tight("shelf", {})};
  for (Group& group : d.groups) group.turn = false;
  FitAnswer fit = fit_exactly(corner(90), d);
  fit.clashes = {{1, "shelf", "post 2", 5, 0, 5, {}, 0, Verdict::does_not_fit}};
  fit.contacts[0].verdict = Verdict::does_not_fit;
  CHECK_THAT(fit_text(fit, Style{}), !Contains("shelf and the post 2"));
  fit.contacts[0].verdict = Verdict::fits;
  CHECK_THAT(fit_text(fit, Style{}), Contains("shelf and the post 2"));
}
