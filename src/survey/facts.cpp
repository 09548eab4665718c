// Boxes hang on the sides of studs.
#include "survey/facts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/notation.h"
#include "survey/first_values.h"

namespace nook {
namespace {

constexpr double kBeside = 20;  // mm between a box and its stud that still pass for none. Chosen

// Centres of the studs found, from the same corner as the box.
std::vector<double> centres(const Wall& wall, bool from_right) {
  std::vector<double> out;
  for (const StudFound& stud : wall.studs->found) {
    if (stud.from_right != from_right) continue;
    const double half = wall.studs->width.mm / 2;
    if (!stud.centre.empty()) out.push_back(mean_or(stud.centre, 0));
    if (!stud.left_edge.empty()) out.push_back(mean_or(stud.left_edge, 0) + half);
    if (!stud.right_edge.empty()) out.push_back(mean_or(stud.right_edge, 0) - half);
  }
  return out;
}

// How far a box stays clear of a stud at `centre`; 0 where it touches.
double clear(const Obstacle& box, double centre, double width) {
  return std::max(
      {0.0, box.along[0].mm - centre - width / 2, centre - width / 2 - box.along[1].mm});
}

// The least clearance from studs found and from those a spacing away from them.
double least_clear(const Wall& wall, const Obstacle& box, const std::vector<double>& found) {
  double least = 1e9;
  for (const double centre : found) {
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

}  // namespace

std::vector<std::string> facts_beside(const Survey& survey) {
  std::vector<std::string> out;
  const Rounding rounding = survey.said();
  for (const Wall& wall : survey.walls)
    for (const Obstacle& box : wall.obstacles) {
      if (!wall.studs || !is_box(box.kind)) continue;
      const std::vector<double> found = centres(wall, box.from_right);
      if (found.empty() || least_clear(wall, box, found) < kBeside) continue;
      out.push_back(fmt::format(
          "The {} at {} on the {} wall is clear of every stud: there is a stud nobody found, or a "
          "cable that follows none. Probe beside it before drilling near.",
          box.name.empty() ? "box" : box.name, with_unit(box.along[0], rounding), wall.name));
    }
  return out;
}

}  // namespace nook
