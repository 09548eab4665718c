// The figures that a piece as cut is judged by, each with what is accepted.
#pragma once

#include <vector>

#include "base/measured.h"
#include "shop/cut_shape.h"

namespace nook {

/// One figure: how far it is off, and from where to where that is accepted, mm.
struct CutFigure {
  enum class Of {
    width_bottom,
    width_middle,
    width_top,
    height_left,
    height_middle,
    height_right,
    length,
    section,
    square,
    notch_width,
    notch_height
  };
  Of of = Of::width_bottom;
  Measured off;
  double low = 0, high = 0;
  double wild = 0;     // of `high`: wood that may be left on
  double scribed = 0;  // of `low`: wood that scribing in the room may have taken
  CornerVector row{};  // off = row . corners; not of a notch
  std::string corner;  // of a notch
  double wanted = 0;
  double steep = 1;  // see CutStation
  bool measured = true;

  bool of_notch() const { return of == Of::notch_width || of == Of::notch_height; }
  /// How far it is off, wood left wild not counted.
  double strayed() const;
  /// How much of what is accepted it uses up: over 1 it is off too far.
  double used() const;
  /// Whether the readings say anything about it: else its sd is wider than what is accepted.
  bool known() const { return off.sd < high - low; }
  /// The chance that it is within what is accepted.
  double chance() const;
};

/// A stick (lumber) is judged by its length; anything else by the widths and heights that were
/// measured, two of each at least, and by how square it is, wild edges left out of that. Notches by
/// width and height.
std::vector<CutFigure> figures_of(const PieceAsCut& piece, const NeededPiece& needed,
                                  const CutShape& shape, double sd);

/// The chance that all known figures are accepted together, from 4000 draws (chosen).
double joint_chance(const std::vector<CutFigure>& figures, const CutShape& shape);

}  // namespace nook
