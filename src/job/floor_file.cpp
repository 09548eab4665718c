// Reads floor, ceiling, what is installed and the way in, of room.toml.
#include <fmt/format.h>

#include "design/design.h"
#include "job/room_file.h"

namespace nook {
namespace {

using namespace room_keys;

// A list of [wall, along, out, from the line].
std::vector<DropReading> drops(RoomFile& file, const Table& table, std::string_view key,
                               const std::string& id) {
  std::vector<DropReading> found;
  const auto& items = table.list({key});
  for (std::size_t i = 0; i < items.size(); ++i) {
    const std::size_t before = file.source.troubles();
    const auto* four = file.source.list(items[i], fmt::format("an entry of {}", key),
                                        {4, 4, "[wall, along, out from it, from the level line]"});
    if (!four) continue;
    DropReading drop;
    drop.place = items[i].place;
    const auto wall = file.wall((*four)[0], "the first value");
    const auto along = file.source.length((*four)[1], "along", Range::not_negative);
    const auto out = file.source.length((*four)[2], "out", Range::not_negative);
    drop.drop = readings_of(file.source, (*four)[3],
                            {fmt::format("the reading {}", key), {fmt::format("{}[{}]", id, i)}});
    if (!file.source.sound_since(before)) continue;
    drop.wall = *wall;
    drop.along = *along;
    drop.out = *out;
    drop.from_right = file.survey.walls[*wall].from_corner_right;
    found.push_back(std::move(drop));
  }
  return found;
}

void read_squash(RoomFile& file, const Node& node) {
  const std::size_t before = file.source.troubles();
  Table table(file.source, node, kSquash);
  Squash squash;
  squash.place = node.place;
  squash.load_n = table.load({"load", needed, Range::positive}).value_or(0);
  if (const auto on =
          table.lengths({"on", needed, Range::positive}, {2, 2, "the block's [length, width]"}))
    std::copy(on->begin(), on->end(), squash.on);
  squash.by = table.length({"by", needed}).value_or(Length{});
  if (file.source.sound_since(before)) file.survey.floor.squash.push_back(squash);
}

void read_covering(RoomFile& file, const Node& node) {
  Table table(file.source, node, kCovering);
  Covering covering;
  covering.kind = table.text({"kind", needed}).value_or("");
  covering.thickness = table.length({"thickness"}).value_or(Length{});
  covering.tack_strip = table.length({"tack_strip"});
  file.survey.floor.covering = covering;
}

std::vector<Mention> mentions(Source& source, const Table& table, Ask ask) {
  std::vector<Mention> names;
  for (const Node& item : table.list(ask))
    if (const auto name = source.text(item, ask.key)) names.push_back({*name, item.place});
  return names;
}

void check_between(Source& source, const std::vector<Mention>& names) {
  if (names.size() != 2) return;
  const bool walls = !wall_named(names[0].name).empty() && !wall_named(names[1].name).empty();
  if (names[0].name == names[1].name)
    source.fault(names[1].place, fmt::format("an opening from '{}' to itself", names[1].name),
                 "contact-with-itself",
                 "name two parts, or a part and a wall; copies are \"rung 1\", \"rung 2\"");
  else if (walls)
    source.fault(names[1].place, "an opening between two walls", "opening-without-part",
                 "one end is a part that is up; from wall to wall is an [[across]] or a [[span]]");
}

void read_opening(RoomFile& file, const Node& node, const std::string& id, Installed& to) {
  const std::size_t before = file.source.troubles();
  Table table(file.source, node, kOpening);
  Opening opening;
  opening.place = node.place;
  const auto names = mentions(file.source, table, {"between", needed});
  if (table.has("between") && names.size() != 2 && file.source.sound_since(before))
    file.source.list(*table.find({"between"}), "between",
                     {2, 2, "the two parts or walls it lies between"});
  check_between(file.source, names);
  for (std::size_t k = 0; k < 2 && k < names.size(); ++k) opening.between[k] = names[k].name;
  opening.out = table.length({"out"}).value_or(Length{});
  opening.height = height_in(table);
  const Remarks remarks = table.remarks();
  if (const Node* is = table.find({"is", needed}))
    opening.is = readings_of(file.source, *is, {"the opening", {id, ".is"}}, remarks);
  if (!file.source.sound_since(before)) return;
  // Remembered until the design is read too.
  file.survey.parts_named.insert(file.survey.parts_named.end(), names.begin(), names.end());
  to.openings.push_back(std::move(opening));
}

void read_installed(RoomFile& file, const Node& node, int index) {
  Table table(file.source, node, kInstalled);
  Installed installed;
  installed.place = node.place;
  // A room outlives its designs: what is installed may be a part of another one.
  for (Mention& part : mentions(file.source, table, {"parts"}))
    installed.parts.push_back(std::move(part.name));
  int i = 0;
  for (const Node* entry : table.tables("openings"))
    read_opening(file, *entry, fmt::format("installed[{}].openings[{}]", index, i++), installed);
  file.survey.installed.push_back(std::move(installed));
}

void read_doorway(RoomFile& file, const Node& node) {
  Table table(file.source, node, kDoorway);
  Doorway door;
  door.place = node.place;
  door.name = table.text({"name"}).value_or("opening");
  door.width = table.length({"width", needed, Range::positive}).value_or(Length{});
  door.height = table.length({"height", needed, Range::positive}).value_or(Length{});
  door.leaf = table.length({"leaf"});
  if (door.leaf && door.width.mm > 0 && *door.leaf >= door.width)
    file.source.fault(table.place_of("leaf"), "the leaf is as thick as the opening is wide",
                      "absurd-value",
                      "leaf is the thickness of the door that stays in the opening");
  file.survey.doorways.push_back(std::move(door));
}

void read_turn(RoomFile& file, const Node& node) {
  Table table(file.source, node, kTurn);
  HallTurn turn;
  turn.place = node.place;
  turn.name = table.text({"name"}).value_or("turn");
  turn.from = table.length({"from", needed, Range::positive}).value_or(Length{});
  turn.to = table.length({"to", needed, Range::positive}).value_or(Length{});
  turn.height = table.length({"height", needed, Range::positive}).value_or(Length{});
  file.survey.turns.push_back(std::move(turn));
}

}  // namespace

void read_floor_and_ceiling(RoomFile& file, const Table& room) {
  if (const Node* node = room.table({"floor"})) {
    Table floor(file.source, *node, kFloor);
    file.survey.floor.down = drops(file, floor, "down", "floor.down");
    if (const Node* covering = floor.table({"covering"})) read_covering(file, *covering);
    for (const Node* entry : floor.tables("squash")) read_squash(file, *entry);
    file.survey.floor.heated = floor.flag({"heated"}).value_or(false);
  }
  if (const Node* node = room.table({"ceiling"})) {
    Table ceiling(file.source, *node, kCeiling);
    file.survey.ceiling = drops(file, ceiling, "up", "ceiling.up");
  }
}

void read_installed_and_access(RoomFile& file, const Table& room) {
  int i = 0;
  for (const Node* entry : room.tables("installed")) read_installed(file, *entry, i++);
  const Node* node = room.table({"access"});
  if (!node) return;
  Table access(file.source, *node, kAccess);
  for (const Node* entry : access.tables("openings")) read_doorway(file, *entry);
  for (const Node* entry : access.tables("turns")) read_turn(file, *entry);
}

}  // namespace nook
