// Sections of the measuring sheet.
#include "sheet/measuring_sheet.h"

#include <fmt/format.h>

#include "sheet/closing_sections.h"
#include "sheet/elevation.h"
#include "sheet/plan.h"
#include "sheet/profile.h"
#include "sheet/reading_rows.h"
#include "sheet/room_text.h"
#include "sheet/stop_numbers.h"
#include "sheet/where_to_measure.h"

namespace nook {
namespace {

constexpr const char* kBlank = "__________";

// Sketches of the readings that have a place on a wall or in a corner.
void add_sketches(SheetSection& section, const SheetJob& job) {
  const Survey& survey = job.scene.survey;
  for (int corner = 0; corner + 1 < static_cast<int>(survey.walls.size()); ++corner) {
    const auto mine = in_corner(job.to_take, corner);
    if (mine.empty()) continue;
    section.blocks.push_back(SheetFigure{[&job, corner, mine](const Canvas& canvas) {
                                           return where_in_corner(job.scene.survey, corner, mine,
                                                                  canvas, job.style.rounding);
                                         },
                                         95, 2});
  }
  for (int wall = 0; wall < static_cast<int>(survey.walls.size()); ++wall) {
    const auto mine = on_wall(job.to_take, wall);
    if (mine.empty()) continue;
    section.blocks.push_back(SheetFigure{[&job, wall, mine](const Canvas& canvas) {
                                           return where_on_wall(job.scene.survey, wall, mine,
                                                                canvas, job.style.rounding);
                                         },
                                         85, 2});
  }
}

SheetTable form_of(const SheetJob& job) {
  SheetTable table{job.minutes > 0 ? fmt::format("About {:.0f} minutes", job.minutes) : "",
                   {"No.", "Take", "Read", "Again"},
                   {}};
  for (std::size_t i = 0; i < job.to_take.size(); ++i) {
    const bool again = job.twice.empty() || job.twice[i];
    table.rows.push_back(
        {std::to_string(i + 1), job.to_take[i].reading, kBlank, again ? kBlank : "-"});
  }
  return table;
}

// What is wrong with the readings so far, and what holds everything up.
SheetList wrong_so_far(const SheetJob& job) {
  SheetList list;
  for (const Finding& f : room_findings(job.scene.report))
    list.items.push_back(f.where + ": " + f.what + (f.next.empty() ? "" : "; " + f.next));
  for (const NextReading& probe : job.scene.drill ? job.drill().probes : std::vector<NextReading>{})
    list.items.push_back(probe.reading);
  const std::string diagonal = diagonal_words(job);
  if (!diagonal.empty())
    list.items.push_back("Before anything is cut, " + diagonal + " If not: do not cut.");
  return list;
}

SheetSection next_section(const SheetJob& job) {
  SheetSection section{"Take next", {}};
  if (SheetList list = wrong_so_far(job); !list.items.empty())
    section.blocks.push_back(std::move(list));
  if (!job.to_take.empty()) section.blocks.push_back(form_of(job));
  add_sketches(section, job);
  if (section.blocks.empty())
    section.blocks.push_back(SheetWords{"Nothing: every reading agrees and nothing is missing."});
  return section;
}

SheetSection room_section(const SheetJob& job) {
  SheetSection section{"The room as found", {}};
  section.blocks.push_back(
      SheetFigure{[&job](const Canvas& canvas) { return plan(job.scene, canvas); }, 110});
  section.blocks.push_back(
      SheetFigure{[&job](const Canvas& canvas) { return plan_made_large(job.scene, canvas); }, 70});
  return section;
}

SheetSection wall_section(const SheetJob& job, int wall) {
  SheetSection section{job.scene.room.walls[wall].name + " wall", {}};
  section.blocks.push_back(SheetFigure{
      [&job, wall](const Canvas& canvas) { return where_measured(job.scene, wall, canvas); }, 130});
  section.blocks.push_back(SheetFigure{
      [&job, wall](const Canvas& canvas) { return profile(job.scene, wall, canvas); }, 90});
  return section;
}

SheetSection readings_section(const SheetJob& job) {
  SheetSection section{"Readings, in walking order", {}};
  section.blocks.push_back(SheetWords{
      fmt::format("Along counts from the corner, height from the floor. Write what the tape says: "
                  "{}. Look first: list outlets, switches, vents, pipes.",
                  job.style.rounding.unit == Unit::inch ? "41 3/8 strong, 3' 5 3/8\""
                                                        : "1042, 104.2 cm, 1.042 m")});
  for (const ReadingGroup& group :
       readings_in_walking_order(job.scene.survey, job.style.rounding)) {
    SheetTable table{group.name, {"What", "Where", "Read", "Again"}, {}};
    for (const ReadingRow& row : group.rows)
      table.rows.push_back({row.what, row.where, row.read.empty() ? kBlank : row.read, kBlank});
    section.blocks.push_back(std::move(table));
  }
  return section;
}

}  // namespace

Sheet measuring_sheet(const SheetJob& job, bool known) {
  const std::string& title = job.scene.survey.title;
  Sheet sheet{"measuring",
              (title.empty() ? "Measuring" : "Measuring: " + title) + in_units(job.style.rounding),
              {}};
  sheet.sections.push_back(next_section(job));
  if (known) sheet.sections.push_back(room_section(job));
  sheet.sections.push_back(readings_section(job));
  for (int wall = 0; known && wall < static_cast<int>(job.scene.room.walls.size()); ++wall)
    sheet.sections.push_back(wall_section(job, wall));
  sheet.sections.push_back(caution_section(job));
  return sheet;
}

}  // namespace nook
