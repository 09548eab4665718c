// Rooms as rows of numbers, moved along what an opening tells.
#include "shop/as_built.h"

#include <fmt/format.h>

#include <cmath>
#include <functional>

#include "shop/opening_line.h"
#include "survey/worth.h"

namespace nook {
namespace {

// Calls `with` for each number of a room that differs from draw to draw, always in the same order.
void each_number(RoomShape& room, const std::function<void(double&)>& with) {
  const auto field = [&](Field& f) {
    for (double& weight : f.weights) with(weight);
  };
  for (WallShape& wall : room.walls) {
    with(wall.start.x), with(wall.start.y);
    double turn = std::atan2(wall.along.y, wall.along.x);
    const double side = cross(wall.along, wall.out) > 0 ? 1 : -1, before = turn;
    with(turn);
    if (turn != before) {
      wall.along = {std::cos(turn), std::sin(turn)};
      wall.out = side * left_of(wall.along);
    }
    with(wall.length), with(wall.lean), with(wall.corner_drift), with(wall.far_corner_drift);
    field(wall.field);
  }
  std::vector<LevelSurface*> levels{&room.floor};
  if (room.ceiling) levels.push_back(&*room.ceiling);
  for (LevelSurface* level : levels) {
    with(level->offset), with(level->slope.x), with(level->slope.y);
    field(level->field);
  }
  if (room.line_z) with(*room.line_z);
}

std::vector<double> numbers_of(RoomShape room) {
  std::vector<double> numbers;
  each_number(room, [&](double& number) { numbers.push_back(number); });
  return numbers;
}

RoomShape with_numbers(RoomShape room, const std::vector<double>& numbers) {
  std::size_t next = 0;
  each_number(room, [&](double& number) { number = numbers[next++]; });
  return room;
}

double mean(const std::vector<double>& values) {
  double sum = 0;
  for (const double value : values) sum += value;
  return sum / static_cast<double>(values.size());
}

double covariance(const std::vector<double>& a, const std::vector<double>& b) {
  const double mean_a = mean(a), mean_b = mean(b);
  double sum = 0;
  for (std::size_t r = 0; r < a.size(); ++r) sum += (a[r] - mean_a) * (b[r] - mean_b);
  return sum / static_cast<double>(a.size() - 1);
}

// What one opening does to anything that is known in the adjusted room and in every draw.
class Told {
 public:
  explicit Told(const OpeningRead& opening)
      : drawn_(opening.drawn),
        middle_(mean(opening.drawn)),
        variance_(covariance(opening.drawn, opening.drawn)),
        innovation_(opening.read - opening.adjusted) {
    const double noise = opening.sd * opening.sd;
    gain_ = 1 / (variance_ + noise);
    share_ = 1 / (1 + std::sqrt(noise * gain_));
  }

  void move(double& adjusted, std::vector<double>& drawn) const {
    const double with = gain_ * covariance(drawn, drawn_);
    adjusted += with * innovation_;
    for (std::size_t r = 0; r < drawn.size(); ++r)
      drawn[r] += with * (innovation_ - share_ * (drawn_[r] - middle_));
  }

 private:
  std::vector<double> drawn_;
  double middle_, variance_, innovation_, gain_ = 0, share_ = 0;
};

struct Rows {
  std::vector<double> adjusted;
  std::vector<std::vector<double>> drawn;  // by number, then by draw
};

Rows rows_of(const RoomShape& room, const std::vector<RoomShape>& draws) {
  Rows rows{numbers_of(room), {}};
  rows.drawn.assign(rows.adjusted.size(), std::vector<double>(draws.size()));
  for (std::size_t r = 0; r < draws.size(); ++r) {
    const std::vector<double> numbers = numbers_of(draws[r]);
    for (std::size_t k = 0; k < numbers.size(); ++k) rows.drawn[k][r] = numbers[k];
  }
  return rows;
}

RoomDrawn room_of(const Rows& rows, const RoomShape& room, const std::vector<RoomShape>& draws) {
  RoomDrawn built{with_numbers(room, rows.adjusted), {}};
  std::vector<double> numbers(rows.adjusted.size());
  for (std::size_t r = 0; r < draws.size(); ++r) {
    for (std::size_t k = 0; k < numbers.size(); ++k) numbers[k] = rows.drawn[k][r];
    built.draws.push_back(with_numbers(draws[r], numbers));
  }
  return built;
}

// The mean of what was read, and its sd: the tape's own share does not grow less with repeats.
bool fill_read(const Survey& survey, const Opening& opening, OpeningRead& found) {
  double sum = 0, variance = 0, tape = 0;
  int count = 0;
  for (const Reading& reading : opening.is) {
    if (reading.struck) continue;
    const Worth one = worth(survey, reading, Ends::marks);
    sum += reading.value.mm, variance += one.sd * one.sd, tape = one.tape;
    ++count;
  }
  if (count == 0) return false;
  const double ends = 2 * kStandsOff * kStandsOff;
  found.read = sum / count;
  found.sd = std::sqrt(variance / count / count + tape * tape + ends);
  return true;
}

bool fill_foretold(const Opening& opening, const FitAnswer& fit, const RoomShape& room,
                   const std::vector<RoomShape>& draws, OpeningRead& found) {
  const Built built{fit.pieces, fit.frames, room};
  const auto line = line_of(opening, built);
  const auto adjusted = line ? opening_in(*line, built) : std::nullopt;
  if (!adjusted) return false;
  found.adjusted = *adjusted;
  for (std::size_t r = 0; r < draws.size(); ++r)
    if (const auto drawn = opening_in(*line, {fit.pieces, fit.frames_in_draws[r], draws[r]}))
      found.drawn.push_back(*drawn);
  return found.drawn.size() == draws.size();
}

}  // namespace

double OpeningRead::foretold_sd() const {
  return std::sqrt(covariance(drawn, drawn));
}

double OpeningRead::w() const {
  return (read - adjusted) / std::sqrt(covariance(drawn, drawn) + sd * sd);
}

std::vector<OpeningRead> openings_read(const Survey& survey, const FitAnswer& fit,
                                       const RoomShape& room, const std::vector<RoomShape>& draws) {
  std::vector<OpeningRead> found;
  if (!fit.known || draws.size() < 2) return found;
  for (std::size_t i = 0; i < survey.installed.size(); ++i)
    for (std::size_t k = 0; k < survey.installed[i].openings.size(); ++k) {
      const Opening& opening = survey.installed[i].openings[k];
      OpeningRead next;
      next.id = fmt::format("installed[{}].openings[{}]", i, k);
      next.name = fmt::format("opening between {} and {} (line {})", opening.between[0],
                              opening.between[1], opening.place.line);
      if (fill_read(survey, opening, next) && fill_foretold(opening, fit, room, draws, next))
        found.push_back(std::move(next));
    }
  return found;
}

RoomDrawn as_built(const RoomShape& room, const std::vector<RoomShape>& draws,
                   std::vector<OpeningRead> openings) {
  if (openings.empty()) return {room, draws};
  Rows rows = rows_of(room, draws);
  for (std::size_t i = 0; i < openings.size(); ++i) {
    const Told told(openings[i]);
    for (std::size_t k = 0; k < rows.adjusted.size(); ++k)
      told.move(rows.adjusted[k], rows.drawn[k]);
    for (std::size_t j = i + 1; j < openings.size(); ++j)
      told.move(openings[j].adjusted, openings[j].drawn);
  }
  return room_of(rows, room, draws);
}

}  // namespace nook
