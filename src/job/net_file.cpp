// Reads marks, spans and wall-to-wall readings of room.toml.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "job/room_file.h"

namespace nook {
namespace {

using namespace room_keys;

// Every mark of a room: its corners, called after their walls, and those the file names.
struct Marks {
  Names corners, all;

  explicit Marks(const Names& walls) {
    for (std::size_t k = 0; k + 1 < walls.all().size(); ++k) {
      corners.add(walls.all()[k] + "/" + walls.all()[k + 1]);
      all.add(corners.all().back());
    }
  }
};

void read_mark(RoomFile& file, const Node& node, Marks& marks) {
  Table table(file.source, node, kMark);
  const auto name = table.text({"name", needed});
  if (!name) return;
  const Place place = table.place_of("name");
  if (name->empty())
    file.source.fault(place, "a mark needs a name", "bad-name",
                      "call it as you would say it: \"nail in the sill\"");
  const bool taken = !marks.all.add(*name) && !name->empty();
  if (marks.corners.holds(*name))
    file.source.fault(place, fmt::format("'{}' is a corner's name", *name), "name-reserved",
                      "corners are marks already: leave this one out");
  else if (taken)
    file.source.fault(place, fmt::format("a second mark called '{}'", *name), "name-taken",
                      "every mark has its own name");
  file.survey.marks.push_back(*name);
}

// Spans and their spots.
class SpanFile {
 public:
  SpanFile(RoomFile& file, const Marks& marks) : file_(file), marks_(marks) {}

  void read(const Node& node, int index) {
    const std::size_t before = file_.source.troubles();
    Table table(file_.source, node, kSpan);
    Span span;
    span.place = node.place;
    const std::string id = fmt::format("span[{}]", index);
    const Node* between = table.find({"between", needed});
    const auto* ends =
        between ? file_.source.list(*between, "between",
                                    {2, 2, "two ends: a mark's name, or { wall, along }"})
                : nullptr;
    for (int k = 0; ends && k < 2; ++k)
      span.between[k] = end((*ends)[k], fmt::format("{}.between[{}]", id, k));
    const Remarks remarks = table.remarks();
    const LongestLength outdoors(file_.source,
                                 kLongestMm);  // survey networks are read as well as rooms
    if (const Node* is = table.find({"is", needed}))
      span.is = readings_of(file_.source, *is, {"the span", {id, ".is"}, Range::positive}, remarks);
    if (!file_.source.sound_since(before)) return;
    if (!span.between[0].mark.empty() && span.between[0].mark == span.between[1].mark)
      file_.source.fault(between->place, "a span from a mark to itself", "contact-with-itself",
                         "name the two marks that the tape lay between");
    file_.survey.spans.push_back(std::move(span));
  }

 private:
  SpanEnd end(const Node& node, const std::string& id) {
    SpanEnd end;
    end.place = node.place;
    if (node.is(Node::Kind::table)) {
      spot(node, end, id);
    } else if (const auto name = file_.source.text(node, "a mark")) {
      end.mark = mark(node, *name);
    }
    return end;
  }

  // The mark's own name; corners also by their walls the other way round.
  std::string mark(const Node& node, const std::string& name) {
    const std::size_t slash = name.find('/');
    const std::string turned =
        slash == std::string::npos ? "" : name.substr(slash + 1) + "/" + name.substr(0, slash);
    if (marks_.all.holds(name)) return name;
    if (marks_.corners.holds(turned)) return turned;
    file_.source.fault(
        node.place, fmt::format("there is no mark '{}'", name), "unknown-mark",
        file_.source.meant(name, marks_.all.views(),
                           "name it in a [[mark]], or use a corner such as left/right"));
    return "";
  }

  void spot(const Node& node, SpanEnd& end, const std::string& id) {
    const std::size_t before = file_.source.troubles();
    Table table(file_.source, node, kSpot);
    const Node* wall = table.find({"wall", needed});
    const auto index = wall ? file_.wall(*wall, "wall") : std::nullopt;
    const Node* along = table.find({"along", needed});
    const auto reading = along ? reading_of(file_.source, *along, {"along", {id}}) : std::nullopt;
    end.height = height_in(table);
    if (!file_.source.sound_since(before)) return;
    end.wall = index.value_or(-1);
    end.from_right =
        file_.from_right(table, end.wall, file_.survey.walls[end.wall].from_corner_right);
    end.along = *reading;
    end.along.id = first_id(end);
  }

  // A spot used again has the id of its first use.
  std::string first_id(const SpanEnd& end) {
    const Height height = end.height.value_or(Height{millimetres(-1), false, {}});
    const auto key = std::tuple(end.wall, end.from_right, height.from_line,
                                nanometres(height.value), nanometres(end.along.value));
    return spots_.try_emplace(key, end.along.id).first->second;
  }

  RoomFile& file_;
  const Marks& marks_;
  std::map<std::tuple<int, bool, bool, long long, long long>, std::string> spots_;
};

void read_across(RoomFile& file, const Node& node, int index) {
  const std::size_t before = file.source.troubles();
  Table table(file.source, node, kAcross);
  Across across;
  across.place = node.place;
  const Node* names = table.find({"walls", needed});
  const auto walls = names ? read_wall_pair(file, *names) : std::nullopt;
  across.out = table.length({"out", needed}).value_or(Length{});
  across.height = height_in(table).value_or(kUnsaidHeight);
  const Remarks remarks = table.remarks();
  if (const Node* is = table.find({"is", needed}))
    across.is = readings_of(
        file.source, *is,
        {"the distance across", {fmt::format("across[{}]", index), ".is"}, Range::positive},
        remarks);
  if (!file.source.sound_since(before)) return;
  across.walls[0] = std::min(walls->first, walls->second);
  across.walls[1] = std::max(walls->first, walls->second);
  if (across.walls[1] - across.walls[0] != 2)
    file.source.fault(names->place, "no single wall stands between these two", "no-such-alcove",
                      "across goes from wall to wall of an alcove, out from the wall between them");
  file.survey.across.push_back(std::move(across));
}

}  // namespace

void read_net(RoomFile& file, const Table& room) {
  int i = 0;
  for (const Node* entry : room.tables("across")) read_across(file, *entry, i++);
  Marks marks(file.walls);
  for (const Node* entry : room.tables("mark")) read_mark(file, *entry, marks);
  SpanFile spans(file, marks);
  i = 0;
  for (const Node* entry : room.tables("span")) spans.read(*entry, i++);
}

}  // namespace nook
