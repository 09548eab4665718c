// Takes an id apart and says it.
#include "sheet/reading_name.h"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <utility>

namespace nook {
namespace {

constexpr std::size_t kNamed = 4;  // of many, enough to see what they have in common. Chosen

constexpr std::pair<std::string_view, std::string_view> kWords[] = {
    {"length", "length"},
    {"level", "level"},
    {"straightedge", "straightedge"},
    {"gaps", "gap"},
    {"plumb", "plumb line"},
    {"string", "string"},
    {"line", "reading"},
    {"square", "square"},
    {"diagonals", "diagonal"},
    {"angles", "angle finder"},
    {"span", "tape"},
    {"across", "tape across"},
    {"down", "down from the line"},
    {"up", "up from the line"}};

// "diagonals[2][1]": a name and its indices.
struct Part {
  std::string_view name;
  std::vector<int> indices;
};

std::vector<Part> parts_of(std::string_view id) {
  std::vector<Part> out;
  while (!id.empty()) {
    const auto dot = std::min(id.find('.'), id.size());
    std::string_view piece = id.substr(0, dot);
    id.remove_prefix(std::min(dot + 1, id.size()));
    Part part{piece.substr(0, piece.find('[')), {}};
    for (auto open = piece.find('['); open != std::string_view::npos;
         open = piece.find('[', open + 1))
      part.indices.push_back(std::atoi(std::string(piece.substr(open + 1)).c_str()));
    out.push_back(std::move(part));
  }
  return out;
}

std::string_view word_of(std::string_view name) {
  for (const auto& [key, word] : kWords)
    if (key == name) return word;
  return {};
}

// The first index counts things, another one how often they were taken.
std::string said(const Part& part) {
  const std::string_view word = word_of(part.name);
  if (word.empty()) return {};
  const bool lone = part.name == "length";  // its only index is how often
  std::string text(word);
  if (!lone && !part.indices.empty()) text += fmt::format(" {}", part.indices[0] + 1);
  const std::size_t times = lone ? 0 : 1;
  if (part.indices.size() > times) text += fmt::format(", time {}", part.indices[times] + 1);
  return text;
}

std::string owner(const ReadingReport& reading, const RoomReport& report) {
  if (reading.corner >= 0 && reading.corner < static_cast<int>(report.corners.size())) {
    const CornerReport& corner = report.corners[reading.corner];
    return fmt::format("{}/{} corner", corner.walls[0], corner.walls[1]);
  }
  if (reading.wall >= 0 && reading.wall < static_cast<int>(report.walls.size()))
    return report.walls[reading.wall].name + " wall";
  return {};
}

void add(std::string& text, const std::string& more) {
  if (more.empty()) return;
  text += (text.empty() ? "" : ", ") + more;
}

}  // namespace

std::string reading_name(const std::string& id, const RoomReport& report) {
  const auto found = std::find_if(report.readings.begin(), report.readings.end(),
                                  [&](const ReadingReport& r) { return r.id == id; });
  if (found == report.readings.end()) return id;
  std::string text = owner(*found, report);
  const std::vector<Part> parts = parts_of(id);
  for (const Part& part : parts) {
    add(text, said(part));
    if (part.name == "is" && !part.indices.empty())
      add(text, fmt::format("time {}", part.indices[0] + 1));
  }
  const bool mark =
      !parts.empty() && (parts.back().name == "first" || parts.back().name == "second");
  if (mark && found->wall >= 0)
    add(text, fmt::format("mark on the {} wall", report.walls[found->wall].name));
  if (parts.size() > 1 && parts.back().name == "along") add(text, "its mark");
  return found->line > 0 ? fmt::format("{} (line {})", text, found->line) : text;
}

std::string reading_names(const std::vector<std::string>& ids, const RoomReport& report) {
  std::string text;
  for (std::size_t i = 0; i < std::min(ids.size(), kNamed); ++i)
    text += (i ? "; " : "") + reading_name(ids[i], report);
  if (ids.size() > kNamed) text += fmt::format("; and {} more", ids.size() - kNamed);
  return text;
}

}  // namespace nook
