// One function for each kind of reading.
#include "sheet/reading_rows.h"

#include <fmt/format.h>

#include <cmath>

#include "fasten/said.h"

namespace nook {
namespace {

class Rows {
 public:
  Rows(const Survey& survey, const Rounding& rounding) : survey_(survey), rounding_(rounding) {}

  std::vector<ReadingGroup> all() {
    floor();
    for (const Corner& corner : survey_.corners) at(corner);
    for (const Across& across : survey_.across) at(across);
    for (const Wall& wall : survey_.walls) surface(wall);
    for (const Wall& wall : survey_.walls) studs(wall);
    for (const Wall& wall : survey_.walls) obstacles(wall);
    spans();
    drops("Ceiling: from the level line up", survey_.ceiling);
    way_in();
    std::erase_if(groups_, [](const ReadingGroup& g) { return g.rows.empty(); });
    return std::move(groups_);
  }

 private:
  std::string said(Length length) const { return with_unit(length, rounding_); }
  std::string up(const Height& height) const {
    if (!height.from_line) return said(height.value) + " up";
    return said(Length{std::abs(height.value.mm)}) +
           (height.value.mm < 0 ? " below the line" : " above the line");
  }
  // "41 3/8, again 41 7/16"; struck ones say so.
  static std::string read(const Readings& readings) {
    std::string text;
    for (const Reading& r : readings)
      text += (text.empty() ? "" : ", again ") + r.given + (r.struck ? " (struck)" : "") +
              (r.on == Face::baseboard ? " on the baseboard" : "");
    return text;
  }
  std::string wall_name(int wall) const { return survey_.walls[wall].name + " wall"; }

  void group(const std::string& name) {
    if (groups_.empty() || groups_.back().name != name) groups_.push_back({name, {}});
  }
  void row(const std::string& what, const std::string& where, const std::string& value) {
    groups_.back().rows.push_back({what, where, value});
  }

  void drops(const std::string& name, const std::vector<DropReading>& drops) {
    group(name);
    for (const DropReading& d : drops)
      row(name.substr(0, name.find(':')),
          fmt::format("{} along the {}, {} out", said(d.along), wall_name(d.wall), said(d.out)),
          read(d.drop));
  }
  void floor() {
    drops("Floor: from the level line down, as walked on", survey_.floor.down);
    for (const Squash& s : survey_.floor.squash)
      row("Carpet squash",
          fmt::format("{} on a block of {} by {}", load(s.load_n), said(s.on[0]), said(s.on[1])),
          said(s.by));
  }
  std::string load(double newtons) const { return Saying{rounding_.unit}.load(newtons); }

  void at(const Corner& corner) {
    group(fmt::format("Corner of the {} and the {}", wall_name(corner.walls[0]),
                      wall_name(corner.walls[1])));
    for (const Diagonal& d : corner.diagonals)
      row("Diagonal",
          fmt::format("{} on the {} to {} on the {}, {}", said(d.first.value),
                      wall_name(corner.walls[0]), said(d.second.value), wall_name(corner.walls[1]),
                      up(d.height)),
          read(d.straight));
    for (const SquareReading& s : corner.squares)
      row("Framing square",
          fmt::format("{} blade, gap at the {}, {}", said(s.blade), s.gap_at_tip ? "tip" : "heel",
                      up(s.height)),
          read(s.gap));
    for (const AngleReading& a : corner.angles)
      row("Angle finder", fmt::format("{} blade, {}", said(a.blade), up(a.height)),
          a.given + (a.struck ? " (struck)" : ""));
  }
  void at(const Across& across) {
    group(fmt::format("Across from the {} to the {}", wall_name(across.walls[0]),
                      wall_name(across.walls[1])));
    row("Across", fmt::format("{} out, {}", said(across.out), up(across.height)), read(across.is));
  }

  bool between_corners(const Wall& wall) const {
    return &wall != &survey_.walls.front() && &wall != &survey_.walls.back();
  }

  void surface(const Wall& wall) {
    group(wall.name + " wall: length, plumb, flat");
    if (!wall.length.empty())
      row("Length",
          "corner to " + (between_corners(wall)  ? std::string("corner")
                          : wall.ends_at.empty() ? std::string("its far end")
                                                 : wall.ends_at),
          read(wall.length));
    for (const LevelReading& r : wall.levels)
      row("Level held plumb",
          fmt::format("{} along, from {} to {}; gap at the {}", said(r.at), up(r.from), up(r.to),
                      r.gap_at_top ? "top" : "bottom"),
          read(r.gap));
    for (const StraightedgeReading& r : wall.straightedges)
      stations("Straightedge, level", up(r.height), r.gaps);
    for (const PlumbReading& r : wall.plumbs)
      for (const Station& s : r.line)
        row("Plumb line to wall", fmt::format("{} along, {}", said(r.at), up(s.height)),
            read(s.reading));
    for (const StringReading& r : wall.strings) stations("String to wall", up(r.height), r.line);
  }
  void stations(const std::string& what, const std::string& height,
                const std::vector<Station>& line) {
    for (const Station& s : line)
      row(what, fmt::format("{} along, {}", said(s.at), height), read(s.reading));
  }

  void studs(const Wall& wall) {
    if (!wall.studs) return;
    group(wall.name + " wall: studs");
    for (const StudFound& stud : wall.studs->found) {
      const char* by = stud.by == FoundBy::nail     ? "by nail"
                       : stud.by == FoundBy::magnet ? "by magnet"
                                                    : "by finder";
      const std::string where = std::string(by) + (stud.height ? ", " + up(*stud.height) : "");
      if (!stud.centre.empty())
        row("Stud, center", where, read(stud.centre));
      else
        row("Stud, both edges", where, read(stud.left_edge) + " and " + read(stud.right_edge));
    }
  }
  void obstacles(const Wall& wall) {
    group(wall.name + " wall: what is on it");
    if (wall.baseboard)
      row("Baseboard", "height and thickness",
          said(wall.baseboard->height) + " by " + said(wall.baseboard->thickness));
    for (const Obstacle& o : wall.obstacles)
      row(o.name, fmt::format("{} to {} along", said(o.along[0]), said(o.along[1])),
          fmt::format("{} to {}, {} to {} out", up(o.height[0]), up(o.height[1]), said(o.out[0]),
                      said(o.out[1])));
  }

  std::string end_words(const SpanEnd& end) const {
    if (!end.mark.empty()) return end.mark;
    return said(end.along.value) + " along the " + wall_name(end.wall);
  }
  void spans() {
    group("Marks on the floor");
    for (const Span& span : survey_.spans)
      row("Straight tape", end_words(span.between[0]) + " to " + end_words(span.between[1]),
          read(span.is));
  }
  void way_in() {
    group("The way in");
    for (const Doorway& d : survey_.doorways)
      row(d.name, "width and height", said(d.width) + " by " + said(d.height));
    for (const HallTurn& t : survey_.turns)
      row(t.name + ", turn", "from, to, height",
          fmt::format("{}, {}, {}", said(t.from), said(t.to), said(t.height)));
  }

  const Survey& survey_;
  const Rounding& rounding_;
  std::vector<ReadingGroup> groups_;
};

}  // namespace

std::vector<ReadingGroup> readings_in_walking_order(const Survey& survey,
                                                    const Rounding& rounding) {
  return Rows(survey, rounding).all();
}

}  // namespace nook
