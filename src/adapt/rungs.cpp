// Rungs found by their shape and place; what evens them is written as longer uprights or a new
// step.
#include "adapt/rungs.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "adapt/reshape.h"

namespace nook {
namespace {

// CPSC Public Playground Safety Handbook (pub. 325) 5.2.2: rungs evenly spaced, the top rung to the
// platform too, within 1/4 in (from memory).
constexpr double kEven = kMillimetresPerInch / 4;
// All chosen, mm.
constexpr double kLongest = 762;  // longer sticks are ledgers
constexpr double kRiseLeast = 100, kRiseMost = 610;
constexpr double kDeckLeast = 250;  // across
constexpr double kNear = 305;       // in plan, from the rungs to the deck

struct Reach {
  Vec3 low{1e300, 1e300, 1e300}, high{-1e300, -1e300, -1e300};
};

Reach reach_of(const FitAnswer& answer, int p) {
  Reach reach;
  const Piece& piece = answer.pieces[p];
  for (const Vec2 q : piece.drawn->outline)
    for (const double w : {0.0, piece.thickness}) {
      const Vec3 at = answer.frames[p].room_from_piece({q.x, q.y, w});
      reach.low = {std::min(reach.low.x, at.x), std::min(reach.low.y, at.y),
                   std::min(reach.low.z, at.z)};
      reach.high = {std::max(reach.high.x, at.x), std::max(reach.high.y, at.y),
                    std::max(reach.high.z, at.z)};
    }
  return reach;
}

bool are_rungs(const Design& design, const Part& part) {
  if (!part.repeat || part.repeat->count < 2) return false;
  const Vec3 step = part.repeat->step;
  const Frame frame = frame_of(part.place_in_room);
  double length = 0;
  for (const Vec2 p : part.outline) length = std::max(length, p.x);
  return std::abs(step.x) < 1 && std::abs(step.y) < 1 && step.z >= kRiseLeast &&
         step.z <= kRiseMost && std::abs(frame.u.z) < 1e-6 && length <= kLongest &&
         design.stock[part.stock].kind == StockKind::lumber;
}

// Screwed to a wall or lying on one with a face, it carries a shelf; no foot goes there.
bool is_cleat(const Design& design, const FitAnswer& answer, int part) {
  const auto means = [&](const std::string& name) {
    return std::any_of(answer.pieces.begin(), answer.pieces.end(), [&](const Piece& piece) {
      return piece.part == part && is_named(piece, name);
    });
  };
  const auto on_wall = [&](const Contact& c) {
    return std::holds_alternative<PieceFace>(c.edge) && !wall_named(c.meets).empty();
  };
  return std::any_of(
             design.fastenings.begin(), design.fastenings.end(),
             [&](const Fastening& f) { return !wall_named(f.to).empty() && means(f.part); }) ||
         std::any_of(design.contacts.begin(), design.contacts.end(),
                     [&](const Contact& c) { return on_wall(c) && means(c.part); });
}

double apart_in_plan(const Reach& a, const Reach& b) {
  const double x = std::max({0.0, a.low.x - b.high.x, b.low.x - a.high.x});
  const double y = std::max({0.0, a.low.y - b.high.y, b.low.y - a.high.y});
  return std::hypot(x, y);
}

bool stands(const FitAnswer& answer, const std::string& group) {
  return std::any_of(answer.floor.begin(), answer.floor.end(), [&](const FloorFit& f) {
    return answer.pieces[f.piece].drawn->group == group;
  });
}

// The lowest level piece that hangs over the highest rung, near enough to step on.
std::optional<int> deck_over(const FitAnswer& answer, const Part& rung, const Reach& top) {
  std::optional<int> best;
  double best_z = top.high.z + 2 * rung.repeat->step.z;
  for (int p = 0; p < static_cast<int>(answer.pieces.size()); ++p) {
    const Reach reach = reach_of(answer, p);
    const bool wide =
        reach.high.x - reach.low.x > kDeckLeast && reach.high.y - reach.low.y > kDeckLeast;
    if (std::abs(answer.frames[p].w.z) < 0.99 || !wide) continue;
    if (stands(answer, answer.pieces[p].drawn->group)) continue;
    if (reach.high.z <= top.high.z + 1 || reach.high.z >= best_z) continue;
    if (apart_in_plan(reach, top) < kNear) best = p, best_z = reach.high.z;
  }
  return best;
}

// The floor under the rails of a ladder, room z; 0 where none stands.
double floor_under(const FitAnswer& answer, const Part& rung) {
  std::optional<double> least;
  for (const FloorFit& foot : answer.floor) {
    const Piece& piece = answer.pieces[foot.piece];
    if (piece.drawn->group != rung.group || piece.drawn == &rung) continue;
    const double low = lowest(piece, answer.frames[foot.piece]);
    least = std::min(least.value_or(low), low);
  }
  return least.value_or(0);
}

void add_rails(const FitAnswer& answer, const Part& rung, RungLadder& ladder, Vec2& range) {
  for (const FloorFit& foot : answer.floor) {
    const Piece& piece = answer.pieces[foot.piece];
    if (piece.drawn->group != rung.group || piece.drawn == &rung) continue;
    if (std::find(ladder.rails.begin(), ladder.rails.end(), piece.part) == ladder.rails.end())
      ladder.rails.push_back(piece.part);
    ladder.sinks_mm = std::max(ladder.sinks_mm, foot.squash_mm);
    range = {std::max(range.x, foot.squash_least_mm), std::max(range.y, foot.squash_most_mm)};
  }
}

std::optional<RungLadder> ladder_of(const Design& design, const FitAnswer& answer, int part) {
  const Part& rung = design.parts[part];
  std::vector<int> rungs;
  for (int p = 0; p < static_cast<int>(answer.pieces.size()); ++p)
    if (answer.pieces[p].part == part) rungs.push_back(p);
  const Reach top = reach_of(answer, rungs.back());
  const auto deck = deck_over(answer, rung, top);
  if (!deck) return std::nullopt;
  RungLadder ladder;
  Vec2 sinks;
  ladder.part = part, ladder.deck = *deck;
  add_rails(answer, rung, ladder, sinks);
  ladder.rise_mm = rung.repeat->step.z;
  ladder.first_mm = reach_of(answer, rungs.front()).high.z - floor_under(answer, rung);
  const double unloaded = reach_of(answer, *deck).high.z - top.high.z;
  ladder.last_mm = unloaded + ladder.sinks_mm;
  ladder.least_mm = unloaded + sinks.x, ladder.most_mm = unloaded + sinks.y;
  return ladder;
}

Flaw finding_of(const FitAnswer& answer, const RungLadder& ladder, const Part& rung, Rounding r) {
  const auto length = [&](double mm) { return with_unit(millimetres(mm), r); };
  const auto off = [&](double last) { return std::abs(last - ladder.rise_mm) - kEven; };
  Flaw flaw;
  flaw.kind = Flaw::Kind::rungs;
  flaw.key = "rungs|" + rung.name;
  flaw.spare_mm = -off(ladder.last_mm);
  flaw.over_mm = std::max(0.0, off(ladder.last_mm));
  const double spread = std::min(off(ladder.least_mm), off(ladder.most_mm));
  const bool never =
      spread > 0 && (ladder.least_mm > ladder.rise_mm) == (ladder.most_mm > ladder.rise_mm);
  const bool always = std::max(off(ladder.least_mm), off(ladder.most_mm)) <= 0;
  flaw.chance = always ? 1 : never ? 0 : 0.5;
  flaw.verdict = always ? Verdict::fits : never ? Verdict::does_not_fit : Verdict::cannot_tell;
  const std::string sunk =
      ladder.sinks_mm > 0 ? fmt::format(", the carpet pressed {}", length(ladder.sinks_mm)) : "";
  flaw.text = fmt::format(
      "the last step, from the top {} to the {}, is {}{}, the others {}; {} off is allowed",
      rung.name, answer.pieces[ladder.deck].name, length(ladder.last_mm), sunk,
      length(ladder.rise_mm), length(kEven));
  return flaw;
}

double eased(double mm, Rounding rounding) {
  return std::round(mm / rounding.step.mm) * rounding.step.mm;
}

// The uprights longer at the foot, and all that they carry that much higher.
Ladder longer_rails(const Workbench& bench, const Flaw& flaw, const RungLadder& ladder) {
  Ladder found{Work::trim, {}, 0};
  const double by = eased(ladder.last_mm - ladder.rise_mm, bench.rounding);
  if (by <= 0 || ladder.rails.empty()) return found;
  const std::string& group = bench.design.parts[ladder.part].group;
  const std::string length = with_unit(millimetres(by), bench.survey.said());
  std::string said = fmt::format("leave {} more below the lowest rung", length);
  for (std::size_t k = 1; k < ladder.rails.size(); ++k)
    said += (k == 1 ? ", the " : " and the ") + bench.design.parts[ladder.rails[k]].name;
  if (ladder.rails.size() > 1) said += " alike";
  Candidate longer{
      bench.design.parts[ladder.rails.front()].name, "lengthen", flaw.text, std::move(said), {}};
  for (const int rail : ladder.rails) longer.steps.push_back(FootLengthened{rail, by});
  for (int p = 0; p < static_cast<int>(bench.design.parts.size()); ++p)
    if (bench.design.parts[p].group == group &&
        !std::count(ladder.rails.begin(), ladder.rails.end(), p))
      longer.steps.push_back(PartMoved{p, {0, 0, by}});
  found.steps.push_back(std::move(longer));
  return found;
}

// All steps alike again: from the floor where the first one was like the others, else from the
// lowest rung up.
Ladder respaced(const Workbench& bench, const Flaw& flaw, const RungLadder& ladder) {
  const Part& rung = bench.design.parts[ladder.part];
  const int count = rung.repeat->count;
  const bool from_floor = std::abs(ladder.first_mm - ladder.rise_mm) <= kEven;
  const double above_first = (count - 1) * ladder.rise_mm + ladder.last_mm;
  const double total = above_first + (from_floor ? ladder.first_mm : 0);
  const double step = eased(total / (count + (from_floor ? 1 : 0)), bench.rounding);
  const std::string apart = with_unit(millimetres(step), bench.survey.said());
  Candidate even{rung.name, "space anew", flaw.text, fmt::format("space them {} apart", apart), {}};
  even.steps.push_back(CopiesRespaced{ladder.part, step});
  if (from_floor)
    even.steps.push_back(
        PartMoved{ladder.part, {0, 0, eased(step - ladder.first_mm, bench.rounding)}});
  return {Work::trim, {std::move(even)}, 0};
}

}  // namespace

std::vector<RungLadder> rung_ladders(const Design& design, const FitAnswer& answer) {
  std::vector<RungLadder> found;
  if (!answer.known) return found;
  for (int p = 0; p < static_cast<int>(design.parts.size()); ++p)
    if (are_rungs(design, design.parts[p]) && !is_cleat(design, answer, p))
      if (const auto ladder = ladder_of(design, answer, p)) found.push_back(*ladder);
  return found;
}

std::vector<Flaw> rung_findings(const Design& design, const FitAnswer& answer, Rounding rounding) {
  std::vector<Flaw> findings;
  for (const RungLadder& ladder : rung_ladders(design, answer)) {
    findings.push_back(finding_of(answer, ladder, design.parts[ladder.part], rounding));
    findings.back().index = static_cast<int>(findings.size()) - 1;
  }
  return findings;
}

std::vector<Ladder> rung_candidates(const Workbench& bench, const Flaw& flaw) {
  const RungLadder ladder = rung_ladders(bench.design, bench.answer).at(flaw.index);
  return {longer_rails(bench, flaw, ladder), respaced(bench, flaw, ladder)};
}

}  // namespace nook
