// Where a design's pieces meet the walls.
#include <algorithm>
#include <cmath>

#include "design/piece.h"
#include "job/walk_part.h"

namespace nook {
namespace {

constexpr double kUsualHeight = 1000;  // mm. Chosen
constexpr double kUsualReach = 1500;   // mm, of a wall whose length nothing says. Chosen
constexpr double kApart = 150;         // mm: nearer spots are one. Chosen

// Distance along a wall from its corner, of a point of the square room that the design is drawn in.
double along_of(const Survey& survey, int wall, Vec3 p) {
  return wall == 0 || survey.walls.size() < 2 ? p.x : p.y;
}

void take(WallSpots& spots, double drawn) {
  const double along = drawn < 0 ? drawn : std::max(drawn, kApart);  // no stick goes into a corner
  const bool known = std::any_of(spots.along.begin(), spots.along.end(),
                                 [&](double a) { return std::abs(a - along) < kApart; });
  if (!known && along >= 0) spots.along.push_back(along);
  spots.reach = std::max(spots.reach, along);
}

void take(const Survey& survey, int wall, const Piece& piece, WallSpots& spots) {
  for (const Vec2 corner : piece.drawn->outline)
    take(spots, along_of(survey, wall, piece.frame.room_from_piece({corner.x, corner.y, 0})));
  spots.height = std::max(spots.height, piece.frame.at.z);
}

void add_usual(const Survey& survey, int wall, WallSpots& spots) {
  const Readings& length = survey.walls[wall].length;
  if (spots.reach == 0) spots.reach = length.empty() ? kUsualReach : length.front().value.mm - 100;
  if (spots.along.size() < 2) spots.along = {spots.reach / 4, spots.reach * 3 / 4};
  if (spots.height < 300) spots.height = kUsualHeight;
  std::sort(spots.along.begin(), spots.along.end());
}

}  // namespace

std::vector<WallSpots> spots_of(const Survey& survey, const Design* design) {
  std::vector<WallSpots> spots(survey.walls.size());
  for (int wall = 0; wall < static_cast<int>(survey.walls.size()); ++wall) {
    if (design) {
      const std::vector<Piece> pieces = pieces_of(*design);
      for (const Contact& contact : design->contacts)
        if (wall_named(contact.meets) == survey.walls[wall].name)
          for (const int p : pieces_named(pieces, *design, contact.part))
            take(survey, wall, pieces[p], spots[wall]);
    }
    add_usual(survey, wall, spots[wall]);
  }
  return spots;
}

std::string easy(const Survey& survey, double mm) {
  const bool metric = survey.units != Unit::inch;
  const Rounding rounding{survey.units, metric ? millimetres(10) : inches(1)};
  return written(Length{mm}, rounding);
}

std::string reading(const std::string& typed, bool struck) {
  std::string is = typed, keys;
  for (const auto& [said, on] : {std::pair{" board", "baseboard"}, {" wall", "wall"}})
    if (is.ends_with(said)) {
      is.resize(is.size() - std::string(said).size());
      keys += ", on = " + quoted(on);
    }
  if (struck) keys += ", struck = true, note = 'read again'";
  return keys.empty() ? quoted(is) : "{ is = " + quoted(is) + keys + " }";
}

std::string readings(const Answers& answers) {
  if (answers.size() == 1) return reading(answers.front().text, answers.front().struck);
  std::string list;
  for (const Answer& answer : answers)
    list += (list.empty() ? "" : ", ") + reading(answer.text, answer.struck);
  return "[" + list + "]";
}

tl::expected<EndedGap, std::string> ended_gap(const std::string& answer, const std::string& first,
                                              const std::string& second) {
  const bool nothing = answer.find_first_of("123456789") == std::string::npos;
  for (const std::string& end : {first, second})
    if (answer.ends_with(" " + end))
      return EndedGap{answer.substr(0, answer.size() - end.size() - 1), end, nothing};
  if (nothing) return EndedGap{answer, first, nothing};
  return tl::unexpected("say at which end it gaps, " + first + " or " + second + ": 3/16 " + first);
}

}  // namespace nook
