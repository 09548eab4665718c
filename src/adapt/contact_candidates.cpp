// What closes a gap that is too wide, or opens one that is too narrow.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "adapt/candidate.h"
#include "adapt/obstacles.h"
#include "adapt/reshape.h"
#include "base/measured.h"
#include "design/fitting.h"
#include "design/side.h"
#include "fit/joint.h"
#include "fit/joint_gaps.h"
#include "fit/straight_cut.h"
#include "fit/touching.h"

namespace nook {
namespace {

constexpr double kEasyScribe = kMillimetresPerInch * 3 / 8;  // common practice, no source
constexpr double kBevel = kMillimetresPerInch / 32;          // less is not seen; chosen

struct Asked {
  const Workbench& bench;
  const Flaw& flaw;
  const ContactFit& contact;

  const Contact& how() const { return *contact.how; }
  const Piece& piece() const { return bench.answer.pieces[contact.piece]; }
  double step() const { return bench.rounding.step.mm; }
  bool is_face() const { return std::holds_alternative<PieceFace>(how().edge); }
  bool clear() const { return how().by == Fitting::clear; }
  double short_by() const { return (clear() ? contact.allow : 0) - contact.gap.least; }
  bool overlaps() const { return short_by() > kTouching; }
  // The gap itself may be wider than what is accepted.
  bool too_wide() const {
    return !clear() && !overlaps() && flaw.spare_mm < kOneSided95 * contact.gap_sd;
  }
  // In some rooms there is less place than the piece needs.
  bool too_near() const { return clear() || overlaps() || !too_wide(); }
};

Sizes closing_sizes(const Asked& asked) {
  Sizes sizes = sizes_for(-asked.flaw.spare_mm, asked.contact.gap_sd, asked.bench.rounding);
  std::erase_if(sizes.mm, [&](double size) { return size > asked.contact.gap.least; });
  sizes.likely = std::clamp(sizes.likely, 0, std::max(0, static_cast<int>(sizes.mm.size()) - 1));
  return sizes;
}

Sizes opening_sizes(const Asked& asked) {
  return sizes_for(asked.short_by(), asked.contact.gap_sd, asked.bench.rounding);
}

using List = std::vector<Ladder>;

void add_moves(const Asked& asked, List& list) {
  const auto& [bench, flaw, contact] = asked;
  const Vec3 out = way_out_of(asked.piece(), asked.how().edge);
  if (asked.too_wide())
    list.push_back(group_moved(bench, flaw, contact.piece, out, closing_sizes(asked)));
  if (asked.too_near())
    list.push_back(group_moved(bench, flaw, contact.piece, -out, opening_sizes(asked)));
}

void add_trims(const Asked& asked, List& list) {
  if (asked.is_face()) return;
  const auto& [bench, flaw, contact] = asked;
  const EdgeChoice& edge = asked.how().edge;
  if (asked.too_near())
    list.push_back(edge_set_out(bench, flaw, contact.piece, edge, inward(opening_sizes(asked))));
  if (asked.too_wide())
    list.push_back(edge_set_out(bench, flaw, contact.piece, edge, closing_sizes(asked)));
}

// A cut that closes the gap on both faces of an edge that meets askew is a bevel.
std::string bevel_words(const Asked& asked) {
  if (asked.contact.bevel_mm < kBevel) return "";
  return fmt::format(", beveled by {} over the thickness",
                     with_unit(millimetres(asked.contact.bevel_mm), asked.bench.survey.said()));
}

Ladder refitted(const Asked& asked, Work work, Fitting by, const std::string& words) {
  const Contact& how = asked.how();
  const bool notch = how.notch || work == Work::notch;
  return {work,
          {{asked.contact.part,
            fitting_words(by, notch),
            asked.flaw.text,
            words,
            {ContactRefitted{asked.contact.contact, by, notch}}}}};
}

// The gap along the run at its first and last point, as a straight line under all of it.
Vec2 gap_at_ends(const Asked& asked) {
  std::vector<Vec2> line;
  for (const GapPoint& p : asked.contact.line) line.push_back({p.at, p.gap});
  const StraightCut cut = straight_cut(line);
  const Polygon& outline = asked.piece().drawn->outline;
  const EdgeRun run = run_of(asked.how().edge, outline);
  const int n = static_cast<int>(outline.size());
  const Vec2 a = outline[run.first], b = outline[(run.last + 1) % n];
  const EdgeSide* side = std::get_if<EdgeSide>(&asked.how().edge);
  if (!side) {
    double length = 0;
    for (int k = 0; k <= (run.last - run.first + n) % n; ++k)
      length += norm(outline[(run.first + k + 1) % n] - outline[(run.first + k) % n]);
    return {cut.at, cut.at + cut.slope * length};
  }
  const double from = upright(*side) ? a.y : a.x, to = upright(*side) ? b.y : b.x;
  return {cut.at + cut.slope * from, cut.at + cut.slope * to};
}

// The piece stands off its drawn place: what it lacks at the edge it has at its far end, so that
// much is cut off the other end of the edge and the piece moves closer.
Vec2 from_own_wood(const Asked& asked, Vec2 ends) {
  const double step = asked.step(), lacks = std::max(ends.x, ends.y);
  const double has = std::floor(asked.contact.wood_mm / step + 0.5) * step;
  const double own = std::clamp(has, 0.0, std::max(0.0, lacks));
  return {ends.x - own, ends.y - own};
}

void add_taper(const Asked& asked, Vec2 ends, List& list) {
  Candidate cut = run_set_out(asked.bench, asked.flaw, asked.contact.piece, asked.how().edge, ends);
  cut.said = bevel_words(asked);
  list.push_back({Work::taper, {std::move(cut)}});
}

void add_tapers(const Asked& asked, List& list) {
  if (asked.is_face() || asked.contact.line.size() < 2) return;
  if (!asked.too_wide() && !asked.overlaps()) return;
  const Vec2 gap = gap_at_ends(asked);
  const double step = asked.step(), keep = asked.clear() ? asked.contact.allow : 0;
  for (const double play : {0.0, 1.0, 2.0}) {  // marks left open beside it; the first fits best
    const auto eased = [&](double g) { return std::floor((g - keep) / step + 0.25 - play) * step; };
    const Vec2 ends{eased(gap.x), eased(gap.y)};
    if (std::abs(ends.x - ends.y) < step / 2 || norm(ends) > kLargestChange) continue;
    add_taper(asked, from_own_wood(asked, ends), list);
    if (from_own_wood(asked, ends).x != ends.x) add_taper(asked, ends, list);
  }
}

bool may_add(const Asked& asked) {
  return !asked.how().keep && !asked.clear();
}

bool is_butt_or_caulk(const Contact& how) {
  return how.by == Fitting::butt || how.by == Fitting::caulk;
}

// Covers of a gap, where they are wide enough: nothing is cut.
void add_cover(const Asked& asked, Fitting by, const std::string& words, List& list) {
  Contact covered = asked.how();
  covered.by = by;
  if (by == Fitting::trim) covered.trim = cover_width(asked.bench.design.units);
  if (asked.contact.gap.most <= allowed_gap(covered))
    list.push_back(refitted(asked, Work::cover, by, words));
}

void add_covers(const Asked& asked, List& list) {
  const Contact& how = asked.how();
  if (!asked.too_wide()) return;
  const bool shims = asked.is_face() || how.meets == "floor";
  const bool room = !wall_named(how.meets).empty() || how.meets == "floor";
  if (how.by == Fitting::butt && !shims) add_cover(asked, Fitting::caulk, "caulk it", list);
  if (how.by == Fitting::butt && shims) add_cover(asked, Fitting::shim, "shim it", list);
  if (room && !asked.is_face() && is_butt_or_caulk(how))
    add_cover(asked, Fitting::trim, "cover it with trim", list);
}

bool uncut(Fitting by) {
  return !is_cut_to_fit(by) && by != Fitting::filler;
}

// A scribe that comes closer than something else allows is left that much wild.
void add_wild_scribe(const Asked& asked, List& list) {
  const auto& [bench, flaw, contact] = asked;
  const bool scribed = asked.how().by == Fitting::scribe;
  const double missed = scribed ? -flaw.spare_mm : contact.gap.most;
  const Sizes sizes = sizes_for(missed, contact.gap_sd, bench.rounding);
  Ladder wild = edge_set_out(bench, flaw, contact.piece, asked.how().edge, sizes);
  wild.work = scribed ? Work::trim : Work::scribe;
  for (Candidate& next : wild.steps) {
    next.kind = scribed ? "left wild" : "scribe";
    next.said = ", to be scribed" + bevel_words(asked);
    if (!scribed)
      next.steps.push_back(ContactRefitted{contact.contact, Fitting::scribe, asked.how().notch});
  }
  list.push_back(std::move(wild));
}

// Finished against what it meets; where only the two faces differ it is a bevel.
Ladder scribed(const Asked& asked) {
  Ladder cut =
      refitted(asked, Work::scribe, Fitting::scribe, "scribe that side" + bevel_words(asked));
  const bool bevel = asked.contact.bevel_mm >= kBevel && asked.contact.taper_mm < asked.step() / 2;
  if (bevel) cut.steps.front().kind = "bevel";
  return cut;
}

// A scribe follows the room; two pieces are fitted to each other by a straight cut.
void add_cuts(const Asked& asked, List& list) {
  const Contact& how = asked.how();
  const ContactFit& contact = asked.contact;
  const bool wall = !wall_named(how.meets).empty();
  const bool cuts = uncut(how.by) && (asked.too_wide() || asked.overlaps());
  if (cuts)
    list.push_back(refitted(asked, Work::taper, Fitting::taper,
                            "cut that side to a taper" + bevel_words(asked)));
  const bool notch = !how.notch && meets_obstacle(asked.bench, contact);
  if (notch) list.push_back(refitted(asked, Work::notch, how.by, "notch it"));
  if (notch && cuts) {
    Ladder both = refitted(asked, Work::notch, Fitting::scribe, "notch it, then scribe it");
    both.work = Work::scribe;
    list.push_back(std::move(both));
  }
  if (cuts && (wall || how.meets == "floor" || how.meets == "ceiling"))
    list.push_back(scribed(asked));
  if (wall && contact.gap.most > 0 && contact.gap.most - contact.gap.least <= kEasyScribe)
    add_wild_scribe(asked, list);
  if (how.by != Fitting::filler && !asked.overlaps() && contact.gap.most > asked.step() &&
      contact.gap.most <= kLargestChange)
    list.push_back(refitted(asked, Work::filler, Fitting::filler, "close it with a filler strip"));
}

std::string work_words(Fitting by, bool notch) {
  const auto closing = [by] {
    switch (by) {
      case Fitting::filler:
        return "close it with a filler strip";
      case Fitting::trim:
        return "cover it with trim";
      case Fitting::taper:
        return "taper it there";
      case Fitting::scribe:
        return "scribe it there";
      case Fitting::shim:
        return "shim it there";
      case Fitting::caulk:
        return "caulk it there";
      case Fitting::butt:
      case Fitting::clear:
        break;
    }
    return "let it butt there";
  };
  return (notch ? "notch it there, then " : "") + std::string(closing());
}

}  // namespace

std::vector<Ladder> refittings(const Flaw& flaw, const ContactFit& contact) {
  const Contact& how = *contact.how;
  std::vector<Ladder> found;
  if (how.keep || how.by == Fitting::clear) return found;
  for (const bool notch : {false, true})
    for (const Fitting by : {Fitting::butt, Fitting::shim, Fitting::caulk, Fitting::trim,
                             Fitting::taper, Fitting::scribe, Fitting::filler})
      if ((notch || !how.notch) && (by != how.by || notch != how.notch) &&
          (by != Fitting::filler || contact.gap.most <= kLargestChange))
        found.push_back({Work::any,
                         {{contact.part,
                           fitting_words(by, notch),
                           flaw.text,
                           work_words(by, notch),
                           {ContactRefitted{contact.contact, by, notch}}}}});
  return found;
}

std::vector<Ladder> contact_candidates(const Workbench& bench, const Flaw& flaw) {
  const Asked asked{bench, flaw, bench.answer.contacts[flaw.index]};
  List list;
  if (!asked.contact.meets_anything) return list;
  add_moves(asked, list);
  add_trims(asked, list);
  add_tapers(asked, list);
  if (!may_add(asked)) return list;
  add_covers(asked, list);
  if (!asked.is_face()) add_cuts(asked, list);
  return list;
}

}  // namespace nook
