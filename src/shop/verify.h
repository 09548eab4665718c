// The pieces as cut against the pieces as needed: what is wrong, and how to save it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/measured.h"
#include "base/verdict.h"
#include "design/as_cut.h"
#include "room/survey.h"
#include "shop/needed.h"
#include "shop/turned.h"

namespace nook {

/// How far off is accepted, mm: measured less wanted.
struct Accepted {
  double least = 0, most = 0;
};

/// One way in which a piece as cut is not the piece needed, or cannot be told to be.
struct CutFault {
  enum class Kind {
    still_square,  // the outline of a piece that is no rectangle is not cut yet
    still_stock,   // a rip or crosscut was forgotten: still the size of its stock
    off_by_kerf,   // the blade ran on the wrong side of the line
    too_large,
    too_small,
    taper_reversed,
    out_of_square,
    mirrored,  // turned over (`turn`) it is as needed; or its notch is at `other`, not at `where`
    end_for_end,  // turned round in its plane it is as needed
    notch_without_clearance,
    notch_too_small,
    notch_too_large,
    notch_not_wanted,
    swapped,  // it is `other`, and `other` is it
    not_measured,
    disagree,         // its readings cannot all be right: `where` names the one to take again
    figures_swapped,  // written down in each other's place: `other` is "keys", "pairs" or "notches"
    taken_beyond      // `where` is said to be taken at `measured_mm`, and it ends at `wanted_mm`
  };
  /// What of the piece it is about.
  enum class Of { width, height, square, notch, whole };

  Kind kind = Kind::too_large;
  Of of = Of::width;
  Verdict verdict = Verdict::does_not_fit;
  std::string where;  // "at the bottom", "at the top", "lower left"; empty = all over
  double measured_mm = 0, wanted_mm = 0;
  double wild_mm = 0;  // of a size: wood besides that may stay on, to be scribed off
  Measured off;        // measured less wanted; out of square: the top's lean to the right
  std::optional<Accepted> accepted;  // where there is a figure to accept
  std::string perhaps;               // a slip of the tape that explains it; empty: none does
  std::string other;                 // "sheet" or "board"; the other piece; the other corner
  Turn turn = Turn::sideways;        // of a mirrored piece
  bool lengthwise = false;           // its width is the length of a stick
};

/// Wood off one side, mm: the greatest width, and at bottom and top, or left and right.
struct SideTrim {
  std::string edge;
  double by_mm = 0, by_first_mm = 0, by_last_mm = 0;
};

/// What a remedy spoils.
struct Spoil {
  enum class Kind {
    cutout_moves,   // `name` comes `by_mm` nearer to the trimmed `edge`
    cutout_cut,     // the trim cuts into it, or leaves under 1 in beside it
    notch_narrows,  // cut it `by_mm` deeper again
    not_centered,   // the piece is drawn the same on both sides and will not be any more
    comes_short,    // the piece is `by_mm` smaller than wanted, in `name`: "width" or "height"
    other_face,     // the face that was to show goes to the back
    filled          // the gap it leaves has to be hidden
  };
  Kind kind = Kind::cutout_moves;
  std::string name;
  double by_mm = 0;
  std::string edge = {};
};
struct Remedy {
  enum class Do {
    trim,
    recut_notch,
    turn,  // `turn` says how
    change_marks,
    fill,
    cut_again,
    cut_outline,
    measure,
    measure_again,
    take_again,
    mend_file
  };
  Do what = Do::trim;
  int fault = 0;     // the first of the piece's faults that it mends
  std::string edge;  // trim: "left"; a notch: its corner; change_marks: the other piece
  double by_mm = 0;  // the greatest width taken off (or filled)
  double by_first_mm = 0, by_last_mm = 0;  // of a trim: at bottom and top, or left and right
  std::string perhaps;                     // measure, take_again: the slip that it may have been
  std::vector<SideTrim> also;              // of a trim: the other sides that are trimmed with it
  Turn turn = Turn::sideways;
  std::vector<Spoil> spoils;
};

struct PieceVerify {
  std::string part;
  Verdict verdict = Verdict::fits;
  double chance = 1;             // that every figure keeps to what is accepted
  Measured off;                  // the worst figure, measured less wanted, wild wood apart, mm
  std::vector<CutFault> faults;  // worst first
  std::vector<Remedy> remedies;  // fault by fault, the one that spoils least first
  double wild_mm = 0;            // the most wood left on to be scribed off
};
struct VerifyAnswer {
  bool known = true;                      // false: held against the drawing alone
  Verdict verdict = Verdict::fits;        // of the worst piece
  Rounding said;                          // how its lengths are told
  std::vector<PieceVerify> pieces;        // in the order of pieces.toml
  std::vector<std::string> not_measured;  // pieces of the design that nobody measured
};

struct VerifyInput {
  const Survey& survey;
  const std::vector<NeededPiece>& needed;
  const PiecesAsCut& cut;
  double sure = 0.95;
  bool known = true;  // false: the room is not known, nor what it needs
};

/// 1. Each piece is adjusted by itself; its chance is that of all its figures together.
/// 2. A piece that shows both faces or none may be turned over; one that shows a face may not.
/// 3. Cutouts are taken to be laid off from the sides that the cutting list says (laid_from).
VerifyAnswer verify(const VerifyInput& input);

}  // namespace nook
