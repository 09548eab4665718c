// The stretches of the walk, each adding the questions that are still open.
#pragma once

#include <string>
#include <vector>

#include "job/walk.h"
#include "room/counted.h"

namespace nook {

/// Where readings matter on one wall, mm from its corner and above the floor.
struct WallSpots {
  std::vector<double> along;     // of upright edges
  double height = 0;             // of what hangs on it
  double reach = 0;              // how far along the pieces come
  std::vector<double> fastened;  // heights of what is screwed to it, rising; without a design the
                                 // usual one
};

struct Walk {
  const Survey& survey;
  const Design* design;          // or null
  std::vector<WallSpots> spots;  // one a wall
};

/// Where the edges of a design's pieces meet each wall; usual places without a design.
std::vector<WallSpots> spots_of(const Survey& survey, const Design* design);

/// Whether two distances along a wall, or two heights, are the same spot.
bool is_near(double a, double b);

/// A length rounded to an easy number of the job's unit, as it is typed.
std::string easy(const Survey& survey, double mm);

/// An answer as it may be typed: in inches, or one in millimeters brought to the unit.
std::string like(Unit unit, const std::string& inches, const std::string& mm);

/// The same for a reading from an inside corner, with what a tape held at a burned mark adds.
std::string from_corner(const Survey& survey, const std::string& inches, const std::string& mm);

/// A reading of the file that is struck, as a table that says so.
std::string struck(const Reading& taken);
/// One answer as a TOML value, several as a list of repeats; struck ones as tables that say so.
std::string readings(const Answers& answers);
/// One reading as the file has it; "2 1/16 board" and "2 1/16 wall" say what it reached.
std::string reading(const std::string& typed, bool struck = false);

/// A gap and at which of its two ends it is; of no gap at all, at either.
struct EndedGap {
  std::string gap, end;
  bool nothing = false;
};
/// "3/16 top" -> the gap and its end, one of the two; "0" needs none and gets the first. Any other
/// gap that says none is refused, with the reason.
tl::expected<EndedGap, std::string> ended_gap(const std::string& answer, const std::string& first,
                                              const std::string& second);

/// Sets a key of a table, which is made where the file has none.
TextEdit::Done set_in(TextEdit& edit, const std::string& table, const std::string& key,
                      const std::string& value);
/// Adds an item to a list of a table; either is made where it is missing.
TextEdit::Done add_to(TextEdit& edit, const std::string& table, const std::string& list,
                      const std::string& item);

/// `parts`: kind, thickness.
TextEdit::Done write_covering(TextEdit& edit, const std::vector<std::string>& parts);
/// `parts`: weight, the block's sides, how far it sank.
TextEdit::Done write_squash(TextEdit& edit, const std::vector<std::string>& parts);
/// `parts`: name, width before, width after, height.
TextEdit::Done write_turn(TextEdit& edit, const std::vector<std::string>& parts);

void add_lengths(const Walk& walk, std::vector<Question>& to);
void add_floor(const Walk& walk, std::vector<Question>& to);
void add_ceiling(const Walk& walk, std::vector<Question>& to);
void add_covering(const Walk& walk, std::vector<Question>& to);
void add_corners(const Walk& walk, std::vector<Question>& to);
void add_across(const Walk& walk, std::vector<Question>& to);
void add_levels(const Walk& walk, std::vector<Question>& to);
void add_strings(const Walk& walk, std::vector<Question>& to);
void add_studs(const Walk& walk, std::vector<Question>& to);
void add_obstacles(const Walk& walk, std::vector<Question>& to);
void add_doors(const Walk& walk, std::vector<Question>& to);
void add_turns(const Walk& walk, std::vector<Question>& to);

}  // namespace nook
