// Boxes of shapes, and pictures put into pictures.
#include "sheet/drawing.h"

#include <algorithm>
#include <cmath>

#include "base/length.h"
#include "sheet/text_width.h"

namespace nook {
namespace {

PageBox box_on_page(const Polyline& form) {
  return box_round(form.points);
}
PageBox box_on_page(const Patch& form) {
  return box_round(form.region.outline);
}
PageBox box_on_page(const Circle& form) {
  const Vec2 r{form.radius, form.radius};
  return {form.centre - r, form.centre + r};
}

struct Moved {
  Vec2 by;
  double factor;

  Vec2 operator()(Vec2 p) const { return by + factor * p; }
  void points(std::vector<Vec2>& all) const {
    for (Vec2& p : all) p = (*this)(p);
  }
  void form(Polyline& f) const { points(f.points); }
  void form(Patch& f) const {
    points(f.region.outline);
    for (Polygon& hole : f.region.holes) points(hole);
  }
  void form(Circle& f) const {
    f.centre = (*this)(f.centre);
    f.radius *= factor;
  }
  void form(Text& f) const {
    f.at = (*this)(f.at);
    f.size *= factor;
  }
};

}  // namespace

void PageBox::take_in(Vec2 p) {
  low = {std::min(low.x, p.x), std::min(low.y, p.y)};
  high = {std::max(high.x, p.x), std::max(high.y, p.y)};
}

void PageBox::take_in(const PageBox& other) {
  if (other.empty()) return;
  take_in(other.low);
  take_in(other.high);
}

PageBox PageBox::grown(double by) const {
  return {low - Vec2{by, by}, high + Vec2{by, by}};
}

PageBox box_round(const std::vector<Vec2>& points) {
  PageBox box;
  for (Vec2 p : points) box.take_in(p);
  return box;
}

bool overlap(const PageBox& a, const PageBox& b) {
  return a.low.x < b.high.x && b.low.x < a.high.x && a.low.y < b.high.y && b.low.y < a.high.y;
}

Layer& Drawing::layer(const std::string& wanted) {
  for (Layer& l : layers)
    if (l.name == wanted) return l;
  return layers.emplace_back(Layer{wanted, {}});
}

void Drawing::add(const std::string& to_layer, std::variant<Polyline, Patch, Circle, Text> form,
                  std::string shape_name) {
  layer(to_layer).shapes.push_back({std::move(form), std::move(shape_name)});
}

PageBox box_on_page(const Text& text) {
  const double width = width_of(text.words, text.size, text.bold);
  const double from = text.align == Align::start ? 0
                      : text.align == Align::end ? -width
                                                 : -width / 2;
  const Direction turn = direction(degrees(text.turn_deg));
  PageBox box;
  for (double x : {from, from + width})
    for (double y : {-kTextBelow * text.size, kTextAbove * text.size})
      box.take_in(text.at + x * Vec2{turn.cos, turn.sin} + y * Vec2{-turn.sin, turn.cos});
  return box;
}

PageBox box_on_page(const DrawnShape& shape) {
  return std::visit([](const auto& form) { return box_on_page(form); }, shape.form);
}

PageBox box_on_page(const Drawing& drawing) {
  PageBox box;
  for (const Layer& layer : drawing.layers)
    for (const DrawnShape& shape : layer.shapes) box.take_in(box_on_page(shape));
  return box;
}

std::vector<Text> texts_of(const Drawing& drawing) {
  std::vector<Text> texts;
  for (const Layer& layer : drawing.layers)
    for (const DrawnShape& shape : layer.shapes)
      if (const Text* text = std::get_if<Text>(&shape.form)) texts.push_back(*text);
  return texts;
}

void append(Drawing& onto, const Drawing& other, Vec2 by, double factor) {
  const Moved moved{by, factor};
  for (Layer layer : other.layers) {
    for (DrawnShape& shape : layer.shapes)
      std::visit([&](auto& form) { moved.form(form); }, shape.form);
    onto.layers.push_back(std::move(layer));
  }
}

}  // namespace nook
