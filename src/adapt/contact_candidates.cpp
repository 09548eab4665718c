// What closes a gap that is too wide, or opens one that is too narrow.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "adapt/candidate.h"
#include "adapt/reshape.h"
#include "fit/straight_cut.h"

namespace nook {
namespace {

constexpr double kTouching = 0.1;                            // mm; the rule of clashes
constexpr double kEasyScribe = kMillimetresPerInch * 3 / 8;  // common practice, no source

struct Asked {
  const Workbench& bench;
  const Flaw& flaw;
  const ContactFit& contact;

  const Contact& how() const { return *contact.how; }
  const Piece& piece() const { return bench.answer.pieces[contact.piece]; }
  double step() const { return bench.rounding.step.mm; }
  bool is_face() const { return std::holds_alternative<PieceFace>(how().edge); }
  double short_by() const {  // how much air is missing
    return how().by == Fitting::clear ? contact.allow - contact.gap.least : -contact.gap.least;
  }
  bool too_wide() const {
    return how().by != Fitting::clear && contact.gap.most + contact.gap_sd > contact.allow;
  }
  bool too_near() const { return short_by() + contact.gap_sd > kTouching; }
};

// From the piece towards what it meets, nominal room frame.
Vec3 way_out(const Asked& asked) {
  const Frame frame = asked.piece().frame;
  if (const PieceFace* face = std::get_if<PieceFace>(&asked.how().edge))
    return *face == PieceFace::front ? frame.w : -frame.w;
  const Polygon& outline = asked.piece().drawn->outline;
  const EdgeRun run = edges_meant(asked.how().edge, outline);
  const int n = static_cast<int>(outline.size());
  const Vec2 d = outline[(run.last + 1) % n] - outline[run.first];
  const Vec2 out = (-1 / norm(d)) * left_of(d);
  return out.x * frame.u + out.y * frame.v;
}

std::vector<double> closing_sizes(const Asked& asked) {
  const ContactFit& c = asked.contact;
  return easy_sizes(c.gap.most - c.allow, c.gap.least, asked.bench.rounding);
}

std::vector<double> opening_sizes(const Asked& asked) {
  const double least = std::max(0.0, asked.short_by());
  const double most = least + 2.5 * asked.contact.gap_sd + asked.step();
  return easy_sizes(least, most, asked.bench.rounding);
}

std::vector<double> inward(std::vector<double> sizes) {
  for (double& size : sizes) size = -size;
  return sizes;
}

using List = std::vector<Ladder>;

void add_moves(const Asked& asked, List& list) {
  const Vec3 out = way_out(asked);
  const int piece = asked.contact.piece;
  if (asked.too_wide())
    list.push_back(group_moved(asked.bench, asked.flaw, piece, out, closing_sizes(asked)));
  if (asked.too_near())
    list.push_back(group_moved(asked.bench, asked.flaw, piece, -out, opening_sizes(asked)));
}

void add_trims(const Asked& asked, List& list) {
  if (asked.is_face()) return;
  const auto& [bench, flaw, contact] = asked;
  if (asked.too_near())
    list.push_back(
        edge_set_out(bench, flaw, contact.piece, asked.how().edge, inward(opening_sizes(asked))));
  if (asked.too_wide())
    list.push_back(
        edge_set_out(bench, flaw, contact.piece, asked.how().edge, closing_sizes(asked)));
}

Candidate refitted(const Asked& asked, Fitting by, bool notch, const std::string& work) {
  const Contact& how = asked.how();
  return {{asked.contact.part, fitting_words(by, notch), asked.flaw.text + ": " + work,
           fitting_words(how.by, how.notch), fitting_words(by, notch)},
          refit(asked.bench.design, asked.contact.contact, by, notch)};
}

// The gap along the run at its first and last point, as a straight line under all of it.
Vec2 gap_at_ends(const Asked& asked) {
  std::vector<Vec2> line;
  for (const GapPoint& p : asked.contact.line) line.push_back({p.at, p.gap});
  const StraightCut cut = straight_cut(line);
  const Polygon& outline = asked.piece().drawn->outline;
  const EdgeRun run = edges_meant(asked.how().edge, outline);
  const int n = static_cast<int>(outline.size());
  const Vec2 a = outline[run.first], b = outline[(run.last + 1) % n];
  const EdgeSide* side = std::get_if<EdgeSide>(&asked.how().edge);
  if (!side) {
    double length = 0;
    for (int k = 0; k <= (run.last - run.first + n) % n; ++k)
      length += norm(outline[(run.first + k + 1) % n] - outline[(run.first + k) % n]);
    return {cut.at, cut.at + cut.slope * length};
  }
  const bool upright = *side == EdgeSide::left || *side == EdgeSide::right;
  const double from = upright ? a.y : a.x, to = upright ? b.y : b.x;
  return {cut.at + cut.slope * from, cut.at + cut.slope * to};
}

void add_tapers(const Asked& asked, List& list) {
  if (asked.is_face() || asked.contact.line.size() < 2) return;
  const Vec2 gap = gap_at_ends(asked);
  const auto& outline = asked.piece().drawn->outline;
  const EdgeRun run = edges_meant(asked.how().edge, outline);
  const double step = asked.step();
  const double keep = asked.how().by == Fitting::clear ? asked.contact.allow : 0;
  for (const double play :
       {0.0, 1.0, 2.0}) {  // marks that stay open beside it; the first fits best
    const auto eased = [&](double g) { return std::floor((g - keep) / step + 0.25 - play) * step; };
    const Vec2 ends{eased(gap.x), eased(gap.y)};
    if (norm(ends) > 0 && std::abs(ends.x - ends.y) > step / 2 &&
        norm(ends) < 3 * kMillimetresPerInch)
      list.push_back({edge_tapered(asked.bench, asked.flaw, asked.contact.piece, run, ends)});
  }
}

bool may_add(const Asked& asked) {
  return !asked.how().keep && asked.how().by != Fitting::clear;
}

// Covers of a gap: nothing is cut.
void add_fillings(const Asked& asked, List& list) {
  const Contact& how = asked.how();
  const bool wall = !wall_named(how.meets).empty();
  if (asked.too_near() && asked.contact.gap.least < -kTouching) return;
  if (how.by == Fitting::butt && !asked.is_face() && how.meets != "floor")
    list.push_back({refitted(asked, Fitting::caulk, how.notch, "caulk it")});
  if (how.by == Fitting::butt && (asked.is_face() || how.meets == "floor"))
    list.push_back({refitted(asked, Fitting::shim, how.notch, "shim it")});
  if (wall && !asked.is_face() && (how.by == Fitting::butt || how.by == Fitting::caulk))
    list.push_back({refitted(asked, Fitting::trim, how.notch, "cover it with trim")});
}

bool uncut(Fitting by) {
  return by != Fitting::taper && by != Fitting::scribe && by != Fitting::filler;
}

// A scribe that comes closer than its far end allows is left that much wild.
void add_wild_scribe(const Asked& asked, List& list) {
  const double wild = std::max(0.0, asked.contact.gap.most) + 2.5 * asked.contact.gap_sd;
  for (Candidate next : edge_set_out(asked.bench, asked.flaw, asked.contact.piece, asked.how().edge,
                                     easy_sizes(wild, wild + asked.step(), asked.bench.rounding))) {
    next.change.kind = "scribe";
    next.change.why += ", to be scribed";
    if (asked.how().by != Fitting::scribe) {
      const auto edits =
          refit(asked.bench.design, asked.contact.contact, Fitting::scribe, asked.how().notch);
      next.edits.insert(next.edits.end(), edits.begin(), edits.end());
    }
    list.push_back({std::move(next)});
    return;
  }
}

// Whether there is anything on the wall that a notch goes around.
bool has_obstacles(const Asked& asked) {
  for (const Wall& wall : asked.bench.survey.walls)
    if (wall.name == wall_named(asked.how().meets))
      return wall.baseboard.has_value() || !wall.obstacles.empty();
  return false;
}

void add_notches(const Asked& asked, List& list) {
  const Contact& how = asked.how();
  if (how.notch || !has_obstacles(asked)) return;
  list.push_back({refitted(asked, how.by, true, "notch it")});
  if (uncut(how.by))
    list.push_back({refitted(asked, Fitting::scribe, true, "notch it, then scribe it")});
}

void add_cuts(const Asked& asked, List& list) {
  const Contact& how = asked.how();
  const ContactFit& contact = asked.contact;
  if (uncut(how.by) && contact.gap.most - contact.gap.least > asked.step())
    list.push_back({refitted(asked, Fitting::taper, how.notch, "cut that side to a taper")});
  add_notches(asked, list);
  if (uncut(how.by))
    list.push_back({refitted(asked, Fitting::scribe, how.notch, "scribe that side")});
  if (contact.gap.most <= kEasyScribe) add_wild_scribe(asked, list);
  if (how.by != Fitting::filler && contact.gap.least > -kTouching &&
      contact.gap.most > asked.step())
    list.push_back({refitted(asked, Fitting::filler, how.notch, "close it with a filler strip")});
}

}  // namespace

std::vector<Ladder> contact_candidates(const Workbench& bench, const Flaw& flaw) {
  const Asked asked{bench, flaw, bench.answer.contacts[flaw.index]};
  List list;
  if (!asked.contact.meets_anything) return list;
  add_moves(asked, list);
  add_trims(asked, list);
  if (may_add(asked)) add_fillings(asked, list);
  add_tapers(asked, list);
  if (may_add(asked) && !asked.is_face()) add_cuts(asked, list);
  return list;
}

}  // namespace nook
