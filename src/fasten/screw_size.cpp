// Sizes of wood screws and lag screws, and the holes they want.
#include "fasten/screw_size.h"

#include <cmath>

namespace nook {
namespace {

// NDS 2018 table L3, wood screws, inches (8, 10, 12, 14 from a transcription, the rest from
// memory).
struct Gauge {
  int number;
  double diameter, root;
};
constexpr Gauge kGauges[] = {{6, .138, .113},  {7, .151, .122},  {8, .164, .131},  {9, .177, .142},
                             {10, .190, .152}, {12, .216, .171}, {14, .242, .196}, {16, .268, .209},
                             {18, .294, .232}, {20, .320, .255}, {24, .372, .298}};

// NDS 2018 table L2, lag screws, inches (1/4 to 3/8 from a transcription, the rest from memory).
struct Lag {
  double diameter, root, tip;
};
constexpr Lag kLags[] = {{1.0 / 4, .173, 5.0 / 32},
                         {5.0 / 16, .227, 3.0 / 16},
                         {3.0 / 8, .265, 7.0 / 32},
                         {7.0 / 16, .328, 9.0 / 32},
                         {1.0 / 2, .371, 5.0 / 16}};

constexpr double kSameSize = 0.002;  // in; a size typed to the nearest thousandth. Chosen

// NDS 2018 table L3 note and L2 (from memory): two thirds of a wood screw carries thread; a lag's
// thread is half its length and half an inch more, at most 6 in, its tip counted.
double wood_thread(double length) {
  return 2 * length / 3;
}
double lag_thread(double length, double tip) {
  return std::min({length, length / 2 + 0.5, 6.0}) - tip;
}

std::optional<ScrewSize> wood_size(const Screw& screw) {
  for (const Gauge& g : kGauges) {
    const bool same = screw.gauge > 0
                          ? screw.gauge == g.number
                          : std::abs(in_inches(*screw.diameter) - g.diameter) < kSameSize;
    if (same)
      return ScrewSize{g.diameter, g.root, 2 * g.diameter, wood_thread(in_inches(screw.length)),
                       bending_strength(g.diameter)};
  }
  return std::nullopt;
}

std::optional<ScrewSize> lag_size(const Screw& screw) {
  for (const Lag& l : kLags)
    if (screw.diameter && std::abs(in_inches(*screw.diameter) - l.diameter) < kSameSize)
      return ScrewSize{l.diameter, l.root, l.tip, lag_thread(in_inches(screw.length), l.tip),
                       bending_strength(l.diameter)};
  return std::nullopt;
}

}  // namespace

double bending_strength(double diameter_in) {
  if (diameter_in <= .142) return 100e3;
  if (diameter_in <= .177) return 90e3;
  if (diameter_in <= .236) return 80e3;
  if (diameter_in <= .273) return 70e3;
  if (diameter_in <= .344) return 60e3;
  return 45e3;
}

std::optional<ScrewSize> size_of(const Screw& screw) {
  if (screw.gauge <= 0 && !screw.diameter) return std::nullopt;
  if (screw.kind == ScrewKind::wood || screw.kind == ScrewKind::pocket) return wood_size(screw);
  return screw.kind == ScrewKind::lag ? lag_size(screw) : std::nullopt;
}

double diameter_of(const Screw& screw) {
  if (screw.diameter) return screw.diameter->mm;
  // ASME B18.6.1: the shank of gauge n is 0.060 + 0.013 n in (from memory).
  return screw.gauge > 0 ? inches(.060 + .013 * screw.gauge).mm : 0;
}

double embedment_of(const Screw& screw, double thickness, double gap) {
  return screw.length.mm - (thickness - screw.head_below.mm) - gap;
}

Pilot pilot_for(const Screw& screw, double gravity, bool pulled) {
  const double diameter = diameter_of(screw);
  const auto size = size_of(screw);
  const double root = size ? inches(size->root).mm : 0.8 * diameter;  // 0.8 chosen
  Pilot pilot{0, diameter, diameter + inches(1.0 / 64).mm};           // 1/64 in of play, chosen
  if (screw.kind == ScrewKind::lag) {
    // NDS 2018 12.1.4.3 (from memory): 65 to 85, 60 to 75, 40 to 70 % of the shank; middles.
    pilot.thread = diameter * (gravity > .6 ? .75 : gravity > .5 ? .675 : .55);
  } else if (pulled) {
    // NDS 2018 12.1.5.3: 90 % above .6, 70 % from .5 to .6; none needed at .5 and below, where 70 %
    // serves the sideways load.
    pilot.thread = root * (gravity > .6 ? .9 : .7);
  } else {
    // Loaded sideways, in softwood 7/8 of shank and root (common practice; NDS 12.1.5.4 from
    // memory).
    pilot.thread = root * (gravity > .6 ? 1 : .875);
    pilot.shank = diameter * (gravity > .6 ? 1 : .875);
  }
  return pilot;
}

}  // namespace nook
