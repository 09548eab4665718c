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

// The adjusted field's weights, then those of each draw, one a column.
Matrix weights_of(const RoomShape& adjusted, const std::vector<RoomShape>& draws, Surface surface) {
  const Field& first = *field_of(draws[0], surface);
  Matrix weights(first.basis->size(), 1 + draws.size());
  const auto fill = [&](Eigen::Index column, const Field& field) {
    require(field.basis == first.basis, "all draws of a surface share their functions");
    weights.col(column) = Eigen::Map<const Eigen::VectorXd>(field.weights.data(), weights.rows());
  };
  const Field* middle = field_of(adjusted, surface);
  if (middle && middle->basis == first.basis)
    fill(0, *middle);
  else
    weights.col(0).setZero();
  for (std::size_t r = 0; r < draws.size(); ++r)
    fill(1 + static_cast<Eigen::Index>(r), *field_of(draws[r], surface));
  return weights;
}

// Whether each second draw is the one before turned about the adjusted room.
bool in_pairs(const Matrix& weights) {
  constexpr double kSame = 1e-12;
  if (weights.cols() % 2 == 0) return false;
  for (Eigen::Index c = 1; c < weights.cols(); c += 2)
    if ((weights.col(c) + weights.col(c + 1) - 2 * weights.col(0)).cwiseAbs().maxCoeff() >
        kSame * weights.col(0).cwiseAbs().maxCoeff() + kSame)
      return false;
  return true;
}

// The field at each spot (functions: one column a spot), one column a draw.
Matrix heights(const Matrix& functions, const Matrix& weights) {
  const Eigen::Index draws = weights.cols() - 1;
  if (!in_pairs(weights)) return functions.transpose() * weights.rightCols(draws);
  Matrix halves(weights.rows(), 1 + draws / 2);
  halves.col(0) = weights.col(0);
  for (Eigen::Index k = 0; 2 * k < draws; ++k) halves.col(1 + k) = weights.col(1 + 2 * k);
  const Matrix half = functions.transpose() * halves;
  Matrix out(half.rows(), draws);
  for (Eigen::Index k = 0; 2 * k < draws; ++k) {
    out.col(2 * k) = half.col(1 + k);
    out.col(2 * k + 1) = 2 * half.col(0) - half.col(1 + k);
  }
  return out;
}

}  // namespace

void SurfaceField::fill_surface(Surface surface, const std::vector<int>& spots) {
  const Field* first = draws_.empty() ? nullptr : field_of(draws_[0], surface);
  if (spots.empty() || !first || !first->basis) return;
  std::vector<Vec2> at;
  for (int s : spots) at.push_back(spots_[s].at);
  const Matrix values =
      heights(functions_at(*first->basis, at, level(surface)), weights_of(room_, draws_, surface));
  for (std::size_t r = 0; r < draws_.size(); ++r)
    for (std::size_t i = 0; i < spots.size(); ++i)
      drawn_[spots_[spots[i]].row + static_cast<long>(r) * rows_] = values(i, r);
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
