// One table being read: asks for its keys by name, and reports those that nobody knows.
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "job/keys.h"
#include "job/source.h"
#include "room/survey.h"

namespace nook {

inline constexpr bool needed = true;

/// Which key, whether it must be there, and which lengths make sense.
struct Ask {
  std::string_view key;
  bool must = false;
  Range range = Range::not_negative;
};

template <class E>
struct Word {
  std::string_view text;
  E value;
};

class Table {
 public:
  /// Files a fault for each key that is not in `known`. Requires: `node` is a table.
  Table(Source& source, const Node& node, const KeyList& known);

  Source& source() const { return source_; }
  Place place() const { return node_.place; }
  bool has(std::string_view key) const { return at(key) != nullptr; }
  /// The place of a key's value; of the table where it is not there.
  Place place_of(std::string_view key) const;

  /// The value, or null; a missing needed one is a fault.
  const Node* find(Ask ask) const;
  /// Whether a key is there that must mean this one: one fault is enough.
  bool misspelt(std::string_view key) const;
  std::optional<std::string> text(Ask ask) const;
  std::optional<bool> flag(Ask ask) const;
  std::optional<int> whole(Ask ask) const;
  std::optional<double> plain_number(Ask ask) const;
  std::optional<Length> length(Ask ask) const;
  std::optional<double> load(Ask ask) const;
  std::optional<Angle> angle(Ask ask) const;
  std::optional<std::vector<Length>> lengths(Ask ask, Values values) const;
  /// A list's values; empty where it is not there or no list.
  const std::vector<Node>& list(Ask ask) const;
  /// The tables of a [[key]]; also a single [key], which is a fault with a hint.
  std::vector<const Node*> tables(std::string_view key) const;
  /// The table of a [key], or null.
  const Node* table(Ask ask) const;

  template <class E>
  std::optional<E> word(Ask ask, std::initializer_list<Word<E>> words) const {
    const Node* node = find(ask);
    if (!node) return std::nullopt;
    std::vector<std::string_view> texts;
    for (const auto& word : words) texts.push_back(word.text);
    const auto index = source_.word(*node, ask.key, texts);
    return index ? std::optional(words.begin()[*index].value) : std::nullopt;
  }

  /// What the table's own sd, note, struck and on say; those of them that it may have.
  Remarks remarks() const;

 private:
  template <class T>
  using Reader = std::optional<T> (Source::*)(const Node&, std::string_view);
  template <class T>
  std::optional<T> read(Ask ask, Reader<T> as) const;
  const Node* at(std::string_view key) const;
  bool knows(std::string_view key) const;

  Source& source_;
  const Node& node_;
  const KeyList& known_;
};

/// The specific gravity that `gravity` says; a fault where no wood has it.
std::optional<double> gravity_in(const Table& table);

/// No room is higher. Chosen, as the longest wall (job/room_file.h).
inline constexpr double kHighestMm = 10000;
/// A height given by `height` or `from_line` in a table, or nothing; both are a fault.
std::optional<Height> height_in(const Table& table);
/// A height as a value: a reading, or { from_line = '+6' }.
std::optional<Height> height_of(Source& source, const Node& value, std::string_view name);
/// As height_of, for a key of a table.
std::optional<Height> height_at(const Table& table, Ask ask);

/// How readings are told apart: the id of a single one, and what stands between it and the count of
/// a repeated one ("span[3]" and ".is" make span[3].is[1]).
struct ReadingId {
  std::string single;
  std::string repeated = "";
};
/// What a value may be.
struct ReadingAsk {
  std::string_view name;
  ReadingId id;
  Range range = Range::not_negative;
};
/// A reading, a table { is, sd, note, struck, on }, or a list of those: the same thing measured
/// again. Each takes over what it does not say itself from `outer`. Empty where there was a fault.
Readings readings_of(Source& source, const Node& value, const ReadingAsk& ask,
                     const Remarks& outer = {});
/// Exactly one reading, measured once.
std::optional<Reading> reading_of(Source& source, const Node& value, const ReadingAsk& ask);

}  // namespace nook
