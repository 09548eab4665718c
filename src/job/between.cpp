// Faults that show only when two of a job's files are seen together.
#include <fmt/format.h>

#include <algorithm>

#include "design/piece.h"
#include "job/job.h"

namespace nook {
namespace {

std::vector<std::string> wall_names(const Survey& survey) {
  std::vector<std::string> names;
  for (const Wall& wall : survey.walls) names.push_back(wall.name);
  return names;
}

// Every name that means a part or a copy.
std::vector<std::string> part_names(const Design& design) {
  std::vector<std::string> names;
  for (const Part& part : design.parts) names.push_back(part.name);
  for (const Piece& piece : pieces_of(design))
    if (piece.copy > 0) names.push_back(piece.name);
  return names;
}

bool holds(const std::vector<std::string>& names, const std::string& name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

Diagnostic unknown(const Mention& mention, const std::string& file,
                   const std::vector<std::string>& known, std::string_view kind) {
  const std::string_view near = nearest(mention.name, {known.begin(), known.end()});
  std::string help = fmt::format("it has none");
  if (!near.empty())
    help = fmt::format("did you mean '{}'?", near);
  else if (!known.empty() && known.size() <= 8)
    help = fmt::format("it has: {}", fmt::join(known, ", "));
  else if (!known.empty())
    help = "check the name there";
  const std::string other = kind == "wall" ? "room.toml" : "design.toml";
  return {file, mention.place, fmt::format("{} has no {} '{}'", other, kind, mention.name),
          fmt::format("unknown-{}", kind), help};
}

double longest_side(const Part& part) {
  Vec2 low{1e300, 1e300}, high{-1e300, -1e300};
  for (const Vec2 p : part.outline) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
  return std::max(high.x - low.x, high.y - low.y);
}

double longest_wall(const Survey& survey) {
  double longest = 0;
  for (const Wall& wall : survey.walls)
    longest = std::max(longest, wall.longest().value_or(Length{}).mm);
  return longest;
}

// Numbers in another unit than the file says: a piece many times as long as the room.
std::optional<Diagnostic> other_unit(const Survey& survey, const Design& design,
                                     const std::string& file) {
  constexpr double kTimes = 5, kHigh = 2440;  // mm, a usual room's height. Chosen
  const double wall = longest_wall(survey);
  if (wall <= 0) return std::nullopt;
  for (const Part& part : design.parts) {
    const double side = longest_side(part);
    if (side <= kTimes * std::max(wall, kHigh)) continue;
    const auto said = [&](double mm) {
      return with_unit(millimetres(mm), usual_rounding(design.units));
    };
    return Diagnostic{
        file,
        {},
        fmt::format("'{}' is {} long, and the longest wall {}", part.name, said(side), said(wall)),
        "absurd-size",
        "bare numbers count in the units said at the top, inches where none are: "
        "units = \"mm\", \"cm\" or \"inch\""};
  }
  return std::nullopt;
}

}  // namespace

std::optional<int> corner_of(const Survey& survey, const Design& design) {
  for (std::size_t k = 0; k < survey.corners.size(); ++k) {
    const Corner& corner = survey.corners[k];
    if (survey.walls[corner.walls[0]].name == design.corner[0] &&
        survey.walls[corner.walls[1]].name == design.corner[1])
      return static_cast<int>(k);
  }
  return std::nullopt;
}

Diagnostics faults_between(const Survey& survey, const Design& design, const FileNames& names) {
  Diagnostics faults;
  const auto walls = wall_names(survey), parts = part_names(design);
  if (walls.empty() && !design.walls_named.empty())
    return {{names.room,
             {},
             "it has no [[wall]], and the design stands against walls",
             "no-walls",
             fmt::format("'nookfit survey' asks for them; the design wants '{}' and '{}'",
                         design.corner[0], design.corner[1])}};
  for (const Mention& wall : design.walls_named)
    if (!holds(walls, wall.name)) faults.push_back(unknown(wall, names.design, walls, "wall"));
  for (const Mention& part : survey.parts_named) {
    const std::string wall = wall_named(part.name);
    if (!wall.empty() && !holds(walls, wall))
      faults.push_back(unknown({wall, part.place}, names.room, walls, "wall"));
    if (wall.empty() && !holds(parts, part.name))
      faults.push_back(unknown(part, names.room, parts, "part"));
  }
  const bool both = holds(walls, design.corner[0]) && holds(walls, design.corner[1]);
  if (both && !corner_of(survey, design) && !design.walls_named.empty())
    faults.push_back({names.design, design.walls_named[0].place,
                      fmt::format("'{}' and '{}' share no corner in this order", design.corner[0],
                                  design.corner[1]),
                      "no-such-corner",
                      "name neighboring walls of room.toml, first the one on the left hand"});
  if (auto fault = other_unit(survey, design, names.design)) faults.push_back(*fault);
  sort(faults);
  return faults;
}

Diagnostics faults_between(const Design& design, const PiecesAsCut& pieces,
                           const FileNames& names) {
  Diagnostics faults;
  const auto parts = part_names(design);
  for (const PieceAsCut& piece : pieces.pieces)
    if (!holds(parts, piece.part))
      faults.push_back(unknown({piece.part, piece.place}, names.pieces, parts, "part"));
  sort(faults);
  return faults;
}

}  // namespace nook
