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

using Rows = Eigen::Map<const RowMajor>;

Rows matrix(const Dense& t) {
  return Rows(t.cells.data(), t.rows, t.cols);
}

Dense dense(const Matrix& m) {
  Dense t(static_cast<int>(m.rows()), static_cast<int>(m.cols()));
  Eigen::Map<RowMajor>(t.cells.data(), t.rows, t.cols) = m;
  return t;
}

// The columns of one surface, and the readings that touch it.
struct Surface {
  Eigen::Index first, count;
  std::vector<Eigen::Index> rows;
  Matrix part;  // rows x count
};

std::vector<Surface> surfaces(const Rows& field, const std::vector<int>& blocks) {
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

// The columns that are not zero: most unknowns and quantities belong to one surface.
template <class Part>
std::vector<Eigen::Index> filled(const Part& x) {
  std::vector<Eigen::Index> out;
  for (Eigen::Index j = 0; j < x.cols(); ++j)
    if (!x.col(j).isZero(0)) out.push_back(j);
  return out;
}

Matrix taken(const Matrix& x, const std::vector<Eigen::Index>& rows) {
  Matrix out(static_cast<Eigen::Index>(rows.size()), x.cols());
  for (std::size_t i = 0; i < rows.size(); ++i)
    out.row(static_cast<Eigen::Index>(i)) = x.row(rows[i]);
  return out;
}

// F F' of fields of scale 1. First the readings that touch one surface only, surface by surface:
// nothing joins those of two surfaces. Then the few others.
struct ReadingsGram {
  struct Own {
    std::vector<Eigen::Index> rows;
    Matrix gram;    // lower half
    Matrix shared;  // with the others: rows x others
  };
  std::vector<Own> own;  // by surface
  std::vector<Eigen::Index> others;
  std::vector<Matrix> of_others;  // by surface
};

ReadingsGram readings_gram(Eigen::Index readings, const std::vector<Surface>& surfaces) {
  std::vector<int> touched(readings, 0);
  for (const Surface& s : surfaces)
    for (const Eigen::Index i : s.rows) ++touched[i];
  ReadingsGram out;
  for (Eigen::Index i = 0; i < readings; ++i)
    if (touched[i] != 1) out.others.push_back(i);
  for (const Surface& s : surfaces) {
    ReadingsGram::Own own;
    std::vector<Eigen::Index> at;  // of its own readings, in s.part
    Matrix others = Matrix::Zero(static_cast<Eigen::Index>(out.others.size()), s.count);
    for (std::size_t i = 0; i < s.rows.size(); ++i) {
      const auto row = static_cast<Eigen::Index>(i);
      if (touched[s.rows[i]] == 1) {
        own.rows.push_back(s.rows[i]);
        at.push_back(row);
      } else {
        const auto place = std::lower_bound(out.others.begin(), out.others.end(), s.rows[i]);
        others.row(place - out.others.begin()) = s.part.row(row);
      }
    }
    const Matrix part = taken(s.part, at);
    own.gram = Matrix::Zero(part.rows(), part.rows());
    own.gram.selfadjointView<Eigen::Lower>().rankUpdate(part);
    own.shared = part * others.transpose();
    out.of_others.push_back(others * others.transpose());
    out.own.push_back(std::move(own));
  }
  return out;
}

using Factor = Eigen::LLT<Matrix>;

Factor factor_of(Matrix covariance) {
  covariance.diagonal().array() += 1;
  Factor factor(std::move(covariance));
  require(factor.info() == Eigen::Success, "a covariance with unit errors is positive");
  return factor;
}

double log_determinant_of(const Factor& factor) {
  return 2 * factor.matrixLLT().diagonal().array().log().sum();
}

// Squared lengths of the columns of L^-1, a band of columns at a time: what is above is zero.
Eigen::VectorXd inverse_columns(const Factor& factor) {
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

// V = L L' with rows in the order of ReadingsGram: L is an arrow.
class ReadingsFactor {
 public:
  ReadingsFactor() = default;
  ReadingsFactor(const ReadingsGram& gram, const std::vector<double>& scale) : gram_(&gram) {
    const auto count = static_cast<Eigen::Index>(gram.others.size());
    Matrix rest = Matrix::Zero(count, count);
    for (std::size_t k = 0; k < gram.own.size(); ++k) {
      const double square = scale[k] * scale[k];
      own_.push_back(factor_of(square * gram.own[k].gram));
      shared_.push_back(own_[k].matrixL().solve(square * gram.own[k].shared));
      rest += square * gram.of_others[k] - shared_[k].transpose() * shared_[k];
    }
    others_ = factor_of(std::move(rest));
  }

  // L^-1 X, in the factor's order.
  Matrix half(const Matrix& x) const {
    Matrix out = Matrix::Zero(x.rows(), x.cols()), others = taken(x, gram_->others);
    Eigen::Index at = 0;
    for (std::size_t k = 0; k < own_.size(); ++k) {
      const Matrix own = taken(x, gram_->own[k].rows);
      const std::vector<Eigen::Index> columns = filled(own);
      const Matrix part = own_[k].matrixL().solve(own(Eigen::all, columns));
      out(Eigen::seqN(at, own_[k].rows()), columns) = part;
      others(Eigen::all, columns) -= shared_[k].transpose() * part;
      at += own_[k].rows();
    }
    out.bottomRows(others.rows()) = others_.matrixL().solve(others);
    return out;
  }
  // L'^-1 times that, in the readings' order.
  Matrix rest(const Matrix& half) const {
    Matrix out(half.rows(), half.cols());
    const Matrix others = others_.matrixU().solve(half.bottomRows(others_.rows()));
    scatter(others, gram_->others, out);
    Eigen::Index at = 0;
    for (std::size_t k = 0; k < own_.size(); ++k) {
      const Matrix part = half.middleRows(at, own_[k].rows()) - shared_[k] * others;
      scatter(own_[k].matrixU().solve(part), gram_->own[k].rows, out);
      at += own_[k].rows();
    }
    return out;
  }
  double log_determinant() const {
    double sum = log_determinant_of(others_);
    for (const Factor& own : own_) sum += log_determinant_of(own);
    return sum;
  }
  Eigen::VectorXd inverse_diagonal() const {
    Eigen::VectorXd out(others_.rows() + own_rows());
    scatter(inverse_columns(others_), gram_->others, out);
    for (std::size_t k = 0; k < own_.size(); ++k) {
      const Matrix below = others_.matrixL().solve(shared_[k].transpose());
      const Matrix column = own_[k].matrixU().solve(below.transpose());
      scatter(inverse_columns(own_[k]) + column.rowwise().squaredNorm(), gram_->own[k].rows, out);
    }
    return out;
  }

 private:
  template <class Out>
  static void scatter(const Matrix& x, const std::vector<Eigen::Index>& rows, Out& out) {
    for (std::size_t i = 0; i < rows.size(); ++i)
      out.row(rows[i]) = x.row(static_cast<Eigen::Index>(i));
  }
  Eigen::Index own_rows() const {
    Eigen::Index rows = 0;
    for (const Factor& own : own_) rows += own.rows();
    return rows;
  }

  const ReadingsGram* gram_ = nullptr;
  std::vector<Factor> own_;
  std::vector<Matrix>
      shared_;  // by surface: L_own^-1 times what its readings share with the others
  Factor others_;
};

// F' F, lower half.
Matrix weights_gram(const Rows& field, const std::vector<Surface>& surfaces) {
  Matrix out = Matrix::Zero(field.cols(), field.cols());
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

}  // namespace

// What stays the same when the fields become larger or smaller.
struct Whitening::Base {
  Dense cells;
  std::vector<Surface> surfaces;
  bool by_weights = false;
  Matrix by_weight;  // F' F, lower half
  ReadingsGram by_reading;

  Rows field() const { return matrix(cells); }
};

struct Whitening::Parts {
  std::shared_ptr<const Base> base;
  std::vector<double> scale;  // of each surface
  Eigen::VectorXd by;         // the same for each weight
  Factor by_weights;
  ReadingsFactor by_readings;

  bool flat() const { return base->field().size() == 0; }

  // F X and F' X, surface by surface.
  Matrix times(const Matrix& x) const {
    Matrix out = Matrix::Zero(base->field().rows(), x.cols());
    for (std::size_t k = 0; k < base->surfaces.size(); ++k) {
      const Surface& s = base->surfaces[k];
      const auto own = x.middleRows(s.first, s.count);
      const std::vector<Eigen::Index> columns = filled(own);
      const Matrix part = scale[k] * (s.part * own(Eigen::all, columns));
      out(s.rows, columns) += part;
    }
    return out;
  }
  Matrix back(const Matrix& x) const {
    Matrix out = Matrix::Zero(base->field().cols(), x.cols());
    for (std::size_t k = 0; k < base->surfaces.size(); ++k) {
      const Surface& s = base->surfaces[k];
      const Matrix own = taken(x, s.rows);
      const std::vector<Eigen::Index> columns = filled(own);
      out(Eigen::seqN(s.first, s.count), columns) =
          scale[k] * (s.part.transpose() * own(Eigen::all, columns));
    }
    return out;
  }
  void factor() {
    if (flat()) return;
    by = Eigen::VectorXd::Ones(base->field().cols());
    for (std::size_t k = 0; k < base->surfaces.size(); ++k)
      by.segment(base->surfaces[k].first, base->surfaces[k].count).setConstant(scale[k]);
    if (base->by_weights)
      by_weights = factor_of(by.asDiagonal() * base->by_weight * by.asDiagonal());
    else
      by_readings = ReadingsFactor(base->by_reading, scale);
  }
};

Whitening::Whitening(Dense field, std::vector<int> blocks, Space space) {
  auto base = std::make_shared<Base>();
  base->cells = std::move(field);
  base->by_weights = space == Space::weights ||
                     (space == Space::whichever && base->field().rows() > kReadingSpace);
  if (base->field().size() > 0) {
    if (blocks.empty()) blocks = {0};
    base->surfaces = surfaces(base->field(), blocks);
    if (base->by_weights)
      base->by_weight = weights_gram(base->field(), base->surfaces);
    else
      base->by_reading = readings_gram(base->field().rows(), base->surfaces);
  }
  auto parts = std::make_unique<Parts>();
  parts->scale.assign(base->surfaces.size(), 1);
  parts->base = std::move(base);
  parts->factor();
  parts_ = std::move(parts);
}

Whitening::Whitening(const Whitening& other, int columns, double by) {
  auto parts = std::make_unique<Parts>();
  parts->base = other.parts_->base;
  parts->scale = other.parts_->scale;
  for (std::size_t k = 0; k < parts->scale.size(); ++k)
    if (parts->base->surfaces[k].first < columns) parts->scale[k] *= by;
  parts->factor();
  parts_ = std::move(parts);
}

Whitening::~Whitening() = default;

int Whitening::weights() const {
  return static_cast<int>(parts_->base->field().cols());
}

Dense Whitening::times(const Dense& x) const {
  return dense(parts_->times(matrix(x)));
}

Dense Whitening::transposed_times(const Dense& x) const {
  return dense(parts_->back(matrix(x)));
}

Dense Whitening::half(const Dense& x) const {
  if (parts_->flat()) return x;
  const Matrix columns = matrix(x);
  if (!parts_->base->by_weights) return dense(parts_->by_readings.half(columns));
  // The misfit of x to the field together with the weights that it takes: a least squares problem
  // whose sum of squares is x' V^-1 x.
  const Matrix weights = parts_->by_weights.solve(parts_->back(columns));
  Matrix out(columns.rows() + weights.rows(), columns.cols());
  out << columns - parts_->times(weights), weights;
  return dense(out);
}

Dense Whitening::solve(const Dense& x) const {
  if (parts_->flat()) return x;
  const Matrix columns = matrix(x);
  if (!parts_->base->by_weights)
    return dense(parts_->by_readings.rest(parts_->by_readings.half(columns)));
  return dense(columns - parts_->times(parts_->by_weights.solve(parts_->back(columns))));
}

Dense Whitening::rest(const Dense& half) const {
  if (parts_->flat()) return half;
  if (!parts_->base->by_weights) return dense(parts_->by_readings.rest(matrix(half)));
  return dense(matrix(half).topRows(parts_->base->field().rows()));
}

double Whitening::log_determinant() const {
  if (parts_->flat()) return 0;
  if (!parts_->base->by_weights) return parts_->by_readings.log_determinant();
  return log_determinant_of(parts_->by_weights);
}

std::vector<double> Whitening::inverse_diagonal() const {
  const Base& base = *parts_->base;
  Eigen::VectorXd out = Eigen::VectorXd::Ones(base.field().rows());
  if (!parts_->flat() && base.by_weights) {
    const Matrix root = parts_->by_weights.matrixL().solve(
        Matrix(parts_->by.asDiagonal() * base.field().transpose()));
    out -= root.colwise().squaredNorm().transpose();
  } else if (!parts_->flat()) {
    out = parts_->by_readings.inverse_diagonal();
  }
  return {out.data(), out.data() + out.size()};
}

}  // namespace nook
