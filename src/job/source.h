// One file being read: its text, its units, the faults found so far, and the readers of single
// values.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "base/length.h"
#include "base/notation.h"
#include "job/node.h"

namespace nook {

/// Which lengths make sense.
enum class Range { any, not_negative, positive };

/// How many values a list takes, and what they are: "[u, v]".
struct Values {
  std::size_t least = 0, most = SIZE_MAX;
  std::string_view are = "its values in brackets: [ ... ]";
};

/// Walls are named from left to right as one faces them.
inline constexpr Values kTwoWalls{2, 2, "two walls, the left one first"};

/// What a person said about a reading beside its figure.
struct Remarks {
  std::optional<Length> sd;
  std::string note;
  bool struck = false;
  std::string on;  // empty = not said
};

class Source {
 public:
  Source(std::string_view text, std::string file) : text_(text), file_(std::move(file)) {}

  // Faults
  void fault(Place place, std::string what, std::string code, std::string help);
  /// The help for a name that is not known: the one that was meant, or else `otherwise`.
  std::string meant(std::string_view name, const std::vector<std::string_view>& known,
                    std::string otherwise) const;
  /// How many values have gone wrong so far: what was read while it grew is not sound.
  std::size_t troubles() const { return troubles_; }
  /// What a fault told elsewhere leaves unread is no second fault, nor sound.
  void leave_unread() { ++troubles_; }
  bool sound_since(std::size_t troubles) const { return troubles_ == troubles; }
  /// The faults, sorted; none when the file is sound.
  Diagnostics faults() &&;
  /// The place of `width` characters from `at` on inside a text value.
  Place within(const Node& value, int at, int width) const;
  /// "expected X; found Y" at a value.
  void wrong_type(const Node& value, std::string_view name, std::string_view expected,
                  std::string help);

  // Units
  /// Reads `units`; a wrong one makes bare numbers unreadable without a fault of their own.
  void read_units(const Node* value);
  Unit units() const { return units_.value_or(Unit::inch); }
  Length read_to = inches(1.0 / 16);
  double longest_mm = kLongestMm;  // a longer length is a fault
  std::size_t readings = 0;        // so far

  // Single values; `name` is what messages call them. Nothing where there was a fault
  std::optional<std::string> text(const Node& value, std::string_view name);
  std::optional<bool> flag(const Node& value, std::string_view name);
  std::optional<int> whole(const Node& value, std::string_view name);
  std::optional<double> plain_number(const Node& value, std::string_view name);
  std::optional<Notation> notation(const Node& value, std::string_view name, Range range);
  /// A length; also as a table { is, note }.
  std::optional<Length> length(const Node& value, std::string_view name, Range range);
  std::optional<double> slope(const Node& value, std::string_view name);
  std::optional<double> load(const Node& value, std::string_view name, Range range);
  std::optional<double> density(const Node& value, std::string_view name);
  std::optional<Angle> angle(const Node& value, std::string_view name);
  /// The index of a text among `words`; a fault with the nearest one where it is none.
  std::optional<int> word(const Node& value, std::string_view name,
                          const std::vector<std::string_view>& words);
  /// A list of so many values; null where it is none.
  const std::vector<Node>* list(const Node& value, std::string_view name, Values values = {});

  const std::string& file() const { return file_; }

 private:
  bool full() const;
  template <class T, class Read>
  std::optional<T> quantity(const Node& value, std::string_view name, Read read);
  void fault_in(const Node& value, const NotationFault& fault);
  std::optional<Notation> bare(const Node& value, std::string_view name);

  std::string_view text_;
  std::string file_;
  std::optional<Unit> units_ = Unit::inch;
  Diagnostics faults_;
  std::size_t troubles_ = 0;
  mutable int line_read_ = 0;  // the line that the characters below are of
  mutable std::u32string line_points_;
};

/// While it lives, a length over `longest_mm` is a fault.
class LongestLength {
 public:
  LongestLength(Source& source, double longest_mm) : source_(source), before_(source.longest_mm) {
    source.longest_mm = longest_mm;
  }
  ~LongestLength() { source_.longest_mm = before_; }
  LongestLength(const LongestLength&) = delete;
  LongestLength& operator=(const LongestLength&) = delete;

 private:
  Source& source_;
  double before_;
};

}  // namespace nook
