// Reads single values and files their faults with the place they were typed at.
#include "job/source.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/notation.h"
#include "base/quantity.h"
#include "base/utf8.h"
#include "job/table.h"

namespace nook {
namespace {

// Faults that are listed of one file (chosen): a person mends ten at a time.
constexpr std::size_t kMostFaults = 500;
// Bytes of a message at most (chosen): a typed name may be a megabyte.
constexpr std::size_t kLongestMessage = 400;
// Numbers that are no lengths: beyond it a figure is a slip (chosen).
constexpr double kGreatestNumber = 1e9;

std::string_view line_of(std::string_view text, int line) {
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  for (int passed = 1; passed < line; ++passed)
    text.remove_prefix(std::min(text.find('\n'), text.size() - 1) + 1);
  return text.substr(0, text.find('\n'));
}

std::string shortened(std::string text) {
  if (text.size() <= kLongestMessage) return text;
  std::size_t end = kLongestMessage;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
  return text.substr(0, end) + "...";
}

// How many typed characters the escape at the start of `raw` takes.
int typed_width(std::u32string_view raw, bool escapes) {
  if (!escapes || raw.empty() || raw[0] != U'\\' || raw.size() < 2) return 1;
  return raw[1] == U'u' ? 6 : raw[1] == U'U' ? 10 : 2;
}

const char* const kReadingForm = "a reading, such as '41 3/8' or '104.2 cm'";
const char* const kQuoted = "write it in quotes: \"left\"";
const char* const kFigure = "write an ordinary figure";
const char* const kNotNegative = "it counts from 0 up: leave the minus out";
const char* const kAboveZero = "write a figure above 0, or leave out what is not there";

}  // namespace

bool Source::full() const {
  return faults_.size() > kMostFaults;
}

void Source::fault(Place place, std::string what, std::string code, std::string help) {
  ++troubles_;
  if (full()) return;
  if (faults_.size() == kMostFaults)
    faults_.push_back({file_,
                       {},
                       fmt::format("over {} faults: the rest is left out", kMostFaults),
                       "too-many-faults",
                       "mend these first"});
  else
    faults_.push_back(
        {file_, place, shortened(std::move(what)), std::move(code), shortened(std::move(help))});
}

std::string Source::meant(std::string_view name, const std::vector<std::string_view>& known,
                          std::string otherwise) const {
  const std::string_view near = full() ? "" : nearest(name, known);
  return near.empty() ? otherwise : fmt::format("did you mean '{}'?", near);
}

Diagnostics Source::faults() && {
  sort(faults_);
  return std::move(faults_);
}

Place Source::within(const Node& value, int at, int width) const {
  if (full()) return value.place;
  if (line_read_ != value.place.line) {
    line_read_ = value.place.line;
    line_points_ = code_points(line_of(text_, line_read_)).value_or(U"");
  }
  std::u32string_view raw = line_points_;
  raw.remove_prefix(std::min<std::size_t>(value.place.column - 1, raw.size()));
  const bool longer = raw.size() > 2 && raw[0] == raw[1] && raw[0] == raw[2];
  if (raw.empty() || longer) return value.place;  // a text over several lines: the whole of it
  const bool escapes = raw[0] == U'"';
  raw.remove_prefix(1);
  int typed = 1, from = 1;
  for (int i = 0; i < at + width && !raw.empty(); ++i) {
    if (i == at) from = typed;
    const int taken = std::min<int>(typed_width(raw, escapes), static_cast<int>(raw.size()));
    typed += taken;
    raw.remove_prefix(taken);
  }
  if (at >= static_cast<int>(code_points(value.text).value_or(U"").size())) {
    // Behind the last character: the closing quote.
    return {value.place.line, value.place.column + value.place.width - 1, 1};
  }
  return {value.place.line, value.place.column + from, std::max(1, typed - from)};
}

void Source::fault_in(const Node& value, const NotationFault& found) {
  fault(within(value, found.at, found.width), found.what, found.code, found.help);
}

void Source::wrong_type(const Node& value, std::string_view name, std::string_view expected,
                        std::string help) {
  fault(value.place, fmt::format("{} must be {}; found {}", name, expected, kind_in_words(value)),
        "wrong-type", std::move(help));
}

void Source::read_units(const Node* value) {
  if (!value) return;
  const auto index = word(*value, "units", {"inch", "mm", "cm"});
  units_ = index ? std::optional(static_cast<Unit>(*index)) : std::nullopt;
  read_to = usual_rounding(units()).step;
}

std::optional<std::string> Source::text(const Node& value, std::string_view name) {
  if (!value.is(Node::Kind::string))
    return wrong_type(value, name, "a text in quotes", kQuoted), std::nullopt;
  const auto control = [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; };
  if (std::any_of(value.text.begin(), value.text.end(), control)) {
    fault(value.place, fmt::format("{} holds a character that cannot be shown", name),
          "control-character", "a line break or tab does not belong in it");
    return std::nullopt;
  }
  return value.text;
}

std::optional<bool> Source::flag(const Node& value, std::string_view name) {
  if (!value.is(Node::Kind::boolean)) {
    wrong_type(value, name, "true or false", "write true or false, without quotes");
    return std::nullopt;
  }
  return value.flag;
}

std::optional<int> Source::whole(const Node& value, std::string_view name) {
  if (!value.is(Node::Kind::integer)) {
    wrong_type(value, name, "a whole number", "write it without quotes and decimal point: 2");
    return std::nullopt;
  }
  const auto number = plain_number(value, name);
  return number ? std::optional(static_cast<int>(*number)) : std::nullopt;
}

std::optional<double> Source::plain_number(const Node& value, std::string_view name) {
  if (!value.is_number()) {
    wrong_type(value, name, "a number", "write the figure without quotes: 0.42");
    return std::nullopt;
  }
  if (!(std::abs(value.number) <= kGreatestNumber)) {
    fault(value.place, fmt::format("{} cannot be {}", name, value.text), "absurd-value", kFigure);
    return std::nullopt;
  }
  return value.number;
}

// A TOML number is a reading in the file's units.
std::optional<Notation> Source::bare(const Node& value, std::string_view name) {
  if (!units_) return ++troubles_, std::nullopt;
  const double mm = value.number * millimetres_in(*units_);
  if (!(std::abs(mm) <= kLongestMm)) {
    fault(value.place, fmt::format("{} cannot be {}", name, value.text), "absurd-length",
          std::isfinite(value.number) ? "nothing that is taped is over a hundred kilometers long"
                                      : "write the figure that the tape shows");
    return std::nullopt;
  }
  return Notation{{mm + 0.0}, false, *units_ != Unit::inch};
}

std::optional<Notation> Source::notation(const Node& value, std::string_view name, Range range) {
  std::optional<Notation> found;
  if (value.is_number()) {
    found = bare(value, name);
  } else if (value.is(Node::Kind::string)) {
    const auto read = read_length(value.text, units(), read_to);
    if (!read) return fault_in(value, read.error()), std::nullopt;
    if (!units_) return ++troubles_, std::nullopt;
    found = *read;
  } else {
    wrong_type(value, name, kReadingForm, "write what the tape shows, in quotes");
  }
  if (found && std::abs(found->value.mm) > longest_mm) {
    fault(value.place, fmt::format("{} is over {:g} m", name, longest_mm / 1000), "absurd-length",
          "no room is so large: check the figure and its unit");
    return std::nullopt;
  }
  if (!found || range == Range::any) return found;
  const bool zero = found->value.mm == 0;
  if (found->value.mm < 0 || (zero && range == Range::positive)) {
    fault(value.place,
          fmt::format("{} {}", name,
                      range == Range::positive ? "must be above 0" : "cannot be negative"),
          range == Range::positive ? "not-above-zero" : "negative-length",
          range == Range::positive ? kAboveZero : kNotNegative);
    return std::nullopt;
  }
  return found;
}

std::optional<Length> Source::length(const Node& value, std::string_view name, Range range) {
  const Node* figure = &value;
  if (value.is(Node::Kind::table)) {
    Table table(*this, value, reading_keys::kPosition);
    table.text({"note"});
    figure = table.find({"is", needed});
    if (!figure) return std::nullopt;
  }
  const auto found = notation(*figure, name, range);
  return found ? std::optional(found->value) : std::nullopt;
}

template <class T, class Read>
std::optional<T> Source::quantity(const Node& value, std::string_view name, Read read) {
  if (value.is_number() && !std::isfinite(value.number)) {
    fault(value.place, fmt::format("{} cannot be {}", name, value.text), "absurd-value", kFigure);
    return std::nullopt;
  }
  if (!value.is_number() && !value.is(Node::Kind::string)) {
    wrong_type(value, name, "a text with its unit", "write figure and unit in quotes: '180 lb'");
    return std::nullopt;
  }
  const auto found = read(value.is_number() ? fmt::format("{:.17g}", value.number) : value.text);
  if (found) return *found;
  if (value.is_number()) {
    fault(value.place, found.error().what, found.error().code, found.error().help);
  } else {
    fault_in(value, found.error());
  }
  return std::nullopt;
}

std::optional<double> Source::slope(const Node& value, std::string_view name) {
  return quantity<double>(value, name, read_slope);
}

std::optional<double> Source::load(const Node& value, std::string_view name, Range range) {
  const auto found = quantity<double>(value, name, read_load);
  const bool positive = range == Range::positive;
  if (!found || *found > 0 || (*found == 0 && !positive)) return found;
  fault(value.place,
        fmt::format("{} {}", name, positive ? "must be above 0" : "cannot be negative"),
        positive ? "not-above-zero" : "negative-value", positive ? kAboveZero : kNotNegative);
  return std::nullopt;
}

std::optional<double> Source::density(const Node& value, std::string_view name) {
  const auto found = quantity<double>(value, name, read_density);
  if (!found || *found > 0) return found;
  fault(value.place, fmt::format("{} must be above 0", name), "not-above-zero", kAboveZero);
  return std::nullopt;
}

std::optional<Angle> Source::angle(const Node& value, std::string_view name) {
  return quantity<Angle>(value, name, read_angle);
}

std::optional<int> Source::word(const Node& value, std::string_view name,
                                const std::vector<std::string_view>& words) {
  const std::string choice = fmt::format("it is one of: {}", fmt::join(words, ", "));
  if (!value.is(Node::Kind::string))
    return wrong_type(value, name, "a text in quotes", choice), std::nullopt;
  const auto found = text(value, name);
  if (!found) return std::nullopt;
  const auto at = std::find(words.begin(), words.end(), *found);
  if (at != words.end()) return static_cast<int>(at - words.begin());
  fault(value.place, fmt::format("{} cannot be '{}'", name, *found), "unknown-word",
        meant(*found, words, choice));
  return std::nullopt;
}

const std::vector<Node>* Source::list(const Node& value, std::string_view name, Values values) {
  const auto [least, most, are] = values;
  const std::string form = fmt::format("write {}", are);
  if (!value.is(Node::Kind::list)) return wrong_type(value, name, "a list", form), nullptr;
  const std::size_t size = value.items.size();
  if (size >= least && size <= most) return &value.items;
  const std::string wanted = least == most      ? fmt::format("{}", least)
                             : most == SIZE_MAX ? fmt::format("at least {}", least)
                                                : fmt::format("{} to {}", least, most);
  fault(value.place, fmt::format("{} takes {} values; found {}", name, wanted, size), "wrong-count",
        form);
  return nullptr;
}

}  // namespace nook
