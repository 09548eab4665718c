// One function a kind of reading.
#include "survey/reading_names.h"

#include <fmt/format.h>

#include "base/notation.h"

namespace nook {
namespace {

class Namer {
 public:
  explicit Namer(const Survey& survey) : survey_(survey), rounding_(survey.said()) {}

  std::map<std::string, std::string> all() {
    for (const Wall& wall : survey_.walls) on_wall(wall);
    for (const Corner& corner : survey_.corners) in_corner(corner);
    for (const Across& across : survey_.across)
      name(across.is, fmt::format("tape across from the {} to the {} wall, {} out",
                                  survey_.walls[across.walls[0]].name,
                                  survey_.walls[across.walls[1]].name, said(across.out)));
    for (const Span& span : survey_.spans) between_marks(span);
    drops(survey_.floor.down, "down from the line to the floor");
    drops(survey_.ceiling, "up from the line to the ceiling");
    return std::move(names_);
  }

 private:
  std::string said(Length length) const { return with_unit(length, rounding_); }
  std::string up(const Height& height) const {
    if (!height.from_line) return said(height.value) + " up";
    const bool above = height.value.mm >= 0;
    return said(above ? height.value : Length{-height.value.mm}) +
           (above ? " above the line" : " below the line");
  }
  std::string from_corner(Length at, bool from_right) const {
    return said(at) + (from_right ? " from the right corner" : " from the corner");
  }

  // The first use of a mark names it.
  void name(const std::string& id, const std::string& words, const Place& place) {
    if (id.empty()) return;
    const std::string line = place.line > 0 ? fmt::format(" (line {})", place.line) : "";
    names_.try_emplace(id, words + line);
  }
  void name(const Readings& readings, const std::string& words) {
    for (std::size_t i = 0; i < readings.size(); ++i)
      name(readings[i].id,
           words + (i == 0   ? std::string()
                    : i == 1 ? ", taken again"
                             : fmt::format(", time {}", i + 1)),
           readings[i].place);
  }

  void on_wall(const Wall& wall) {
    const std::string own = wall.name + " wall, ";
    name(wall.length, own + "length");
    for (const LevelReading& r : wall.levels)
      name(r.gap, own + "level " + from_corner(r.at, r.from_right));
    for (const StraightedgeReading& r : wall.straightedges)
      for (const Station& s : r.gaps)
        name(s.reading, fmt::format("{}straightedge {}, gap {}", own, up(r.height),
                                    from_corner(s.at, r.from_right)));
    for (const PlumbReading& r : wall.plumbs)
      for (const Station& s : r.line)
        name(s.reading, fmt::format("{}plumb line {}, {}", own, from_corner(r.at, r.from_right),
                                    up(s.height)));
    for (const StringReading& r : wall.strings)
      for (const Station& s : r.line)
        name(s.reading,
             fmt::format("{}string {}, {}", own, up(r.height), from_corner(s.at, r.from_right)));
    if (wall.studs) studs(*wall.studs, own);
  }

  void studs(const Studs& studs, const std::string& own) {
    for (const StudFound& stud : studs.found) {
      const Readings& edge = stud.left_edge.empty() ? stud.centre : stud.left_edge;
      if (edge.empty()) continue;
      const std::string words = own + "stud at " + said(edge.front().value);
      name(stud.id, words, stud.place);
      name(stud.left_edge, words + ", its first edge");
      name(stud.right_edge, words + ", its second edge");
      name(stud.centre, words + ", its center");
    }
  }

  void in_corner(const Corner& corner) {
    const std::string &left = survey_.walls[corner.walls[0]].name,
                      &right = survey_.walls[corner.walls[1]].name;
    const std::string own = left + "/" + right + " corner, ";
    for (const Diagonal& d : corner.diagonals) {
      name(d.straight, fmt::format("{}diagonal {} to {}, {}", own, said(d.first.value),
                                   said(d.second.value), up(d.height)));
      name(d.first.id, left + " wall, mark " + from_corner(d.first.value, corner.walls[0] > 0),
           d.first.place);
      name(d.second.id, right + " wall, mark " + from_corner(d.second.value, false),
           d.second.place);
    }
    for (const SquareReading& s : corner.squares)
      name(s.gap, fmt::format("{}framing square, {}", own, up(s.height)));
    for (const AngleReading& a : corner.angles)
      name(a.id, fmt::format("{}angle finder, {}", own, up(a.height)), a.place);
  }

  std::string end_words(const SpanEnd& end) const {
    if (!end.mark.empty()) return end.mark;
    return fmt::format("{} along the {} wall", said(end.along.value), survey_.walls[end.wall].name);
  }
  void between_marks(const Span& span) {
    name(span.is,
         fmt::format("tape from {} to {}", end_words(span.between[0]), end_words(span.between[1])));
    for (const SpanEnd& end : span.between)
      if (end.mark.empty())
        name(end.along.id,
             survey_.walls[end.wall].name + " wall, mark " +
                 from_corner(end.along.value, end.from_right),
             end.along.place);
  }

  void drops(const std::vector<DropReading>& drops, const std::string& what) {
    for (const DropReading& d : drops)
      name(d.drop, fmt::format("{}, {} along the {} wall", what, said(d.along),
                               survey_.walls[d.wall].name));
  }

  const Survey& survey_;
  Rounding rounding_;
  std::map<std::string, std::string> names_;
};

}  // namespace

std::map<std::string, std::string> reading_names(const Survey& survey) {
  return Namer(survey).all();
}

}  // namespace nook
