// Names what is not determined.
#include "survey/missing.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "room/counted.h"
#include "survey/loose_marks.h"

namespace nook {
namespace {

constexpr int kHeights = 3;      // readings that make a plane
constexpr double kHardly = 0.9;  // of a lean's prior sd: the readings say hardly anything. Chosen

std::string wall(const std::string& name) {
  return "the " + name + " wall";
}

bool last_resort(const RoomModel& model, const Solution& solution, int index) {
  return !solution.linear->determined(index) && model.unknowns[index].prior_sd == 0;
}

std::optional<Missing> said(const RoomModel& model, const Unknown& unknown) {
  const auto& walls = model.survey->walls;
  switch (unknown.kind) {
    case UnknownKind::angle:
      return Missing{"nothing says how " + wall(walls[unknown.of + 1].name) +
                     " stands: take one diagonal across the corner"};
    case UnknownKind::length:
      return Missing{"nothing says how long " + wall(unknown.name) +
                     " is: measure it from corner to corner"};
    case UnknownKind::line_height:
      return Missing{
          "nothing says how high the level line is: measure once from it down to the "
          "floor"};
    case UnknownKind::ceiling_height:
      return Missing{"nothing says how high the ceiling is: measure once from the level line up"};
    default:
      return {};
  }
}

double enough(const Unknown& unknown) {
  constexpr double kAngle = 0.01, kLength = 10, kLean = 0.8;  // rad, mm, of the prior sd. Chosen
  switch (unknown.kind) {
    case UnknownKind::angle:
      return kAngle;
    case UnknownKind::length:
      return kLength;
    case UnknownKind::lean:
      return kLean * unknown.prior_sd;
    default:
      return 0;
  }
}

void add_leans(const RoomModel& model, const Solution& solution, std::vector<Missing>& out) {
  for (const int index : model.lean) {
    Functional lean{std::vector<double>(model.unknowns.size()), std::vector<double>(model.weights)};
    lean.x[index] = 1;
    const Unknown& unknown = model.unknowns[index];
    if (posterior_sd(solution, lean) > kHardly * unknown.prior_sd)
      out.push_back(
          {"nothing says how far " + wall(unknown.name) + " leans: hold a level plumb against it",
           false});
  }
}

std::vector<std::string> loose_in_both(const RoomModel& model, const Solution& solution,
                                       const Solution& sound) {
  std::vector<std::string> loose = loose_marks(model, solution);
  if (loose.empty()) return loose;
  const std::vector<std::string> still = loose_marks(model, sound);
  std::erase_if(loose, [&](const std::string& mark) {
    return std::find(still.begin(), still.end(), mark) == still.end();
  });
  return loose;
}

// Whether a room can look like this: walls that stand, go on from their corner, and are no single
// one. All chosen.
bool can_stand(const RoomShape& room) {
  constexpr double kMostLean = 0.3, kLeastTurn = 0.1;  // 17 degrees; sine of 6
  for (std::size_t w = 0; w < room.walls.size(); ++w) {
    const WallShape& wall = room.walls[w];
    if (!(wall.length > 0) || !std::isfinite(wall.length)) return false;
    if (!(std::abs(wall.lean) < kMostLean)) return false;
    if (w > 0 && !(std::abs(cross(room.walls[w - 1].along, wall.along)) > kLeastTurn)) return false;
  }
  return true;
}

}  // namespace

std::vector<Missing> missing(const RoomModel& model, const Solution& solution,
                             const Solution& sound) {
  std::vector<Missing> out;
  if (model.walls() == 0 && model.observations.empty())
    out.push_back({"nothing is measured yet: 'nookfit survey' asks for one reading after another"});
  for (std::size_t j = 0; j < model.unknowns.size(); ++j)
    if (last_resort(model, solution, static_cast<int>(j)))
      if (auto what = said(model, model.unknowns[j])) out.push_back(*what);
  for (const std::string& mark : loose_in_both(model, solution, sound))
    out.push_back({"nothing says where the mark '" + mark + "' is: take one more tape to it"});
  add_leans(model, solution, out);
  if (!solution.converged && !sound.converged)
    out.push_back(
        {"the readings do not settle on one room: take again those that disagree most, or that few "
         "others check"});
  if (!can_stand(room_shape(model, solution.state)))
    out.push_back({"no room has the readings as they stand: take again those that disagree most"});
  return out;
}

std::vector<Functional> never_missed(const RoomModel& model) {
  std::vector<Functional> out;
  for (std::size_t j = 0; j < model.unknowns.size(); ++j) {
    const double tolerance = enough(model.unknowns[j]);
    if (tolerance <= 0) continue;
    Functional f{std::vector<double>(model.unknowns.size()), std::vector<double>(model.weights)};
    f.x[j] = 1 / tolerance;
    out.push_back(std::move(f));
  }
  return out;
}

namespace {

int used(const std::vector<DropReading>& drops) {
  int count = 0;
  for (const DropReading& d : drops) count += any_counts(d.drop);
  return count;
}

}  // namespace

int missing_drops(const Survey& survey, HeightsWanted wanted) {
  return wanted.floor ? std::max(0, kHeights - used(survey.floor.down)) : 0;
}

int missing_rises(const Survey& survey, HeightsWanted wanted) {
  const int places = wanted.ceiling ? kHeights : wanted.headroom ? 1 : 0;
  return std::max(0, places - used(survey.ceiling));
}

std::vector<Missing> missing_heights(const Survey& survey, HeightsWanted wanted) {
  const auto said = [](int have, const std::string& lies, const std::string& way) {
    const int more = kHeights - have;
    return Missing{
        fmt::format("{} says how {} what stands or hangs: measure {} from the level line in {} "
                    "more place{}",
                    have == 0 ? "nothing" : "too little", lies, way, more, more == 1 ? "" : "s"),
        false};
  };
  std::vector<Missing> out;
  const int floor = used(survey.floor.down), ceiling = used(survey.ceiling);
  if (wanted.floor && floor < kHeights) out.push_back(said(floor, "the floor lies under", "down"));
  if (wanted.ceiling && ceiling < kHeights)
    out.push_back(said(ceiling, "the ceiling lies over", "up"));
  return out;
}

bool lean_known(const WallReport& wall) {
  return wall.lean_mm_per_m.sd <= kHardly * 1000 * kLeanPrior;
}

bool nothing_blocks(const RoomReport& report) {
  return std::none_of(report.missing.begin(), report.missing.end(),
                      [](const Missing& m) { return m.blocks; });
}

}  // namespace nook
