// Each reading moved by what the changed room does to it, then rounded to the tape's marks.
#include "varied_room.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

#include "job/job.h"
#include "survey/adjustment.h"

namespace nook::test {
namespace {

class Changed {
 public:
  Changed(Survey& survey, std::uint64_t seed) : survey_(survey), random_(seed) {
    for (std::size_t w = 0; w < survey.walls.size(); ++w)
      leans_.push_back(gaussian(random_, 0.002));
    for (std::size_t c = 0; c < survey.corners.size(); ++c)
      turns_.push_back(gaussian(random_, std::numbers::pi / 180));
    longer_ = gaussian(random_, 4);
  }

  void all() {
    for (std::size_t w = 0; w < survey_.walls.size(); ++w) change(survey_.walls[w], leans_[w]);
    for (std::size_t c = 0; c < survey_.corners.size(); ++c) change(survey_.corners[c], turns_[c]);
    if (survey_.walls.size() == 3) move(survey_.walls[1].length, longer_);
    for (Across& across : survey_.across)
      move(across.is,
           longer_ + across.out.mm * (std::tan(turns_.front()) + std::tan(turns_.back())));
    for (DropReading& drop : survey_.floor.down) move(drop.drop, gaussian(random_, 1.5));
  }

 private:
  void read(Reading& reading, double mm) {
    const double mark = survey_.tape.read_to.mm;
    reading.value = millimetres(std::round((mm + gaussian(random_, 0.4)) / mark) * mark);
  }
  void move(Readings& readings, double by) {
    for (Reading& reading : readings) read(reading, reading.value.mm + by);
  }

  void change(Wall& wall, double lean) {
    for (PlumbReading& plumb : wall.plumbs)
      for (Station& at : plumb.line) move(at.reading, -lean * at.height.value.mm);
    for (LevelReading& level : wall.levels)
      for (Reading& gap : level.gap) {
        const double span = level.to.value.mm - level.from.value.mm;
        read(gap, (level.gap_at_top ? 1 : -1) * gap.value.mm - lean * span);
      }
    for (LevelReading& level : wall.levels) level_end(level);
    for (StringReading& string : wall.strings)
      for (Station& at : string.line) move(at.reading, 0);
    for (StraightedgeReading& stick : wall.straightedges)
      for (Station& at : stick.gaps) {
        move(at.reading, 0);
        for (Reading& gap : at.reading) gap.value.mm = std::max(0.0, gap.value.mm);
      }
  }
  // A gap below nothing is one at the other end.
  static void level_end(LevelReading& level) {
    double sum = 0;
    for (const Reading& gap : level.gap) sum += gap.value.mm;
    level.gap_at_top = sum >= 0;
    for (Reading& gap : level.gap) gap.value.mm = std::abs(gap.value.mm);
  }

  void change(Corner& corner, double turn) {
    corner.squares.clear();
    corner.angles.clear();
    for (Diagonal& diagonal : corner.diagonals)
      for (Reading& straight : diagonal.straight) {
        const double a = diagonal.first.value.mm, b = diagonal.second.value.mm;
        const double c = straight.value.mm;
        const double angle = std::acos((a * a + b * b - c * c) / (2 * a * b)) + turn;
        read(straight, std::sqrt(a * a + b * b - 2 * a * b * std::cos(angle)));
      }
  }

  Survey& survey_;
  Random random_;
  std::vector<double> leans_, turns_;
  double longer_ = 0;
};

}  // namespace

double even(Random& random, double low, double high) {
  return low + (high - low) * static_cast<double>(random() >> 11) * 0x1p-53;
}

double gaussian(Random& random, double sd) {
  const double r = std::sqrt(-2 * std::log(1 - even(random, 0, 1)));
  return sd * r * std::cos(2 * std::numbers::pi * even(random, 0, 1));
}

MeasuredRoom varied_room(const std::string& name, std::uint64_t seed, int draws) {
  auto survey = parse_room(source_file("rooms/" + name + "/room.toml"), "room.toml");
  if (!survey) throw std::runtime_error(survey.error().front().what);
  if (seed > 0) Changed(*survey, seed).all();
  const Adjustment adjustment = adjust(*survey);
  MeasuredRoom room{std::move(*survey), adjustment.room(), {}, adjustment.complete()};
  if (room.complete) room.draws = adjustment.draws(draws);
  return room;
}

}  // namespace nook::test
