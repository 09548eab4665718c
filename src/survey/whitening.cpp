// Cholesky factors in the smaller of two spaces.
#include "survey/whitening.h"

#include <Eigen/Cholesky>
#include <Eigen/Core>
#include <algorithm>

#include "base/invariant.h"

namespace nook {
namespace {

using Matrix = Eigen::MatrixXd;
using RowMajor = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

constexpr int kReadingSpace = 600;  // readings; above, the field's weights are fewer

Matrix matrix(const Table& t) {
  return Eigen::Map<const RowMajor>(t.cells.data(), t.rows, t.cols);
}

Table table(const Matrix& m) {
  Table t(static_cast<int>(m.rows()), static_cast<int>(m.cols()));
  Eigen::Map<RowMajor>(t.cells.data(), t.rows, t.cols) = m;
  return t;
}

// The columns of one surface, and the readings that touch it.
struct Surface {
  Eigen::Index first, count;
  std::vector<Eigen::Index> rows;
  Matrix part;  // rows x count
};

std::vector<Surface> surfaces(const Matrix& field, const std::vector<int>& blocks) {
  std::vector<Surface> out;
  for (std::size_t b = 0; b < blocks.size(); ++b) {
    const Eigen::Index end = b + 1 < blocks.size() ? blocks[b + 1] : field.cols();
    Surface surface{blocks[b], end - blocks[b], {}, {}};
    for (Eigen::Index i = 0; i < field.rows(); ++i)
      if (!field.row(i).segment(surface.first, surface.count).isZero(0)) surface.rows.push_back(i);
    if (surface.rows.empty()) continue;
    surface.part.resize(static_cast<Eigen::Index>(surface.rows.size()), surface.count);
    for (std::size_t i = 0; i < surface.rows.size(); ++i)
      surface.part.row(static_cast<Eigen::Index>(i)) =
          field.row(surface.rows[i]).segment(surface.first, surface.count);
    out.push_back(std::move(surface));
  }
  return out;
}

// I + F F', lower half.
Matrix by_readings(const Matrix& field, const std::vector<Surface>& surfaces) {
  Matrix out = Matrix::Identity(field.rows(), field.rows());
  for (const Surface& s : surfaces) {
    Matrix gram = Matrix::Zero(s.part.rows(), s.part.rows());
    gram.selfadjointView<Eigen::Lower>().rankUpdate(s.part);
    for (std::size_t j = 0; j < s.rows.size(); ++j)
      for (std::size_t i = j; i < s.rows.size(); ++i)
        out(s.rows[i], s.rows[j]) +=
            gram(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j));
  }
  return out;
}

// I + F' F, lower half.
Matrix by_weights(const Matrix& field, const std::vector<Surface>& surfaces) {
  Matrix out = Matrix::Identity(field.cols(), field.cols());
  for (const Surface& s : surfaces) {
    out.block(s.first, s.first, s.count, s.count)
        .selfadjointView<Eigen::Lower>()
        .rankUpdate(s.part.transpose());
    for (const Surface& t : surfaces) {
      if (t.first <= s.first) continue;
      Matrix shared(static_cast<Eigen::Index>(s.rows.size()), t.count);
      for (std::size_t i = 0; i < s.rows.size(); ++i)
        shared.row(static_cast<Eigen::Index>(i)) = field.row(s.rows[i]).segment(t.first, t.count);
      if (!shared.isZero(0))
        out.block(t.first, s.first, t.count, s.count).noalias() += shared.transpose() * s.part;
    }
  }
  return out;
}

// F X and F' X, surface by surface.
Matrix field_times(const std::vector<Surface>& surfaces, Eigen::Index rows, const Matrix& x) {
  Matrix out = Matrix::Zero(rows, x.cols());
  for (const Surface& s : surfaces) {
    const Matrix part = s.part * x.middleRows(s.first, s.count);
    for (std::size_t i = 0; i < s.rows.size(); ++i)
      out.row(s.rows[i]) += part.row(static_cast<Eigen::Index>(i));
  }
  return out;
}

Matrix back_times(const std::vector<Surface>& surfaces, Eigen::Index cols, const Matrix& x) {
  Matrix out = Matrix::Zero(cols, x.cols());
  for (const Surface& s : surfaces) {
    Matrix part(static_cast<Eigen::Index>(s.rows.size()), x.cols());
    for (std::size_t i = 0; i < s.rows.size(); ++i)
      part.row(static_cast<Eigen::Index>(i)) = x.row(s.rows[i]);
    out.middleRows(s.first, s.count) = s.part.transpose() * part;
  }
  return out;
}

// Squared lengths of the columns of L^-1, a band of columns at a time: what is above is zero.
Eigen::VectorXd inverse_columns(const Eigen::LLT<Matrix>& factor) {
  constexpr Eigen::Index kBand = 48;
  const Eigen::Index n = factor.rows();
  Eigen::VectorXd out(n);
  for (Eigen::Index first = 0; first < n; first += kBand) {
    const Eigen::Index width = std::min(kBand, n - first), left = n - first;
    Matrix band = Matrix::Identity(left, width);
    factor.matrixLLT()
        .bottomRightCorner(left, left)
        .triangularView<Eigen::Lower>()
        .solveInPlace(band);
    out.segment(first, width) = band.colwise().squaredNorm().transpose();
  }
  return out;
}

}  // namespace

struct Whitening::Parts {
  Table table;
  Matrix field;
  std::vector<Surface> surfaces;

  Matrix times(const Matrix& x) const { return field_times(surfaces, field.rows(), x); }
  Matrix back(const Matrix& x) const { return back_times(surfaces, field.cols(), x); }
  bool flat = false, by_weights = false;
  Eigen::LLT<Matrix> factor;  // of I + F F', or of I + F' F
};

Whitening::Whitening(Table field, std::vector<int> blocks, Space space) {
  auto parts = std::make_unique<Parts>();
  parts->field = matrix(field);
  parts->flat = field.cols == 0 || field.rows == 0;
  parts->by_weights =
      space == Space::weights || (space == Space::whichever && field.rows > kReadingSpace);
  if (!parts->flat) {
    if (blocks.empty()) blocks = {0};
    parts->surfaces = surfaces(parts->field, blocks);
    parts->factor.compute(parts->by_weights ? by_weights(parts->field, parts->surfaces)
                                            : by_readings(parts->field, parts->surfaces));
    require(parts->factor.info() == Eigen::Success, "a covariance with unit errors is positive");
  }
  parts->table = std::move(field);
  parts_ = std::move(parts);
}

Whitening::~Whitening() = default;

const Table& Whitening::field() const {
  return parts_->table;
}

Table Whitening::times(const Table& x) const {
  return parts_->flat ? Table(parts_->table.rows, x.cols) : table(parts_->times(matrix(x)));
}

Table Whitening::transposed_times(const Table& x) const {
  return parts_->flat ? Table(parts_->table.cols, x.cols) : table(parts_->back(matrix(x)));
}

Table Whitening::half(const Table& x) const {
  if (parts_->flat) return x;
  if (!parts_->by_weights) return table(parts_->factor.matrixL().solve(matrix(x)));
  // The misfit of x to the field together with the weights that it takes: a least squares problem
  // whose sum of squares is x' V^-1 x.
  const Matrix columns = matrix(x);
  const Matrix weights = parts_->factor.solve(parts_->back(columns));
  Matrix out(columns.rows() + weights.rows(), columns.cols());
  out << columns - parts_->times(weights), weights;
  return table(out);
}

Table Whitening::solve(const Table& x) const {
  if (parts_->flat) return x;
  const Matrix columns = matrix(x);
  if (!parts_->by_weights) return table(parts_->factor.solve(columns));
  return table(columns - parts_->times(parts_->factor.solve(parts_->back(columns))));
}

Table Whitening::rest(const Table& half) const {
  if (parts_->flat) return half;
  if (!parts_->by_weights) return table(parts_->factor.matrixU().solve(matrix(half)));
  return table(matrix(half).topRows(parts_->field.rows()));
}

double Whitening::log_determinant() const {
  if (parts_->flat) return 0;
  return 2 * parts_->factor.matrixLLT().diagonal().array().log().sum();
}

std::vector<double> Whitening::inverse_diagonal() const {
  const auto n = parts_->field.rows();
  Eigen::VectorXd out = Eigen::VectorXd::Ones(n);
  if (!parts_->flat && parts_->by_weights) {
    const Matrix root = parts_->factor.matrixL().solve(parts_->field.transpose());
    out -= root.colwise().squaredNorm().transpose();
  } else if (!parts_->flat) {
    out = inverse_columns(parts_->factor);
  }
  return {out.data(), out.data() + out.size()};
}

}  // namespace nook
