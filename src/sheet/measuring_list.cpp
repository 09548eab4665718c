// One function for each stop of the walk.
#include "sheet/measuring_list.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace nook {
namespace {

// Minutes. Chosen.
constexpr double kLook = 1, kLine = 3, kStud = 1, kObstacles = 2, kWay = 2, kSquash = 2;
constexpr double kUsualSpacing = 406.4;  // mm, 16 in on center (IRC R602.3(5)), where not said

using Kind = NextReading::Kind;

class Stops {
 public:
  Stops(const MeasuringJob& job, const Rounding& rounding) : job_(job), rounding_(rounding) {}

  std::vector<MeasuringStop> all() {
    look();
    line();
    readings("Floor",
             "Hook the tape at the line and read square down to the floor as walked on. The least "
             "of these is the high spot: what stands level stands on it.",
             [](const NextReading& r) { return r.kind == Kind::drop; });
    ceiling();
    for (int k = 0; k + 1 < walls(); ++k) corner(k);
    for (int wall = 0; wall < walls(); ++wall) wall_face(wall);
    readings("Marks", "A straight tape from mark to mark, nothing under it.",
             [](const NextReading& r) { return r.kind == Kind::span; });
    studs();
    obstacles();
    way_in();
    std::erase_if(stops_, [](const MeasuringStop& stop) { return stop.steps.empty(); });
    return std::move(stops_);
  }

 private:
  int walls() const { return static_cast<int>(job_.survey.walls.size()); }
  const std::string& name(int wall) const { return job_.survey.walls[wall].name; }
  std::string said(double mm) const { return with_unit(millimetres(mm), rounding_); }

  // The walls that the design meets; all of them without a design.
  bool meets(int wall) const {
    if (!job_.design) return true;
    const auto here = [&](const auto& how) { return wall_named(how) == name(wall); };
    const Design& design = *job_.design;
    return std::any_of(design.contacts.begin(), design.contacts.end(),
                       [&](const Contact& c) { return here(c.meets); }) ||
           std::any_of(design.fastenings.begin(), design.fastenings.end(),
                       [&](const Fastening& f) { return here(f.to); });
  }

  void stop(const std::string& name, const std::string& how) { stops_.push_back({name, how, {}}); }
  void step(const std::string& what, double minutes, bool needed = false) {
    stops_.back().steps.push_back({what, minutes, needed, false, false, 0, 0});
  }

  void step(const PlannedReading& planned) {
    stops_.back().steps.push_back({planned.reading.reading, planned.minutes, true, true,
                                   planned.twice, planned.reading.gain, planned.numbers});
  }

  template <class Mine>
  void readings(const std::string& name, const std::string& how, const Mine& mine) {
    stop(name, how);
    for (const PlannedReading& planned : job_.plan.readings)
      if (mine(planned.reading)) step(planned);
  }

  void ceiling() {
    stop("Ceiling", "Read square up from the line to the ceiling.");
    for (const PlannedReading& planned : job_.plan.ceiling) step(planned);
  }

  void look() {
    stop("Look and list", "");
    for (int wall = 0; wall < walls(); ++wall)
      if (meets(wall) && !job_.survey.walls[wall].baseboard)
        step(fmt::format("baseboard on the {} wall: height, thickness, shoe, where it stops (or "
                         "none)",
                         name(wall)),
             kLook);
    const Floor& floor = job_.survey.floor;
    const bool stands = job_.design && !job_.design->feet.empty();
    if (!floor.covering) step("what lies on the floor, and how thick it is", kLook);
    const bool soft = !floor.covering || floor.covering->kind == "carpet";
    if (stands && soft && floor.squash.empty())
      step("carpet: stand on a block as large as a foot; how far it sinks, and your weight",
           kSquash);
  }

  void line() {
    const auto drop = [](const PlannedReading& p) { return p.reading.kind == Kind::drop; };
    stop("Level line", "");
    const bool needed = !job_.plan.ceiling.empty() ||
                        std::any_of(job_.plan.readings.begin(), job_.plan.readings.end(), drop);
    if (needed && job_.survey.floor.down.empty() && job_.survey.ceiling.empty())
      step(fmt::format("strike it around the walls about {} up, by laser, water or a long level: "
                       "everything level is counted from it",
                       said(rounding_.unit == Unit::inch ? 1016 : 1000)),
           kLine);
  }

  void corner(int k) {
    readings(fmt::format("Corner of the {} and the {} wall", name(k), name(k + 1)),
             "Lay both marks off from the corner at the height said, best with a block in the "
             "corner; then a straight tape from mark to mark.",
             [&](const NextReading& r) {
               return (r.kind == Kind::diagonal || r.kind == Kind::other) && r.of == k;
             });
  }

  void wall_face(int wall) {
    readings(fmt::format("The {} wall", name(wall)),
             "Level: bubble centered, one end touching; read the gap at the other end and say "
             "which. Lines: read square from the line to the wall.",
             [&](const NextReading& r) {
               const bool here = r.kind == Kind::level || r.kind == Kind::straightedge ||
                                 r.kind == Kind::plumb || r.kind == Kind::string ||
                                 r.kind == Kind::length;
               return here && r.of == wall;
             });
  }

  // Nailed edges behind a piece that are known already.
  int nailed(const StudsWanted& wanted) const {
    const auto& studs = job_.survey.walls[wanted.wall].studs;
    if (!studs) return 0;
    int count = 0;
    for (const StudFound& stud : studs->found) {
      if (stud.by != FoundBy::nail || stud.left_edge.empty()) continue;
      const double at = stud.left_edge.front().value.mm;
      count += at > wanted.from && at < wanted.to;
    }
    return count;
  }

  double spacing(int wall) const {
    const auto& studs = job_.survey.walls[wall].studs;
    return studs && studs->spacing ? studs->spacing->mm : kUsualSpacing;
  }

  void studs() {
    stop("Studs",
         "Find them, then tap a fine nail along until it misses: both edges, where the piece will "
         "hide the holes.");
    std::set<std::string> told;
    for (const StudsWanted& wanted : job_.studs) {
      const double span = wanted.to - wanted.from;
      const int behind = static_cast<int>(span / spacing(wanted.wall)), known = nailed(wanted);
      if (known >= std::max(1, behind) || !told.insert(wanted.part).second) continue;
      step(
          fmt::format("behind the {}: studs of the {} wall from {} to {} along, {} up", wanted.part,
                      name(wanted.wall), said(wanted.from), said(wanted.to), said(wanted.height)),
          kStud * (behind + 1 - known), true);
    }
  }

  void obstacles() {
    stop("Obstacles", "From and to along the wall, from and to above the floor, how far out.");
    for (int wall = 0; wall < walls(); ++wall)
      if (meets(wall) && job_.survey.walls[wall].obstacles.empty())
        step(fmt::format("outlets, switches, vents, pipes, casings, sills on the {} wall (or none)",
                         name(wall)),
             kObstacles);
  }

  void way_in() {
    stop("The way in", "");
    if (job_.survey.doorways.empty() && job_.survey.turns.empty())
      step("each door: clear width, height; each turn of a hall: width before, width after, height",
           kWay);
  }

  const MeasuringJob& job_;
  const Rounding& rounding_;
  std::vector<MeasuringStop> stops_;
};

}  // namespace

std::vector<MeasuringStop> measuring_stops(const MeasuringJob& job, const Rounding& rounding) {
  return Stops(job, rounding).all();
}

double minutes_of(const std::vector<MeasuringStop>& stops) {
  double minutes = 0;
  for (const MeasuringStop& stop : stops)
    for (const MeasuringStep& step : stop.steps) minutes += step.minutes;
  return minutes;
}

}  // namespace nook
