// What a picture is made of: plain shapes in real millimeters, in layers; writers only print them.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "base/vector.h"

// Frame: x to the right, y up, millimeters of the real thing. `scale` says how many millimeters of
// paper one of them takes; text sizes are real millimeters too, so that one factor prints all.

namespace nook {

/// Kinds of line. They differ by width and dash, so that gray print keeps them apart.
enum class LineKind { none, thin, normal, heavy, dashed, dash_dot, dotted };
/// Kinds of ground. Each also differs by outline, hatch or label: none speaks by its tint alone.
enum class Paint { none, paper, wood, wall, shade, ink };
enum class Align { start, middle, end };

struct Polyline {
  std::vector<Vec2> points;
  bool closed = false;
  LineKind line = LineKind::normal;
};
/// A filled outline with holes.
struct Patch {
  Region region;
  Paint paint = Paint::paper;
  LineKind line = LineKind::normal;
};
struct Circle {
  Vec2 centre;
  double radius = 0;
  Paint paint = Paint::none;
  LineKind line = LineKind::normal;
};
/// One line of words. `at` lies halfway up its capitals, at the end that `align` names.
struct Text {
  Vec2 at;
  std::string words;
  double size = 0;  // of the font's em
  Align align = Align::start;
  double turn_deg = 0;  // anticlockwise about `at`
  bool bold = false;
  bool rim = true;  // of paper round it, so that a line behind does not strike it out
};

/// One shape, and what it shows ("stud 2", "hole 7"); empty where nobody asks.
struct DrawnShape {
  std::variant<Polyline, Patch, Circle, Text> form;
  std::string name;
};
struct Layer {
  std::string name;
  std::vector<DrawnShape> shapes;
};

/// An axis-parallel box on the page; empty until a point is in it.
struct PageBox {
  Vec2 low{1e300, 1e300}, high{-1e300, -1e300};

  bool empty() const { return low.x > high.x || low.y > high.y; }
  double width() const { return high.x - low.x; }
  double height() const { return high.y - low.y; }
  void take_in(Vec2 p);
  void take_in(const PageBox& other);
  PageBox grown(double by) const;
};
/// The box round some points.
PageBox box_round(const std::vector<Vec2>& points);
/// Whether two boxes share more than a touch.
bool overlap(const PageBox& a, const PageBox& b);

/// A picture. Layers are painted in their order.
struct Drawing {
  std::string name;         // of its file: "wall-left"
  std::string title;        // what it is, a few words
  std::string description;  // what it shows, for those who cannot see it
  double scale = 1;         // paper mm per real mm
  PageBox extent;           // what the page shows
  std::vector<Layer> layers;

  /// The layer of that name, made at the end where there is none.
  Layer& layer(const std::string& wanted);
  void add(const std::string& to_layer, std::variant<Polyline, Patch, Circle, Text> form,
           std::string shape_name = {});
};

/// Upper bound of what a text covers, turned with it.
PageBox box_on_page(const Text& text);
/// What a shape covers, without the width of its lines.
PageBox box_on_page(const DrawnShape& shape);
/// What all shapes cover.
PageBox box_on_page(const Drawing& drawing);
/// All texts of a drawing, in painting order.
std::vector<Text> texts_of(const Drawing& drawing);

/// Everything of `other` moved and scaled, painted over what is there: its point p comes to
/// `by + factor p`. Its layers stay layers of their own.
void append(Drawing& onto, const Drawing& other, Vec2 by, double factor = 1);

}  // namespace nook
