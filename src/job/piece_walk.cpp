// Each answer is written into its piece's own table, which is made where it is missing.
#include "job/piece_walk.h"

#include <algorithm>
#include <cmath>

#include "job/node.h"
#include "job/walk_part.h"

namespace nook {
namespace {

using Done = TextEdit::Done;

constexpr const char* kSizeSketch = R"(
        seen on the show face
      +--------------------+  <- width near the top
      |                    |     square across, edge to edge
      |                    |     heights likewise, near both sides
      +--------------------+  <- width near the bottom
)";
constexpr const char* kDiagonalSketch = R"(
      +--------------------+
      | .              . ' |  first: lower left to upper right
      |    ' .   . '       |  then:  upper left to lower right
      |     . ' ' .        |
      +--------------------+  before anything is notched
)";
constexpr const char* kNotchSketch = R"(
      |                    |
      |       seen on the show face
      +---+                |  height: up from the bottom edge
          |                |  width: in from the side edge
          +----------------+
)";

// One piece, where it stands in the file, and the unit that spots are named in.
struct Bench {
  const PieceToMeasure& piece;
  const PieceAsCut* cut;  // null: no table yet
  int index;              // of its table, or of the one to come
  Unit units;

  std::string exact(double mm) const { return written(millimetres(mm), usual_rounding(units)); }
  std::string path(const std::string& key) const {
    return "piece[" + std::to_string(index) + "]." + key;
  }
};

// Sets a key of the piece; the table and, in a file without pieces, the units come with the first.
auto setter(const Bench& bench, const std::string& key) {
  const bool made = bench.cut, first = bench.index == 0;
  return [=, part = bench.piece.part, unit = bench.units, path = bench.path(key)](
             TextEdit& edit, const std::string& value) -> Done {
    if (made) return edit.set(key_path(path), value);
    const auto tree = parse_tree(edit.text(), "");
    if (first && tree && !tree->find("units")) {
      const char* word = unit == Unit::inch ? "inch" : unit == Unit::mm ? "mm" : "cm";
      if (const Done done = edit.set(key_path("units"), quoted(word)); !done) return done;
    }
    return edit.append_table(key_path("piece"),
                             "part = " + quoted(part) + "\n" + key + " = " + value + "\n");
  };
}

struct SizeAsked {
  std::string key, ask;  // "widths", "Width of the deck 1 up from its bottom?"
};

void ask_size(const Bench& bench, const SizeToMeasure& size, const SizeAsked& asked,
              std::vector<PieceQuestion>& to) {
  const std::vector<CheckedAt> none;
  const auto& there = !bench.cut              ? none
                      : asked.key == "widths" ? bench.cut->widths
                                              : bench.cut->heights;
  for (const CheckedAt& taken : there)
    if (bench.piece.stick || is_near(taken.at.mm, size.at)) return;
  const std::string at = bench.exact(size.at), path = bench.path(asked.key);
  const auto set = setter(bench, asked.key);
  const bool first = there.empty();
  to.push_back({{asked.key + " " + bench.piece.part + " " + at, asked.ask,
                 like(bench.units, "37 1/4", "946"), kSizeSketch, false,
                 [=](TextEdit& edit, const Answers& answers) {
                   const std::string item = "[" + quoted(at) + ", " + readings(answers) + "]";
                   return first ? set(edit, "[" + item + "]") : edit.append(key_path(path), item);
                 }},
                size.wanted});
}

void ask_sizes(const Bench& bench, std::vector<PieceQuestion>& to) {
  const std::string& part = bench.piece.part;
  for (const SizeToMeasure& size : bench.piece.widths)
    ask_size(bench, size,
             {"widths", bench.piece.stick ? "Length of the " + part + "?"
                                          : "Width of the " + part + ", " + bench.exact(size.at) +
                                                " up from its bottom?"},
             to);
  for (const SizeToMeasure& size : bench.piece.heights)
    ask_size(
        bench, size,
        {"heights", "Height of the " + part + ", " + bench.exact(size.at) + " from its left side?"},
        to);
}

// "lower left to upper right, a comma, then the other", or by figures.
std::string diagonal_ways(const Bench& bench) {
  if (bench.piece.diagonals.size() != 2)
    return "lower left to upper right, a comma, then the other";
  const auto point = [&](Vec2 p) { return "(" + bench.exact(p.x) + ", " + bench.exact(p.y) + ")"; };
  const auto way = [&](const std::array<Vec2, 2>& ends) {
    return point(ends[0]) + " to " + point(ends[1]);
  };
  return way(bench.piece.diagonals[0]) + ", a comma, then " + way(bench.piece.diagonals[1]) +
         ", across and up from its lower left corner";
}

void ask_diagonals(const Bench& bench, std::vector<PieceQuestion>& to) {
  if (bench.piece.stick || (bench.cut && !bench.cut->diagonals.empty())) return;
  const auto set = setter(bench, "diagonals");
  to.push_back({{"diagonals " + bench.piece.part,
                 "Both diagonals of the " + bench.piece.part + ": " + diagonal_ways(bench) + "?",
                 like(bench.units, "91 7/8, 91 15/16", "2334, 2335"), kDiagonalSketch, false,
                 [=](TextEdit& edit, const Answers& answers) -> Done {
                   const std::vector<std::string> two = parts_of(answers.back().text);
                   if (two.size() != 2)
                     return tl::unexpected(std::string("say both, with a comma between"));
                   return set(edit, "[" + quoted(two[0]) + ", " + quoted(two[1]) + "]");
                 }}});
}

void ask_notch(const Bench& bench, const std::string& corner, std::vector<PieceQuestion>& to) {
  if (bench.cut)
    for (const NotchAsCut& notch : bench.cut->notches)
      if (notch.corner == corner) return;
  const auto set = setter(bench, "notches");
  const bool first = !bench.cut || bench.cut->notches.empty();
  const std::string path = bench.path("notches");
  to.push_back({{"notch " + bench.piece.part + " " + corner,
                 "Notch in the " + corner + " corner of the " + bench.piece.part +
                     ": its width, a comma, its height?",
                 like(bench.units, "3/4, 5 1/2", "19, 140"), kNotchSketch, false,
                 [=](TextEdit& edit, const Answers& answers) -> Done {
                   const std::vector<std::string> two = parts_of(answers.back().text);
                   if (two.size() != 2)
                     return tl::unexpected(std::string("say its width, a comma, its height"));
                   const std::string keys = "corner = " + quoted(corner) +
                                            ", width = " + quoted(two[0]) +
                                            ", height = " + quoted(two[1]);
                   return first ? set(edit, "[{ " + keys + " }]")
                                : edit.append(key_path(path), "{ " + keys + " }");
                 }}});
}

}  // namespace

std::vector<PieceQuestion> piece_questions(const PiecesAsCut& cut,
                                           const std::vector<PieceToMeasure>& pieces, Unit units) {
  std::vector<PieceQuestion> questions;
  for (const PieceToMeasure& piece : pieces) {
    const auto found = std::find_if(cut.pieces.begin(), cut.pieces.end(),
                                    [&](const PieceAsCut& p) { return p.part == piece.part; });
    const bool there = found != cut.pieces.end();
    const Bench bench{piece, there ? &*found : nullptr,
                      static_cast<int>(found - cut.pieces.begin()),
                      cut.pieces.empty() ? units : cut.units};
    ask_sizes(bench, questions);
    ask_diagonals(bench, questions);
    for (const std::string& corner : piece.notches) ask_notch(bench, corner, questions);
  }
  return questions;
}

}  // namespace nook
