// Pathwise draws through the symmetric square root of the posterior covariance.
#include "survey/draw.h"

#include <Eigen/Dense>
#include <map>

#include "base/splitmix.h"
#include "survey/quantiles.h"

namespace nook {
namespace {

using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;

// One number of the state as the generator knows it: what it belongs to and which it is.
struct Key {
  std::uint64_t block, of, x, y;
};
// As drawn for the room itself, and for its mirror image: another number of it, perhaps negated.
struct Seat {
  Key own, mirrored;
  double sign = 1;
};

std::uint64_t place_of(const Key& key) {
  return split_mixed(key.block << 48 ^ key.of << 40 ^ key.x << 20 ^ key.y);
}

// N(0, 1), the same on every machine.
double normal(std::uint64_t stream, std::uint64_t place) {
  const std::uint64_t bits = split_mixed(stream ^ place);
  return normal_quantile((static_cast<double>(bits >> 11) + 0.5) * 0x1p-53);
}

// Blocks of keys: the kinds of unknowns, then the fields.
constexpr std::uint64_t kFieldBlock = 100;

Seat seat_of(const RoomModel& model, const Unknown& unknown) {
  const auto block = static_cast<std::uint64_t>(unknown.kind);
  int other = unknown.of;
  switch (unknown.kind) {
    case UnknownKind::angle:
      other = model.corners() - 1 - unknown.of;
      break;
    case UnknownKind::length:
    case UnknownKind::lean:
      other = model.walls() - 1 - unknown.of;
      break;
    case UnknownKind::floor_slope:
    case UnknownKind::ceiling_slope:
      other = 1 - unknown.of;
      break;
    default:
      break;
  }
  const auto of = static_cast<std::uint64_t>(unknown.of);
  return {{block, of, 0, 0}, {block, static_cast<std::uint64_t>(other), 0, 0}};
}

// A wall counts from a corner: only one between two corners is turned end for end in a mirror.
// Floor and ceiling swap their axes.
Seat seat_of(const RoomModel& model, int surface, FieldBasis::Mode mode) {
  const auto x = static_cast<std::uint64_t>(mode.x), y = static_cast<std::uint64_t>(mode.y);
  const auto of = static_cast<std::uint64_t>(surface);
  if (surface >= model.walls()) {
    const std::uint64_t block = kFieldBlock + 1 + of - static_cast<std::uint64_t>(model.walls());
    return {{block, 0, x, y}, {block, 0, y, x}};
  }
  const auto other = static_cast<std::uint64_t>(model.walls() - 1 - surface);
  const bool turned = model.length[surface] >= 0 && mode.x % 2 == 1;
  return {{kFieldBlock, of, x, y}, {kFieldBlock, other, x, y}, turned ? -1.0 : 1.0};
}

// Which unknowns have priors, and which free ones make up the room.
struct Parting {
  std::vector<int> prior, free, shape;  // shape: places in `free`
};
Parting parting(const RoomModel& model, const Solution& solution) {
  Parting out;
  for (int j = 0; j < static_cast<int>(model.unknowns.size()); ++j) {
    const Unknown& unknown = model.unknowns[j];
    if (unknown.prior_sd > 0) {
      out.prior.push_back(j);
      continue;
    }
    const bool shapes = unknown.kind == UnknownKind::angle || unknown.kind == UnknownKind::length ||
                        unknown.kind == UnknownKind::line_height ||
                        unknown.kind == UnknownKind::ceiling_height;
    if (shapes && solution.linear->determined(j))
      out.shape.push_back(static_cast<int>(out.free.size()));
    out.free.push_back(j);
  }
  return out;
}

std::vector<Seat> prior_seats(const RoomModel& model, const Parting& parts) {
  std::vector<Seat> seats;
  for (const int j : parts.prior) seats.push_back(seat_of(model, model.unknowns[j]));
  for (int s = 0; s < static_cast<int>(model.surfaces.size()); ++s)
    if (const auto& basis = model.surfaces[s].basis)
      for (int k = 0; k < basis->size(); ++k) seats.push_back(seat_of(model, s, basis->mode(k)));
  return seats;
}

// Where the numbers of a seat come from.
struct Source {
  std::uint64_t own, mirrored;
  Eigen::Index other;  // the seat that draws the mirrored number; -1 = none
  double sign;
};
std::vector<Source> sources(const std::vector<Seat>& seats) {
  std::map<std::uint64_t, Eigen::Index> seat_at;
  for (std::size_t i = 0; i < seats.size(); ++i)
    seat_at.emplace(place_of(seats[i].own), static_cast<Eigen::Index>(i));
  std::vector<Source> out;
  for (const Seat& seat : seats) {
    const std::uint64_t mirrored = place_of(seat.mirrored);
    const auto other = seat_at.find(mirrored);
    out.push_back(
        {place_of(seat.own), mirrored, other == seat_at.end() ? -1 : other->second, seat.sign});
  }
  return out;
}

// Two columns a draw: for the room itself and for its mirror image, which mostly has the numbers of
// another seat.
Matrix normals(const std::vector<Seat>& seats, int draws, std::uint64_t seed) {
  const std::vector<Source> from = sources(seats);
  const auto count = static_cast<Eigen::Index>(seats.size());
  Matrix out(count, 2 * draws);
  for (int d = 0; d < draws; ++d) {
    const std::uint64_t stream = split_mixed(split_mixed(seed) + static_cast<std::uint64_t>(d));
    auto own = out.col(2 * d), mirrored = out.col(2 * d + 1);
    for (Eigen::Index i = 0; i < count; ++i) own[i] = normal(stream, from[i].own);
    for (Eigen::Index i = 0; i < count; ++i)
      mirrored[i] = from[i].sign *
                    (from[i].other >= 0 ? own[from[i].other] : normal(stream, from[i].mirrored));
  }
  return out;
}

// Readings over their sd: by unknowns and weights with priors (scaled to N(0, 1)), and by free
// ones.
struct Sides {
  Matrix prior, free;
};
Sides sides(const RoomModel& model, const Linearized& problem, const Parting& parts) {
  const int n = problem.linear.design.rows;
  const auto priors = static_cast<Eigen::Index>(parts.prior.size());
  Sides out{Matrix(n, priors + model.weights), Matrix(n, parts.free.size())};
  for (int i = 0; i < n; ++i) {
    const double sd = problem.linear.sd[i];
    for (Eigen::Index j = 0; j < priors; ++j) {
      const int unknown = parts.prior[j];
      out.prior(i, j) = problem.linear.design(i, unknown) * model.unknowns[unknown].prior_sd / sd;
    }
    for (int k = 0; k < model.weights; ++k) out.prior(i, priors + k) = problem.field(i, k);
    for (std::size_t j = 0; j < parts.free.size(); ++j)
      out.free(i, static_cast<Eigen::Index>(j)) = problem.linear.design(i, parts.free[j]) / sd;
  }
  return out;
}

// (I + B' B)^(-1/2) X, through the smaller of B B' and B' B.
Matrix square_root_times(const Matrix& b, const Matrix& x) {
  if (b.size() == 0) return x;
  if (b.rows() > b.cols()) {
    const Eigen::SelfAdjointEigenSolver<Matrix> eigen(b.transpose() * b);
    const Vector root = (eigen.eigenvalues().array().max(0) + 1).rsqrt();
    return eigen.eigenvectors() * root.asDiagonal() * (eigen.eigenvectors().transpose() * x);
  }
  const Eigen::SelfAdjointEigenSolver<Matrix> eigen(b * b.transpose());
  Vector taken = eigen.eigenvalues().cwiseMax(0.0);
  // (1 - 1 / sqrt(1 + s)) / s, without cancellation.
  for (double& s : taken) s = 1 / (std::sqrt(1 + s) * (std::sqrt(1 + s) + 1));
  const Matrix& u = eigen.eigenvectors();
  return x - b.transpose() * (u * (taken.asDiagonal() * (u.transpose() * (b * x))));
}

// Free unknowns given the rest: least squares on what the rest leaves.
struct Free {
  Matrix left;   // B less what the free unknowns take, turned
  Matrix shift;  // change of the shape with the rest
  Matrix root;   // symmetric root of the shape's covariance, given the rest
};
// Least squares on the free unknowns, columns scaled, unseen directions held (their rows last).
Matrix held(const Matrix& free, const Dense& unseen, const Parting& parts) {
  const Eigen::Index n = free.rows(), m = free.cols();
  Matrix out = Matrix::Zero(std::max<Eigen::Index>(n + unseen.cols, m), m);
  out.topRows(n) = free;
  for (Eigen::Index j = 0; j < m; ++j)
    for (int k = 0; k < unseen.cols; ++k) out(n + k, j) = unseen(parts.free[j], k);
  return out;
}

Free free_part(const Sides& sides, const Dense& unseen, const Parting& parts) {
  const Eigen::Index n = sides.free.rows(), m = sides.free.cols();
  const auto shapes = static_cast<Eigen::Index>(parts.shape.size());
  if (m == 0) return {sides.prior, Matrix(0, sides.prior.cols()), Matrix(0, 0)};
  Vector scale = sides.free.colwise().norm().transpose();
  for (double& s : scale) s = s > 0 ? 1 / s : 1;
  const Eigen::HouseholderQR<Matrix> qr(held(sides.free * scale.asDiagonal(), unseen, parts));
  Matrix prior = Matrix::Zero(qr.rows(), sides.prior.cols());
  prior.topRows(n) = sides.prior;
  prior.applyOnTheLeft(qr.householderQ().adjoint());
  Free out;
  out.left = prior.bottomRows(qr.rows() - m);
  if (shapes == 0) return out;
  // Rows of R^-1 for the shape: what they take of Q' B, and their covariance.
  Matrix rows = Matrix::Zero(m, shapes);
  for (Eigen::Index i = 0; i < shapes; ++i) rows(parts.shape[i], i) = scale[parts.shape[i]];
  qr.matrixQR().topRows(m).triangularView<Eigen::Upper>().transpose().solveInPlace(rows);
  out.shift = -rows.transpose() * prior.topRows(m);
  out.root = Eigen::SelfAdjointEigenSolver<Matrix>(rows.transpose() * rows).operatorSqrt();
  return out;
}

std::vector<Seat> shape_seats(const RoomModel& model, const Parting& parts) {
  std::vector<Seat> seats;
  for (const int j : parts.shape) seats.push_back(seat_of(model, model.unknowns[parts.free[j]]));
  return seats;
}

State moved(const RoomModel& model, const Parting& parts, const State& from, const Vector& prior,
            const Vector& shape) {
  State to = from;
  const auto priors = static_cast<Eigen::Index>(parts.prior.size());
  for (Eigen::Index j = 0; j < priors; ++j)
    to.unknowns[parts.prior[j]] += prior[j] * model.unknowns[parts.prior[j]].prior_sd;
  for (int k = 0; k < model.weights; ++k) to.weights[k] += prior[priors + k];
  for (std::size_t i = 0; i < parts.shape.size(); ++i)
    to.unknowns[parts.free[parts.shape[i]]] += shape[static_cast<Eigen::Index>(i)];
  return to;
}

}  // namespace

std::vector<RoomShape> draw_rooms(const RoomModel& model, const Solution& solution, int count,
                                  std::uint64_t seed) {
  const Parting parts = parting(model, solution);
  const Linearized problem = linearized(model, solution.rows, solution.state, Fields::taken);
  const Sides both = sides(model, problem, parts);
  const Free free = free_part(both, solution.linear->unseen(), parts);
  const int draws = (count + 3) / 4;
  const Matrix prior =
      square_root_times(free.left, normals(prior_seats(model, parts), draws, seed));
  Matrix shape(static_cast<Eigen::Index>(parts.shape.size()), prior.cols());
  if (shape.rows() > 0)
    shape = free.shift * prior + free.root * normals(shape_seats(model, parts), draws, seed);
  std::vector<RoomShape> rooms;
  rooms.reserve(static_cast<std::size_t>(count));
  for (Eigen::Index column = 0; column < prior.cols(); ++column)
    for (const double sign : {1.0, -1.0})
      if (static_cast<int>(rooms.size()) < count)
        rooms.push_back(
            room_shape(model, moved(model, parts, solution.state, sign * prior.col(column),
                                    sign * shape.col(column))));
  return rooms;
}

}  // namespace nook
