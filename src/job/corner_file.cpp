// Reads the [[corner]] tables of room.toml into one corner for each two neighboring walls.
#include <fmt/format.h>

#include <cmath>
#include <map>
#include <tuple>

#include "job/room_file.h"

namespace nook {
namespace {

using namespace room_keys;

// Where a mark stands: corner, wall of the corner, from the line, height and along in nanometers.
using Spot = std::tuple<int, int, bool, long long, long long>;

// What the readers of one [[corner]] share.
struct CornerFile {
  RoomFile& file;
  std::map<Spot, std::string>& marks;  // the id of each spot's first use
  Corner& corner;
  int number;    // of the corner in the survey
  bool swapped;  // the file names the right wall first
  Height height;
  std::string id;  // "corner[0]", counted as in the file

  Source& source() const { return file.source; }
};

void share_id(CornerFile& at, Reading& mark, int wall) {
  const Spot spot{at.number, wall, at.height.from_line, nanometres(at.height.value),
                  nanometres(mark.value)};
  mark.id = at.marks.try_emplace(spot, mark.id).first->second;
}

void read_diagonal(CornerFile& at, const Node& node, int i) {
  const std::size_t before = at.source().troubles();
  const auto* three = at.source().list(
      node, "a diagonal",
      {3, 3, "[mark on the first wall, mark on the second, straight between them]"});
  if (!three) return;
  const std::string id = fmt::format("{}.diagonals[{}]", at.id, i);
  auto first = reading_of(at.source(), (*three)[0],
                          {"the mark on the first wall", {id + ".first"}, Range::positive});
  auto second = reading_of(at.source(), (*three)[1],
                           {"the mark on the second wall", {id + ".second"}, Range::positive});
  Diagonal diagonal;
  diagonal.straight =
      readings_of(at.source(), (*three)[2], {"the straight tape", {id}, Range::positive});
  if (!at.source().sound_since(before)) return;
  if (at.swapped) std::swap(first, second);
  share_id(at, *first, 0);
  share_id(at, *second, 1);
  diagonal.first = std::move(*first);
  diagonal.second = std::move(*second);
  diagonal.height = at.height;
  diagonal.place = node.place;
  at.corner.diagonals.push_back(std::move(diagonal));
}

void read_square(CornerFile& at, const Node& node, int i) {
  const std::size_t before = at.source().troubles();
  Table table(at.source(), node, kSquare);
  SquareReading square;
  square.place = node.place;
  square.height = at.height;
  square.blade = table.length({"blade", needed, Range::positive}).value_or(Length{});
  using W = Word<bool>;
  square.gap_at_tip =
      table.word<bool>({"at", needed}, {W{"tip", true}, W{"heel", false}}).value_or(true);
  const Remarks remarks = table.remarks();
  if (const Node* gap = table.find({"gap", needed}))
    square.gap = readings_of(at.source(), *gap,
                             {"gap", {fmt::format("{}.square[{}]", at.id, i), ".gap"}}, remarks);
  if (!at.source().sound_since(before)) return;
  for (const Reading& gap : square.gap)
    if (!gap.struck && gap.value >= square.blade)
      at.source().fault(gap.place, "the gap is as wide as the blade is long", "gap-over-blade",
                        "no corner is that far out of square");
  at.corner.squares.push_back(std::move(square));
}

void check_angle(Source& source, const Table& table, const AngleReading& angle) {
  const double value = in_degrees(angle.value);
  if (!angle.struck && (value <= 0 || value >= 180))
    source.fault(table.place_of("is"), "no corner has this angle", "absurd-value",
                 "a corner between two walls has between 0 and 180 degrees");
  if (angle.sd && angle.sd->rad <= 0)
    source.fault(table.place_of("sd"), "sd must be above 0", "not-above-zero",
                 "write the degrees it is good to, or leave it out");
}

void read_angle_reading(CornerFile& at, const Node& node, int i) {
  const std::size_t before = at.source().troubles();
  Table table(at.source(), node, kAngle);
  AngleReading angle;
  angle.place = table.place_of("is");
  angle.height = at.height;
  angle.id = fmt::format("{}.angles[{}]", at.id, i);
  angle.value = table.angle({"is", needed}).value_or(Angle{});
  angle.sd = table.angle({"sd"});
  const bool has_sd = table.has("sd");
  angle.blade = table.length({"blade", !has_sd, Range::positive}).value_or(Length{});
  angle.struck = table.flag({"struck"}).value_or(false);
  angle.note = table.text({"note"}).value_or("");
  if (!at.source().sound_since(before)) return;
  ++at.source().readings;
  angle.given = table.find({"is"})->text;
  check_angle(at.source(), table, angle);
  at.corner.angles.push_back(std::move(angle));
}

void read_buildup(CornerFile& at, const Node& node) {
  const std::size_t before = at.source().troubles();
  Table table(at.source(), node, kBuildup);
  const auto proud = table.length({"proud", needed, Range::any});
  const auto reach = table.length({"reach", needed, Range::positive});
  if (!at.source().sound_since(before)) return;
  if (at.corner.buildup)
    at.source().fault(node.place, "the buildup of this corner was given before", "given-twice",
                      "one [[corner]] of the two walls says it");
  at.corner.buildup = Buildup{*proud, *reach};
}

// The corner of two walls, or nothing (a fault) where they share none.
std::optional<int> corner_of(RoomFile& file, const Table& table, std::pair<int, int> walls) {
  if (std::abs(walls.first - walls.second) == 1) return std::min(walls.first, walls.second);
  const bool same = walls.first == walls.second;
  file.source.fault(table.place_of("walls"),
                    same ? "a wall has no corner with itself" : "these walls share no corner",
                    "no-such-corner",
                    "walls stand in the file from left to right; neighbors share one");
  return std::nullopt;
}

void read_corner(RoomFile& file, const Node& node, int index, std::map<Spot, std::string>& marks) {
  Table table(file.source, node, kCorner);
  const Node* names = table.find({"walls", needed});
  const auto walls = names ? read_wall_pair(file, *names) : std::nullopt;
  const auto number = walls ? corner_of(file, table, *walls) : std::nullopt;
  Corner nowhere;  // so that the rest of a misnamed corner is read for its faults all the same
  CornerFile at{file,
                marks,
                number ? file.survey.corners[*number] : nowhere,
                number.value_or(-1),
                walls && walls->first > walls->second,
                height_in(table).value_or(kUnsaidHeight),
                fmt::format("corner[{}]", index)};
  if (at.corner.place.line == 0) {
    at.corner.place = node.place;
    at.corner.height = at.height;
    at.corner.entry = index;
    at.corner.right_first = at.swapped;
  }
  const auto& diagonals = table.list({"diagonals"});
  for (std::size_t i = 0; i < diagonals.size(); ++i)
    read_diagonal(at, diagonals[i], static_cast<int>(i));
  int i = 0;
  for (const Node* entry : table.tables("square")) read_square(at, *entry, i++);
  i = 0;
  for (const Node* entry : table.tables("angles")) read_angle_reading(at, *entry, i++);
  if (const Node* buildup = table.table({"buildup"})) read_buildup(at, *buildup);
}

}  // namespace

void read_corners(RoomFile& file, const Table& room) {
  for (int k = 0; k + 1 < file.wall_count; ++k) {
    Corner corner;
    corner.walls[0] = k;
    corner.walls[1] = k + 1;
    corner.height = kUnsaidHeight;
    file.survey.corners.push_back(corner);
  }
  std::map<Spot, std::string> marks;
  int index = 0;
  for (const Node* entry : room.tables("corner")) read_corner(file, *entry, index++, marks);
}

}  // namespace nook
