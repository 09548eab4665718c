// The way in: each piece and group through doors, round turns, up under the ceiling, into the
// alcove.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/measured.h"
#include "base/verdict.h"
#include "fit/fit_answer.h"
#include "room/shape.h"
#include "room/survey.h"

namespace nook {

/// How a piece is held while it passes.
enum class Grip {
  flat,         // its face level
  on_edge,      // its long edge down
  standing,     // upright
  tilted,       // turned in the opening, edge to opposite edge
  tipped,       // long edge down, one end raised to `raised_mm` over all
  tipped_flat,  // face down, one end raised to `raised_mm` over all
  tipped_up,    // raised about its foot where it goes
  stood_up,     // raised out in the room, then slid upright to its place
  slid_in,      // level and square, straight in
  lowered_in,   // one end raised by `raised_mm`, lowered behind the narrow place
  swung_in      // upright, one end `raised_mm` ahead of the other, swung square behind it
};

/// One place on the way in. Spare room is negative where the piece is too large by that much.
struct Pass {
  enum class Kind { doorway, turn, ceiling, alcove };
  Kind kind = Kind::doorway;
  std::string name;
  Verdict verdict = Verdict::cannot_tell;
  std::optional<Measured> spare;  // mm; none where nothing was measured
  double chance = 0;              // that it passes
  Grip hold = Grip::flat;
  double raised_mm = 0;
  std::optional<Measured> leaf_off;  // a doorway's spare room with its leaf taken off
  std::string in_the_way;            // ceiling: what stops it from being tipped up at its place
  std::optional<Measured> slides;    // alcove: spare room of sliding straight in
  std::optional<Measured> widest;    // alcove: the widest that slides in to there
};

struct PieceCarry {
  std::string part;  // "rung 2"
  std::string of;    // "rung", the part it is a copy of
  Verdict verdict = Verdict::fits;
  std::vector<Pass> passes;
};
/// Pieces joined before they are carried. A group that does not pass whole is no fault of the job
/// as long as its pieces pass: they go in by `order` and are joined in the room.
struct GroupCarry {
  std::string name;
  Verdict whole = Verdict::fits;
  std::vector<Pass> passes;
  std::vector<std::string> order;
};

struct CarryAnswer {
  Verdict verdict = Verdict::fits;  // of the worst piece
  bool room_known = true;           // false: ceiling and alcove were not looked at
  bool way_known = true;            // false: no door and no turn was measured
  Rounding said;                    // how its lengths are told
  std::vector<PieceCarry> pieces;   // in file order, each copy by itself
  std::vector<GroupCarry> groups;   // those of more than one piece, in the order they go in
};

/// `room` and `draws` are in the frame of `fit`, whose pieces and frames say what stands where.
struct CarryInput {
  const Survey& survey;
  const Design& design;
  const RoomShape& room;
  const std::vector<RoomShape>& draws;  // none = the room is known exactly
  const FitAnswer& fit;
  double sure = 0.95;
};

/// 1. A piece is the box of least section round its outline, wild edges on.
/// 2. A door's leaf is taken to stay on; what taking it off gains is told beside it.
/// 3. Which of its holds a piece takes: the easiest that surely passes, else the likeliest.
CarryAnswer carry(const CarryInput& input);

}  // namespace nook
