// Boxes hang on the sides of studs, studs stand at their spacing, a burned mark is taken off.
#include "survey/facts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/notation.h"
#include "room/counted.h"
#include "survey/first_values.h"
#include "survey/slips.h"

namespace nook {
namespace {

// mm that a stud may be off its spacing: finders err by less. Chosen.
constexpr double kOffSpacing = 30;
constexpr double kNearSpacing = 10;  // mm: a stud at its spacing. Chosen
constexpr double kBeside = 20;  // mm between a box and its stud that still pass for none. Chosen

// A stud found: where its center is, and the figure it was read by.
struct Found {
  double centre;
  const Reading* reading;
  double to_centre;  // from that figure
};

// From the one corner of a wall or from the other.
std::vector<Found> found_on(const Wall& wall, bool from_right) {
  std::vector<Found> out;
  const double half = wall.studs->width.mm / 2;
  for (const StudFound& stud : wall.studs->found) {
    if (stud.from_right != from_right) continue;
    for (const auto& [list, to_centre] :
         {std::pair(&stud.centre, 0.0), {&stud.left_edge, half}, {&stud.right_edge, -half}}) {
      if (!any_counts(*list)) continue;
      out.push_back({mean_or(*list, 0) + to_centre, &list->front(), to_centre});
      break;
    }
  }
  return out;
}

// How far a box stays clear of a stud at `centre`; 0 where it touches.
double clear(const Obstacle& box, double centre, double width) {
  return std::max(
      {0.0, box.along[0].mm - centre - width / 2, centre - width / 2 - box.along[1].mm});
}

// The least clearance from studs found and from those a spacing away from them.
double least_clear(const Wall& wall, const Obstacle& box, const std::vector<Found>& found) {
  double least = 1e9;
  for (const auto& [centre, reading, to_centre] : found) {
    least = std::min(least, clear(box, centre, wall.studs->width.mm));
    if (!wall.studs->spacing) continue;
    const double spacing = wall.studs->spacing->mm;
    const double middle = (box.along[0].mm + box.along[1].mm) / 2;
    for (const double steps :
         {std::floor((middle - centre) / spacing), std::ceil((middle - centre) / spacing)})
      least = std::min(least, clear(box, centre + steps * spacing, wall.studs->width.mm));
  }
  return least;
}

double off_spacing(double a, double b, double spacing) {
  return std::abs(std::remainder(a - b, spacing));
}

int agreeing(const std::vector<Found>& studs, double centre, double spacing) {
  return static_cast<int>(std::count_if(studs.begin(), studs.end(), [&](const Found& other) {
    return off_spacing(centre, other.centre, spacing) < kOffSpacing;
  }));
}

// The slip that would bring a stud to its spacing from `other`; empty where none does.
std::string slip_to(const Survey& survey, const Found& stud, double other, double spacing) {
  Observation reading;
  reading.given = stud.reading->given;
  reading.value = stud.reading->value.mm;
  for (const Slip& slip : slips(survey, reading))
    if (off_spacing(slip.meant + stud.to_centre, other, spacing) < kNearSpacing)
      return ", perhaps " + slip.words;
  return "";
}

// A stud off the spacing from another, and the slip that may be in it.
struct Stray {
  const Found &stud, &from;
  const std::string& slip;
};
std::string stray_words(const Survey& survey, const Wall& wall, const Stray& stray) {
  const auto said = [&](double mm) { return with_unit(millimetres(mm), survey.said()); };
  const double spacing = wall.studs->spacing->mm;
  return fmt::format(
      "The stud found at {} on the {} wall stands {} off the spacing of {} from the one at {}: one "
      "more stud, or a figure to take again{}.",
      said(stray.stud.centre), wall.name,
      said(off_spacing(stray.stud.centre, stray.from.centre, spacing)), said(spacing),
      said(stray.from.centre), stray.slip);
}

// Studs that stand off the spacing of most, each with what it may have been.
void add_strays(const Survey& survey, const Wall& wall, bool from_right,
                std::vector<std::string>& out) {
  const std::vector<Found> studs = found_on(wall, from_right);
  const double spacing = wall.studs->spacing->mm;
  const auto less = [&](const Found& a, const Found& b) {
    return agreeing(studs, a.centre, spacing) < agreeing(studs, b.centre, spacing);
  };
  const auto most = std::max_element(studs.begin(), studs.end(), less);
  for (const Found& stud : studs) {
    if (off_spacing(stud.centre, most->centre, spacing) < kOffSpacing) continue;
    std::string slip = slip_to(survey, stud, most->centre, spacing);
    // Of two that disagree either may be the stray.
    const std::string other = agreeing(studs, most->centre, spacing) == 1
                                  ? slip_to(survey, *most, stud.centre, spacing)
                                  : "";
    const bool turned = slip.empty() && !other.empty();
    out.push_back(turned ? stray_words(survey, wall, {*most, stud, other})
                         : stray_words(survey, wall, {stud, *most, slip}));
  }
}

// Whether a figure taken from an inside corner says that it was burned.
bool any_burned(const Survey& survey) {
  const auto burned = [](const Readings& readings) {
    return std::any_of(readings.begin(), readings.end(), [](const Reading& r) { return r.burned; });
  };
  for (const Wall& wall : survey.walls)
    if (burned(wall.length)) return true;
  for (const Across& across : survey.across)
    if (burned(across.is)) return true;
  for (const Corner& corner : survey.corners)
    for (const Diagonal& diagonal : corner.diagonals)
      if (burned({diagonal.first, diagonal.second})) return true;
  return false;
}

}  // namespace

std::vector<std::string> facts_beside(const Survey& survey) {
  std::vector<std::string> out;
  const Rounding rounding = survey.said();
  const bool taped = std::any_of(survey.walls.begin(), survey.walls.end(),
                                 [](const Wall& wall) { return wall.longest().has_value(); });
  if (survey.tape.corner == TapeEnd::burned && taped && !any_burned(survey))
    out.push_back(fmt::format(
        "The tape is held at a burned mark in the corners, and no length says so: where a figure "
        "still holds that part, write it as '{}'.",
        survey.units == Unit::inch ? "119 1/4 burned 1" : "302.9 cm burned 10 cm"));
  for (const Wall& wall : survey.walls)
    for (const bool from_right : {false, true})
      if (wall.studs && wall.studs->spacing) add_strays(survey, wall, from_right, out);
  for (const Wall& wall : survey.walls)
    for (const Obstacle& box : wall.obstacles) {
      if (!wall.studs || !is_box(box.kind)) continue;
      const std::vector<Found> found = found_on(wall, box.from_right);
      if (found.empty() || least_clear(wall, box, found) < kBeside) continue;
      out.push_back(fmt::format(
          "The {} at {} on the {} wall is clear of every stud: there is a stud nobody found, or a "
          "cable that follows none. Probe beside it before drilling near.",
          box.name.empty() ? "box" : box.name, with_unit(box.along[0], rounding), wall.name));
    }
  return out;
}

}  // namespace nook
