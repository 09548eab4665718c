// Reads room.toml from its root.
#include "job/room_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "job/job.h"

namespace nook {
namespace {

using namespace room_keys;

// The level of a file that names none: 48 in, in a metric file this. Chosen
constexpr Length kMetricLevel = millimetres(1200);

void read_tape(RoomFile& file, const Node& node) {
  Table tape(file.source, node, kTape);
  Tape& to = file.survey.tape;
  using C = Word<TapeClass>;
  to.accuracy = tape.word<TapeClass>({"class"}, {C{"I", TapeClass::I}, C{"II", TapeClass::II},
                                                 C{"III", TapeClass::III}})
                    .value_or(to.accuracy);
  to.read_to = tape.length({"read_to", false, Range::positive}).value_or(to.read_to);
  file.source.read_to = to.read_to;
  using E = Word<TapeEnd>;
  to.corner =
      tape.word<TapeEnd>({"corner"}, {E{"bent", TapeEnd::bent}, E{"case", TapeEnd::case_length},
                                      E{"block", TapeEnd::block}, E{"burned", TapeEnd::burned}})
          .value_or(to.corner);
}

void read_level(RoomFile& file, const Node& node) {
  Table level(file.source, node, kLevelTool);
  SpiritLevel& to = file.survey.level;
  const auto length = level.length({"length", false, Range::positive});
  to.length = length.value_or(to.length);
  to.length_said = length.has_value();
  const Node* error = level.find({"class"});
  if (!error) return;
  const auto slope = file.source.slope(*error, "class");
  if (slope && *slope < 0)
    file.source.fault(error->place, "class cannot be negative", "negative-value",
                      "how far it may be off: '0.5 mm/m'");
  to.slope_error = slope.value_or(to.slope_error);
}

// Below it the field has more waves than a wall has readings (chosen).
constexpr double kLeastReachMm = 200;

void read_flatness(RoomFile& file, const Node& node) {
  Table flatness(file.source, node, kFlatness);
  Flatness& to = file.survey.flatness;
  to.sd = flatness.length({"sd"});
  to.reach = flatness.length({"reach", false, Range::positive});
  if (to.reach && to.reach->mm < kLeastReachMm)
    file.source.fault(flatness.place_of("reach"), "a reach under 200 mm", "reach-too-short",
                      "humps and hollows of a wall reach further: 400 mm is usual");
}

}  // namespace

std::optional<int> RoomFile::wall(const Node& value, std::string_view name) {
  const auto text = source.text(value, name);
  if (!text) return std::nullopt;
  if (!text->empty() && walls.holds(*text)) return walls.number(*text);
  if (walls.holds("")) {  // a wall whose name has a fault of its own
    source.leave_unread();
    return std::nullopt;
  }
  const auto& all = walls.all();
  const std::string named = all.empty() ? "the file has no [[wall]]"
                            : all.size() > 8
                                ? "check the names of the walls"
                                : fmt::format("the walls are: {}", fmt::join(walls.each(), ", "));
  source.fault(value.place, fmt::format("there is no wall '{}'", *text), "unknown-wall",
               source.meant(*text, walls.views(), named));
  return std::nullopt;
}

bool RoomFile::from_right(const Table& table, int wall, bool usual) {
  const bool left_corner = wall > 0, right_corner = wall + 1 < wall_count;
  using W = Word<bool>;
  const auto right = table.word<bool>({"from_corner"}, {W{"left", false}, W{"right", true}});
  if (right && !(*right ? right_corner : left_corner)) {
    source.fault(table.place_of("from_corner"),
                 fmt::format("this wall has no corner on its {}", *right ? "right" : "left"),
                 "no-such-corner", "leave from_corner out: it counts from the corner there is");
    return false;
  }
  return left_corner && right_corner && right.value_or(usual);
}

long long nanometres(Length length) {
  return std::llround(length.mm * 1e6);
}

void read_heights(Source& source, const Node& node, Height (&to)[2]) {
  const auto* pair = source.list(node, "height", {2, 2, "[lower end, upper end]"});
  if (!pair) return;
  const std::size_t before = source.troubles();
  for (int k = 0; k < 2; ++k) to[k] = height_of(source, (*pair)[k], "height").value_or(Height{});
  const bool comparable = source.sound_since(before) && to[0].from_line == to[1].from_line;
  if (comparable && to[0].value >= to[1].value)
    source.fault(node.place, "the second height is not above the first", "pair-reversed",
                 "first the lower, then the upper");
}

std::optional<std::pair<int, int>> read_wall_pair(RoomFile& file, const Node& node) {
  const auto* names = file.source.list(node, "walls", kTwoWalls);
  if (!names) return std::nullopt;
  const auto a = file.wall((*names)[0], "a wall"), b = file.wall((*names)[1], "a wall");
  return a && b ? std::optional(std::pair(*a, *b)) : std::nullopt;
}

void read_tools(RoomFile& file, const Table& room) {
  file.survey.tape.read_to = file.source.read_to;
  if (file.source.units() != Unit::inch) file.survey.level.length = kMetricLevel;
  if (const Node* node = room.table({"tape"})) read_tape(file, *node);
  if (const Node* node = room.table({"level"})) read_level(file, *node);
  if (const Node* node = room.table({"level_line"})) {
    Table line(file.source, *node, kLevelLine);
    using W = Word<LevelLine>;
    file.survey.level_line =
        line.word<LevelLine>({"by"}, {W{"laser", LevelLine::laser}, W{"level", LevelLine::level},
                                      W{"water", LevelLine::water}})
            .value_or(LevelLine::laser);
  }
  if (const Node* node = room.table({"flatness"})) read_flatness(file, *node);
}

tl::expected<Survey, Diagnostics> parse_room(std::string_view text, const std::string& name) {
  const auto tree = parse_tree(text, name);
  if (!tree) return tl::unexpected(Diagnostics{tree.error()});
  Source source(text, name);
  Survey survey;
  RoomFile file{source, survey};
  Table room(source, *tree, kRoom);
  survey.title = room.text({"title"}).value_or("");
  source.read_units(room.find({"units"}));
  survey.units = source.units();
  const LongestLength walls(source, kLongestWallMm);
  read_tools(file, room);
  read_walls(file, room);
  read_corners(file, room);
  read_net(file, room);
  read_floor_and_ceiling(file, room);
  read_installed_and_access(file, room);
  check_room(file);
  check_size(file);
  if (!source.sound_since(0)) return tl::unexpected(std::move(source).faults());
  return survey;
}

}  // namespace nook
