// Windows over a full-size drawing, one a page.
#include "sheet/full_size.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/length.h"

namespace nook {
namespace {

constexpr double kMargin = 10;      // mm no printer is asked to print on. Chosen
constexpr double kHead = 14;        // mm for the title
constexpr double kBars = 16;        // mm for the check bars
constexpr double kMark = 3;         // mm, radius of a register mark
constexpr int kCirclePoints = 256;  // a circle of 300 mm is off by 0.02 mm

// The part of a segment inside the window (Liang and Barsky 1984); false where there is none.
bool clip(Vec2& a, Vec2& b, const PageBox& window) {
  const Vec2 d = b - a;
  double from = 0, to = 1;
  const auto side = [&](double step, double room) {
    if (step == 0) return room >= 0;
    const double t = room / step;
    if (step < 0)
      from = std::max(from, t);
    else
      to = std::min(to, t);
    return from <= to;
  };
  if (!side(-d.x, a.x - window.low.x) || !side(d.x, window.high.x - a.x) ||
      !side(-d.y, a.y - window.low.y) || !side(d.y, window.high.y - a.y))
    return false;
  b = a + to * d;
  a = a + from * d;
  return true;
}

class Clipper {
 public:
  Clipper(Drawing& out, const PageBox& window) : out_(out), window_(window) {}

  void take(const std::string& layer, const DrawnShape& shape) {
    layer_ = layer;
    name_ = shape.name;
    std::visit([&](const auto& form) { put(form); }, shape.form);
  }

 private:
  void put(const Polyline& f) { line(f.points, f.closed, f.line); }
  void put(const Patch& f) {
    if (f.paint != Paint::none) fill(f);
    line(f.region.outline, true, f.line);
    for (const Polygon& hole : f.region.holes) line(hole, true, f.line);
  }
  void put(const Circle& f) {
    if (inside(box_on_page(DrawnShape{f, {}}))) {
      out_.add(layer_, f, name_);
      return;
    }
    std::vector<Vec2> points;
    for (int k = 0; k < kCirclePoints; ++k) {
      const Direction turn = direction(degrees(360.0 * k / kCirclePoints));
      points.push_back(f.centre + f.radius * Vec2{turn.cos, turn.sin});
    }
    line(points, true, f.line);
  }
  void put(const Text& f) {
    if (inside(box_on_page(f))) out_.add(layer_, f, name_);
  }
  bool inside(const PageBox& box) const {
    return box.low.x >= window_.low.x && box.high.x <= window_.high.x &&
           box.low.y >= window_.low.y && box.high.y <= window_.high.y;
  }

  void fill(const Patch& f) {
    Patch part{{cut(f.region.outline), {}}, f.paint, LineKind::none};
    for (const Polygon& hole : f.region.holes)
      if (Polygon left = cut(hole); !left.empty()) part.region.holes.push_back(std::move(left));
    if (!part.region.outline.empty()) out_.add(layer_, part, name_);
  }
  // What of a ring lies inside the window, one side after the other (Sutherland and Hodgman 1974).
  Polygon cut(Polygon ring) const {
    ring = cut(ring, {1, 0}, window_.low.x);
    ring = cut(ring, {-1, 0}, -window_.high.x);
    ring = cut(ring, {0, 1}, window_.low.y);
    return cut(ring, {0, -1}, -window_.high.y);
  }
  // The part where n . p >= least.
  static Polygon cut(const Polygon& ring, Vec2 n, double least) {
    Polygon kept;
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const Vec2 a = ring[i], b = ring[(i + 1) % ring.size()];
      const double over_a = dot(n, a) - least, over_b = dot(n, b) - least;
      if (over_a >= 0) kept.push_back(a);
      if ((over_a >= 0) != (over_b >= 0)) kept.push_back(a + over_a / (over_a - over_b) * (b - a));
    }
    return kept;
  }

  void line(std::vector<Vec2> points, bool closed, LineKind kind) {
    if (kind == LineKind::none || points.empty()) return;
    if (closed) points.push_back(points.front());
    std::vector<Vec2> run;
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
      Vec2 a = points[i], b = points[i + 1];
      if (!clip(a, b, window_)) continue;
      if (run.empty() || !(run.back() == a)) flush(run, kind);
      if (run.empty()) run.push_back(a);
      run.push_back(b);
    }
    flush(run, kind);
  }
  void flush(std::vector<Vec2>& run, LineKind kind) {
    if (run.size() > 1) out_.add(layer_, Polyline{run, false, kind}, name_);
    run.clear();
  }

  Drawing& out_;
  PageBox window_;
  std::string layer_, name_;
};

Vec2 printable(PaperSize paper) {
  return size_of(paper) - Vec2{2 * kMargin, 2 * kMargin + kHead + kBars};
}

int count(double length, double window) {
  if (length <= window) return 1;
  return static_cast<int>(std::ceil((length - kTileOverlap) / (window - kTileOverlap) - 1e-9));
}

void bar(Drawing& page, Vec2 from, double length, const std::string& words) {
  const double half = 2;
  page.add("check bars", Polyline{{from, from + Vec2{length, 0}}, false, LineKind::heavy}, words);
  for (double x : {0.0, length})
    page.add("check bars",
             Polyline{{from + Vec2{x, -half}, from + Vec2{x, half}}, false, LineKind::thin});
  page.add("check bars", Text{from + Vec2{length + 2, 0}, words, 3, Align::start, 0, false});
}

void head_and_bars(Drawing& page, const Drawing& full, const std::string& which, Vec2 paper) {
  const double top = paper.y - kMargin;
  page.add("head", Text{{kMargin, top - 3}, full.title, 4.5, Align::start, 0, true});
  page.add("head", Text{{kMargin, top - 9}, which, 3, Align::start, 0, false});
  bar(page, {kMargin, kMargin + 10}, kMillimetresPerInch * 4, "4 in: print at 100 %, then measure");
  bar(page, {kMargin, kMargin + 3}, 100, "100 mm");
}

void register_mark(Drawing& page, Vec2 at, const std::string& letter) {
  page.add("register marks", Circle{at, kMark, Paint::none, LineKind::thin}, "mark " + letter);
  for (Vec2 d : {Vec2{1.6 * kMark, 0}, Vec2{0, 1.6 * kMark}})
    page.add("register marks", Polyline{{at - d, at + d}, false, LineKind::thin});
  page.add("register marks",
           Text{at + Vec2{1.3 * kMark, 1.6 * kMark}, letter, 3.5, Align::start, 0, true});
}

// Joins are numbered through the whole template, upright ones first; each has marks a and b.
class Tiler {
 public:
  Tiler(const Drawing& full, PaperSize paper)
      : full_(full), tiling_(tiling_of(full, paper)), paper_(size_of(paper)) {}

  std::vector<Drawing> pages() const {
    std::vector<Drawing> all;
    for (int row = 0; row < tiling_.rows; ++row)
      for (int column = 0; column < tiling_.columns; ++column) all.push_back(page(row, column));
    return all;
  }

 private:
  Drawing page(int row, int column) const {
    Drawing page;
    page.name = full_.name;
    page.title = full_.title;
    page.extent = {{0, 0}, paper_};
    std::string which = "full size";
    if (tiling_.pages() > 1)
      which += fmt::format(
          ", page {} of {} (row {}, column {}): lay the marks of neighbors over each "
          "other",
          row * tiling_.columns + column + 1, tiling_.pages(), row + 1, column + 1);
    head_and_bars(page, full_, which, paper_);
    const PageBox seen = tiling_.seen(row, column);
    const Vec2 by = Vec2{kMargin, kMargin + kBars} - seen.low;
    append(page, clipped(full_, seen), by);
    if (tiling_.pages() > 1) marks(page, row, column, by);
    return page;
  }

  void marks(Drawing& page, int row, int column, Vec2 by) const {
    const PageBox w = tiling_.seen(row, column);
    const Vec2 middle = 0.5 * (w.low + w.high), half = 0.5 * kTileOverlap * Vec2{1, 1};
    const auto join = [&](Vec2 at, Vec2 along, int number) {
      const double reach = 0.3 * dot(tiling_.window, along);
      register_mark(page, at - reach * along + by, fmt::format("{}a", number));
      register_mark(page, at + reach * along + by, fmt::format("{}b", number));
    };
    const int upright = tiling_.columns - 1;
    const auto beside = [&](int c) { return row * upright + c + 1; };
    const auto below = [&](int r) {
      return tiling_.rows * upright + r * tiling_.columns + column + 1;
    };
    if (column > 0) join({w.low.x + half.x, middle.y}, {0, 1}, beside(column - 1));
    if (column < upright) join({w.high.x - half.x, middle.y}, {0, 1}, beside(column));
    if (row > 0) join({middle.x, w.high.y - half.y}, {1, 0}, below(row - 1));
    if (row + 1 < tiling_.rows) join({middle.x, w.low.y + half.y}, {1, 0}, below(row));
  }

  const Drawing& full_;
  Tiling tiling_;
  Vec2 paper_;
};

}  // namespace

Tiling tiling_of(const Drawing& full_size, PaperSize paper) {
  const PageBox& all = full_size.extent;
  Tiling tiling;
  tiling.window = printable(paper);
  tiling.columns = count(all.width(), tiling.window.x);
  tiling.rows = count(all.height(), tiling.window.y);
  const Vec2 covered{tiling.columns * (tiling.window.x - kTileOverlap) + kTileOverlap,
                     tiling.rows * (tiling.window.y - kTileOverlap) + kTileOverlap};
  tiling.corner = {all.low.x - (covered.x - all.width()) / 2,
                   all.high.y + (covered.y - all.height()) / 2};
  return tiling;
}

PageBox Tiling::seen(int row, int column) const {
  const Vec2 step = window - Vec2{kTileOverlap, kTileOverlap};
  const Vec2 low{corner.x + column * step.x, corner.y - row * step.y - window.y};
  return {low, low + window};
}

std::vector<Drawing> template_pages(const Drawing& full_size, PaperSize paper) {
  return Tiler(full_size, paper).pages();
}

Drawing clipped(const Drawing& drawing, const PageBox& window) {
  Drawing out;
  out.name = drawing.name;
  out.title = drawing.title;
  out.scale = drawing.scale;
  out.extent = window;
  Clipper clipper(out, window);
  for (const Layer& layer : drawing.layers)
    for (const DrawnShape& shape : layer.shapes) clipper.take(layer.name, shape);
  return out;
}

}  // namespace nook
