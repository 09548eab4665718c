// Places and words of readings to take.
#include "survey/taking.h"

#include <algorithm>
#include <cmath>

#include "base/notation.h"

namespace nook {
namespace {

constexpr double kEnd = 50;  // mm that a mark stays off a wall's end. Chosen

}  // namespace

Taking::Taking(View& view)
    : view_(view), survey_(*view.model().survey), inch_(survey_.units == Unit::inch) {}

double Taking::eased(double mm) const {
  return std::round(mm / easy()) * easy();
}

double Taking::room_on(int wall) const {
  return model().assumed_length[wall] - kEnd;
}

double Taking::board_top(int wall) const {
  const auto& board = survey_.walls[wall].baseboard;
  return board ? board->height.mm : 0;
}

double Taking::clear_of_board(int wall) const {
  return thirds(std::ceil((board_top(wall) + kEnd) / thirds(1)));
}

TakingPlace Taking::near(int wall, double along) const {
  const double length = model().assumed_length[wall];
  const bool from_right = between(wall) && along > length / 2;
  return {wall, eased(from_right ? length - along : along), from_right};
}

std::vector<TakingPlace> Taking::all_along(int wall, int step) const {
  std::vector<TakingPlace> out;
  const double half = model().assumed_length[wall] / 2;
  for (int i = 1; i <= 7; i += step) {
    if (feet(i) >= (between(wall) ? half + 1 : room_on(wall))) break;
    out.push_back({wall, feet(i), false});
    if (between(wall)) out.push_back({wall, feet(i), true});
  }
  return out;
}

double Taking::base(const TakingPlace& place, double z) const {
  return view_.base_along(place.wall, place.at, z, place.from_right);
}

std::string Taking::said(double mm) const {
  return with_unit(millimetres(mm), survey_.said());
}

std::string Taking::said(const TakingPlace& place) const {
  const char* corner = !between(place.wall) ? "the corner"
                       : place.from_right   ? "its right corner"
                                            : "its left corner";
  return said(place.at) + " from " + corner;
}

Worth Taking::tape(double length, Ends ends) const {
  Reading reading;
  reading.value = millimetres(length);
  reading.smallest_mark = survey_.tape.read_to;
  return worth(survey_, reading, ends);
}

void Taking::add(NextReading reading, const Varied& of, double noise, double minutes) {
  const int numbers = reading.kind == NextReading::Kind::straightedge ? 3 : 1;
  const auto same = [&](const Takable& t) { return t.reading.reading == reading.reading; };
  if (std::any_of(found_.begin(), found_.end(), same)) return;
  found_.push_back({std::move(reading), {functional(view_, of)}, noise, minutes, numbers});
}

}  // namespace nook
