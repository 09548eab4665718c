// Fills the plain types of a survey.
#include "survey_builder.h"

namespace nook::test {
namespace {

Height at_height(double mm) {
  return {millimetres(mm), false, {}};
}

std::string indexed(const std::string& list, std::size_t index) {
  return list + "[" + std::to_string(index) + "]";
}

}  // namespace

SurveyBuilder::SurveyBuilder(std::vector<std::string> walls) {
  survey.units = Unit::mm;
  survey.tape.read_to = millimetres(1);
  for (std::string& name : walls) {
    Wall wall;
    wall.name = std::move(name);
    survey.walls.push_back(std::move(wall));
  }
  for (int k = 0; k + 1 < static_cast<int>(survey.walls.size()); ++k) {
    Corner entry;
    entry.walls[0] = k;
    entry.walls[1] = k + 1;
    entry.height = at_height(1000);
    survey.corners.push_back(entry);
  }
}

Reading SurveyBuilder::reading(double mm, std::string id) {
  Reading out;
  out.value = millimetres(mm);
  out.sd = sd;
  out.smallest_mark = mark;
  out.id = std::move(id);
  return out;
}

Readings SurveyBuilder::readings(const std::vector<double>& mm, const std::string& id) {
  Readings out;
  for (std::size_t i = 0; i < mm.size(); ++i)
    out.push_back(reading(mm[i], mm.size() > 1 ? indexed(id, i) : id));
  return out;
}

SurveyBuilder& SurveyBuilder::diagonal(int k, double first, double second,
                                       std::vector<double> straight, double height) {
  auto& list = corner(k).diagonals;
  const std::string id =
      indexed(indexed("corner", static_cast<std::size_t>(k)) + ".diagonals", list.size());
  Diagonal entry{reading(first, id + ".first"),
                 reading(second, id + ".second"),
                 readings(straight, id),
                 at_height(height),
                 {}};
  for (const Diagonal& before : list) {  // marks at one spot are one mark
    if (before.height.value.mm != height) continue;
    if (before.first.value == entry.first.value) entry.first.id = before.first.id;
    if (before.second.value == entry.second.value) entry.second.id = before.second.id;
  }
  list.push_back(std::move(entry));
  return *this;
}

SurveyBuilder& SurveyBuilder::level(int wall, double at, double from, double to, double gap,
                                    bool top) {
  auto& list = survey.walls[static_cast<std::size_t>(wall)].levels;
  LevelReading entry;
  entry.at = millimetres(at);
  entry.from = at_height(from);
  entry.to = at_height(to);
  entry.gap = {reading(
      gap, indexed(indexed("wall", static_cast<std::size_t>(wall)) + ".level", list.size()))};
  entry.gap_at_top = top;
  list.push_back(std::move(entry));
  return *this;
}

SurveyBuilder& SurveyBuilder::plumb(int wall, double at,
                                    std::vector<std::pair<double, double>> line) {
  auto& list = survey.walls[static_cast<std::size_t>(wall)].plumbs;
  const std::string id =
      indexed(indexed("wall", static_cast<std::size_t>(wall)) + ".plumb", list.size()) + ".line";
  PlumbReading entry;
  entry.at = millimetres(at);
  for (const auto& [height, mm] : line) {
    Station station;
    station.height = at_height(height);
    station.reading = {reading(mm, indexed(id, entry.line.size()))};
    entry.line.push_back(std::move(station));
  }
  list.push_back(std::move(entry));
  return *this;
}

SurveyBuilder& SurveyBuilder::string(int wall, double height,
                                     std::vector<std::pair<double, double>> line) {
  auto& list = survey.walls[static_cast<std::size_t>(wall)].strings;
  const std::string id =
      indexed(indexed("wall", static_cast<std::size_t>(wall)) + ".string", list.size()) + ".line";
  StringReading entry;
  entry.height = at_height(height);
  for (const auto& [at, mm] : line) {
    Station station;
    station.at = millimetres(at);
    station.reading = {reading(mm, indexed(id, entry.line.size()))};
    entry.line.push_back(std::move(station));
  }
  list.push_back(std::move(entry));
  return *this;
}

SurveyBuilder& SurveyBuilder::straightedge(int wall, double height,
                                           std::vector<std::pair<double, double>> gaps) {
  auto& list = survey.walls[static_cast<std::size_t>(wall)].straightedges;
  const std::string id =
      indexed(indexed("wall", static_cast<std::size_t>(wall)) + ".straightedge", list.size()) +
      ".gaps";
  StraightedgeReading entry;
  entry.height = at_height(height);
  for (const auto& [at, mm] : gaps) {
    Station station;
    station.at = millimetres(at);
    station.reading = {reading(mm, indexed(id, entry.gaps.size()))};
    entry.gaps.push_back(std::move(station));
  }
  list.push_back(std::move(entry));
  return *this;
}

SurveyBuilder& SurveyBuilder::length(int wall, std::vector<double> mm, double height) {
  Wall& entry = survey.walls[static_cast<std::size_t>(wall)];
  entry.length = readings(mm, indexed("wall", static_cast<std::size_t>(wall)) + ".length");
  entry.length_height = at_height(height);
  return *this;
}

SurveyBuilder& SurveyBuilder::square(int k, double blade, double gap, bool tip) {
  auto& list = corner(k).squares;
  const std::string id =
      indexed(indexed("corner", static_cast<std::size_t>(k)) + ".square", list.size());
  list.push_back({millimetres(blade), {reading(gap, id)}, tip, at_height(1000), {}});
  return *this;
}

SurveyBuilder& SurveyBuilder::angle(int k, double value, double blade) {
  auto& list = corner(k).angles;
  AngleReading entry;
  entry.value = degrees(value);
  entry.blade = millimetres(blade);
  entry.height = at_height(1000);
  entry.id = indexed(indexed("corner", static_cast<std::size_t>(k)) + ".angles", list.size());
  list.push_back(std::move(entry));
  return *this;
}

SurveyBuilder& SurveyBuilder::across(double out, double mm, double height) {
  Across entry;
  entry.out = millimetres(out);
  entry.height = at_height(height);
  entry.is = {reading(mm, indexed("across", survey.across.size()))};
  survey.across.push_back(std::move(entry));
  return *this;
}

SurveyBuilder& SurveyBuilder::drop(int wall, double along, double out, double mm) {
  DropReading entry{wall, millimetres(along), millimetres(out), false, {}, {}};
  entry.drop = {reading(mm, indexed("floor.down", survey.floor.down.size()))};
  survey.floor.down.push_back(std::move(entry));
  return *this;
}

SurveyBuilder& SurveyBuilder::rise(int wall, double along, double out, double mm) {
  DropReading entry{wall, millimetres(along), millimetres(out), false, {}, {}};
  entry.drop = {reading(mm, indexed("ceiling.up", survey.ceiling.size()))};
  survey.ceiling.push_back(std::move(entry));
  return *this;
}

SurveyBuilder& SurveyBuilder::mark_named(const std::string& name) {
  survey.marks.push_back(name);
  return *this;
}

SurveyBuilder& SurveyBuilder::span(const std::string& a, const std::string& b,
                                   std::vector<double> mm) {
  Span entry;
  entry.between[0].mark = a;
  entry.between[1].mark = b;
  const std::string id = indexed("span", survey.spans.size());
  entry.is = readings(mm, mm.size() > 1 ? id + ".is" : id);
  survey.spans.push_back(std::move(entry));
  return *this;
}

}  // namespace nook::test
