// Turns what the TOML library read into our tree.
#include "job/node.h"

#include <toml++/toml.h>

#include <algorithm>
#include <optional>

#include "base/utf8.h"
#include "job/file_text.h"

namespace nook {
namespace {

// Parts of a dotted key, at most (chosen). The library follows them by recursion without a limit.
constexpr int kDeepestKey = 16;

// The text of the file by line and column. Asked in file order it walks each line once.
class Lines {
 public:
  explicit Lines(std::string_view text) {
    if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
    while (!text.empty()) {
      const std::size_t end = std::min(text.find('\n'), text.size());
      lines_.push_back(text.substr(0, end));
      text.remove_prefix(std::min(end + 1, text.size()));
    }
  }

  std::string slice(Place place) {
    const std::size_t from = byte(place.line, place.column);
    const std::size_t to = byte(place.line, place.column + place.width);
    return std::string(line(place.line).substr(from, to - from));
  }
  int columns_left(int number, int column) const {
    int columns = 0;
    const std::string_view text = line(number);
    for (std::size_t at = 0; at < text.size() && text[at] != '\r'; ++columns)
      at += std::max<std::size_t>(1, code_point_at(text, at).bytes);
    return columns - column + 1;
  }

 private:
  std::string_view line(int number) const {
    return number >= 1 && number <= static_cast<int>(lines_.size()) ? lines_[number - 1] : "";
  }
  std::size_t byte(int number, int column) {
    if (number != line_ || column < column_) line_ = number, column_ = 1, byte_ = 0;
    const std::string_view text = line(number);
    for (; column_ < column && byte_ < text.size(); ++column_)
      byte_ += std::max<std::size_t>(1, code_point_at(text, byte_).bytes);
    return byte_;
  }

  std::vector<std::string_view> lines_;
  int line_ = 0, column_ = 1;
  std::size_t byte_ = 0;
};

class TreeMaker {
 public:
  explicit TreeMaker(std::string_view text) : lines_(text) {}

  Node table(const toml::table& from) {
    std::vector<std::pair<const toml::key*, const toml::node*>> entries;
    for (const auto& [key, value] : from) entries.emplace_back(&key, &value);
    const auto before = [](const auto& a, const auto& b) {
      const auto &p = a.first->source().begin, &q = b.first->source().begin;
      return p.line != q.line ? p.line < q.line : p.column < q.column;
    };
    std::sort(entries.begin(), entries.end(), before);
    Node node = blank(Node::Kind::table, from);
    for (const auto& [key, value] : entries)
      node.entries.push_back({std::string(key->str()), place(key->source()), any(*value)});
    return node;
  }

 private:
  Place place(const toml::source_region& region) const {
    const auto begin = region.begin, end = region.end;
    const int line = static_cast<int>(begin.line), column = static_cast<int>(begin.column);
    const int width = begin.line == end.line ? static_cast<int>(end.column) - column
                                             : lines_.columns_left(line, column);
    return {line, column, std::max(1, width)};
  }

  Node blank(Node::Kind kind, const toml::node& from) const {
    Node node;
    node.kind = kind;
    node.place = place(from.source());
    const auto end = from.source().end;
    node.end = {static_cast<int>(end.line), static_cast<int>(end.column), 1};
    return node;
  }

  Node list(const toml::array& from) {
    Node node = blank(Node::Kind::list, from);
    node.items.reserve(from.size());
    for (const toml::node& item : from) node.items.push_back(any(item));
    return node;
  }

  Node number(Node::Kind kind, double value, const toml::node& from) {
    Node node = blank(kind, from);
    node.number = value;
    node.text = lines_.slice(node.place);
    return node;
  }

  Node any(const toml::node& from) {
    if (const auto* t = from.as_table()) return table(*t);
    if (const auto* a = from.as_array()) return list(*a);
    if (const auto* i = from.as_integer())
      return number(Node::Kind::integer, static_cast<double>(i->get()), from);
    if (const auto* d = from.as_floating_point()) return number(Node::Kind::real, d->get(), from);
    Node node = blank(Node::Kind::date, from);
    if (const auto* s = from.as_string()) {
      node.kind = Node::Kind::string;
      node.text = s->get();
    } else if (const auto* b = from.as_boolean()) {
      node.kind = Node::Kind::boolean;
      node.flag = b->get();
    }
    return node;
  }

  Lines lines_;
};

// Walks the text as far as to know what stands in strings and comments, and counts the dots of
// keys.
class DepthCheck {
 public:
  explicit DepthCheck(std::string_view text) : text_(text) {}

  /// The line of a key with too many parts.
  std::optional<int> too_deep() {
    for (; at_ < text_.size(); ++at_) {
      const char c = text_[at_];
      if (c == '#')
        skip_comment();
      else if (c == '"' || c == '\'')
        skip_string(c);
      else if (c == '.' && ++dots_ >= kDeepestKey)
        return line();
      else if (std::string_view("\n=,{}[]").find(c) != std::string_view::npos)
        dots_ = 0;
    }
    return std::nullopt;
  }

 private:
  int line() const {
    return 1 + static_cast<int>(std::count(text_.begin(), text_.begin() + at_, '\n'));
  }
  void skip_comment() {
    at_ = std::min(text_.find('\n', at_), text_.size());
    dots_ = 0;
  }
  void skip_string(char quote) {
    const bool longer = text_.substr(at_, 3) == std::string(3, quote);
    for (at_ += longer ? 3 : 1; at_ < text_.size(); ++at_) {
      if (text_[at_] == '\\' && quote == '"')
        ++at_;
      else if (!longer && (text_[at_] == quote || text_[at_] == '\n'))
        return;
      else if (longer && text_.substr(at_, 3) == std::string(3, quote)) {
        at_ += 2;
        return;
      }
    }
  }

  std::string_view text_;
  std::size_t at_ = 0;
  int dots_ = 0;
};

// What the library says, in the words of this program.
struct Said {
  std::string what, code, help;
};
Said syntax_words(std::string what, bool at_line_end) {
  const auto has = [&](std::string_view part) { return what.find(part) != std::string::npos; };
  if (has("exceeded maximum nested"))
    return {"nested deeper than any list needs", "nested-too-deep", "brackets left over?"};
  if (has("control characters") && at_line_end)
    return {"the quote is not closed on its line", "toml-syntax",
            "close it with the sign it began with"};
  if (has("control characters"))
    return {"a control character inside a text", "toml-syntax", "take it out"};
  if (has("cannot redefine existing"))
    return {what.substr(std::min(what.find('\''), what.size())) + " is there already",
            "toml-syntax", "leave one of them out, or rename it"};
  if (has("expected a comment or whitespace"))
    return {what, "toml-syntax", "a reading with a fraction or a unit stands in quotes: '41 3/8'"};
  return {what, "toml-syntax", "the file is TOML 1.0: key = value, [table], [[list of tables]]"};
}

Diagnostic syntax_fault(const toml::parse_error& error, const std::string& file, Lines lines) {
  std::string what(error.description());
  if (what.starts_with("Error while parsing "))
    what = what.substr(std::min(what.find(": ") + 2, what.size()));
  const auto at = error.source().begin;
  const Place place{static_cast<int>(at.line), static_cast<int>(at.column), 1};
  Said said = syntax_words(std::move(what), lines.columns_left(place.line, place.column) <= 0);
  return {file, place, std::move(said.what), std::move(said.code), std::move(said.help)};
}

}  // namespace

const Entry* Node::find(std::string_view key) const {
  for (const Entry& entry : entries)
    if (entry.key == key) return &entry;
  return nullptr;
}

std::string_view kind_in_words(const Node& node) {
  switch (node.kind) {
    case Node::Kind::string:
      return "a text";
    case Node::Kind::integer:
      return "a whole number";
    case Node::Kind::real:
      return "a number";
    case Node::Kind::boolean:
      return "true or false";
    case Node::Kind::date:
      return "a date or time";
    case Node::Kind::list:
      return "a list";
    case Node::Kind::table:
      return "a table";
  }
  return "";
}

tl::expected<Node, Diagnostic> parse_tree(std::string_view text, const std::string& file) {
  if (Diagnostic fault = utf8_fault(text, file); fault.place.line > 0) return tl::unexpected(fault);
  if (const auto line = DepthCheck(text).too_deep())
    return tl::unexpected(Diagnostic{file,
                                     {*line, 1, 1},
                                     "a key of too many parts",
                                     "nested-too-deep",
                                     "no key of a job's file has more than three"});
  try {
    Node root = TreeMaker(text).table(toml::parse(text));
    root.place = {};
    return root;
  } catch (const toml::parse_error& error) {
    return tl::unexpected(syntax_fault(error, file, Lines(text)));
  }
}

}  // namespace nook
