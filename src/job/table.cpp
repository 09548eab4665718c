// Asks tables for their keys.
#include "job/table.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/invariant.h"

namespace nook {

Table::Table(Source& source, const Node& node, const KeyList& known)
    : source_(source), node_(node), known_(known) {
  require(node.is(Node::Kind::table), "a table reader reads a table");
  for (const Entry& entry : node.entries) {
    if (knows(entry.key)) continue;
    source.fault(entry.place, fmt::format("unknown key '{}'", entry.key), "unknown-key",
                 source.meant(entry.key, known_.keys,
                              fmt::format("the keys here are: {}", fmt::join(known_.keys, ", "))));
  }
}

bool Table::knows(std::string_view key) const {
  return std::find(known_.keys.begin(), known_.keys.end(), key) != known_.keys.end();
}

const Node* Table::at(std::string_view key) const {
  require(knows(key), "a reader asks for listed keys only");
  const Entry* entry = node_.find(key);
  return entry ? &entry->value : nullptr;
}

Place Table::place_of(std::string_view key) const {
  const Node* value = at(key);
  return value ? value->place : place();
}

bool Table::misspelt(std::string_view key) const {
  return std::any_of(node_.entries.begin(), node_.entries.end(), [&](const Entry& entry) {
    return !knows(entry.key) && nearest(entry.key, known_.keys) == key;
  });
}

const Node* Table::find(Ask ask) const {
  const Node* value = at(ask.key);
  if (!value && ask.must) {
    if (misspelt(ask.key)) return nullptr;
    source_.fault(place(), fmt::format("'{}' is missing", ask.key), "missing-key",
                  fmt::format("the keys here are: {}", fmt::join(known_.keys, ", ")));
  }
  return value;
}

template <class T>
std::optional<T> Table::read(Ask ask, Reader<T> as) const {
  const Node* value = find(ask);
  return value ? (source_.*as)(*value, ask.key) : std::nullopt;
}

std::optional<std::string> Table::text(Ask ask) const {
  return read(ask, &Source::text);
}

std::optional<bool> Table::flag(Ask ask) const {
  return read(ask, &Source::flag);
}

std::optional<int> Table::whole(Ask ask) const {
  return read(ask, &Source::whole);
}

std::optional<double> Table::plain_number(Ask ask) const {
  return read(ask, &Source::plain_number);
}

std::optional<Length> Table::length(Ask ask) const {
  const Node* value = find(ask);
  return value ? source_.length(*value, ask.key, ask.range) : std::nullopt;
}

std::optional<double> Table::load(Ask ask) const {
  const Node* value = find(ask);
  return value ? source_.load(*value, ask.key, ask.range) : std::nullopt;
}

std::optional<Angle> Table::angle(Ask ask) const {
  return read(ask, &Source::angle);
}

std::optional<std::vector<Length>> Table::lengths(Ask ask, Values values) const {
  const Node* value = find(ask);
  const auto* items = value ? source_.list(*value, ask.key, values) : nullptr;
  if (!items) return std::nullopt;
  const std::size_t before = source_.troubles();
  std::vector<Length> found;
  for (const Node& item : *items)
    if (const auto length = source_.length(item, ask.key, ask.range)) found.push_back(*length);
  return source_.sound_since(before) ? std::optional(found) : std::nullopt;
}

const std::vector<Node>& Table::list(Ask ask) const {
  static const std::vector<Node> kNone;
  const Node* value = find(ask);
  const auto* items = value ? source_.list(*value, ask.key) : nullptr;
  return items ? *items : kNone;
}

std::vector<const Node*> Table::tables(std::string_view key) const {
  std::vector<const Node*> found;
  const Node* value = at(key);
  if (!value) return found;
  if (value->is(Node::Kind::table)) {
    source_.fault(value->place, fmt::format("{} may be there more than once", key), "wrong-type",
                  "its header takes two brackets on each side; in braces it is a list: [{ ... }]");
    return found;
  }
  const auto* items = source_.list(*value, key);
  for (std::size_t i = 0; items && i < items->size(); ++i) {
    if ((*items)[i].is(Node::Kind::table))
      found.push_back(&(*items)[i]);
    else
      source_.wrong_type((*items)[i], fmt::format("each {}", key), "a table",
                         fmt::format("its header is [[{}]]; in braces it is {{ ... }}", key));
  }
  return found;
}

const Node* Table::table(Ask ask) const {
  const Node* value = find(ask);
  if (!value || value->is(Node::Kind::table)) return value;
  source_.wrong_type(*value, ask.key, "a table", "its keys stand under it, or in braces: { ... }");
  return nullptr;
}

std::optional<double> gravity_in(const Table& table) {
  constexpr double kLeast = 0.1, kMost = 1.3;  // wood and wood panels lie well inside. Chosen
  const auto gravity = table.plain_number({"gravity"});
  if (gravity && !(*gravity >= kLeast && *gravity <= kMost))
    table.source().fault(table.place_of("gravity"), "no wood has such a specific gravity",
                         "absurd-value", "spruce is about 0.42, oak 0.67");
  return gravity;
}

Remarks Table::remarks() const {
  Remarks said;
  if (knows("sd")) said.sd = length({"sd", false, Range::positive});
  if (knows("note")) said.note = text({"note"}).value_or("");
  if (knows("struck")) said.struck = flag({"struck"}).value_or(false);
  if (knows("on")) {
    using W = Word<std::string>;
    said.on =
        word<std::string>({"on"}, {W{"wall", "wall"}, W{"baseboard", "baseboard"}}).value_or("");
  }
  return said;
}

}  // namespace nook
