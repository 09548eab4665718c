// Reads the [[wall]] tables of room.toml.
#include <fmt/format.h>

#include <algorithm>

#include "job/room_file.h"

namespace nook {
namespace {

using namespace room_keys;

// What the readers of one wall share.
struct WallFile {
  RoomFile& file;
  Wall& wall;
  int index;
  std::string id;  // "wall[0]"

  Source& source() const { return file.source; }
  bool from_right(const Table& table) const {
    return file.from_right(table, index, wall.from_corner_right);
  }
};

void read_level_reading(WallFile& at, const Node& node, int i) {
  const std::size_t before = at.source().troubles();
  Table table(at.source(), node, kLevel);
  LevelReading level;
  level.place = node.place;
  level.at = table.length({"at", needed}).value_or(Length{});
  level.from_right = at.from_right(table);
  level.from = height_at(table, {"from", needed}).value_or(Height{});
  level.to = height_at(table, {"to", needed}).value_or(Height{});
  using W = Word<bool>;
  level.gap_at_top =
      table.word<bool>({"gap_at", needed}, {W{"top", true}, W{"bottom", false}}).value_or(true);
  const Remarks remarks = table.remarks();
  if (const Node* gap = table.find({"gap", needed}))
    level.gap = readings_of(at.source(), *gap,
                            {"gap", {fmt::format("{}.level[{}]", at.id, i), ".gap"}}, remarks);
  if (at.source().sound_since(before)) at.wall.levels.push_back(std::move(level));
}

constexpr Values kStation{2, 2, "[where, the reading there]"};

// A list of [position, reading] pairs; positions are heights or distances from the corner.
std::vector<Station> stations(WallFile& at, const Table& table, Ask ask, const std::string& id) {
  std::vector<Station> found;
  const auto& items = table.list(ask);
  for (std::size_t i = 0; i < items.size(); ++i) {
    const std::size_t before = at.source().troubles();
    const auto* pair = at.source().list(items[i], fmt::format("an entry of {}", ask.key), kStation);
    if (!pair) continue;
    Station station;
    station.place = items[i].place;
    if (id.find(".plumb") != std::string::npos)
      station.height = height_of(at.source(), (*pair)[0], "the height").value_or(Height{});
    else
      station.at = at.source()
                       .length((*pair)[0], "the distance from the corner", Range::not_negative)
                       .value_or(Length{});
    station.reading = readings_of(at.source(), (*pair)[1],
                                  {"the reading", {fmt::format("{}.{}[{}]", id, ask.key, i)}});
    if (at.source().sound_since(before)) found.push_back(std::move(station));
  }
  return found;
}

// The height a table has to say; `before` is how much was wrong before it was opened.
std::optional<Height> needed_height(const Table& table, std::size_t before) {
  const auto height = height_in(table);
  if (!height && table.source().sound_since(before)) table.find({"height", needed});
  return height;
}

void read_straightedge(WallFile& at, const Node& node, int i) {
  const std::size_t before = at.source().troubles();
  Table table(at.source(), node, kStraightedge);
  StraightedgeReading stick;
  stick.place = node.place;
  const auto height = needed_height(table, before);
  stick.height = height.value_or(Height{});
  stick.from_right = at.from_right(table);
  stick.gaps = stations(at, table, {"gaps", needed}, fmt::format("{}.straightedge[{}]", at.id, i));
  if (height) at.wall.straightedges.push_back(std::move(stick));
}

void read_plumb(WallFile& at, const Node& node, int i) {
  Table table(at.source(), node, kPlumb);
  PlumbReading plumb;
  plumb.place = node.place;
  const auto along = table.length({"at", needed});
  plumb.at = along.value_or(Length{});
  plumb.from_right = at.from_right(table);
  plumb.line = stations(at, table, {"line", needed}, fmt::format("{}.plumb[{}]", at.id, i));
  if (along) at.wall.plumbs.push_back(std::move(plumb));
}

void read_string(WallFile& at, const Node& node, int i) {
  const std::size_t before = at.source().troubles();
  Table table(at.source(), node, kString);
  StringReading string;
  string.place = node.place;
  const auto height = needed_height(table, before);
  string.height = height.value_or(Height{});
  string.from_right = at.from_right(table);
  string.line = stations(at, table, {"line", needed}, fmt::format("{}.string[{}]", at.id, i));
  if (height) at.wall.strings.push_back(std::move(string));
}

const std::initializer_list<Word<ObstacleKind>> kObstacleKinds = {
    {"outlet", ObstacleKind::outlet}, {"switch", ObstacleKind::switch_box},
    {"vent", ObstacleKind::vent},     {"heater", ObstacleKind::heater},
    {"casing", ObstacleKind::casing}, {"sill", ObstacleKind::sill},
    {"pipe", ObstacleKind::pipe},     {"thermostat", ObstacleKind::thermostat},
    {"alarm", ObstacleKind::alarm},   {"other", ObstacleKind::other}};

// One figure is from the wall's face outward, or inward where it is negative.
void read_out(Source& source, const Node& node, Obstacle& obstacle) {
  const bool pair = node.is(Node::Kind::list);
  const auto* items =
      pair ? source.list(node, "out", {2, 2, "[from, to], or how far it stands out"}) : nullptr;
  if (pair && !items) return;
  const auto a = source.length(pair ? (*items)[0] : node, "out", Range::any);
  const auto b = pair ? source.length((*items)[1], "out", Range::any) : Length{};
  if (!a || !b) return;
  obstacle.out[0] = std::min(*a, *b);
  obstacle.out[1] = std::max(*a, *b);
}

void read_obstacle(WallFile& at, const Node& node) {
  const std::size_t before = at.source().troubles();
  Table table(at.source(), node, kObstacle);
  Obstacle obstacle;
  obstacle.place = node.place;
  obstacle.kind =
      table.word<ObstacleKind>({"kind", needed}, kObstacleKinds).value_or(ObstacleKind::other);
  obstacle.name = table.text({"name"}).value_or("");
  if (obstacle.name.empty())
    obstacle.name = table.find({"kind"}) ? table.find({"kind"})->text : "other";
  obstacle.from_right = at.from_right(table);
  if (const auto along = table.lengths({"along", needed, Range::any}, {2, 2, "[from, to]"}))
    std::copy(along->begin(), along->end(), obstacle.along);
  if (const Node* height = table.find({"height", needed}))
    read_heights(at.source(), *height, obstacle.height);
  if (const Node* out = table.find({"out"})) read_out(at.source(), *out, obstacle);
  if (!at.source().sound_since(before)) return;
  if (obstacle.along[0] >= obstacle.along[1])
    at.source().fault(table.place_of("along"), "along must grow", "pair-reversed",
                      "first the end nearer to the corner it is counted from");
  at.wall.obstacles.push_back(std::move(obstacle));
}

void read_name(WallFile& at, const Table& table) {
  const auto name = table.text({"name", needed});
  const bool taken = !at.file.walls.add(name.value_or(""));
  if (!name) return;
  at.wall.name = *name;
  const Place place = table.place_of("name");
  Source& source = at.source();
  if (name->empty())
    source.fault(place, "a wall needs a name", "bad-name", "call it as you would say it: \"left\"");
  if (name->find('/') != std::string::npos)
    source.fault(place, "a wall's name cannot hold '/'", "bad-name",
                 "corners are called after their walls: left/right");
  if (name->ends_with(" wall"))
    source.fault(place, fmt::format("'{}' says wall twice", *name), "name-reserved",
                 fmt::format("call it '{}' here; the design says '{}'",
                             name->substr(0, name->size() - 5), *name));
  if (taken)
    source.fault(place, fmt::format("a second wall called '{}'", *name), "name-taken",
                 "every wall has its own name");
}

void read_extent(WallFile& at, const Table& table) {
  at.wall.from_corner_right = at.file.from_right(table, at.index, false);
  if (const Node* length = table.find({"length"}))
    at.wall.length =
        readings_of(at.source(), *length, {"length", {at.id + ".length"}, Range::positive});
  at.wall.length_height = height_at(table, {"length_height"});
  at.wall.ends_at = table.text({"ends_at"}).value_or("");
  at.wall.wallboard = table.length({"wallboard"}).value_or(at.wall.wallboard);
}

void read_wall(RoomFile& file, const Node& node, int index) {
  WallFile at{file, file.survey.walls[index], index, fmt::format("wall[{}]", index)};
  Table table(file.source, node, kWall);
  at.wall.place = node.place;
  read_name(at, table);
  read_extent(at, table);
  if (const Node* board = table.table({"baseboard"}))
    at.wall.baseboard = read_baseboard(file.source, *board);
  int i = 0;
  for (const Node* entry : table.tables("level")) read_level_reading(at, *entry, i++);
  i = 0;
  for (const Node* entry : table.tables("straightedge")) read_straightedge(at, *entry, i++);
  i = 0;
  for (const Node* entry : table.tables("plumb")) read_plumb(at, *entry, i++);
  i = 0;
  for (const Node* entry : table.tables("string")) read_string(at, *entry, i++);
  if (const Node* studs = table.table({"studs"})) read_studs(file, *studs, index);
  for (const Node* entry : table.tables("obstacle")) read_obstacle(at, *entry);
}

}  // namespace

std::optional<Baseboard> read_baseboard(Source& source, const Node& node) {
  const std::size_t before = source.troubles();
  Table table(source, node, kBaseboard);
  Baseboard board;
  board.place = node.place;
  board.height = table.length({"height", needed, Range::positive}).value_or(Length{});
  board.thickness = table.length({"thickness", needed, Range::positive}).value_or(Length{});
  board.shoe = table.length({"shoe"}).value_or(Length{});
  board.starts = table.length({"starts"}).value_or(Length{});
  board.ends = table.length({"ends"});
  board.removable = table.flag({"removable"}).value_or(false);
  for (const Node& item : table.list({"profile"})) {
    const auto* pair = source.list(item, "a point of the profile", {2, 2, "[height, out]"});
    if (!pair) continue;
    const auto height = source.length((*pair)[0], "the height", Range::not_negative);
    const auto out = source.length((*pair)[1], "the distance out", Range::not_negative);
    if (!height || !out) continue;
    if (!board.profile.empty() && *height < board.profile.back().height)
      source.fault(item.place, "a profile goes up from point to point", "profile-not-rising",
                   "start with the lowest point, at the floor");
    if (*height > board.height && source.sound_since(before))
      source.fault(item.place, "this point is above the board's top", "profile-too-high",
                   "the profile ends at the board's height");
    board.profile.push_back({*height, *out});
  }
  if (board.ends && *board.ends <= board.starts && source.sound_since(before))
    source.fault(table.place_of("ends"), "the board ends before it starts", "pair-reversed",
                 "both count from the corner: starts is the nearer one");
  if (board.thickness > board.height && source.sound_since(before))
    source.fault(table.place_of("thickness"), "the board is thicker than it is high",
                 "board-thicker-than-high", "thickness is how far it stands out of the wall");
  return source.sound_since(before) ? std::optional(board) : std::nullopt;
}

void read_walls(RoomFile& file, const Table& room) {
  const auto walls = room.tables("wall");
  file.wall_count = static_cast<int>(walls.size());
  file.survey.walls.resize(walls.size());
  for (int i = 0; i < file.wall_count; ++i) read_wall(file, *walls[i], i);
}

}  // namespace nook
