// Writes into a file's text only where a key, an item or a table has its place.
#include "job/edit.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/invariant.h"
#include "job/page.h"

namespace nook {
namespace {

tl::unexpected<std::string> cannot(std::string why) {
  return tl::unexpected(std::move(why));
}

KeyPath above(const KeyPath& path) {
  return KeyPath(path.begin(), path.end() - 1);
}

std::string with_newlines(std::string_view lines, const std::string& newline) {
  std::string out;
  for (const char c : lines) out += c == '\n' ? newline : std::string(1, c);
  return out;
}

// A stretch of the text and what takes its place.
struct Change {
  std::size_t from, to;
  std::string piece;
};

Change insertion(std::size_t at, std::string piece) {
  return {at, at, std::move(piece)};
}

// A whole line behind `at`'s line, or at the end of a text that does not end with a line break.
Change line_behind(const Page& page, std::size_t at, std::string lines) {
  const std::size_t next = page.next_line(at);
  const bool open = next > 0 && page.text()[next - 1] != '\n';
  return insertion(next, (open ? page.newline() : "") + std::move(lines));
}

// Behind everything: where a new table of the file itself goes.
Change line_at_end(const Page& page, std::string lines) {
  const std::size_t end = page.text().size();
  const bool open = end > 0 && page.text()[end - 1] != '\n';
  return insertion(end, (open ? page.newline() : "") + std::move(lines));
}

// Brackets and braces

// One more item behind the last one, which ends at `last` and starts at `first`.
Change behind_item(const Page& page, std::size_t first, std::size_t last, const std::string& item) {
  const std::string_view text = page.text();
  const std::size_t next = text.find_first_not_of(" \t\r\n", last);
  const bool comma = next != std::string_view::npos && text[next] == ',';
  const std::size_t behind = comma ? next + 1 : last;
  const std::size_t line_end = page.next_line(behind);
  const std::string indent = page.indent(first);
  const bool own_line = page.line_start(first) + indent.size() == first;
  const std::string_view rest = text.substr(behind, line_end - behind);
  const std::string added = item + (comma ? "," : "");
  // A remark behind the last item stays with it.
  if (rest.find_first_not_of(" \t") != std::string_view::npos &&
      rest[rest.find_first_not_of(" \t")] == '#')
    return {behind, line_end,
            (comma ? "" : ",") + std::string(rest) + indent + added + page.newline()};
  const std::string space = own_line ? page.newline() + indent : " ";
  return insertion(behind, (comma ? "" : ",") + space + added);
}

Change into_brackets(const Page& page, const Node& list, const std::string& item) {
  if (list.items.empty()) return insertion(page.from(list) + 1, item);
  return behind_item(page, page.from(list.items.back()), page.end(list.items.back()), item);
}

Change into_braces(const Page& page, const Node& table, const std::string& line) {
  if (table.entries.empty()) return insertion(page.from(table) + 1, " " + line + " ");
  const Entry& last = table.entries.back();
  return insertion(page.end(last.value), ", " + line);
}

// Keys

Change under_header(const Page& page, const Node& table, const std::string& line) {
  const Entry* last = page.last_key(table);
  if (!last) return line_behind(page, page.byte(table.end), line + page.newline());
  const std::string indent = page.indent(page.byte(last->place));
  return line_behind(page, page.end(last->value), indent + line + page.newline());
}

Change into_root(const Page& page, const Node& root, const std::string& line) {
  const Entry* last = page.last_key(root);
  if (last) return line_behind(page, page.end(last->value), line + page.newline());
  return insertion(page.byte({1, 1, 1}), line + page.newline());
}

using Planned = tl::expected<Change, std::string>;

Planned new_key(const Page& page, const KeyPath& path, const std::string& line) {
  const KeyPath parent = above(path);
  if (const Node* table = page.find(parent)) {
    if (!table->is(Node::Kind::table)) return cannot(in_words(parent) + " is no table");
    switch (page.written(*table, parent)) {
      case Written::root:
        return into_root(page, *table, line);
      case Written::header:
        return under_header(page, *table, line);
      case Written::braces:
        return into_braces(page, *table, line);
      default:
        return cannot(in_words(parent) + " has no header of its own");
    }
  }
  // Its table is missing: it goes behind all of the table above.
  if (parent.back().key.empty()) return cannot("there is no " + in_words(parent));
  const KeyPath outer = above(parent);
  const Node* table = page.find(outer);
  if (!table) return cannot("there is no " + in_words(outer));
  const std::string lines =
      fmt::format("[{}]{}{}{}", header(parent), page.newline(), line, page.newline());
  return outer.empty() ? line_at_end(page, lines) : line_behind(page, page.end(*table), lines);
}

// Removal

// An item or `key = value` between commas: with the comma behind it, or the one before the last.
Change between_commas(const Page& page, std::size_t from, std::size_t to) {
  const std::string_view text = page.text();
  const std::size_t next = text.find_first_not_of(" \t\r\n", to);
  if (text[next] == ',')
    return {from, std::min(text.find_first_not_of(" \t", next + 1), text.size()), ""};
  const std::size_t comma = text.find_last_not_of(" \t\r\n", from - 1);
  return {text[comma] == ',' ? comma : from, to, ""};
}

Change without(const Page& page, const KeyPath& path, const Node& node) {
  if (page.has_header(node))
    return {page.line_start(page.from(node)), page.next_line(page.end(node)), ""};
  if (path.back().key.empty()) return between_commas(page, page.from(node), page.end(node));
  const KeyPath parent = above(path);
  const Node& table = *page.find(parent);
  const std::size_t key = page.byte(table.find(path.back().key)->place);
  if (page.written(table, parent) == Written::braces)
    return between_commas(page, key, page.end(node));
  return {page.line_start(key), page.next_line(page.end(node)), ""};
}

// The text with a change, where it is TOML still.
tl::expected<std::string, std::string> changed(const std::string& text, const Change& change) {
  std::string next = text;
  next.replace(change.from, change.to - change.from, change.piece);
  if (const auto page = Page::of(next); !page) return cannot(page.error());
  return next;
}

}  // namespace

KeyPath key_path(std::string_view text) {
  KeyPath path;
  for (std::size_t at = 0; at < text.size();) {
    if (text[at] == '[') {
      const std::size_t close = text.find(']', at);
      require(close != std::string_view::npos, "an index of a path is closed");
      path.push_back({"", std::stoi(std::string(text.substr(at + 1, close - at - 1)))});
      at = close + 1;
    } else {
      if (text[at] == '.') ++at;
      const std::size_t end = std::min(text.find_first_of(".[", at), text.size());
      require(end > at, "a key of a path is not empty");
      path.push_back({std::string(text.substr(at, end - at)), 0});
      at = end;
    }
  }
  return path;
}

std::string quoted(std::string_view text) {
  const auto plain = [](char c) {
    return c != '\'' && static_cast<unsigned char>(c) >= 0x20 && c != 0x7F;
  };
  if (std::all_of(text.begin(), text.end(), plain)) return fmt::format("'{}'", text);
  std::string out = "\"";
  for (const char c : text) {
    const auto code = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\')
      out += fmt::format("\\{}", c);
    else if (code < 0x20 || code == 0x7F)
      out += fmt::format("\\u{:04X}", code);
    else
      out += c;
  }
  return out + "\"";
}

TextEdit::Done TextEdit::set(const KeyPath& path, std::string_view value) {
  require(!path.empty(), "a path has a step");
  const auto page = Page::of(text_);
  if (!page) return cannot(page.error());
  const Node* node = page->find(path);
  if (node && page->has_header(*node)) return cannot(in_words(path) + " is a table with a header");
  if (node)
    return take(changed(text_, {page->from(*node), page->byte(node->end), std::string(value)}));
  if (path.back().key.empty()) return cannot("there is no " + in_words(path));
  const auto change = new_key(*page, path, fmt::format("{} = {}", as_key(path.back().key), value));
  return change ? take(changed(text_, *change)) : cannot(change.error());
}

TextEdit::Done TextEdit::append(const KeyPath& list, std::string_view value) {
  const auto page = Page::of(text_);
  if (!page) return cannot(page.error());
  const Node* node = page->find(list);
  if (!node || !node->is(Node::Kind::list) || page->has_header(*node))
    return cannot(in_words(list) + " is no list in brackets");
  return take(changed(text_, into_brackets(*page, *node, std::string(value))));
}

TextEdit::Done TextEdit::append_table(const KeyPath& key, std::string_view lines) {
  require(!key.empty() && !key.back().key.empty(), "a table has a key");
  const auto page = Page::of(text_);
  if (!page) return cannot(page.error());
  const KeyPath outer = above(key);
  const Node* parent = page->find(outer);
  if (!parent) return cannot("there is no " + in_words(outer));
  const Node* behind = page->find(key);
  if (behind && !page->has_header(*behind))
    return cannot(in_words(key) + " is written in brackets");
  if (!behind && !outer.empty()) behind = parent;
  const std::string body = fmt::format("[[{}]]{}{}", header(key), page->newline(),
                                       with_newlines(lines, page->newline()));
  return take(changed(
      text_, behind ? line_behind(*page, page->end(*behind), body) : line_at_end(*page, body)));
}

TextEdit::Done TextEdit::remove(const KeyPath& path) {
  const auto page = Page::of(text_);
  if (!page) return cannot(page.error());
  const Node* node = path.empty() ? nullptr : page->find(path);
  if (!node) return cannot("there is no " + in_words(path));
  return take(changed(text_, without(*page, path, *node)));
}

TextEdit::Done TextEdit::take(tl::expected<std::string, std::string> text) {
  if (!text) return tl::unexpected(std::move(text.error()));
  text_ = std::move(*text);
  return {};
}

}  // namespace nook
