// Where a design's pieces meet the walls.
#include <algorithm>
#include <cctype>
#include <cmath>

#include "design/piece.h"
#include "job/job.h"
#include "job/walk_part.h"

namespace nook {
namespace {

constexpr double kUsualReach = 1500;  // mm, of a wall whose length nothing says. Chosen
constexpr double kApart = 150;        // mm: nearer spots are one. Chosen

// A wall of the square room that a design is drawn in.
struct DrawnWall {
  bool along_x;                   // it runs like the first wall of the design's corner
  std::optional<double> counted;  // mm; where the design's corner lies along it, if not at 0
  double end;                     // mm; a stick stays this side of it
};

// Nothing where the wall counts from its far end and nothing says how long it is.
std::optional<DrawnWall> drawn_wall(const Survey& survey, int wall, int corner) {
  const auto longest = survey.walls[wall].longest();
  DrawnWall drawn{(wall - corner) % 2 == 0, {}, longest ? longest->mm - kApart : 1e300};
  if (wall != corner || corner == 0) return drawn;
  if (!longest) return std::nullopt;
  drawn.counted = longest->mm;
  return drawn;
}

// Distance along a wall from where its marks count.
double along_of(const DrawnWall& wall, Vec3 p) {
  const double along = wall.along_x ? p.x : p.y;
  return wall.counted ? *wall.counted - along : along;
}

void take(WallSpots& spots, double drawn, double end) {
  if (drawn < 0) return;
  const double along = std::min(std::max(drawn, kApart), end);  // no stick goes into a corner
  const bool known = std::any_of(spots.along.begin(), spots.along.end(),
                                 [&](double a) { return std::abs(a - along) < kApart; });
  if (!known) spots.along.push_back(along);
  spots.reach = std::max(spots.reach, along);
}

void take(const DrawnWall& wall, const Piece& piece, WallSpots& spots) {
  for (const Vec2 corner : piece.drawn->outline)
    take(spots, along_of(wall, piece.frame.room_from_piece({corner.x, corner.y, 0})), wall.end);
  spots.height = std::max(spots.height, piece.frame.at.z);
}

// Where a design's pieces are to meet a wall.
void take_contacts(const Survey& survey, int wall, const Design& design, WallSpots& spots) {
  const auto drawn = drawn_wall(survey, wall, corner_of(survey, design).value_or(0));
  if (!drawn) return;
  const std::vector<Piece> pieces = pieces_of(design);
  for (const Contact& contact : design.contacts)
    if (wall_named(contact.meets) == survey.walls[wall].name)
      for (const int p : pieces_named(pieces, design, contact.part)) take(*drawn, pieces[p], spots);
}

double middle_height(const Piece& piece) {
  double low = 1e300, high = -1e300;
  for (const Vec2 corner : piece.drawn->outline) {
    const double z = piece.frame.room_from_piece({corner.x, corner.y, 0}).z;
    low = std::min(low, z), high = std::max(high, z);
  }
  return (low + high) / 2;
}

// How high what is screwed to a wall hangs: there its studs matter, and how it stands.
void take_fastened(const std::string& wall, const Design& design, WallSpots& spots) {
  const std::vector<Piece> pieces = pieces_of(design);
  std::vector<double>& heights = spots.fastened;
  for (const Fastening& how : design.fastenings)
    if (wall_named(how.to) == wall)
      for (const int p : pieces_named(pieces, design, how.part)) {
        const double up = middle_height(pieces[p]);
        if (std::none_of(heights.begin(), heights.end(),
                         [&](double other) { return is_near(other, up); }))
          heights.push_back(up);
      }
  std::sort(heights.begin(), heights.end());
  if (!heights.empty()) spots.height = heights[heights.size() / 2];
}

void add_usual(const Survey& survey, int wall, WallSpots& spots) {
  const auto length = survey.walls[wall].longest();
  if (spots.reach == 0) spots.reach = length ? length->mm - 100 : kUsualReach;
  if (spots.along.size() < 2) spots.along = {spots.reach / 4, spots.reach * 3 / 4};
  if (spots.height < 300) spots.height = kUnsaidHeight.value.mm;
  std::sort(spots.along.begin(), spots.along.end());
}

}  // namespace

std::vector<WallSpots> spots_of(const Survey& survey, const Design* design) {
  std::vector<WallSpots> spots(survey.walls.size());
  for (int wall = 0; wall < static_cast<int>(survey.walls.size()); ++wall) {
    if (design) take_contacts(survey, wall, *design, spots[wall]);
    if (design) take_fastened(survey.walls[wall].name, *design, spots[wall]);
    add_usual(survey, wall, spots[wall]);
    if (!design) spots[wall].fastened = {spots[wall].height};
  }
  return spots;
}

bool is_near(double a, double b) {
  return std::abs(a - b) < 60;  // mm. Chosen
}

std::string easy(const Survey& survey, double mm) {
  const bool metric = survey.units != Unit::inch;
  const Rounding rounding{survey.units, metric ? millimetres(10) : inches(1)};
  return written(Length{mm}, rounding);
}

std::string like(Unit unit, const std::string& inches, const std::string& mm) {
  if (unit != Unit::cm) return unit == Unit::inch ? inches : mm;
  std::string text;
  for (std::size_t i = 0; i < mm.size();) {
    std::size_t end = i;
    while (end < mm.size() && std::isdigit(static_cast<unsigned char>(mm[end]))) ++end;
    text += end > i ? written(millimetres(std::stod(mm.substr(i, end - i))), usual_rounding(unit))
                    : mm.substr(i, 1);
    i = std::max(end, i + 1);
  }
  return text;
}

std::string from_corner(const Survey& survey, const std::string& inches, const std::string& mm) {
  const std::string burned = survey.units == Unit::inch ? " burned 1" : " burned 10 cm";
  return like(survey.units, inches, mm) + (survey.tape.corner == TapeEnd::burned ? burned : "");
}

std::string struck(const Reading& taken) {
  std::string keys = "is = " + nook::quoted(taken.given);
  if (taken.sd) keys += ", sd = " + nook::quoted(std::to_string(taken.sd->mm) + " mm");
  if (taken.on_said) keys += taken.on == Face::wall ? ", on = 'wall'" : ", on = 'baseboard'";
  if (!taken.note.empty()) keys += ", note = " + nook::quoted(taken.note);
  return "{ " + keys + ", struck = true }";
}

std::string reading(const std::string& typed, bool struck) {
  std::string is = typed, keys;
  for (const auto& [said, on] : {std::pair{" board", "baseboard"}, {" wall", "wall"}})
    if (is.ends_with(said)) {
      is.resize(is.size() - std::string(said).size());
      keys += ", on = " + nook::quoted(on);
    }
  if (struck) keys += ", struck = true, note = 'read again'";
  return keys.empty() ? nook::quoted(is) : "{ is = " + nook::quoted(is) + keys + " }";
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
  return tl::unexpected("say at which end it gaps, " + first + " or " + second +
                        ", behind the gap: " + answer + " " + first);
}

}  // namespace nook
