// Heights and readings, each in all the forms a person may type.
#include <fmt/format.h>

#include "job/table.h"

namespace nook {
namespace {

// What one entry of a list of repeats says.
struct Said {
  const Node* figure = nullptr;
  Remarks remarks;
};

Remarks joined(Remarks inner, const Remarks& outer) {
  if (!inner.sd) inner.sd = outer.sd;
  if (inner.note.empty()) inner.note = outer.note;
  if (inner.on.empty()) inner.on = outer.on;
  inner.struck = inner.struck || outer.struck;
  return inner;
}

// Lists and tables flattened, in the order typed.
void collect(Source& source, const Node& value, const Remarks& outer, std::vector<Said>& found) {
  if (value.is(Node::Kind::list)) {
    for (const Node& item : value.items) {
      if (item.is(Node::Kind::list))
        source.wrong_type(item, "each repeat", "one reading", "one pair of brackets is enough");
      else
        collect(source, item, outer, found);
    }
  } else if (value.is(Node::Kind::table)) {
    Table table(source, value, reading_keys::kReading);
    const Remarks remarks = joined(table.remarks(), outer);
    const Node* figure = table.find({"is", needed});
    if (figure && figure->is(Node::Kind::table))
      source.wrong_type(*figure, "is", "a reading", "write what the tape shows, in quotes");
    else if (figure)
      collect(source, *figure, remarks, found);
  } else {
    found.push_back({&value, outer});
  }
}

std::optional<Reading> one(Source& source, const Said& said, const ReadingAsk& ask) {
  const auto notation = source.notation(*said.figure, ask.name, ask.range);
  if (!notation) return std::nullopt;
  const bool own_system = notation->metric == (source.units() != Unit::inch);
  Reading reading;
  reading.value = notation->value;
  reading.sd = said.remarks.sd;
  reading.smallest_mark = own_system         ? source.read_to
                          : notation->metric ? millimetres(1)
                                             : inches(1.0 / 16);
  reading.burned = notation->burned;
  reading.on = said.remarks.on == "baseboard" ? Face::baseboard : Face::wall;
  reading.on_said = !said.remarks.on.empty();
  reading.struck = said.remarks.struck;
  reading.given = said.figure->text;
  reading.note = said.remarks.note;
  reading.place = said.figure->place;
  ++source.readings;
  return reading;
}

}  // namespace

std::optional<Height> height_of(Source& source, const Node& value, std::string_view name) {
  const LongestLength high(source, kHighestMm);
  if (!value.is(Node::Kind::table) || value.find("is")) {
    const auto length = source.length(value, name, Range::not_negative);
    return length ? std::optional(Height{*length, false, value.place}) : std::nullopt;
  }
  Table table(source, value, reading_keys::kFromLine);
  const auto length = table.length({"from_line", needed, Range::any});
  return length ? std::optional(Height{*length, true, table.place_of("from_line")}) : std::nullopt;
}

std::optional<Height> height_at(const Table& table, Ask ask) {
  const Node* value = table.find(ask);
  return value ? height_of(table.source(), *value, ask.key) : std::nullopt;
}

std::optional<Height> height_in(const Table& table) {
  const bool line = table.has("from_line");
  if (line && table.has("height")) {
    table.source().fault(table.place_of("from_line"), "'height' and 'from_line' together",
                         "two-heights", "say one: above the floor, or from the level line");
    return std::nullopt;
  }
  if (!line) return height_at(table, {"height"});
  const LongestLength high(table.source(), kHighestMm);
  const auto length = table.length({"from_line", false, Range::any});
  return length ? std::optional(Height{*length, true, table.place_of("from_line")}) : std::nullopt;
}

Readings readings_of(Source& source, const Node& value, const ReadingAsk& ask,
                     const Remarks& outer) {
  std::vector<Said> said;
  const std::size_t before = source.troubles();
  collect(source, value, outer, said);
  if (said.empty() && source.sound_since(before))
    source.fault(value.place, fmt::format("{} holds no reading", ask.name), "wrong-count",
                 "write what the tape shows, or leave the key out");
  // A list counts from 0 even when it holds one reading.
  const bool repeated = said.size() > 1 || value.is(Node::Kind::list);
  Readings found;
  for (std::size_t i = 0; i < said.size(); ++i) {
    auto reading = one(source, said[i], ask);
    if (!reading) continue;
    reading->id =
        repeated ? fmt::format("{}{}[{}]", ask.id.single, ask.id.repeated, i) : ask.id.single;
    found.push_back(std::move(*reading));
  }
  return source.sound_since(before) ? found : Readings{};
}

std::optional<Reading> reading_of(Source& source, const Node& value, const ReadingAsk& ask) {
  if (value.is(Node::Kind::list)) {
    source.wrong_type(value, ask.name, "one reading",
                      "it is measured once: leave the brackets out");
    return std::nullopt;
  }
  const Readings found = readings_of(source, value, ask);
  if (found.size() > 1)
    source.fault(value.place, fmt::format("{} is measured once", ask.name), "wrong-count",
                 "write one reading; the repeats go with what is measured from it");
  return found.size() == 1 ? std::optional(found[0]) : std::nullopt;
}

}  // namespace nook
