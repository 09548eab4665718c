// What readings that can be taken have in common: easy numbers, places along walls, their words.
#pragma once

#include <string>
#include <vector>

#include "survey/takable.h"
#include "survey/worth.h"

namespace nook {

/// A place along a wall, counted from one of its corners, mm.
struct TakingPlace {
  int wall = 0;
  double at = 0;
  bool from_right = false;
};

/// Gathers readings that can be taken in a room. Distances in mm.
class Taking {
 public:
  explicit Taking(View& view);

  View& view() const { return view_; }
  const RoomModel& model() const { return view_.model(); }
  const Survey& survey() const { return survey_; }

  /// Steps that are easy on the tape in hand: so many feet or 300 mm, third feet or 100 mm.
  double feet(double count) const { return count * (inch_ ? 304.8 : 300); }
  double thirds(double count) const { return count * (inch_ ? 101.6 : 100); }
  /// 1 in or 10 mm, and the nearest whole number of them.
  double easy() const { return inch_ ? 25.4 : 10; }
  double eased(double mm) const;
  /// Readings along a line are at most this far apart, as is usual (common practice, no source):
  /// 16 in or 400 mm.
  double apart() const { return inch_ ? 406.4 : 400; }

  /// Whether a wall lies between two corners.
  bool between(int wall) const { return model().length[wall] >= 0; }
  /// How far along a wall marks can be laid off.
  double room_on(int wall) const;
  double board_top(int wall) const;
  /// A height at which a level is clear of the baseboard.
  double clear_of_board(int wall) const;
  /// The place from the nearer corner, at an easy number.
  TakingPlace near(int wall, double along) const;
  /// Every `step` feet from each corner of a wall, to its middle or to its end.
  std::vector<TakingPlace> all_along(int wall, int step) const;
  /// Along the base line.
  double base(const TakingPlace& place, double z) const;

  std::string said(double mm) const;
  std::string said(const TakingPlace& place) const;
  const std::string& name(int wall) const { return survey_.walls[wall].name; }

  /// What a tape of that length is worth.
  Worth tape(double length, Ends ends) const;

  /// One number, its variance in mm^2 and its minutes; nothing where the same is there already.
  void add(NextReading reading, const Varied& of, double noise, double minutes);
  void add(Takable run) { found_.push_back(std::move(run)); }
  std::vector<Takable> found() && { return std::move(found_); }

 private:
  View& view_;
  const Survey& survey_;
  bool inch_;
  std::vector<Takable> found_;
};

/// Levels held plumb, every foot along a wall.
void add_levels(Taking& on, int wall);
/// Straightedges along a wall at three heights.
void add_straightedges(Taking& on, int wall);
/// A level at an upright edge, and where it is long a plumb line.
void add_upright(Taking& on, const UprightSpot& edge);
/// A string along a level edge; none where it is short.
void add_string(Taking& on, const LevelRun& run);
/// Readings at places of their own once more: tapes at the same marks, levels at the same spot.
void add_again(Taking& on);

}  // namespace nook
