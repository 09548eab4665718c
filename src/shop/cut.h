// The cutting list as fitted: blanks, finished sizes, what to cut into them, what to buy.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "base/verdict.h"
#include "fasten/drill.h"
#include "fit/fit_answer.h"
#include "shop/boards.h"
#include "shop/needed.h"
#include "shop/sheets.h"
#include "shop/shopping.h"

// Everything in the piece frame (design/piece.h), mm.

namespace nook {

/// Width across u and height up v.
struct CutSize {
  double width = 0, height = 0;
};
/// A measure taken at a distance: a width at a height, a height at a distance from the left.
struct CutCheck {
  double at = 0, value = 0;
};
/// The measures that prove a blank right, before it is notched. Diagonals: lower left to upper
/// right, then lower right to upper left; the corners they join, from the blank's lower left one.
struct CutChecks {
  std::vector<CutCheck> widths, heights;
  std::vector<double> diagonals;
  std::vector<std::array<Vec2, 2>> diagonal_ends = {};
};

/// An edge that leaves the shop with wood to spare.
struct LeftWild {
  std::string edge;
  double beyond_mm = 0;  // beyond the finished line where that lies furthest out
};
/// A straight cut that is not square: the size at its two ends.
struct CutTaper {
  std::string edge;    // as the design says it
  bool widths = true;  // two widths, bottom and top; else two heights, left and right
  double first_mm = 0, last_mm = 0;
  double off_first_mm = 0, off_last_mm = 0;  // what comes off this edge of the blank at those ends
};
/// An edge of the blank that is drawn neither level nor upright.
struct CutSlant {
  EdgeSide edge = EdgeSide::left;  // the side that it faces most
  double off_mm = 0;               // how far one of its ends lies in from the other
  bool last = false;               // that end: the top (right) one; else the bottom (left) one
  double angle_deg = 0;            // off square
};
/// An edge cut to a line, in the room or before.
struct CutScribe {
  struct Spot {
    double at = 0, off = 0;  // along as GapPoint::at; what comes off the blank there
  };
  std::string edge, meets;
  bool shop = false;        // cut beforehand
  bool upright = true;      // `at` counts up; else from the left
  double touches_at = 0;    // where the blank touches when it is held parallel to its place
  double setting_mm = 0;    // the scribers then
  double bevel_mm = 0;      // how much the other face differs
  std::vector<Spot> spots;  // for roughing out
};
struct CutNotch {
  std::string corner;  // empty: it opens to an edge, or is not square; its outline tells
  double width_mm = 0, height_mm = 0;
  Polygon polygon;         // u, v; not of a square one: points left out never make it smaller
  std::vector<Vec2> into;  // for each of its points, the signs of the way into the wood
  std::string around;
  bool follows_profile = false;  // of the molding
  // In a corner: wood left wild beyond the finished lines there.
  double wild_across_mm = 0, wild_up_mm = 0;
};
/// A hole, by its middle where it is round, else by its nearest sides, from two edges of the blank.
struct CutHole {
  std::string name;
  EdgeSide across = EdgeSide::left, up = EdgeSide::bottom;
  double from_across_mm = 0, from_up_mm = 0;
  std::optional<double> diameter_mm;
  double width_mm = 0, height_mm = 0;
};
/// A hole for a screw, from the end and the edge it counts from.
struct CutPilot {
  /// The same hole on another piece that is cut alike.
  struct Twin {
    std::string id;
    bool probe_first = false;
  };
  std::string id, into, end, edge;  // `into`: the piece it goes into; empty on a wall
  double from_end_mm = 0, from_edge_mm = 0, bore_mm = 0;
  bool probe_first = false;
  std::vector<Twin> twins;  // one a further piece, in the order of CutPiece::names
};

struct CutPiece {
  std::string part;                // of all alike: the part's name, else the piece's
  std::vector<std::string> names;  // the pieces that are cut alike
  std::string stock;
  double thickness_mm = 0;
  bool stick = false;  // lumber: judged by its length
  CutSize blank, finished;
  bool exact_across = false, exact_up = false;  // a size that may only be rounded down
  Polygon outline;                              // finished, notches taken out
  Vec2 corner;                                  // the lower left one of the blank
  Polygon contour;  // the blank, from that corner, where it is no rectangle; else empty
  std::array<double, 4> sides{};  // of a slanted blank: how long each is, by EdgeSide
  std::vector<CutSlant> slants;
  std::vector<LeftWild> wild;
  std::vector<CutTaper> tapers;
  std::vector<CutScribe> scribes;
  std::vector<CutNotch> notches;
  std::vector<CutHole> holes;
  std::vector<CutPilot> pilots;
  CutChecks checks;
};

/// One stock and what comes off it.
struct StockCut {
  std::string name, kind;
  double thickness_mm = 0;
  std::optional<double> width_mm;   // lumber
  std::optional<BoardPlan> boards;  // lumber, where the design gives lengths
  std::optional<SheetPlan> sheets;  // where the design gives a sheet
};

struct CutAnswer {
  Verdict verdict = Verdict::fits;  // as the fit
  bool known = true;                // false: sizes are as drawn, the room is not known
  std::vector<CutPiece> pieces;     // by stock, longest first
  std::vector<StockCut> stock;      // in the order of the design
  std::vector<Purchase> shopping;
};

struct CutInput {
  const Design& design;
  const FitAnswer& fit;
  const DrillAnswer* drill = nullptr;  // none: no holes for screws are listed
};

/// 1. Pieces that come out alike within 0.5 mm (chosen) are one entry.
/// 2. A blank is the rectangle round the piece with its wild edges on.
/// 3. Checks are those of the blank before notching.
CutAnswer cut(const CutInput& input);

}  // namespace nook
