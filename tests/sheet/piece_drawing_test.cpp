// Pieces by themselves: dimensions that a tape can follow, and none over another.
#include "sheet/piece_drawing.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <random>

#include "base/length.h"

using namespace nook;

namespace {

constexpr Canvas kPaper{180, 200, 4}, kPhone{94, 150, 3.4};

Vec2 in(double u, double v) {
  return {inches(u).mm, inches(v).mm};
}

PieceView notched() {
  PieceView piece;
  piece.name = "panel";
  piece.outline = {in(0.75, 0), in(36, 0), in(36, 70), in(0, 70), in(0, 5.5), in(0.75, 5.5)};
  return piece;
}

// Every word of a drawing.
std::vector<std::string> words_of(const Drawing& drawing) {
  std::vector<std::string> words;
  for (const Text& text : texts_of(drawing)) words.push_back(text.words);
  return words;
}
bool has(const std::vector<std::string>& words, const std::string& word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

void check_apart(const Drawing& drawing) {
  const std::vector<Text> texts = texts_of(drawing);
  for (std::size_t i = 0; i < texts.size(); ++i)
    for (std::size_t j = i + 1; j < texts.size(); ++j) {
      INFO(texts[i].words << " and " << texts[j].words);
      CHECK_FALSE(overlap(box_on_page(texts[i]), box_on_page(texts[j])));
    }
}

// A step-edged panel with round and square cutouts and holes, anywhere.
PieceView random_piece(std::mt19937& random) {
  std::uniform_real_distribution<double> share(0, 1);
  PieceView piece;
  piece.name = "random";
  const double width = 200 + 1200 * share(random), height = 60 + 2000 * share(random);
  const int steps = 1 + static_cast<int>(6 * share(random));
  piece.outline = {{0, 0}, {width, 0}};
  for (int k = 0; k < steps; ++k) {
    const double top = height * (0.5 + 0.5 * share(random));
    piece.outline.push_back({width * (1 - static_cast<double>(k) / steps), top});
    piece.outline.push_back({width * (1 - (k + 1.0) / steps), top});
  }
  for (int k = 0; k < 5; ++k)
    piece.holes.push_back({{width * share(random), 0.5 * height * share(random)},
                           std::to_string(k + 1),
                           share(random) < 0.5});
  Cutout round;
  round.name = "porthole";
  round.centre = Vec2{0.4 * width, 0.25 * height};
  round.diameter = millimetres(0.2 * std::min(width, height));
  for (int k = 0; k < 64; ++k) {
    const Direction turn = direction(degrees(k * 5.625));
    round.outline.push_back(*round.centre + (round.diameter->mm / 2) * Vec2{turn.cos, turn.sin});
  }
  piece.cutouts = {round};
  piece.shy_of_left = share(random) < 0.5;
  piece.shy_of_bottom = share(random) < 0.5;
  return piece;
}

}  // namespace

TEST_CASE("piece: distances run from the left and the bottom edge") {
  const std::vector<std::string> words =
      words_of(piece_drawing(notched(), kPaper, usual_rounding(Unit::inch)));
  for (const char* word :
       {"0 left edge", "0 bottom edge", "3/4", "36", "5 1/2", "70", "TOP", "LEFT", "SHOW FACE"}) {
    INFO(word);
    CHECK(has(words, word));
  }
}

TEST_CASE("piece: where the left edge is left wild, distances run from the right edge") {
  PieceView piece = notched();
  piece.shy_of_left = true;
  const std::vector<std::string> words =
      words_of(piece_drawing(piece, kPaper, usual_rounding(Unit::inch)));
  CHECK(has(words, "0 right edge"));
  CHECK(has(words, "35 1/4"));
  CHECK_FALSE(has(words, "3/4"));
}

TEST_CASE("piece: points on a fair curve have no dimensions, corners have") {
  Polygon wave{{0, 0}, {1000, 0}, {1000, 500}};
  for (int k = 1; k < 50; ++k) wave.push_back({1000.0 - 20 * k, 500 + 30 * std::sin(k * 0.2)});
  wave.push_back({0, 500 + 30 * std::sin(10.0)});
  CHECK(corners_of(wave).size() == 4);
}

TEST_CASE("piece: no two words overlap, on paper and phone", "[property]") {
  const unsigned seed = GENERATE(range(1u, 26u));
  INFO("seed " << seed);
  std::mt19937 random(seed);
  const PieceView piece = random_piece(random);
  for (const Canvas& canvas : {kPaper, kPhone}) {
    check_apart(piece_drawing(piece, canvas, usual_rounding(Unit::inch)));
    check_apart(piece_picture(piece, canvas, usual_rounding(Unit::mm)));
  }
}

TEST_CASE("piece: its gaps are drawn outside the outline, by the printed factor") {
  PieceView piece = notched();
  PieceGap gap;
  gap.out = {-1, 0};
  gap.words = "left wall: gap 0 to 3/8\"";
  for (int k = 0; k <= 10; ++k) gap.spots.push_back({in(0, 7 * k), inches(0.0375).mm * k});
  piece.gaps = {gap};
  const Drawing drawing = gap_drawing(piece, kPaper, usual_rounding(Unit::inch));
  CHECK_THAT(drawing.title, Catch::Contains("10 times as wide"));
  for (const Layer& layer : drawing.layers)
    for (const DrawnShape& shape : layer.shapes)
      if (shape.name == gap.words && layer.name == "gaps") {
        const auto& line = std::get<Polyline>(shape.form).points;
        CHECK(line.back().x == Approx(-10 * inches(0.375).mm));
        CHECK(line.front().x == Approx(0).margin(1e-9));
      }
}
