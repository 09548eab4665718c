// Solved by QR after whitening: accurate also where some readings are exact.
#include "survey/least_squares.h"

#include <Eigen/Dense>
#include <cmath>

#include "base/invariant.h"

namespace nook {
namespace {

using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;
using RowMajor = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

// Columns of unit length that are this near to depending on others are taken to do so. Chosen:
// well above rounding (1e-15 times the longest chain), well below the weakest real geometry.
constexpr double kDependent = 1e-9;
constexpr double kUnseen = 1e-6;  // share of a functional in an unseen direction. Chosen

Matrix matrix(const Dense& t) {
  return Eigen::Map<const RowMajor>(t.cells.data(), t.rows, t.cols);
}
Dense dense(const Matrix& m) {
  Dense t(static_cast<int>(m.rows()), static_cast<int>(m.cols()));
  Eigen::Map<RowMajor>(t.cells.data(), t.rows, t.cols) = m;
  return t;
}
std::vector<double> plain(const Vector& v) {
  return {v.data(), v.data() + v.size()};
}
Vector vector(const std::vector<double>& v) {
  return Eigen::Map<const Vector>(v.data(), static_cast<Eigen::Index>(v.size()));
}

// Adds `by` X' X to the lower half.
void add_square(Matrix& to, const Matrix& x, double by) {
  if (x.rows() > 0) to.selfadjointView<Eigen::Lower>().rankUpdate(x.transpose(), by);
}

Vector column_scale(const Matrix& design) {
  Vector scale = design.colwise().norm().transpose();
  for (double& s : scale) s = s > 0 ? 1 / s : 1;
  return scale;
}

// Orthonormal null space of the columns `free` of `design`, in the space of all columns.
Matrix null_space(const Matrix& design, const std::vector<int>& free) {
  const auto count = static_cast<Eigen::Index>(free.size());
  if (count == 0) return Matrix(design.cols(), 0);
  Matrix columns(design.rows(), count);
  for (Eigen::Index j = 0; j < count; ++j) columns.col(j) = design.col(free[j]);
  Eigen::ColPivHouseholderQR<Matrix> qr(columns);
  qr.setThreshold(kDependent);
  const Eigen::Index rank = qr.rank(), defect = count - rank;
  Matrix out = Matrix::Zero(design.cols(), defect);
  if (defect == 0) return out;
  Matrix kernel(count, defect);
  const Matrix head = qr.matrixR().topLeftCorner(rank, rank);
  kernel << -head.triangularView<Eigen::Upper>().solve(qr.matrixR().topRightCorner(rank, defect)),
      Matrix::Identity(defect, defect);
  kernel = qr.colsPermutation() * kernel;
  kernel = Eigen::HouseholderQR<Matrix>(kernel).householderQ() * Matrix::Identity(count, defect);
  for (Eigen::Index j = 0; j < count; ++j) out.row(free[j]) = kernel.row(j);
  return out;
}

}  // namespace

struct LeastSquares::Parts {
  std::shared_ptr<const Whitening> whitening;
  Vector sd, scale;    // of readings; of columns
  Matrix design;       // rows over sd, columns times scale
  Matrix half_design;  // whitened
  Matrix kernel;       // unseen directions, scaled columns
  Dense unseen;
  Matrix root;  // upper triangular, root' root = N in scaled columns, kernel added
  int free = 0;
  double chi2 = 0, log_det = 0;
  Vector solved;  // V^-1 (misfit - design x) over sd
  std::vector<double> x, w, error;
};

namespace {

using Parts = LeastSquares::Parts;

Parts scaled(const Linear& linear) {
  Parts p;
  p.sd = vector(linear.sd);
  p.design = p.sd.cwiseInverse().asDiagonal() * matrix(linear.design);
  p.scale = column_scale(p.design);
  p.design = p.design * p.scale.asDiagonal();
  return p;
}

std::vector<int> free_columns(const Linear& linear) {
  std::vector<int> free;
  for (int j = 0; j < linear.design.cols; ++j)
    if (linear.prior_sd[j] == 0) free.push_back(j);
  return free;
}

// Whitened readings, then priors, then unseen directions held where they are; right side last.
Matrix stacked(const Parts& p, const Linear& linear, const Matrix& half_misfit) {
  const Eigen::Index rows = p.half_design.rows(), m = p.design.cols(), defect = p.kernel.cols();
  const Eigen::Index priors = m - p.free;
  Matrix out = Matrix::Zero(std::max(rows + priors + defect, m), m + 1);
  out.topLeftCorner(rows, m) = p.half_design;
  out.topRightCorner(rows, 1) = half_misfit;
  Eigen::Index at = rows;
  for (Eigen::Index j = 0; j < m; ++j) {
    if (linear.prior_sd[j] == 0) continue;
    out(at, j) = p.scale[j] / linear.prior_sd[j];
    out(at++, m) = linear.prior_mean[j] / linear.prior_sd[j];
  }
  out.block(at, 0, defect, m) = p.kernel.transpose();
  return out;
}

Vector whitened(const Parts& p, const Vector& v) {
  return matrix(p.whitening->solve(dense(v)));
}

void solve(Parts& p, const Linear& linear) {
  const Vector misfit = vector(linear.misfit).cwiseQuotient(p.sd);
  const Eigen::Index m = p.design.cols();
  const Matrix half_misfit = matrix(p.whitening->half(dense(misfit)));
  const Eigen::HouseholderQR<Matrix> qr(stacked(p, linear, half_misfit));
  const Matrix upper =
      qr.matrixQR().topRows(std::min(qr.rows(), m + 1)).template triangularView<Eigen::Upper>();
  p.root = upper.topLeftCorner(m, m);
  const Vector step = p.root.triangularView<Eigen::Upper>().solve(upper.topRightCorner(m, 1));
  p.x = plain(p.scale.cwiseProduct(step));
  p.solved = whitened(p, misfit - p.design * step);
  p.w = plain(matrix(p.whitening->transposed_times(dense(p.solved))));
  p.error = plain(p.solved.cwiseProduct(p.sd));
  p.chi2 = qr.rows() > m ? upper(m, m) * upper(m, m) : 0;
  p.log_det = 2 * p.root.diagonal().array().abs().log().sum() - 2 * p.scale.array().log().sum();
}

}  // namespace

LeastSquares::LeastSquares(const Linear& linear, std::shared_ptr<const Whitening> whitening,
                           bool all_seen)
    : parts_(std::make_unique<Parts>(scaled(linear))) {
  Parts& p = *parts_;
  p.whitening = std::move(whitening);
  const std::vector<int> free = free_columns(linear);
  p.free = static_cast<int>(free.size());
  p.kernel = all_seen ? Matrix(p.design.cols(), 0) : null_space(p.design, free);
  p.unseen = dense(p.kernel);
  p.half_design = matrix(p.whitening->half(dense(p.design)));
  solve(p, linear);
}

LeastSquares::Step LeastSquares::step(const Linear& linear) const {
  const Parts& p = *parts_;
  const Vector misfit = vector(linear.misfit).cwiseQuotient(p.sd);
  const Matrix design = p.sd.cwiseInverse().asDiagonal() * matrix(linear.design);
  Vector right = p.scale.cwiseProduct(design.transpose() * whitened(p, misfit));
  for (std::size_t j = 0; j < linear.prior_sd.size(); ++j)
    if (const double sd = linear.prior_sd[j]; sd > 0)
      right[static_cast<Eigen::Index>(j)] +=
          p.scale[static_cast<Eigen::Index>(j)] * linear.prior_mean[j] / (sd * sd);
  const auto root = p.root.triangularView<Eigen::Upper>();
  const Vector x = p.scale.cwiseProduct(
      root.solve(p.root.transpose().triangularView<Eigen::Lower>().solve(right)));
  const Vector left = whitened(p, misfit - design * x);
  return {plain(x), plain(matrix(p.whitening->transposed_times(dense(left))))};
}

LeastSquares::~LeastSquares() = default;
LeastSquares::LeastSquares(LeastSquares&&) noexcept = default;

const std::vector<double>& LeastSquares::x() const {
  return parts_->x;
}
const std::vector<double>& LeastSquares::w() const {
  return parts_->w;
}
const std::vector<double>& LeastSquares::error() const {
  return parts_->error;
}
const std::shared_ptr<const Whitening>& LeastSquares::whitening() const {
  return parts_->whitening;
}
double LeastSquares::chi2() const {
  return parts_->chi2;
}
int LeastSquares::rank() const {
  return parts_->free - static_cast<int>(parts_->kernel.cols());
}
const Dense& LeastSquares::unseen() const {
  return parts_->unseen;
}
bool LeastSquares::determined(int unknown) const {
  return parts_->kernel.row(unknown).norm() < kUnseen;
}

std::vector<double> LeastSquares::redundancy() const {
  const Parts& p = *parts_;
  if (p.design.rows() == 0) return {};
  // V^-1 A root^-1: its rows' squares are what the unknowns take from V^-1.
  const Matrix solved = matrix(p.whitening->rest(dense(p.half_design)));
  const Matrix taken = p.root.transpose().triangularView<Eigen::Lower>().solve(solved.transpose());
  std::vector<double> out = p.whitening->inverse_diagonal();
  for (std::size_t i = 0; i < out.size(); ++i)
    out[i] = std::clamp(out[i] - taken.col(static_cast<Eigen::Index>(i)).squaredNorm(), 0.0, 1.0);
  return out;
}

std::vector<double> LeastSquares::unexplained(const std::vector<double>& v) const {
  const Parts& p = *parts_;
  const Vector solved = whitened(p, vector(v));
  const auto root = p.root.triangularView<Eigen::Upper>();
  const Vector right = p.design.transpose() * solved;
  const Vector step = root.solve(p.root.transpose().triangularView<Eigen::Lower>().solve(right));
  return plain(solved - whitened(p, p.design * step));
}

double LeastSquares::log_likelihood() const {
  return -(parts_->whitening->log_determinant() + parts_->log_det + parts_->chi2) / 2;
}

bool LeastSquares::determined(const Functional& functional) const {
  const Parts& p = *parts_;
  const Vector x = p.scale.cwiseProduct(vector(functional.x));
  return (p.kernel.transpose() * x).norm() <= kUnseen * x.norm();
}

Dense LeastSquares::covariance(const std::vector<Functional>& functionals) const {
  const Parts& p = *parts_;
  const auto count = static_cast<Eigen::Index>(functionals.size());
  if (count == 0) return {};
  Matrix x(p.design.cols(), count), w(p.whitening->weights(), count);
  for (Eigen::Index i = 0; i < count; ++i) {
    x.col(i) = p.scale.cwiseProduct(vector(functionals[i].x));
    w.col(i) = vector(functionals[i].w);
  }
  // Prior of the weights, less what the readings saw of them, plus what the unknowns leave open;
  // each half of a symmetric matrix.
  const Matrix half = matrix(p.whitening->half(p.whitening->times(dense(w))));
  const Matrix left = x - p.half_design.transpose() * half;
  const Matrix free = p.root.transpose().triangularView<Eigen::Lower>().solve(left);
  Matrix out = Matrix::Zero(count, count);
  add_square(out, w, 1);
  add_square(out, half, -1);
  add_square(out, free, 1);
  return dense(out.selfadjointView<Eigen::Lower>());
}

}  // namespace nook
