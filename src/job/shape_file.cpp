// Reads the outline and the cutouts of a part, and refuses what no saw can cut.
#include <fmt/format.h>

#include <algorithm>

#include "job/design_file.h"
#include "job/outline.h"

namespace nook {
namespace {

using namespace design_keys;

// Points of one outline, at most (chosen): a wave every 0.1 mm of a sheet's length.
constexpr std::size_t kMostPoints = 20000;
// Cutouts of one part, at most (chosen): a pegboard has some thousands.
constexpr std::size_t kMostCutouts = 5000;

// A ring with the place of each of its points.
struct TypedRing {
  Polygon points;
  std::vector<Place> places;
};

std::optional<Vec2> read_point(Source& source, const Node& node) {
  const auto* pair = source.list(node, "a point", {2, 2, "[u, v]"});
  if (!pair) return std::nullopt;
  const auto u = source.length((*pair)[0], "u", Range::any);
  const auto v = source.length((*pair)[1], "v", Range::any);
  return u && v ? std::optional(Vec2{u->mm, v->mm}) : std::nullopt;
}

bool same_place(Vec2 a, Vec2 b) {
  return norm(a - b) < kSamePlaceMm;
}

// Points without the first one repeated at the end; each in its own place.
std::optional<TypedRing> read_ring(Source& source, const Node& node) {
  const std::size_t before = source.troubles();
  const auto* items =
      source.list(node, "points", {3, kMostPoints, "three points or more, each [u, v]"});
  if (!items) return std::nullopt;
  TypedRing ring;
  for (const Node& item : *items) {
    const auto point = read_point(source, item);
    if (!point) continue;
    ring.points.push_back(*point);
    ring.places.push_back(item.place);
  }
  if (!source.sound_since(before)) return std::nullopt;
  if (ring.points.size() > 3 && same_place(ring.points.front(), ring.points.back()))
    ring.points.pop_back();
  for (std::size_t i = 0; i < ring.points.size(); ++i) {
    const std::size_t next = (i + 1) % ring.points.size();
    if (same_place(ring.points[i], ring.points[next]))
      source.fault(ring.places[std::max(i, next)], "the same point twice in a row", "point-twice",
                   "leave one of them out");
  }
  return source.sound_since(before) ? std::optional(ring) : std::nullopt;
}

Polygon rectangle(Vec2 at, Vec2 size) {
  return {at, {at.x + size.x, at.y}, at + size, {at.x, at.y + size.y}};
}

void check_ring(Source& source, const TypedRing& ring) {
  const auto meeting = first_meeting({ring.points});
  if (!meeting) return;
  source.fault(ring.places[meeting->edge_b],
               fmt::format("the outline crosses itself: edge {} meets edge {}", meeting->edge_a,
                           meeting->edge_b),
               "outline-crosses-itself", "edge n goes from point n to point n + 1, counted from 0");
}

// Circles

std::optional<Polygon> read_circle(const Table& table, Cutout& cutout) {
  Source& source = table.source();
  const auto centre = read_point(source, *table.find({"circle"}));
  cutout.diameter = table.length({"diameter", needed, Range::positive});
  if (!centre || !cutout.diameter) return std::nullopt;
  cutout.centre = centre;
  return circle(*centre, cutout.diameter->mm);
}

std::optional<Polygon> read_rectangle(const Table& table) {
  const auto four = table.lengths({"rect", needed, Range::any}, {4, 4, "[u, v, width, height]"});
  if (!four) return std::nullopt;
  const Vec2 size{(*four)[2].mm, (*four)[3].mm};
  if (size.x > 0 && size.y > 0) return rectangle({(*four)[0].mm, (*four)[1].mm}, size);
  table.source().fault(table.place_of("rect"), "width and height must be above 0", "not-above-zero",
                       "rect is [u, v, width, height]");
  return std::nullopt;
}

std::optional<Polygon> read_free(const Table& table) {
  Source& source = table.source();
  const std::size_t before = source.troubles();
  const auto ring = read_ring(source, *table.find({"points"}));
  if (!ring) return std::nullopt;
  check_ring(source, *ring);
  if (!source.sound_since(before)) return std::nullopt;
  Polygon points = ring->points;
  if (ring_area(points) < 0) std::reverse(points.begin() + 1, points.end());
  return points;
}

// The one key of several that is there; a fault where none or two are.
std::string_view only_one(const Table& table, std::initializer_list<std::string_view> keys) {
  std::string_view found;
  for (const std::string_view key : keys) {
    if (!table.has(key)) continue;
    if (!found.empty()) {
      table.source().fault(table.place_of(key), fmt::format("'{}' and '{}' together", found, key),
                           "two-shapes", "say one of them");
      return "";
    }
    found = key;
  }
  if (found.empty())
    table.source().fault(table.place(), "it has no shape", "missing-key",
                         fmt::format("say one of: {}", fmt::join(keys, ", ")));
  return found;
}

std::optional<Cutout> read_cutout(Source& source, const Node& node) {
  const std::size_t before = source.troubles();
  Table table(source, node, kCutout);
  Cutout cutout;
  cutout.place = node.place;
  cutout.name = table.text({"name"}).value_or("cutout");
  const std::string_view kind = only_one(table, {"circle", "rect", "points"});
  std::optional<Polygon> outline;
  if (kind == "circle") outline = read_circle(table, cutout);
  if (kind == "rect") outline = read_rectangle(table);
  if (kind == "points") outline = read_free(table);
  if (kind != "circle" && table.has("diameter") && !kind.empty())
    source.fault(table.place_of("diameter"), "a diameter without a circle", "key-without-meaning",
                 "circle = [u, v] says where its middle is");
  if (outline) cutout.outline = *outline;
  return outline && source.sound_since(before) ? std::optional(cutout) : std::nullopt;
}

struct Extent {
  Vec2 low, high;

  bool holds(Vec2 p) const { return p.x > low.x && p.x < high.x && p.y > low.y && p.y < high.y; }
};
Extent extent(const Polygon& ring) {
  Extent found{ring[0], ring[0]};
  for (const Vec2 p : ring) {
    found.low = {std::min(found.low.x, p.x), std::min(found.low.y, p.y)};
    found.high = {std::max(found.high.x, p.x), std::max(found.high.y, p.y)};
  }
  return found;
}

void check_apart(Source& source, const Shape& shape) {
  std::vector<Polygon> rings = {shape.outline};
  for (const Cutout& cutout : shape.cutouts) rings.push_back(cutout.outline);
  if (const auto meeting = first_meeting(rings); meeting && meeting->ring_a != meeting->ring_b) {
    const bool over_edge = meeting->ring_a == 0;
    source.fault(
        shape.cutouts[meeting->ring_b - 1].place,
        over_edge ? "this cutout reaches over the outline" : "this cutout meets another one",
        over_edge ? "cutout-outside" : "cutouts-overlap",
        over_edge ? "an opening at an edge is drawn into the outline's points"
                  : "draw them as one cutout with points");
    return;
  }
  std::vector<Extent> extents;
  for (const Cutout& cutout : shape.cutouts) extents.push_back(extent(cutout.outline));
  for (std::size_t i = 0; i < shape.cutouts.size(); ++i) {
    const Cutout& cutout = shape.cutouts[i];
    if (!is_inside(shape.outline, cutout.outline[0]))
      source.fault(cutout.place, "this cutout is outside the outline", "cutout-outside",
                   "u and v count from the lower left corner of the outline");
    for (std::size_t j = 0; j < shape.cutouts.size(); ++j)
      if (j != i && extents[j].holds(cutout.outline[0]) &&
          is_inside(shape.cutouts[j].outline, cutout.outline[0]))
        source.fault(cutout.place, "this cutout lies inside another one", "cutouts-overlap",
                     "leave the inner one out");
  }
}

bool exceeds(double size, Length stock) {
  return size > stock.mm + kSamePlaceMm;
}

// Whether a part can be cut from its stock in one piece.
void check_size(Source& source, Place place, const Polygon& outline, const Stock& stock) {
  const Vec2 size = extent(outline).high;
  bool too_large = false;
  if (stock.sheet[0]) {
    const Length a = *stock.sheet[0], b = *stock.sheet[1];
    too_large =
        (exceeds(size.x, a) || exceeds(size.y, b)) && (exceeds(size.x, b) || exceeds(size.y, a));
  } else if (stock.kind == StockKind::lumber) {
    const bool any = !stock.lengths.empty();
    const Length longest =
        any ? *std::max_element(stock.lengths.begin(), stock.lengths.end()) : Length{};
    too_large = (any && exceeds(size.x, longest)) || (stock.width && exceeds(size.y, *stock.width));
  }
  if (too_large)
    source.fault(place, fmt::format("larger than its stock '{}'", stock.name), "larger-than-stock",
                 "make it of two pieces, or name a larger stock");
}

bool read_length_shape(const Table& table, const Stock* stock, Shape& shape) {
  const auto length = table.length({"length", needed, Range::positive});
  if (!length || !stock) return false;
  if (stock->kind != StockKind::lumber || !stock->width) {
    table.source().fault(table.place_of("length"), "a length is the shape of lumber only",
                         "key-without-meaning", "sheets take size = [width, height], or points");
    return false;
  }
  shape.outline = rectangle({}, {length->mm, stock->width->mm});
  return shape.rectangle = true;
}

bool read_size_shape(const Table& table, const Stock* stock, Shape& shape) {
  const auto size = table.lengths({"size", needed, Range::positive}, {2, 2, "[width, height]"});
  if (!size) return false;
  if (stock && stock->kind == StockKind::lumber) {
    table.source().fault(table.place_of("size"), "lumber takes a length, not a size",
                         "key-without-meaning", "its width is the second of the stock's section");
    return false;
  }
  shape.outline = rectangle({}, {(*size)[0].mm, (*size)[1].mm});
  return shape.rectangle = true;
}

bool read_points_shape(const Table& table, Shape& shape) {
  Source& source = table.source();
  const std::size_t before = source.troubles();
  const auto ring = read_ring(source, *table.find({"points"}));
  if (!ring) return false;
  check_ring(source, *ring);
  const Vec2 low = extent(ring->points).low;
  if (std::abs(low.x) > kSamePlaceMm || std::abs(low.y) > kSamePlaceMm)
    source.fault(table.place_of("points"), "the outline does not start at its lower left corner",
                 "outline-not-at-corner", "count u and v from there: the least of each is 0");
  shape.outline = ring->points;
  shape.typed_clockwise = ring_area(shape.outline) < 0;
  if (shape.typed_clockwise) std::reverse(shape.outline.begin() + 1, shape.outline.end());
  return source.sound_since(before);
}

}  // namespace

std::optional<Shape> read_shape(Source& source, const Table& part, const Stock* stock) {
  const std::size_t before = source.troubles();
  Shape shape;
  bool drawn = false;
  if (const Node* node = part.table({"shape", needed})) {
    Table table(source, *node, kShape);
    const std::string_view kind = only_one(table, {"size", "points", "length"});
    if (kind == "size") drawn = read_size_shape(table, stock, shape);
    if (kind == "points") drawn = read_points_shape(table, shape);
    if (kind == "length") drawn = read_length_shape(table, stock, shape);
    if (drawn && stock) check_size(source, table.place_of(kind), shape.outline, *stock);
  }
  const auto cutouts = part.tables("cutouts");
  if (cutouts.size() > kMostCutouts)
    source.fault(part.place_of("cutouts"), fmt::format("over {} cutouts", kMostCutouts),
                 "wrong-count", "divide the part");
  for (const Node* entry : cutouts)
    if (auto cutout = read_cutout(source, *entry)) shape.cutouts.push_back(std::move(*cutout));
  if (drawn && source.sound_since(before)) check_apart(source, shape);
  return drawn && source.sound_since(before) ? std::optional(shape) : std::nullopt;
}

}  // namespace nook
