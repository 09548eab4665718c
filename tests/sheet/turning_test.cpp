// The tightest spot of a turn, against the closed form.
#include "sheet/turning.h"

#include <catch2/catch.hpp>

#include "sheet/sample_scene.h"
#include "shop/passage.h"

using namespace nook;

TEST_CASE("turning: closed form - the longest piece that passes just touches the inner corner",
          "[reference]") {
  const double width = GENERATE(1e-6, 20.0, 150.0);
  const TurnSize hall{900, 1000, 2400};
  TurnPicture turn{"", "", hall.from, hall.to, longest_round(hall, width), width};
  INFO("width " << width);
  CHECK(tightest(turn).clear == Approx(0).margin(0.05));
  turn.length += 50;
  CHECK(tightest(turn).clear < -5);
  turn.length -= 100;
  CHECK(tightest(turn).clear > 5);
}

TEST_CASE(
    "turning: a tight turn and a failing ceiling have a picture, what has room to spare none") {
  SampleScene sample;
  sample.survey.turns = {{"hall", inches(36), inches(38), inches(95), {}}};
  CarryAnswer way;
  for (const Piece& piece : sample.pieces) {
    PieceCarry carried{piece.name, piece.name, Verdict::fits, {}};
    Pass turn{Pass::Kind::turn,
              "hall",
              Verdict::fits,
              Measured{500, 2},
              1,
              Grip::on_edge,
              0,
              {},
              "",
              {},
              {}};
    if (piece.name == "front panel") {
      turn.spare = Measured{20, 2};
      carried.passes.push_back({Pass::Kind::ceiling,
                                "ceiling",
                                Verdict::does_not_fit,
                                Measured{-5, 1},
                                0,
                                Grip::tipped_up,
                                0,
                                {},
                                "",
                                {},
                                {}});
    }
    carried.passes.push_back(turn);
    way.pieces.push_back(carried);
  }
  const std::vector<WayPicture> pictures = tight_passes(sample.scene(), way);
  REQUIRE(pictures.size() == 2);
  for (const WayPicture& picture : pictures) {
    CHECK(picture.part == "front panel");
    const Drawing drawing = picture.draw({180, 90, 4});
    INFO(drawing.title);
    CHECK(drawing.extent.height() * drawing.scale <= 95);
    CHECK_FALSE(texts_of(drawing).empty());
  }
}
