// Spots tried on rings round the point, cheapest first.
#include "sheet/label.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "base/length.h"
#include "sheet/text_width.h"

namespace nook {
namespace {

constexpr int kRings = 60;           // chosen: 60 rings reach 200 mm of paper
constexpr int kDirections = 16;      // chosen
constexpr double kLeaderFrom = 1.1;  // text sizes off its point from which a label has a leader

// Of the em, free round a label: screens round each letter's width to whole pixels. Chosen.
constexpr double kApart = 0.15;

struct Segment {
  Vec2 a, b;
  double weight = 1;  // what words across it cost, in text sizes
};

// Words may rather stand across a faint line than across a strong one. Chosen.
double weight_of(LineKind line) {
  return line == LineKind::heavy    ? 2.5
         : line == LineKind::normal ? 1.5
         : line == LineKind::none   ? 0
                                    : 0.6;
}

// Whether the segment passes through the box (Liang and Barsky 1984).
bool passes(const Segment& s, const PageBox& box) {
  const Vec2 d = s.b - s.a;
  double from = 0, to = 1;
  const auto clip = [&](double step, double room) {
    if (step == 0) return room > 0;
    const double t = room / step;
    if (step < 0)
      from = std::max(from, t);
    else
      to = std::min(to, t);
    return from < to;
  };
  return clip(-d.x, s.a.x - box.low.x) && clip(d.x, box.high.x - s.a.x) &&
         clip(-d.y, s.a.y - box.low.y) && clip(d.y, box.high.y - s.a.y);
}

void take_outline(std::vector<Vec2> points, bool closed, LineKind line,
                  std::vector<Segment>& lines) {
  if (closed && !points.empty()) points.push_back(points.front());
  for (std::size_t i = 0; i + 1 < points.size(); ++i)
    lines.push_back({points[i], points[i + 1], weight_of(line)});
}

std::vector<Polygon> rings_of(const Region& region) {
  std::vector<Polygon> rings = region.holes;
  rings.push_back(region.outline);
  return rings;
}

std::vector<Segment> lines_of(const Drawing& drawing) {
  std::vector<Segment> lines;
  for (const Layer& layer : drawing.layers)
    for (const DrawnShape& shape : layer.shapes) {
      if (const auto* p = std::get_if<Polyline>(&shape.form))
        take_outline(p->points, p->closed, p->line, lines);
      if (const auto* p = std::get_if<Patch>(&shape.form))
        for (const Polygon& ring : rings_of(p->region)) take_outline(ring, true, p->line, lines);
    }
  return lines;
}

// What is on the page while labels are being placed.
struct Page {
  std::vector<Segment> lines;
  std::vector<PageBox> taken;  // texts and marks: never covered
  PageBox across;

  bool free(const PageBox& box) const {
    return std::none_of(taken.begin(), taken.end(),
                        [&](const PageBox& t) { return overlap(t, box); });
  }
  double crossed(const PageBox& box) const {
    double total = 0;
    for (const Segment& s : lines)
      if (passes(s, box)) total += s.weight;
    return total;
  }
  int covered(const Segment& leader) const {
    return static_cast<int>(std::count_if(taken.begin(), taken.end(),
                                          [&](const PageBox& t) { return passes(leader, t); }));
  }
};

struct Spot {
  Text text;
  PageBox box;
  Segment leader;
  bool led = false;
  double cost = 0;
};

Vec2 nearest_in(const PageBox& box, Vec2 p) {
  return {std::clamp(p.x, box.low.x, box.high.x), std::clamp(p.y, box.low.y, box.high.y)};
}

// The label's text with the middle of its box pushed `off` from the point in direction d.
Spot spot_at(const Label& label, double size, double off, Vec2 d) {
  const double half = width_of(label.words, size, label.bold) / 2;
  // The box leans on the ring: its half extents are added in each direction.
  const Vec2 middle = label.about + off * d + Vec2{half * d.x, size / 2 * d.y};
  Spot spot;
  spot.text = {middle, label.words, size, Align::middle, 0, label.bold};
  spot.box = box_on_page(spot.text);
  const Vec2 end = nearest_in(spot.box, label.about);
  spot.leader = {label.about, end};
  spot.led = norm(end - label.about) > kLeaderFrom * size;
  return spot;
}

std::optional<double> cost_of(const Spot& spot, const Page& page, double size) {
  if (!page.free(spot.box.grown(kApart * size))) return std::nullopt;
  double cost = norm(spot.leader.b - spot.leader.a) / size + page.crossed(spot.box);
  if (spot.led)
    cost +=
        4 * page.covered({spot.leader.a + 0.02 * (spot.leader.b - spot.leader.a), spot.leader.b});
  if (spot.box.low.x < page.across.low.x || spot.box.high.x > page.across.high.x) cost += 1000;
  return cost;
}

std::optional<Spot> best_spot(const Label& label, const Page& page, double size, double clear) {
  std::optional<Spot> best;
  const auto look = [&](Spot spot) {
    const std::optional<double> cost = cost_of(spot, page, size);
    if (!cost || (best && best->cost <= *cost)) return;
    spot.cost = *cost;
    best = std::move(spot);
  };
  if (clear == 0) look(spot_at(label, size, 0, {}));  // right on what it names
  for (int ring = 0; ring < kRings; ++ring) {
    const double off = clear + size * (0.35 + 0.8 * ring);
    if (best && best->cost < off / size - 1) break;
    for (int k = 0; k < kDirections; ++k) {
      const Direction turn = direction(degrees(360.0 * k / kDirections));
      look(spot_at(label, size, off, {turn.cos, turn.sin}));
    }
  }
  return best;
}

// Below everything else there is always room.
Spot last_resort(const Label& label, const Page& page, double size) {
  double low = label.about.y;
  for (const PageBox& box : page.taken) low = std::min(low, box.low.y);
  return spot_at(label, size, label.about.y - low + size, {0, -1});
}

void draw(Draft& draft, const Spot& spot, const Label& label, double clear, Page& page) {
  if (spot.led) {
    const Vec2 d = spot.leader.b - spot.leader.a;
    const Vec2 from = spot.leader.a + (clear / norm(d)) * d;
    draft.drawing.add("leaders", Polyline{{from, spot.leader.b}, false, LineKind::thin});
    page.lines.push_back({from, spot.leader.b});
  }
  draft.drawing.add("labels", spot.text, label.name);
  page.taken.push_back(spot.box);
}

// Merges neighbors that stand too close into blocks with one mean (pool adjacent violators).
struct Block {
  double sum = 0;
  int count = 0;
  double mean() const { return sum / count; }
};

}  // namespace

void place_labels(Draft& draft, const std::vector<Label>& labels, std::vector<PageBox> taken,
                  const PageBox& across) {
  Page page{lines_of(draft.drawing), std::move(taken), across};
  for (const Text& text : texts_of(draft.drawing)) page.taken.push_back(box_on_page(text));
  for (const Label& label : labels) {
    const double size = label.size > 0 ? draft.paper(label.size) : draft.text();
    const double clear = draft.paper(label.clear);
    const std::optional<Spot> spot = best_spot(label, page, size, clear);
    draw(draft, spot ? *spot : last_resort(label, page, size), label, clear, page);
  }
}

std::vector<double> spread(const std::vector<double>& wanted, double apart, double low,
                           double high) {
  // With r_i = q_i - i apart the wish q_{i+1} >= q_i + apart is r_{i+1} >= r_i: isotonic regression
  // (Barlow et al. 1972), whose answer may then be clamped.
  std::vector<Block> blocks;
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    blocks.push_back({wanted[i] - i * apart, 1});
    while (blocks.size() > 1 && blocks[blocks.size() - 2].mean() > blocks.back().mean()) {
      const Block last = blocks.back();
      blocks.pop_back();
      blocks.back().sum += last.sum;
      blocks.back().count += last.count;
    }
  }
  std::vector<double> placed;
  const double top = std::max(low, high - (static_cast<double>(wanted.size()) - 1) * apart);
  for (const Block& block : blocks)
    for (int k = 0; k < block.count; ++k)
      placed.push_back(std::clamp(block.mean(), low, top) + placed.size() * apart);
  return placed;
}

}  // namespace nook
