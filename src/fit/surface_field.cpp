// One matrix product per surface: functions at the spots times the weights of all draws, of half
// of them where they come in pairs.
#include "fit/surface_field.h"

#include <Eigen/Dense>

#include "base/invariant.h"

namespace nook {
namespace {

const Field* field_of(const RoomShape& room, Surface surface) {
  switch (surface.kind) {
    case Surface::Kind::wall:
      return &room.walls[surface.wall].field;
    case Surface::Kind::floor:
      return &room.floor.field;
    case Surface::Kind::ceiling:
      return room.ceiling ? &room.ceiling->field : nullptr;
    case Surface::Kind::part:
      break;
  }
  return nullptr;
}

bool level(Surface surface) {
  return surface.kind != Surface::Kind::wall;
}

using Matrix = Eigen::MatrixXd;

// Functions of the basis at each spot, one row a spot; on level surfaces less those at the origin.
Matrix functions_at(const FieldBasis& basis, const std::vector<Vec2>& at, bool less_origin) {
  Matrix rows(basis.size(), at.size());  // columns are contiguous: transposed at use
  const Eigen::VectorXd origin =
      less_origin ? Eigen::Map<const Eigen::VectorXd>(basis.values({0, 0}).data(), basis.size())
                  : Eigen::VectorXd::Zero(basis.size()).eval();
  for (std::size_t i = 0; i < at.size(); ++i) {
    const std::vector<double> values = basis.values(at[i]);
    rows.col(i) = Eigen::Map<const Eigen::VectorXd>(values.data(), basis.size()) - origin;
  }
  return rows;
}

}  // namespace

double field_height(const RoomShape& room, Surface surface, Vec2 at) {
  const Field* field = field_of(room, surface);
  if (!field) return 0;
  return field->at(at) - (level(surface) ? field->at({0, 0}) : 0);
}

int SurfaceField::add(Surface surface, Vec2 at, bool in_draws) {
  spots_.push_back({surface, at, field_height(room_, surface, at), in_draws ? rows_++ : -1});
  return static_cast<int>(spots_.size()) - 1;
}

namespace {

using Weights = Eigen::Map<const Eigen::VectorXd>;
Weights weights_of(const Field& field) {
  return {field.weights.data(), static_cast<Eigen::Index>(field.weights.size())};
}

// The field of a surface in the adjusted room (zero where it has other functions) and in the draws.
struct Drawn {
  Eigen::VectorXd adjusted;
  std::vector<const Field*> draws;
};
Drawn drawn_of(const RoomShape& adjusted, const std::vector<RoomShape>& draws, Surface surface) {
  Drawn drawn;
  for (const RoomShape& draw : draws) drawn.draws.push_back(field_of(draw, surface));
  const Field& first = *drawn.draws.front();
  for (const Field* field : drawn.draws)
    require(field->basis == first.basis, "all draws of a surface share their functions");
  const Field* middle = field_of(adjusted, surface);
  const bool same = middle && middle->basis == first.basis;
  drawn.adjusted = same ? Eigen::VectorXd(weights_of(*middle))
                        : Eigen::VectorXd::Zero(weights_of(first).size()).eval();
  return drawn;
}

// Whether each second draw is the one before turned about the adjusted room.
bool in_pairs(const Drawn& drawn) {
  constexpr double kSame = 1e-12;
  if (drawn.draws.size() % 2 == 1) return false;
  const double limit = kSame * drawn.adjusted.cwiseAbs().maxCoeff() + kSame;
  for (std::size_t r = 0; r < drawn.draws.size(); r += 2) {
    const Weights one = weights_of(*drawn.draws[r]), other = weights_of(*drawn.draws[r + 1]);
    if ((one + other - 2 * drawn.adjusted).cwiseAbs().maxCoeff() > limit) return false;
  }
  return true;
}

// The weights of the adjusted room, then those of every `step`th draw, one a column.
Matrix columns_of(const Drawn& drawn, std::size_t step) {
  Matrix weights(drawn.adjusted.size(), 1 + drawn.draws.size() / step);
  weights.col(0) = drawn.adjusted;
  for (std::size_t r = 0; r < drawn.draws.size(); r += step)
    weights.col(1 + static_cast<Eigen::Index>(r / step)) = weights_of(*drawn.draws[r]);
  return weights;
}

}  // namespace

void SurfaceField::fill_surface(Surface surface, const std::vector<int>& spots) {
  const Field* first = draws_.empty() ? nullptr : field_of(draws_[0], surface);
  if (spots.empty() || !first || !first->basis) return;
  std::vector<Vec2> at;
  for (int s : spots) at.push_back(spots_[s].at);
  const Drawn drawn = drawn_of(room_, draws_, surface);
  const std::size_t step = in_pairs(drawn) ? 2 : 1;
  const Matrix heights =
      functions_at(*first->basis, at, level(surface)).transpose() * columns_of(drawn, step);
  for (std::size_t r = 0; r < draws_.size(); r += step)
    for (std::size_t i = 0; i < spots.size(); ++i) {
      double* const value = &drawn_[spots_[spots[i]].row + static_cast<long>(r) * rows_];
      const auto spot = static_cast<Eigen::Index>(i);
      value[0] = heights(spot, 1 + static_cast<Eigen::Index>(r / step));
      if (step == 2) value[rows_] = 2 * heights(spot, 0) - value[0];
    }
}

void SurfaceField::fill_draws() {
  drawn_.assign(rows_ * static_cast<long>(draws_.size()), 0.0);
  std::vector<Surface> surfaces;
  for (int w = 0; w < static_cast<int>(room_.walls.size()); ++w)
    surfaces.push_back({Surface::Kind::wall, w});
  surfaces.push_back({Surface::Kind::floor, 0});
  surfaces.push_back({Surface::Kind::ceiling, 0});
  for (Surface surface : surfaces) {
    std::vector<int> spots;
    for (int s = 0; s < static_cast<int>(spots_.size()); ++s)
      if (spots_[s].surface == surface && spots_[s].row >= 0) spots.push_back(s);
    fill_surface(surface, spots);
  }
}

}  // namespace nook
