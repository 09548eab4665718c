// Moves and cuts in easy numbers, with their words.
#include "adapt/candidate.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "adapt/reshape.h"

namespace nook {
namespace {

constexpr double kLargest = kMillimetresPerInch * 3;  // chosen: more is another design

std::string length(const Workbench& bench, double mm) {
  return with_unit(millimetres(mm), bench.rounding);
}

std::string exactly(const Workbench& bench, double mm) {
  return typed(mm, bench.design.units);
}

std::string place_words(const Workbench& bench, Vec3 at) {
  return fmt::format("at {}, {}, {}", exactly(bench, at.x), exactly(bench, at.y),
                     exactly(bench, at.z));
}

// How wide the piece is square to the run, from each of the run's ends to the far side.
struct Widths {
  double first = 0, last = 0;
};
Widths widths_at(const Polygon& outline, const EdgeRun& run) {
  const int n = static_cast<int>(outline.size());
  const Vec2 a = outline[run.first], b = outline[(run.last + 1) % n];
  const Vec2 inward = (1 / norm(b - a)) * left_of(b - a);
  double far = 0;
  for (const Vec2 p : outline) far = std::max(far, dot(p - a, inward));
  return {far, far - dot(b - a, inward)};
}

// Along the edge's own drawn direction; after a taper the old direction still counts.
Widths widths_after(const Polygon& before, const Polygon& after, const EdgeRun& run) {
  const int n = static_cast<int>(before.size());
  const Vec2 d = before[(run.last + 1) % n] - before[run.first];
  const Vec2 inward = (1 / norm(d)) * left_of(d);
  const auto far_from = [&](Vec2 a) {
    double far = 0;
    for (const Vec2 p : after) far = std::max(far, dot(p - a, inward));
    return far;
  };
  return {far_from(after[run.first]), far_from(after[(run.last + 1) % n])};
}

std::string width_words(const Workbench& bench, Widths w) {
  const std::string first = length(bench, w.first), last = length(bench, w.last);
  return first == last ? first + " across" : fmt::format("{} across, then {}", first, last);
}

Vec3 axis_near(Vec3 way) {
  const auto snapped = [](double x) { return std::abs(x) < 1e-6 ? 0 : x; };
  return {snapped(way.x), snapped(way.y), snapped(way.z)};
}

bool is_axis(Vec3 way) {
  return std::abs(std::abs(way.x) + std::abs(way.y) + std::abs(way.z) - 1) < 1e-6;
}

}  // namespace

std::vector<double> easy_sizes(double least_mm, double most_mm, Rounding rounding) {
  constexpr int kMost = 64;
  const double step = rounding.step.mm;
  const double first = std::max(1.0, std::ceil(least_mm / step - 1e-6));
  const double last = std::floor(std::min(most_mm, kLargest) / step + 1e-6);
  std::vector<double> sizes;
  for (double n = first; n <= last && static_cast<int>(sizes.size()) < kMost; ++n)
    sizes.push_back(n * step);
  return sizes;
}

Ladder group_moved(const Workbench& bench, const Flaw& flaw, int piece, Vec3 way,
                   const std::vector<double>& sizes) {
  const Part& part = *bench.answer.pieces[piece].drawn;
  Ladder found;
  way = axis_near(way);
  if (!is_axis(way)) return found;
  for (const double mm : sizes) {
    const Vec3 at = part.place_in_room.at;
    found.push_back(
        {{part.group, "move", fmt::format("{}: move it {}", flaw.text, length(bench, mm)),
          place_words(bench, at), place_words(bench, at + mm * way)},
         move_group(bench.design, part.group, mm * way)});
  }
  return found;
}

Ladder edge_set_out(const Workbench& bench, const Flaw& flaw, int piece, const EdgeChoice& edge,
                    const std::vector<double>& sizes) {
  const Piece& of = bench.answer.pieces[piece];
  Ladder found;
  const EdgeRun run = edges_meant(edge, of.drawn->outline);
  for (const double mm : sizes) {
    const Polygon outline = shifted(of.drawn->outline, run, mm, mm);
    const char* kind = mm < 0 ? "trim" : "lengthen";
    const char* how = mm < 0 ? "take {} off that side" : "leave {} more on that side";
    found.push_back(
        {{of.drawn->name, kind,
          flaw.text + ": " + fmt::format(fmt::runtime(how), length(bench, std::abs(mm))),
          width_words(bench, widths_at(of.drawn->outline, run)),
          width_words(bench, widths_after(of.drawn->outline, outline, run))},
         reshape(bench.design, of.part, outline)});
  }
  return found;
}

Candidate edge_tapered(const Workbench& bench, const Flaw& flaw, int piece, const EdgeRun& run,
                       Vec2 ends) {
  const Piece& of = bench.answer.pieces[piece];
  const Polygon outline = shifted(of.drawn->outline, run, ends.x, ends.y);
  const bool wood = ends.x > 0 || ends.y > 0;
  const std::string why = fmt::format("{}: taper that side by {}{}", flaw.text,
                                      length(bench, std::abs(ends.x - ends.y)),
                                      wood ? ", the blank that much wider" : "");
  return {{of.drawn->name, "taper", why, width_words(bench, widths_at(of.drawn->outline, run)),
           width_words(bench, widths_after(of.drawn->outline, outline, run))},
          reshape(bench.design, of.part, outline)};
}

std::vector<Ladder> candidates(const Workbench& bench, const Flaw& flaw) {
  switch (flaw.kind) {
    case Flaw::Kind::contact:
      return contact_candidates(bench, flaw);
    case Flaw::Kind::clash:
      return clash_candidates(bench, flaw);
    case Flaw::Kind::covered:
      return cover_candidates(bench, flaw);
    case Flaw::Kind::clearance:
      break;
  }
  return {};
}

std::vector<Ladder> cover_candidates(const Workbench& bench, const Flaw& flaw) {
  const CoveredFit& cover = bench.answer.covered[flaw.index];
  const EdgeChoice& edge = bench.design.covered[cover.covered].edge;
  if (std::holds_alternative<PieceFace>(edge)) return {};
  const double short_by = std::max(0.0, cover.needed_mm - cover.margin_mm);
  return {edge_set_out(
      bench, flaw, cover.piece, edge,
      easy_sizes(short_by, short_by + 3 * cover.sd_mm + bench.rounding.step.mm, bench.rounding))};
}

}  // namespace nook
