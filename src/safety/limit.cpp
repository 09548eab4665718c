// The table of limits. Figures are as printed in the documents named; none of them replaces the
// document or local code.
#include "safety/limit.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/invariant.h"
#include "fasten/said.h"
#include "fasten/services.h"

namespace nook {
namespace {

constexpr std::string_view kPlayground = "CPSC 325 (Public Playground Safety Handbook)";
constexpr std::string_view kOpenings = "CPSC 325, B.2.5.1";
constexpr std::string_view kNecks = "CPSC 325, B.2.5, partially bounded openings";
constexpr std::string_view kPlatforms = "CPSC 325, table 4";
constexpr std::string_view kGuards = "IRC R312.1";
constexpr std::string_view kBunks = "16 CFR 1213.3 (and 1513)";
constexpr std::string_view kEuropean = "EN 747-1";
constexpr std::string_view kLoads = "IRC R301.5";
constexpr std::string_view kLadders = "29 CFR 1910.23";
constexpr std::string_view kTipOver = "ASTM F2057-23, 16 CFR 1261";
constexpr std::string_view kOurs = "chosen";

using enum LimitUnit;
using enum Known;

// In the order of `Of`.
constexpr Limit kLimits[] = {
    {"head-small", 3.5, inch, "an opening that lets a sphere larger than this through", kOpenings,
     read},
    {"head-large", 9, inch, "and none of this size may trap a head", kOpenings, read},
    {"probe-depth", 4, inch, "a piece this far before or behind an opening still closes it", kOurs,
     chosen},
    {"neck-angle", 55, degree, "a V with less than this between its sides may trap a neck", kNecks,
     from_memory},
    {"neck-width", 1.875, inch, "a slot narrower than this lets no neck in", kNecks, from_memory},
    {"finger-small", 7, millimeter, "a gap from this", kEuropean, from_memory},
    {"finger-large", 12, millimeter, "to this may trap a finger", kEuropean, from_memory},
    {"limb-small", 25, millimeter, "a gap over this", kEuropean, from_memory},
    {"limb-large", 60, millimeter, "and under this may trap an arm or a leg", kEuropean,
     from_memory},
    {"toddler-end", 2, year, "toddlers are under this age", kPlayground, read},
    {"preschool-end", 5, year, "preschool children are up to this age", kPlayground, read},
    {"school-end", 12, year, "school-age children are up to this age", kPlayground, read},
    {"guardrail-platform", 20, inch, "a platform over this has a guardrail (preschool)", kPlatforms,
     read},
    {"barrier-platform", 30, inch, "a platform over this has a barrier (preschool)", kPlatforms,
     read},
    {"barrier-platform-toddler", 18, inch, "a platform over this has a barrier, under 2 years",
     kPlatforms, from_memory},
    {"barrier-toddler", 24, inch, "least height of a barrier above the platform, under 2 years",
     kPlatforms, partly_from_memory},
    {"barrier-preschool", 29, inch, "least height of a barrier above the platform, 2 to 5 years",
     kPlatforms, read},
    {"barrier-school", 38, inch, "least height of a barrier above the platform, 5 to 12 years",
     kPlatforms, partly_from_memory},
    {"guard-drop", 30, inch, "a drop over this has a guard", kGuards, read},
    {"guard-height", 36, inch, "least height of a guard", kGuards, read},
    {"guard-sphere", 4, inch, "no sphere of this size passes a guard", kGuards, read},
    {"bed-base", 30, inch, "a bed whose base is over this has a rail on each side", kBunks, read},
    {"bed-rail", 5, inch, "least height of a bed rail above the mattress", kBunks, read},
    {"bed-wall-gap", 0.22, inch, "widest gap in or beside the rail on the wall side", kBunks, read},
    {"bed-end-gap", 15, inch, "widest gap beside the rail elsewhere", kBunks, read},
    {"bunk-age", 6, year, "nobody younger sleeps on an upper bunk", "16 CFR 1213/1513",
     from_memory},
    {"bed-barrier", 160, millimeter, "least height of a barrier above the mattress", kEuropean,
     read},
    {"bed-entry-small", 300, millimeter, "narrowest way in through the barrier", kEuropean, read},
    {"bed-entry-large", 400, millimeter, "widest way in through the barrier", kEuropean, read},
    {"bed-wall-small", 75, millimeter, "a gap between a high bed and the wall is up to this",
     kEuropean, read},
    {"bed-wall-large", 230, millimeter, "or over this", kEuropean, read},
    {"bed-tread", 200, millimeter, "treads are at least this far apart", kEuropean, read},
    {"rung-thin", 0.95, inch, "least thickness of a rung across the grip", "CPSC 325, 5.2.1", read},
    {"rung-thick", 1.55, inch, "greatest thickness of a rung across the grip", "CPSC 325, 5.2.1",
     read},
    {"tread-flat", 3, inch, "a flat of this depth is a tread, not a grip", kLadders, read},
    {"rung-apart", 12, inch, "rungs are at most this far apart", "CPSC 325, 5.2.2", from_memory},
    {"rung-even", 0.25, inch, "rungs are evenly spaced within this, top rung to platform too",
     "CPSC 325, 5.2.2", from_memory},
    {"toe-room", 7, inch, "least room behind a rung, from its middle (workplaces)", kLadders,
     from_memory},
    {"work-rung-low", 10, inch, "rungs of a fixed ladder are at least this far apart (workplaces)",
     "29 CFR 1910.23(b)", read},
    {"work-rung-high", 14, inch, "rungs of a fixed ladder are at most this far apart (workplaces)",
     "29 CFR 1910.23(b)", read},
    {"room-load", 40, psf, "load that the floor of a room carries", kLoads, read},
    {"sleep-load", 30, psf, "load that the floor of a sleeping room carries", kLoads, read},
    {"guard-load", 200, pound, "load that a guard carries", kLoads, read},
    {"step-load", 300, pound, "load that a step carries", kLoads, read},
    {"man", 195.7, pound, "mean weight of a man", "NCHS, 2011-14", read},
    {"boy-of-ten", 46.2, kg, "weight that 95 of 100 boys of 10 stay under", "CDC, 2000", read},
    {"boy-age", 10, year, "the age that weight stands for", "CDC, 2000", read},
    {"tip-height", 27, inch, "a thing this high", kTipOver, read},
    {"tip-weight", 30, pound, "and this heavy must not tip over", kTipOver, read},
    {"one-person", 51, pound, "the most that one person lifts", "NIOSH lifting equation, 1994",
     from_memory},
    {"stud-cable", kServiceDepth / kMillimetresPerInch, inch,
     "a screw deeper in a stud may reach a cable or a pipe", "NEC 300.4(A)(1), (D)", read},
    {"cable-depth", 50, millimeter, "a cable less deep in the wall runs in known zones only",
     "BS 7671, 522.6.202", read},
    {"cable-zone", kCableZone, millimeter,
     "such a zone reaches this far from a corner or the ceiling", "BS 7671, 522.6.202", read},
    {"deck-width", 10, inch, "a level surface at least this wide both ways can be stood on", kOurs,
     chosen},
    {"deck-room", 18, inch, "with less room above it nobody stands on it", kOurs, chosen},
    {"handhold", 24, inch, "something to hold beside the way up rises this far above the deck",
     kOurs, chosen},
    {"sitting-room", 36, inch, "least room to sit upright under a ceiling", kOurs, chosen},
    {"standing-room", 76, inch, "under less than this heads are bumped", kOurs, chosen},
    {"window-reach", 36, inch, "a window within this of a deck can be reached from it", kOurs,
     chosen},
    {"heater-reach", 36, inch, "nothing that burns stands closer to a heater",
     "CPSC advice on heaters", from_memory},
    {"paint-lead", 0.009, percent, "most lead in the paint on children's things", "16 CFR 1303",
     read},
};

constexpr double kSquareMetresPerSquareFoot = 0.09290304;

std::string_view sign_of(LimitUnit unit) {
  switch (unit) {
    case inch:
      return "in";
    case millimeter:
      return "mm";
    case degree:
      return "degrees";
    case pound:
      return "lb";
    case psf:
      return "lb per square foot";
    case kg:
      return "kg";
    case year:
      return "years";
    case percent:
      return "%";
  }
  return {};
}

double newtons_of(const Limit& l) {
  if (l.unit == pound) return l.value * kNewtonsPerPound;
  if (l.unit == kg) return l.value * kNewtonsPerKilogram;
  require(l.unit == psf, "only a load has newtons");
  return l.value * kNewtonsPerPound / kSquareMetresPerSquareFoot;
}

// In the job's own unit; `exact` where that is the published figure.
struct OwnFigure {
  std::string text;
  bool exact = false;
};

bool is_length(const Limit& limit) {
  return limit.unit == inch || limit.unit == millimeter;
}

double millimetres_of(const Limit& limit) {
  require(is_length(limit), "only a length has millimeters");
  return limit.unit == inch ? limit.value * kMillimetresPerInch : limit.value;
}

// Finer than the job's marks where those would hide a limit: 0.22 in is 7/32, not 1/4.
OwnFigure length_said(const Limit& l, Rounding rounding) {
  constexpr double kSame = 1e-6;  // mm
  const double mm = millimetres_of(l);
  const bool same_unit = (rounding.unit == Unit::inch) == (l.unit == inch);
  if (same_unit && l.unit == inch) rounding.step = std::min(rounding.step, inches(1.0 / 32));
  const double off = std::remainder(mm, rounding.step.mm);
  return {with_unit({mm}, rounding), same_unit && std::abs(off) < kSame};
}

OwnFigure weight_said(const Limit& l, Unit unit) {
  const Saying say{unit};
  const bool pounds = unit == Unit::inch;
  if (l.unit == kg || l.unit == pound)
    return {say.load(newtons_of(l)), pounds == (l.unit == pound) && l.value == std::round(l.value)};
  if (l.unit == psf && !pounds) return {say.load(newtons_of(l)) + " per square meter", false};
  return {};
}

}  // namespace

std::string_view words(Known known) {
  switch (known) {
    case read:
      return "read";
    case partly_from_memory:
      return "partly from memory";
    case from_memory:
      return "from memory";
    case no_source:
      return "common practice, no source";
    case chosen:
      return "chosen";
  }
  return {};
}

std::span<const Limit> limits() {
  return kLimits;
}

const Limit& limit(Of which) {
  static_assert(std::size(kLimits) == static_cast<std::size_t>(Of::paint_lead) + 1);
  return kLimits[static_cast<std::size_t>(which)];
}

double mm(Of which) {
  return millimetres_of(limit(which));
}

double newtons(Of which) {
  return newtons_of(limit(which));
}

std::string published(const Limit& l) {
  return fmt::format("{:g} {}", l.value, sign_of(l.unit));
}

std::string published(const Limit& l, Rounding rounding) {
  const OwnFigure said = is_length(l) ? length_said(l, rounding) : weight_said(l, rounding.unit);
  if (said.text.empty()) return published(l);
  return said.exact ? said.text : fmt::format("{} ({})", said.text, published(l));
}

std::string cited(const Limit& l) {
  if (l.known == read || l.known == chosen) return std::string(l.source);
  return fmt::format("{} ({})", l.source, words(l.known));
}

}  // namespace nook
