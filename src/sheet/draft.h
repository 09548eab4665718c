// A picture under way: how big it may get, how large its words are, how its lengths are written.
#pragma once

#include <string>
#include <vector>

#include "base/notation.h"
#include "sheet/drawing.h"

namespace nook {

/// The room on paper or screen that a picture may take, and its text size. Millimeters of paper.
struct Canvas {
  double width = 180, height = 230;
  double text = 4;
};

struct Draft {
  Drawing drawing;
  Canvas canvas;
  Rounding rounding;

  /// Real millimeters of so many on paper.
  double paper(double mm) const { return mm / drawing.scale; }
  /// The size of the usual words, real millimeters.
  double text() const { return paper(canvas.text); }
  /// `41 3/8"`.
  std::string said(double mm) const { return with_unit(millimetres(mm), rounding); }
  /// `41 3/8`, where the page says once which unit holds.
  std::string bare(double mm) const { return written(millimetres(mm), rounding); }
};

/// ", in inches": of numbers without a mark.
std::string in_units(const Rounding& rounding);

/// A new draft whose scale brings `real` onto the canvas with so many paper mm left free on the
/// left and right together, and above and below together.
Draft drafted(const Canvas& canvas, const Rounding& rounding, const PageBox& real, Vec2 free);
/// The same at a scale already chosen.
Draft drafted_at(double scale, const Canvas& canvas, const Rounding& rounding);

/// As wide as the canvas, with `real` in its middle: where labels may stand.
PageBox canvas_round(const Draft& draft, const PageBox& real);

/// Sets the extent to what is drawn and a little room round it, and hands the drawing out.
Drawing finished(Draft draft);

/// A closed thin lattice over `region` at an angle, `spacing` paper mm apart: what hatching is.
void hatch(Draft& draft, const std::string& layer, const Region& region, double angle_deg,
           double spacing);

/// A box as an anticlockwise outline.
Polygon outline_of(const PageBox& box);
Region region_of(const PageBox& box);

}  // namespace nook
