// Readings already taken, taken once more.
#include "survey/reading_names.h"
#include "survey/taking.h"

namespace nook {
namespace {

constexpr double kAgain = 1;            // minutes. Chosen
constexpr std::size_t kMostSpans = 60;  // that are thought of once more. Chosen

class Again {
 public:
  explicit Again(Taking& on) : on_(on), names_(reading_names(on.survey())) {
    const auto& rows = on.model().observations;
    for (int i = 0; i < static_cast<int>(rows.size()); ++i) rows_.emplace(rows[i].id, i);
  }

  void once_more(const Readings& readings, NextReading next) {
    if (readings.empty()) return;
    const auto row = rows_.find(readings.front().id);
    if (row == rows_.end()) return;
    next.reading = "take this again: " + names_.at(row->first);
    const Observation& o = on_.model().observations[row->second];
    on_.add(std::move(next), o.model(on_.view()), o.worth.sd * o.worth.sd, kAgain);
  }

 private:
  Taking& on_;
  std::map<std::string, std::string> names_;  // of readings by id
  std::map<std::string, int> rows_;           // observations by id
};

}  // namespace

void add_again(Taking& on) {
  Again all(on);
  for (const Corner& corner : on.survey().corners) {
    const int k = corner.walls[0];
    for (const Diagonal& d : corner.diagonals)
      all.once_more(d.straight, {"", 0, NextReading::Kind::other, k, d.first.value.mm,
                                 d.second.value.mm, d.height.value.mm, false});
    for (const SquareReading& square : corner.squares)
      all.once_more(square.gap, {"", 0, NextReading::Kind::other, k, 0, 0, 0, false});
  }
  for (int wall = 0; wall < static_cast<int>(on.survey().walls.size()); ++wall)
    for (const LevelReading& r : on.survey().walls[wall].levels)
      all.once_more(r.gap, {"", 0, NextReading::Kind::level, wall, r.at.mm, r.to.value.mm,
                            r.from.value.mm, r.from_right});
  for (const Across& across : on.survey().across)
    all.once_more(across.is,
                  {"", 0, NextReading::Kind::length, across.walls[0] + 1, 0, 0, 0, false});
  for (const DropReading& d : on.survey().floor.down)
    all.once_more(d.drop,
                  {"", 0, NextReading::Kind::drop, d.wall, d.along.mm, d.out.mm, 0, d.from_right});
  if (on.survey().spans.size() > kMostSpans) return;
  for (const Span& span : on.survey().spans)
    all.once_more(span.is, {"", 0, NextReading::Kind::span, 0, 0, 0, 0, false});
}

}  // namespace nook
