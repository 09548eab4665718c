// The linear solver against normal equations, and its two spaces against each other.
#include <Eigen/Dense>
#include <catch2/catch.hpp>
#include <cmath>

#include "survey/least_squares.h"
#include "true_room.h"

using namespace nook;
using nook::test::gaussian;
using nook::test::Random;

namespace {

struct Case {
  Linear linear;
  Dense field;  // not yet over sd
};

Case random_case(int n, int m, int weights, std::uint64_t seed) {
  Random random(seed);
  Case out;
  out.linear.design = Dense(n, m);
  out.field = Dense(n, weights);
  for (double& c : out.linear.design.cells) c = gaussian(random);
  for (int i = 0; i < n; ++i)  // every reading sees one of two surfaces
    for (int k = 0; k < weights / 2; ++k)
      out.field(i, (i % 2) * (weights / 2) + k) = gaussian(random) * std::exp(-0.2 * k);
  for (int i = 0; i < n; ++i) {
    out.linear.misfit.push_back(3 * gaussian(random));
    out.linear.sd.push_back(0.5 + std::abs(gaussian(random)));
  }
  for (int j = 0; j < m; ++j) {
    out.linear.prior_sd.push_back(j % 3 == 0 ? 0.7 : 0);
    out.linear.prior_mean.push_back(j % 3 == 0 ? 0.2 : 0);
  }
  return out;
}

Dense over_sd(const Case& c) {
  Dense out = c.field;
  for (int i = 0; i < out.rows; ++i)
    for (int k = 0; k < out.cols; ++k) out(i, k) /= c.linear.sd[i];
  return out;
}

LeastSquares solved(const Case& c, Whitening::Space space) {
  return LeastSquares(c.linear, std::make_shared<Whitening>(
                                    over_sd(c), std::vector<int>{0, c.field.cols / 2}, space));
}

using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;
using RowMajor = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

Matrix matrix(const Dense& t) {
  return Eigen::Map<const RowMajor>(t.cells.data(), t.rows, t.cols);
}
Vector vector(const std::vector<double>& v) {
  return Eigen::Map<const Vector>(v.data(), static_cast<Eigen::Index>(v.size()));
}

// Everything by inverses of whole covariances: Koch 1999, ch. 3.
struct Plain {
  Vector x, w, error;
  Matrix unexplained;  // W R
  Matrix posterior;    // of (x, w)
  double chi2;
};

Plain plain(const Case& c) {
  const Matrix a = matrix(c.linear.design), f = matrix(c.field);
  const auto m = a.cols(), p = f.cols();
  Matrix all(a.rows(), m + p);
  all << a, f;
  const Vector weight = vector(c.linear.sd).array().square().inverse();
  Matrix normal = all.transpose() * weight.asDiagonal() * all;
  Vector right = all.transpose() * weight.asDiagonal() * vector(c.linear.misfit);
  double prior_misfit = 0;
  for (Eigen::Index j = 0; j < m; ++j) {
    const double sd = c.linear.prior_sd[j];
    if (sd == 0) continue;
    normal(j, j) += 1 / (sd * sd);
    right[j] += c.linear.prior_mean[j] / (sd * sd);
  }
  normal.bottomRightCorner(p, p) += Matrix::Identity(p, p);
  Plain out;
  out.posterior = normal.inverse();
  const Vector both = out.posterior * right;
  out.x = both.head(m);
  out.w = both.tail(p);
  out.error = vector(c.linear.misfit) - all * both;
  const Matrix r = weight.cwiseInverse().asDiagonal();
  out.unexplained = Matrix::Identity(a.rows(), a.rows()) -
                    all * out.posterior * all.transpose() * weight.asDiagonal();
  for (Eigen::Index j = 0; j < m; ++j) {
    const double sd = c.linear.prior_sd[j];
    if (sd > 0) prior_misfit += std::pow((out.x[j] - c.linear.prior_mean[j]) / sd, 2);
  }
  out.chi2 = out.error.dot(weight.asDiagonal() * out.error) + out.w.squaredNorm() + prior_misfit;
  return out;
}

}  // namespace

TEST_CASE("least squares: equals the normal equations in either space", "[property]") {
  const auto space = GENERATE(Whitening::Space::readings, Whitening::Space::weights);
  for (const std::uint64_t seed : {1, 2, 3}) {
    INFO("seed " << seed);
    const Case c = random_case(40, 7, 24, seed);
    const LeastSquares linear = solved(c, space);
    const Plain expected = plain(c);
    CHECK((vector(linear.x()) - expected.x).norm() < 1e-10);
    CHECK((vector(linear.w()) - expected.w).norm() < 1e-10);
    CHECK((vector(linear.error()) - expected.error).norm() < 1e-10);
    CHECK(linear.chi2() == Approx(expected.chi2).epsilon(1e-12));
    CHECK((vector(linear.redundancy()) - expected.unexplained.diagonal()).norm() < 1e-11);
    CHECK(linear.rank() == 4);
    CHECK(linear.unseen().cols == 0);
  }
}

TEST_CASE("least squares: covariances of functionals, and the redundancies' sum", "[property]") {
  const auto space = GENERATE(Whitening::Space::readings, Whitening::Space::weights);
  const Case c = random_case(30, 6, 16, 9);
  const LeastSquares linear = solved(c, space);
  const Plain expected = plain(c);
  Random random(4);
  std::vector<Functional> functionals(3);
  Matrix g(3, 22);
  for (int i = 0; i < 3; ++i)
    for (int j = 0; j < 22; ++j) {
      g(i, j) = gaussian(random);
      (j < 6 ? functionals[i].x : functionals[i].w).push_back(g(i, j));
    }
  const Matrix both = g * expected.posterior * g.transpose();
  CHECK((matrix(linear.covariance(functionals)) - both).norm() < 1e-10 * both.norm());
  double sum = 0;
  for (const double r : linear.redundancy()) sum += r;
  CHECK(sum == Approx(expected.unexplained.trace()).epsilon(1e-11));
  const std::vector<double> v(30, 1.0);
  const Vector scaled = vector(v).cwiseProduct(vector(c.linear.sd));
  const Vector left = (expected.unexplained * scaled).cwiseQuotient(vector(c.linear.sd));
  CHECK((vector(linear.unexplained(v)) - left).norm() < 1e-10);
}

TEST_CASE("least squares: likelihoods differ as those of the whole normal distribution do") {
  const Case c = random_case(25, 4, 12, 5);
  Case rougher = c;
  for (double& cell : rougher.field.cells) cell *= 2;
  const auto log_likelihood = [](const Case& of) {
    // Free unknowns integrated out over a very wide prior.
    Matrix v = matrix(of.field) * matrix(of.field).transpose();
    v.diagonal() += vector(of.linear.sd).array().square().matrix();
    const Matrix a = matrix(of.linear.design);
    for (int j = 0; j < 4; ++j) {
      const double sd = of.linear.prior_sd[j] > 0 ? of.linear.prior_sd[j] : 1e4;
      v += sd * sd * a.col(j) * a.col(j).transpose();
    }
    const Vector misfit = vector(of.linear.misfit) - a * vector(of.linear.prior_mean);
    const Eigen::LDLT<Matrix> factor(v);
    return -0.5 * (factor.vectorD().array().log().sum() + misfit.dot(factor.solve(misfit)));
  };
  const double expected = log_likelihood(rougher) - log_likelihood(c);
  for (const auto space : {Whitening::Space::readings, Whitening::Space::weights})
    CHECK(solved(rougher, space).log_likelihood() - solved(c, space).log_likelihood() ==
          Approx(expected).margin(1e-5));
}

TEST_CASE("least squares: steps with another's N end where one's own solution is", "[property]") {
  for (const auto space : {Whitening::Space::readings, Whitening::Space::weights}) {
    Case c = random_case(40, 7, 12, 8);
    const LeastSquares before = solved(c, space);
    Random random(9);
    for (double& cell : c.linear.design.cells) cell += 0.01 * gaussian(random);
    for (double& misfit : c.linear.misfit) misfit += gaussian(random);
    const Vector wanted = vector(LeastSquares(c.linear, before.whitening()).x());
    const std::vector<double> w = LeastSquares(c.linear, before.whitening()).w();

    // Each step starts from the place of the last: misfits and priors count from there.
    Vector x = Vector::Zero(wanted.size());
    LeastSquares::Step step;
    const Linear whole = c.linear;
    double off = (x - wanted).norm();
    for (int k = 0; k < 12; ++k) {
      for (std::size_t i = 0; i < whole.misfit.size(); ++i)
        c.linear.misfit[i] = whole.misfit[i] - matrix(whole.design).row(static_cast<int>(i)) * x;
      for (std::size_t j = 0; j < whole.prior_sd.size(); ++j)
        if (whole.prior_sd[j] > 0)
          c.linear.prior_mean[j] = whole.prior_mean[j] - x[static_cast<Eigen::Index>(j)];
      step = before.step(c.linear);
      x += vector(step.x);
      if (k < 3) CHECK((x - wanted).norm() < 0.2 * off);
      off = (x - wanted).norm();
    }
    CHECK(off < 1e-9);
    CHECK((vector(step.w) - vector(w)).norm() < 1e-9);
  }
}

TEST_CASE("least squares: what no reading sees stays where it is and is known to be unseen") {
  Case c = random_case(12, 5, 6, 3);
  c.linear.prior_sd.assign(5, 0);
  c.linear.prior_mean.assign(5, 0);
  for (int i = 0; i < 12; ++i) {
    c.linear.design(i, 4) = 0;
    c.linear.design(i, 3) = 2 * c.linear.design(i, 1);  // only 1 and 3 together are seen
  }
  const LeastSquares linear = solved(c, Whitening::Space::readings);
  CHECK(linear.rank() == 3);
  CHECK(linear.unseen().cols == 2);
  CHECK(linear.x()[4] == Approx(0).margin(1e-12));
  CHECK(linear.determined(0));
  CHECK(!linear.determined(1));
  CHECK(!linear.determined(4));
  CHECK(linear.determined({{0, 1, 0, 2, 0}, std::vector<double>(6)}));
  CHECK(!linear.determined({{0, 1, 0, -2, 0}, std::vector<double>(6)}));
}

TEST_CASE("least squares: a survey without readings has a solution") {
  Linear empty;
  empty.design = Dense(0, 2);
  empty.prior_sd = {1, 0};
  empty.prior_mean = {0.5, 0};
  const LeastSquares linear(empty, std::make_shared<Whitening>(Dense(0, 3)));
  CHECK(linear.x()[0] == Approx(0.5));
  CHECK(!linear.determined(1));
  CHECK(linear.chi2() == Approx(0).margin(1e-12));
}

TEST_CASE("whitening: readings of one surface, of several and of none, their fields made larger") {
  Random random(17);
  constexpr int kRows = 30, kEach = 4;  // three surfaces of four functions
  Dense field(kRows, 3 * kEach), x(kRows, 2);
  for (double& cell : x.cells) cell = gaussian(random);
  for (int i = 0; i < kRows; ++i)
    for (int s = 0; s < 3; ++s)
      if (i % 7 == s || (i % 7 == 3 && s < 2) || i % 7 == 4)  // 5 and 6 touch none
        for (int k = 0; k < kEach; ++k) field(i, s * kEach + k) = gaussian(random);
  Matrix larger = matrix(field);
  larger.leftCols(2 * kEach) *= 3;
  const Matrix v = Matrix::Identity(kRows, kRows) + larger * larger.transpose();
  const Matrix inverse = v.inverse(), columns = matrix(x);
  for (const auto space : {Whitening::Space::readings, Whitening::Space::weights}) {
    const Whitening base(field, {0, kEach, 2 * kEach}, space);
    const Whitening whitening(base, 2 * kEach, 3);
    const Dense half_table = whitening.half(x);
    const Matrix half = matrix(half_table);
    CHECK((half.transpose() * half - columns.transpose() * inverse * columns).norm() < 1e-9);
    CHECK((matrix(whitening.rest(half_table)) - inverse * columns).norm() < 1e-9);
    CHECK((matrix(whitening.solve(x)) - inverse * columns).norm() < 1e-9);
    CHECK((vector(whitening.inverse_diagonal()) - inverse.diagonal()).norm() < 1e-9);
    CHECK(whitening.log_determinant() == Approx(std::log(v.determinant())));
    CHECK((matrix(whitening.transposed_times(x)) - larger.transpose() * columns).norm() < 1e-9);
  }
}
