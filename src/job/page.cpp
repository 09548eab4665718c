// Where things stand in a file's text.
#include "job/page.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

#include "base/utf8.h"

namespace nook {
namespace {

bool is_bare(char c) {
  return std::isalnum(static_cast<unsigned char>(c)) || c == '_' || c == '-';
}

std::size_t count_keys(const KeyPath& path) {
  return std::count_if(path.begin(), path.end(),
                       [](const KeyStep& step) { return !step.key.empty(); });
}

// The keys in a header such as [a."b.c"].
std::size_t keys_in_header(std::string_view header) {
  std::size_t keys = 1;
  char quote = 0;
  for (const char c : header) {
    if (quote)
      quote = c == quote ? '\0' : quote;
    else if (c == '"' || c == '\'')
      quote = c;
    else
      keys += c == '.';
  }
  return keys;
}

}  // namespace

Page::Page(std::string_view text, Node root) : text_(text), root_(std::move(root)) {
  starts_.push_back(text.starts_with("\xEF\xBB\xBF") ? 3 : 0);
  for (std::size_t at = text.find('\n'); at != std::string_view::npos; at = text.find('\n', at + 1))
    starts_.push_back(at + 1);
  if (starts_.size() > 1 && starts_[1] > 1 && text[starts_[1] - 2] == '\r') newline_ = "\r\n";
}

tl::expected<Page, std::string> Page::of(std::string_view text) {
  auto tree = parse_tree(text, "");
  if (!tree) return tl::unexpected("the file is not TOML: " + tree.error().what);
  return Page(text, std::move(*tree));
}

const Node* Page::find(const KeyPath& path) const {
  const Node* node = &root_;
  for (const KeyStep& step : path) {
    if (!step.key.empty()) {
      const Entry* entry = node->find(step.key);
      node = entry ? &entry->value : nullptr;
    } else {
      const bool there = step.index >= 0 && step.index < static_cast<int>(node->items.size());
      node = there ? &node->items[step.index] : nullptr;
    }
    if (!node) return nullptr;
  }
  return node;
}

Written Page::written(const Node& table, const KeyPath& path) const {
  if (path.empty()) return Written::root;
  const char first = text_[from(table)];
  if (first == '{') return Written::braces;
  if (first != '[') return Written::dotted;
  const std::string_view header = text_.substr(from(table), byte(table.end) - from(table));
  return keys_in_header(header) == count_keys(path) ? Written::header : Written::implied;
}

bool Page::has_header(const Node& value) const {
  if (value.is(Node::Kind::list)) return !value.items.empty() && has_header(value.items[0]);
  return value.is(Node::Kind::table) && text_[from(value)] == '[';
}

std::size_t Page::byte(Place place) const {
  const auto line = static_cast<std::size_t>(place.line) - 1;
  if (line >= starts_.size()) return text_.size();
  std::size_t at = starts_[line];
  for (int column = 1; column < place.column && at < text_.size(); ++column)
    at += std::max<std::size_t>(1, code_point_at(text_, at).bytes);
  return at;
}

std::size_t Page::end(const Node& value) const {
  std::size_t last = byte(value.end);
  for (const Node& item : value.items) last = std::max(last, end(item));
  for (const Entry& entry : value.entries) last = std::max(last, end(entry.value));
  return last;
}

const Entry* Page::last_key(const Node& table) const {
  const Entry* last = nullptr;
  for (const Entry& entry : table.entries)
    if (!has_header(entry.value) && (!last || end(entry.value) > end(last->value))) last = &entry;
  return last;
}

std::size_t Page::line_start(std::size_t at) const {
  return *(std::upper_bound(starts_.begin() + 1, starts_.end(), at) - 1);
}

std::size_t Page::next_line(std::size_t at) const {
  const std::size_t line_end = text_.find('\n', at);
  return line_end == std::string_view::npos ? text_.size() : line_end + 1;
}

std::string Page::indent(std::size_t at) const {
  const std::size_t start = line_start(at);
  const std::size_t first = std::min(text_.find_first_not_of(" \t", start), text_.size());
  return std::string(text_.substr(start, first - start));
}

std::string as_key(const std::string& key) {
  return !key.empty() && std::all_of(key.begin(), key.end(), is_bare) ? key : quoted(key);
}

std::string header(const KeyPath& path) {
  std::string joined;
  for (const KeyStep& step : path)
    if (!step.key.empty()) joined += (joined.empty() ? "" : ".") + as_key(step.key);
  return joined;
}

std::string in_words(const KeyPath& path) {
  std::string text;
  for (const KeyStep& step : path) {
    if (step.key.empty())
      text += fmt::format("[{}]", step.index);
    else
      text += (text.empty() ? "" : ".") + as_key(step.key);
  }
  return text;
}

}  // namespace nook
