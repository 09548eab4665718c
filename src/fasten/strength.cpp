// Worst screw, mode and source of one fastening.
#include "fasten/strength.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "fasten/spacing.h"

namespace nook {
namespace {

constexpr double kEndGrain = .67;  // NDS 2018 12.5.2.2 (from memory)

// What one screw holds against the direction of its load, newtons; or why that cannot be said.
struct Holding {
  double newtons = 0;
  std::string mode;
  std::string none;
};

ScrewSeat seat_of(const Loaded& l, const LoadedScrew& s, const ScrewSize& size) {
  ScrewSeat seat;
  seat.size = size;
  seat.lag = l.fastening.screw.kind == ScrewKind::lag;
  seat.main_gravity = l.main_gravity;
  seat.side_gravity = l.side_gravity;
  seat.main_angle = l.main_angle;
  seat.side_angle = l.side_angle;
  seat.side_length = in_inches(millimetres(l.side_length));
  seat.gap = in_inches(millimetres(s.gap));
  seat.penetration = in_inches(millimetres(s.embedment));
  return seat;
}

// NDS and TR12. `angle_deg` from the wood's surface: 0 = all sideways.
Holding by_code(const Loaded& l, const LoadedScrew& s, double angle_deg) {
  const auto size = size_of(l.fastening.screw);
  if (!size) return {0, "", "no published figure for a screw of this size"};
  const ScrewSeat seat = seat_of(l, s, *size);
  if (!deep_enough(seat))
    return {0, "",
            fmt::format("under {} D in the wood: the NDS gives no figure", seat.lag ? 4 : 6)};
  const double factor = l.fastening.duration * kNewtonsPerPound;
  const Yield side = lateral(seat);
  const double z = side.pounds * factor * (l.end_grain ? kEndGrain : 1);
  if (angle_deg == 0) return {z, std::string(side.mode), ""};
  if (l.end_grain) return {0, "", "pulled out of end grain: the NDS gives no figure"};
  const double w = withdrawal(seat) * factor;
  if (angle_deg == 90) return {w, "withdrawal", ""};
  // Where withdrawal is the stronger by far, 12.4.1 grants more at a slant than sideways alone; a
  // pull never lets a screw carry more sideways. Chosen.
  const double slant = combined(z, w, angle_deg), level = z / direction(degrees(angle_deg)).cos;
  return level < slant ? Holding{level, std::string(side.mode), ""}
                       : Holding{slant, "combined", ""};
}

// Its maker says how deep it has to go; less than NDS 2018 12.1.4.6 asks of a lag screw is
// never enough.
Holding by_maker(const Screw& screw, const LoadedScrew& s, double angle_deg) {
  constexpr double kLeast = 4;  // diameters
  if (!screw.allowable_n) return {0, "", "its maker's allowable load is not stated"};
  if (s.embedment < kLeast * diameter_of(screw))
    return {0, "", "too short in the wood for its maker's allowable load"};
  if (angle_deg != 0) return {0, "", "the allowable load stated is for a sideways load only"};
  return {*screw.allowable_n, "maker's allowable", ""};
}

Holding holding(const Loaded& l, const LoadedScrew& s, double angle_deg) {
  switch (l.fastening.screw.kind) {
    case ScrewKind::structural:
      return by_maker(l.fastening.screw, s, angle_deg);
    case ScrewKind::pocket:
      return {0, "", "pocket screws hold a piece in place; there is no figure for a load"};
    case ScrewKind::drywall:
      return {0, "", "drywall screws carry no load"};
    default:
      return by_code(l, s, angle_deg);
  }
}

double resultant(const LoadedScrew& s) {
  return std::hypot(s.sideways, std::max(0.0, s.pull));
}

double angle_of(const LoadedScrew& s) {
  if (s.pull <= 0) return 0;
  return s.sideways == 0 ? 90 : in_degrees({std::atan2(s.pull, s.sideways)});
}

std::string source_of(const Loaded& l) {
  const Screw& screw = l.fastening.screw;
  if (screw.kind == ScrewKind::structural) return screw.allowable_source;
  return fmt::format("NDS 2018 chapter 12 and TR12-2015, G {:.2f} and {:.2f}, duration {:.2f}",
                     l.main_gravity, l.side_gravity, l.fastening.duration);
}

void no_figure(Strength& out, std::string why) {
  out.mode = std::move(why);
  out.source.clear();
}

// Where no load strains them: all screws alike, sideways; `why` says so.
void count_up(Strength& out, const Loaded& l, const char* why) {
  double least = 0;
  for (const LoadedScrew& s : l.screws) {
    const Holding h = holding(l, s, 0);
    if (!h.none.empty()) return no_figure(out, h.none);
    if (least > 0 && h.newtons >= least) continue;
    least = h.newtons;
    out.mode = h.mode;
    out.worst_hole = s.id;
  }
  out.screw_n = least;
  out.capacity_n = least * static_cast<double>(l.screws.size());
  out.notes.push_back(why);
}

// Against the stated load: the screw nearest to its limit.
void rate(Strength& out, const Loaded& l) {
  double worst = -1;
  for (const LoadedScrew& s : l.screws) {
    const Holding h = holding(l, s, angle_of(s));
    if (!h.none.empty()) return no_figure(out, h.none);
    const double ratio = resultant(s) / h.newtons;
    if (ratio <= worst) continue;
    worst = ratio;
    out.worst_hole = s.id;
    out.worst_load_n = resultant(s);
    out.screw_n = h.newtons;
    out.mode = h.mode;
  }
  out.ratio = worst;
  if (worst > 0)
    out.capacity_n = *out.load_n / worst;
  else
    count_up(out, l,
             *out.load_n > 0
                 ? "the load presses on what carries it: the screws keep the piece in place"
                 : "no load is stated but 0");
}

// Screws too short for a figure: by how much, at the shallowest.
void note_short(Strength& out, const Loaded& l, const Saying& say) {
  const double least = distances_for(l.fastening.screw).least_hold;
  double shallowest = least;
  for (const LoadedScrew& s : l.screws) shallowest = std::min(shallowest, s.embedment);
  if (out.capacity_n || shallowest >= least) return;
  if (l.wood_depth > least)
    out.advice.push_back(
        fmt::format("use screws at least {} longer", say.at_least(least - shallowest)));
  else
    out.advice.push_back(
        fmt::format("the wood is only {} thick: use thinner screws, or bolt through",
                    say.length(l.wood_depth)));
}

}  // namespace

Strength strength_of(const Loaded& l, const Saying& say) {
  Strength out;
  out.part = l.part;
  out.to = l.to;
  out.source = source_of(l);
  if (l.load || l.pull) out.load_n = std::hypot(l.load.value_or(0), l.pull.value_or(0));
  if (!l.no_figure.empty()) {
    no_figure(out, l.no_figure);
    if (!l.no_figure_advice.empty()) out.advice.push_back(l.no_figure_advice);
    return out;
  }
  if (l.screws.empty()) {
    no_figure(out, "no screw holds it");
    return out;
  }
  if (out.load_n)
    rate(out, l);
  else
    count_up(out, l, "no load is stated: shared evenly, down only");
  note_short(out, l, say);
  return out;
}

void relieve(Strength& over, const std::string& cure, const Saying& say) {
  over.advice.insert(over.advice.begin(),
                     fmt::format("its worst screw carries {} and may carry {}: {}",
                                 say.load(over.worst_load_n), say.load(over.screw_n), cure));
}

}  // namespace nook
