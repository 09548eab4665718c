// Running lists of marks.
#include "fasten/story_pole.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace nook {
namespace {

// "3" of "left 3".
std::string number_of(const Hole& hole) {
  return hole.id.substr(hole.id.rfind(' ') + 1);
}

// "hole 3" on a wall, "into side cleat 2" in a piece.
std::string label_of(const Hole& hole) {
  const std::string number = number_of(hole);
  return hole.into.empty() ? "hole " + number : fmt::format("into {} {}", hole.into, number);
}

void sort_and_join(std::vector<StoryPole::Mark>& marks, const Saying& say) {
  std::stable_sort(marks.begin(), marks.end(),
                   [](const auto& a, const auto& b) { return a.at_mm < b.at_mm; });
  std::vector<StoryPole::Mark> joined;
  for (const auto& m : marks) {
    const bool same = !joined.empty() && (m.at_mm - joined.back().at_mm <= kSameMark ||
                                          say.length(m.at_mm) == say.length(joined.back().at_mm));
    if (same)
      joined.back().what += ", " + m.what;
    else
      joined.push_back(m);
  }
  marks = std::move(joined);
}

}  // namespace

std::optional<StoryPole> wall_pole(const WallDrill& wall, const Saying& say) {
  if (wall.holes.empty()) return std::nullopt;
  StoryPole pole;
  pole.of = wall.name + " wall";
  pole.start =
      wall.datum ? "the plumb line, away from the corner (back is toward it)" : "the corner";
  const auto from_start = [&](const Hole& h) { return h.from_datum_mm.value_or(h.along_mm); };
  if (wall.datum) pole.marks.push_back({0, "plumb line"});
  for (const HungPiece& p : wall.pieces) {
    // At the piece's own height: a corner that leans lies elsewhere at another.
    const auto own = std::find_if(wall.holes.begin(), wall.holes.end(),
                                  [&](const Hole& h) { return h.part == p.part; });
    if (own == wall.holes.end()) continue;
    const double shift = from_start(*own) - own->along_mm;
    pole.marks.push_back({p.near_mm + shift, p.part + " end"});
    pole.marks.push_back({p.far_mm + shift, p.part + " end"});
  }
  for (const Hole& h : wall.holes)
    pole.marks.push_back(
        {from_start(h), "hole " + number_of(h) + (h.probe_first ? " (probe)" : "")});
  sort_and_join(pole.marks, say);
  return pole;
}

std::vector<StoryPole> piece_poles(const std::vector<Hole>& holes, const Saying& say) {
  std::vector<StoryPole> poles;
  for (const Hole& h : holes) {
    const std::string start = fmt::format("its {} end", h.end);
    auto pole = std::find_if(poles.begin(), poles.end(), [&](const StoryPole& p) {
      return p.of == h.part && p.start == start;
    });
    if (pole == poles.end()) pole = poles.insert(poles.end(), {h.part, start, {}});
    pole->marks.push_back({h.from_end_mm, fmt::format("{}, {} from the {}", label_of(h),
                                                      say.length(h.from_edge_mm), h.edge)});
  }
  for (StoryPole& p : poles) sort_and_join(p.marks, say);
  return poles;
}

}  // namespace nook
