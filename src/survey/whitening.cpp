// Cholesky factors in the smaller of two spaces.
#include "survey/whitening.h"

#include <Eigen/Cholesky>
#include <Eigen/Core>

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

// I + A A', lower half.
Matrix gram(const Matrix& a) {
  Matrix out = Matrix::Identity(a.rows(), a.rows());
  out.selfadjointView<Eigen::Lower>().rankUpdate(a);
  return out;
}

}  // namespace

struct Whitening::Parts {
  Table table;
  Matrix field;
  bool flat = false, by_weights = false;
  Eigen::LLT<Matrix> factor;  // of I + F F', or of I + F' F
};

Whitening::Whitening(Table field, Space space) {
  auto parts = std::make_unique<Parts>();
  parts->field = matrix(field);
  parts->flat = field.cols == 0;
  parts->by_weights =
      space == Space::weights || (space == Space::whichever && field.rows > kReadingSpace);
  if (!parts->flat) {
    parts->factor.compute(parts->by_weights ? gram(parts->field.transpose()) : gram(parts->field));
    require(parts->factor.info() == Eigen::Success, "a covariance with unit errors is positive");
  }
  parts->table = std::move(field);
  parts_ = std::move(parts);
}

Whitening::~Whitening() = default;

const Table& Whitening::field() const {
  return parts_->table;
}

Table Whitening::half(const Table& x) const {
  if (parts_->flat) return x;
  if (!parts_->by_weights) return table(parts_->factor.matrixL().solve(matrix(x)));
  // The misfit of x to the field together with the weights that it takes: a least squares problem
  // whose sum of squares is x' V^-1 x.
  const Matrix columns = matrix(x);
  const Matrix weights = parts_->factor.solve(parts_->field.transpose() * columns);
  Matrix out(columns.rows() + weights.rows(), columns.cols());
  out << columns - parts_->field * weights, weights;
  return table(out);
}

Table Whitening::solve(const Table& x) const {
  if (parts_->flat) return x;
  const Matrix columns = matrix(x);
  if (!parts_->by_weights) return table(parts_->factor.solve(columns));
  return table(columns - parts_->field * parts_->factor.solve(parts_->field.transpose() * columns));
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
    const Matrix root = parts_->factor.matrixL().solve(Matrix::Identity(n, n));
    out = root.colwise().squaredNorm().transpose();
  }
  return {out.data(), out.data() + out.size()};
}

}  // namespace nook
