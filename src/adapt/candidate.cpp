// Moves and cuts in easy numbers, with their words.
#include "adapt/candidate.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "adapt/reshape.h"
#include "adapt/rungs.h"
#include "base/measured.h"
#include "design/side.h"
#include "fit/joint.h"

namespace nook {
namespace {

bool is_end(const EdgeChoice& edge, const Piece& piece) {
  const EdgeSide* side = std::get_if<EdgeSide>(&edge);
  return side && piece.stick && upright(*side);
}

// "its left side", "its left end".
std::string edge_words(const EdgeChoice& edge, bool end) {
  const EdgeSide* side = std::get_if<EdgeSide>(&edge);
  return side ? fmt::format("its {} {}", name_of(*side), end ? "end" : "side") : "that edge";
}

Vec3 axis_near(Vec3 way) {
  const auto snapped = [](double x) { return std::abs(x) < 1e-6 ? 0 : x; };
  return {snapped(way.x), snapped(way.y), snapped(way.z)};
}

bool is_axis(Vec3 way) {
  return std::abs(std::abs(way.x) + std::abs(way.y) + std::abs(way.z) - 1) < 1e-6;
}

bool is_tight_to(const Design& design, const std::string& group, const std::string& what) {
  return std::any_of(design.groups.begin(), design.groups.end(), [&](const Group& g) {
    return g.name == group &&
           std::find(g.tight_to.begin(), g.tight_to.end(), what) != g.tight_to.end();
  });
}

// Whether a fit sets the group home along a level way by itself: where it is drawn along it does
// not matter then.
bool pushed_home(const Workbench& bench, const std::string& group, Vec3 way) {
  constexpr double kAlong = 0.9;  // cosine; chosen
  if (std::abs(way.z) > kAlong) return false;
  return std::any_of(
      bench.answer.contacts.begin(), bench.answer.contacts.end(), [&](const ContactFit& c) {
        const Piece& piece = bench.answer.pieces[c.piece];
        const bool pulls = c.how->by != Fitting::clear || is_tight_to(bench.design, group, c.meets);
        return piece.drawn->group == group && pulls &&
               std::abs(dot(way_out_of(piece, c.how->edge), way)) > kAlong;
      });
}

}  // namespace

std::vector<double> easy_sizes(double least_mm, double most_mm, Rounding rounding) {
  constexpr int kMost = 64;
  const double step = rounding.step.mm;
  const double first = std::max(1.0, std::ceil(least_mm / step - 1e-6));
  const double last = std::floor(std::min(most_mm, kLargestChange) / step + 1e-6);
  std::vector<double> sizes;
  for (double n = first; n <= last && static_cast<int>(sizes.size()) < kMost; ++n)
    sizes.push_back(n * step);
  return sizes;
}

Sizes sizes_for(double over_mm, double sd_mm, Rounding rounding) {
  const double over = std::max(0.0, over_mm), likely = over + kOneSided95 * sd_mm;
  Sizes sizes{easy_sizes(over, 2 * over + 4 * sd_mm + 2 * rounding.step.mm, rounding), 0};
  while (sizes.likely + 1 < static_cast<int>(sizes.mm.size()) && sizes.mm[sizes.likely] < likely)
    ++sizes.likely;
  return sizes;
}

Sizes inward(Sizes sizes) {
  for (double& size : sizes.mm) size = -size;
  return sizes;
}

Vec3 way_out_of(const Piece& piece, const EdgeChoice& edge) {
  const Frame& frame = piece.frame;
  if (const PieceFace* face = std::get_if<PieceFace>(&edge))
    return *face == PieceFace::front ? frame.w : -frame.w;
  const Polygon& outline = piece.drawn->outline;
  const EdgeRun run = run_of(edge, outline);
  const Vec2 d = outline[(run.last + 1) % outline.size()] - outline[run.first];
  const Vec2 out = (-1 / norm(d)) * left_of(d);
  return out.x * frame.u + out.y * frame.v;
}

Ladder group_moved(const Workbench& bench, const Flaw& flaw, int piece, Vec3 way,
                   const Sizes& sizes) {
  const std::string& group = bench.answer.pieces[piece].drawn->group;
  Ladder found{Work::move, {}, sizes.likely};
  way = axis_near(way);
  if (!is_axis(way) || pushed_home(bench, group, way)) return found;
  for (const double mm : sizes.mm)
    found.steps.push_back({group, "move", flaw.text, "", {GroupMoved{group, way, mm}}});
  return found;
}

Candidate run_set_out(const Workbench& bench, const Flaw& flaw, int piece, const EdgeChoice& edge,
                      Vec2 ends) {
  const Piece& of = bench.answer.pieces[piece];
  const EdgeRun run = run_of(edge, of.drawn->outline);
  const char* kind = ends.x != ends.y ? "taper" : ends.x < 0 ? "trim" : "lengthen";
  const bool end = is_end(edge, of);
  return {of.drawn->name,
          kind,
          flaw.text,
          "",
          {RunSetOut{of.part, run, ends, edge_words(edge, end), end}}};
}

Ladder edge_set_out(const Workbench& bench, const Flaw& flaw, int piece, const EdgeChoice& edge,
                    const Sizes& sizes) {
  Ladder found{Work::trim, {}, sizes.likely};
  for (const double mm : sizes.mm)
    found.steps.push_back(run_set_out(bench, flaw, piece, edge, {mm, mm}));
  return found;
}

namespace {

std::vector<Ladder> usual_candidates(const Workbench& bench, const Flaw& flaw) {
  switch (flaw.kind) {
    case Flaw::Kind::contact:
      return contact_candidates(bench, flaw);
    case Flaw::Kind::clash:
      return clash_candidates(bench, flaw);
    case Flaw::Kind::covered:
      return cover_candidates(bench, flaw);
    case Flaw::Kind::clearance:
      return clearance_candidates(bench, flaw);
    case Flaw::Kind::rest:
      return {};
    case Flaw::Kind::rungs:
      return rung_candidates(bench, flaw);
  }
  return {};
}

// The pieces that a finding names: its own, and what is not the room.
std::vector<int> pieces_of(const Workbench& bench, const Flaw& flaw) {
  const FitAnswer& a = bench.answer;
  int piece = 0;
  std::string other;
  switch (flaw.kind) {
    case Flaw::Kind::contact:
      piece = a.contacts[flaw.index].piece, other = a.contacts[flaw.index].meets;
      break;
    case Flaw::Kind::clash:
      piece = a.clashes[flaw.index].piece, other = a.clashes[flaw.index].with;
      break;
    case Flaw::Kind::covered:
      piece = a.covered[flaw.index].piece, other = a.covered[flaw.index].behind;
      break;
    case Flaw::Kind::clearance:
      piece = a.clearances[flaw.index].piece, other = a.clearances[flaw.index].from;
      break;
    case Flaw::Kind::rest:
    case Flaw::Kind::rungs:
      return {};
  }
  std::vector<int> pieces{piece};
  for (int p = 0; p < static_cast<int>(a.pieces.size()); ++p)
    if (p != piece && is_named(a.pieces[p], other)) {
      pieces.push_back(p);
      break;
    }
  return pieces;
}

// Whether a part, or one of a group, is up already (`[[installed]]`): it stays as it is.
bool is_up(const Workbench& bench, const std::string& name) {
  for (const Installed& installed : bench.survey.installed)
    for (const std::string& up : installed.parts)
      for (const Piece& piece : bench.answer.pieces)
        if (is_named(piece, up) && (piece.drawn->name == name || piece.drawn->group == name))
          return true;
  return false;
}

}  // namespace

std::vector<Ladder> candidates(const Workbench& bench, const Flaw& flaw, Work work) {
  std::vector<Ladder> found = work == Work::any
                                  ? all_candidates(bench, flaw, pieces_of(bench, flaw))
                                  : usual_candidates(bench, flaw);
  const bool cuts = work != Work::cover && work != Work::filler;
  std::erase_if(found, [&](const Ladder& ladder) {
    return ladder.work != work || ladder.steps.empty() ||
           (cuts && is_up(bench, ladder.steps.front().part));
  });
  return found;
}

// The contacts that ask for the clearance give the ways to it.
std::vector<Ladder> clearance_candidates(const Workbench& bench, const Flaw& flaw) {
  const ClearanceFit& clear = bench.answer.clearances[flaw.index];
  const Sizes sizes = sizes_for(flaw.over_mm, clear.sd_mm, bench.rounding);
  std::vector<Ladder> found;
  for (const ContactFit& contact : bench.answer.contacts) {
    const Contact& how = *contact.how;
    if (how.by != Fitting::clear || contact.piece != clear.piece || how.meets != clear.from)
      continue;
    const Vec3 out = way_out_of(bench.answer.pieces[clear.piece], how.edge);
    found.push_back(group_moved(bench, flaw, clear.piece, -out, sizes));
    if (!std::holds_alternative<PieceFace>(how.edge))
      found.push_back(edge_set_out(bench, flaw, clear.piece, how.edge, inward(sizes)));
  }
  return found;
}

std::vector<Ladder> cover_candidates(const Workbench& bench, const Flaw& flaw) {
  const CoveredFit& cover = bench.answer.covered[flaw.index];
  const EdgeChoice& edge = bench.design.covered[cover.covered].edge;
  if (std::holds_alternative<PieceFace>(edge)) return {};
  return {edge_set_out(bench, flaw, cover.piece, edge,
                       sizes_for(flaw.over_mm, cover.sd_mm, bench.rounding))};
}

}  // namespace nook
