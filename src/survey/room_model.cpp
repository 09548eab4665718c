// Unknowns and fields of a survey, and the room that a state of them describes.
#include "survey/room_model.h"

#include <cmath>

#include "survey/base_lines.h"
#include "survey/extents.h"
#include "survey/first_values.h"
#include "survey/missing.h"
#include "survey/observations.h"

namespace nook {
namespace {

constexpr double kSlopePrior = 0.005;  // of floor and ceiling, mm per mm. Chosen
constexpr double kLevelRest = 2;       // sd of what is left of floor and ceiling, mm. Chosen
constexpr double kLevelReach = 1000;   // mm. Chosen
constexpr double kWallReach = 400;     // where the file does not say, mm. Chosen

double length_of(const Survey& survey, int wall, const Assumed& assumed) {
  const bool said = !survey.walls[wall].length.empty();
  const auto k = static_cast<std::size_t>(wall);
  if (said || k >= assumed.length.size() || assumed.length[k] <= 0)
    return first_length(survey, wall);
  return assumed.length[k];
}

void add_walls(RoomModel& model, const Assumed& assumed) {
  const Survey& survey = *model.survey;
  const int walls = static_cast<int>(survey.walls.size());
  for (int k = 0; k + 1 < walls; ++k)
    model.angle.push_back(model.add({UnknownKind::angle, k, "", first_angle(survey, k), 0}));
  for (int k = 0; k < walls; ++k) {
    const std::string& name = survey.walls[k].name;
    const bool between = k > 0 && k + 1 < walls;
    const double length = length_of(survey, k, assumed);
    model.assumed_length.push_back(length);
    model.length.push_back(between ? model.add({UnknownKind::length, k, name, length, 0}) : -1);
    model.lean.push_back(model.add({UnknownKind::lean, k, name, 0, kLeanPrior}));
  }
}

int add_slopes(RoomModel& model, UnknownKind kind) {
  const int first = model.add({kind, 0, "", 0, kSlopePrior});
  model.add({kind, 1, "", 0, kSlopePrior});
  return first;
}

void add_levels(RoomModel& model, bool level_line) {
  const Survey& survey = *model.survey;
  model.floor_slope = add_slopes(model, UnknownKind::floor_slope);
  if (level_line || uses_level_line(survey))
    model.line = model.add({UnknownKind::line_height, 0, "", first_line(survey), 0});
  if (survey.ceiling.empty()) return;
  model.ceiling = model.add({UnknownKind::ceiling_height, 0, "", first_ceiling(survey), 0});
  model.ceiling_slope = add_slopes(model, UnknownKind::ceiling_slope);
}

void add_field(RoomModel& model, Extent extent, double reach, double sd) {
  FieldWeights field;
  field.first = model.weights;
  field.sd = sd;
  if (sd > 0) {
    field.basis = std::make_shared<FieldBasis>(extent.low, extent.high, reach);
    model.weights += field.basis->size();
  }
  model.surfaces.push_back(std::move(field));
}

void add_fields(RoomModel& model, double flatness_sd) {
  const Survey& survey = *model.survey;
  const double reach = wall_reach(survey);
  for (int k = 0; k < model.walls(); ++k)
    add_field(model, wall_extent(survey, k, model.assumed_length[k]), reach, flatness_sd);
  const double level_sd = model.walls() > 0 ? kLevelRest : 0;
  add_field(model, level_extent(model), kLevelReach, level_sd);
  if (model.ceiling >= 0) add_field(model, level_extent(model), kLevelReach, level_sd);
}

Field field_of(const FieldWeights& field, const State& state) {
  Field out{field.basis, {}};
  if (!field.basis) return out;
  const std::vector<double>& prior = field.basis->prior_sd();
  out.weights.resize(prior.size());
  for (std::size_t k = 0; k < prior.size(); ++k)
    out.weights[k] = state.weights[field.first + k] * prior[k] * field.sd;
  return out;
}

Vec2 plan(const VariedPoint& p) {
  return {p.x.value, p.y.value};
}

// Half a corner's angle to the left of its first wall, less 45 degrees: alike from either wall.
Vec2 level_axis(const RoomModel& model, const State& state) {
  if (model.corners() == 0) return {1, 0};
  const double turn = state.unknowns[model.angle[model.origin]] / 2 - degrees(45).rad;
  return {std::cos(turn), std::sin(turn)};
}

LevelSurface level_of(const RoomModel& model, const State& state, int surface, int first_slope) {
  LevelSurface out;
  out.field_axis = level_axis(model, state);
  out.field = field_of(model.surfaces[surface], state);
  out.slope = state.unknowns[first_slope] * out.field_axis +
              state.unknowns[first_slope + 1] * left_of(out.field_axis);
  return out;
}

// Mud and the drift of a corner without it, for the walls on either side.
void add_mud(const Corner& corner, double angle, WallShape& left, WallShape& right, bool left_far) {
  if (!corner.buildup) return;
  const double c = std::cos(angle), s = std::sin(angle);
  const double proud = corner.buildup->proud.mm, reach = corner.buildup->reach.mm;
  (left_far ? left.far_buildup_proud : left.buildup_proud) = proud;
  (left_far ? left.far_buildup_reach : left.buildup_reach) = reach;
  (left_far ? left.far_corner_drift : left.corner_drift) = (right.lean + left.lean * c) / s;
  right.buildup_proud = proud;
  right.buildup_reach = reach;
  right.corner_drift = (left.lean + right.lean * c) / s;
}

WallShape wall_of(const RoomModel& model, const State& state, int k, const VariedWall& line) {
  WallShape wall;
  wall.name = model.survey->walls[k].name;
  wall.start = plan(line.start);
  wall.along = plan(line.along);
  wall.out = plan(line.out);
  const bool between = model.length[k] >= 0;
  wall.length = between ? state.unknowns[model.length[k]] : model.assumed_length[k];
  // Between two corners the field is centred, so that it is alike from either of them.
  wall.field_start = (wall.length - model.assumed_length[k]) / 2;
  wall.lean = state.unknowns[model.lean[k]];
  wall.field = field_of(model.surfaces[k], state);
  return wall;
}

}  // namespace

std::vector<int> RoomModel::blocks() const {
  std::vector<int> out;
  for (const FieldWeights& surface : surfaces)
    if (surface.basis) out.push_back(surface.first);
  return out;
}

double wall_reach(const Survey& survey) {
  return survey.flatness.reach ? survey.flatness.reach->mm : kWallReach;
}

int RoomModel::add(Unknown unknown) {
  unknowns.push_back(std::move(unknown));
  return static_cast<int>(unknowns.size()) - 1;
}

RoomModel room_model(std::shared_ptr<const Survey> survey, int origin, double flatness_sd,
                     const Assumed& assumed) {
  RoomModel model;
  model.survey = std::move(survey);
  model.origin = origin;
  model.tape = model.add({UnknownKind::tape, 0, "", 0, 1});
  add_walls(model, assumed);
  add_levels(model, assumed.level_line);
  add_fields(model, flatness_sd);
  add_observations(model);
  return model;
}

void set_flatness(RoomModel& model, double flatness_sd) {
  for (int k = 0; k < model.walls(); ++k) model.surfaces[k].sd = flatness_sd;
}

State first_state(const RoomModel& model) {
  State state;
  for (const Unknown& unknown : model.unknowns) state.unknowns.push_back(unknown.start);
  state.weights.assign(model.weights, 0);
  return state;
}

RoomShape room_shape(const RoomModel& model, const State& state) {
  RoomShape room;
  const std::vector<VariedWall> lines = base_lines(model, state);
  for (int k = 0; k < model.walls(); ++k) room.walls.push_back(wall_of(model, state, k, lines[k]));
  for (const Corner& corner : model.survey->corners) {
    const int k = corner.walls[0];
    add_mud(corner, state.unknowns[model.angle[k]], room.walls[k], room.walls[k + 1], k > 0);
  }
  room.floor = level_of(model, state, model.floor_field(), model.floor_slope);
  if (model.line >= 0) room.line_z = state.unknowns[model.line];
  if (model.ceiling >= 0) {
    room.ceiling = level_of(model, state, model.ceiling_field(), model.ceiling_slope);
    room.ceiling->offset = state.unknowns[model.ceiling];
  }
  return room;
}

}  // namespace nook
