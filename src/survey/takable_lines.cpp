// Levels, straightedges, plumb lines and strings along a wall.
#include <fmt/format.h>

#include <Eigen/Dense>
#include <cmath>

#include "survey/taking.h"

namespace nook {
namespace {

// Minutes that a reading takes with its marks. Chosen.
constexpr double kLevel = 1, kStraightedge = 1.5, kLine = 1, kOnLine = 0.25;
constexpr double kFewOnLine = 300;  // mm: a shorter line tells no more than a level. Chosen

// What n distances to a line tell whose offset (and with two, tilt) is free: combinations with the
// error of one distance each, free of one another.
Eigen::MatrixXd told_by_line(const std::vector<double>& at, int free) {
  const int n = static_cast<int>(at.size());
  Eigen::MatrixXd line(n, free);
  for (int i = 0; i < n; ++i)
    for (int k = 0; k < free; ++k) line(i, k) = k == 0 ? 1 : at[i] - at[0];
  const Eigen::MatrixXd all = line.householderQr().householderQ() * Eigen::MatrixXd::Identity(n, n);
  return all.rightCols(n - free);
}

void add_level(Taking& on, const TakingPlace& spot) {
  const double low = on.clear_of_board(spot.wall), high = low + on.survey().level.length.mm;
  const double gap = on.tape(10, Ends::marks).sd;
  const double bubble = on.survey().level.slope_error * on.survey().level.length.mm;
  const double a = on.base(spot, low);
  on.add({fmt::format("hold the level plumb on the {} wall, {}, from {} up to {}",
                      on.name(spot.wall), on.said(spot), on.said(low), on.said(high)),
          0, NextReading::Kind::level, spot.wall, spot.at, high, low, spot.from_right},
         on.view().out(spot.wall, a, low) - on.view().out(spot.wall, a, high),
         gap * gap + bubble * bubble, kLevel);
}

// Where a line is read from one end to the other.
std::vector<double> stations(const Taking& on, double from, double to) {
  const int steps = std::max(2, static_cast<int>(std::ceil((to - from) / on.apart() - 0.01)));
  std::vector<double> out;
  for (int i = 0; i <= steps; ++i) out.push_back(from + (to - from) * i / steps);
  return out;
}

// A plumb line leaves its offset free, a string its tilt too.
void add_line(Taking& on, NextReading reading, const std::vector<double>& at,
              const std::vector<Varied>& out) {
  const int free = reading.kind == NextReading::Kind::plumb ? 1 : 2;
  const Eigen::MatrixXd told = told_by_line(at, free);
  const double sd = on.tape(25, Ends::marks).sd;
  Takable run{std::move(reading),
              {},
              sd * sd,
              kLine + kOnLine * static_cast<double>(at.size()),
              static_cast<int>(at.size())};
  for (int k = 0; k < told.cols(); ++k) {
    Varied sum;
    for (std::size_t i = 0; i < out.size(); ++i) sum = sum + out[i] * told(static_cast<int>(i), k);
    run.of.push_back(functional(on.view(), sum));
  }
  on.add(std::move(run));
}

// Gaps at both ends and in the middle: what a free line leaves of three.
void add_straightedge(Taking& on, const TakingPlace& from, double up) {
  const double noise = 1.5 * std::pow(on.tape(10, Ends::marks).sd, 2);
  const int wall = from.wall;
  const TakingPlace to{wall, from.at + on.feet(4), from.from_right},
      middle{wall, from.at + on.feet(2), from.from_right};
  const auto out = [&](const TakingPlace& at) { return on.view().out(wall, on.base(at, up), up); };
  on.add({fmt::format("lay a straightedge on the {} wall from {} to {}{}, {} up: gaps at both ends "
                      "and in the middle",
                      on.name(wall), on.said(from.at), on.said(to.at),
                      from.from_right ? " from its right corner" : "", on.said(up)),
          0, NextReading::Kind::straightedge, wall, from.at, to.at, up, from.from_right},
         out(middle) - (out(from) + out(to)) * 0.5, noise, kStraightedge);
}

}  // namespace

void add_levels(Taking& on, int wall) {
  for (const TakingPlace& spot : on.all_along(wall, 1)) add_level(on, spot);
}

void add_straightedges(Taking& on, int wall) {
  for (const double up : {on.thirds(3), on.thirds(10), on.thirds(17)}) {
    if (up <= on.board_top(wall)) continue;
    for (double from = on.thirds(1); from + on.feet(4) < on.room_on(wall); from += on.feet(2)) {
      add_straightedge(on, {wall, from, false}, up);
      if (on.between(wall)) add_straightedge(on, {wall, from, true}, up);
    }
  }
}

void add_upright(Taking& on, const UprightSpot& edge) {
  const TakingPlace spot = on.near(edge.wall, edge.along);
  if (spot.at < on.easy()) return;
  add_level(on, spot);
  const double low = std::max(on.eased(edge.low), on.clear_of_board(edge.wall));
  if (edge.high - low < kFewOnLine) return;
  const std::vector<double> heights = stations(on, low, on.eased(edge.high));
  std::vector<Varied> out;
  const double a = on.base(spot, low);
  for (const double z : heights) out.push_back(on.view().out(spot.wall, a, z));
  add_line(on,
           {fmt::format("plumb line at the {} wall, {}: line to wall every {}, from {} up to {}",
                        on.name(spot.wall), on.said(spot), on.said(on.apart()), on.said(low),
                        on.said(heights.back())),
            0, NextReading::Kind::plumb, spot.wall, spot.at, heights.back(), low, spot.from_right},
           heights, out);
}

void add_string(Taking& on, const LevelRun& run) {
  const double up = std::max(on.eased(run.up), on.clear_of_board(run.wall));
  const TakingPlace from = on.near(run.wall, std::max(run.from, on.easy())),
                    to = on.near(run.wall, run.to);
  const double start = on.base(from, up), end = on.base(to, up);
  if (end - start < kFewOnLine) return;
  const std::vector<double> places = stations(on, start, end);
  std::vector<Varied> out;
  for (const double a : places) out.push_back(on.view().out(run.wall, a, up));
  add_line(
      on,
      {fmt::format("string or level laser along the {} wall, {} up, from {} to {}: line to wall "
                   "every {}",
                   on.name(run.wall), on.said(up), on.said(from), on.said(to), on.said(on.apart())),
       0, NextReading::Kind::string, run.wall, from.at, to.at, up, from.from_right},
      places, out);
}

}  // namespace nook
