// Sections of the installing sheet in the order they are needed.
#include "sheet/installing_sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "sheet/alike.h"
#include "sheet/assembly.h"
#include "sheet/carry_text.h"
#include "sheet/closing_sections.h"
#include "sheet/drill_text.h"
#include "sheet/elevation.h"
#include "sheet/fit_words.h"
#include "sheet/lift.h"
#include "sheet/piece_view.h"
#include "sheet/turning.h"
#include "sheet/wall_page.h"

namespace nook {
namespace {

constexpr double kRule = 300;  // mm: what a rule reaches needs no stick. Chosen

// "left cleat 2" where it goes in by itself, else "rung (3), ladder rail (2)".
std::string pieces_words(const SheetJob& job, const InstallStep& step) {
  std::vector<std::pair<const Piece*, int>> parts;  // the first of them, and how many
  for (int index : step.pieces) {
    const Piece& piece = job.scene.pieces[index];
    if (parts.empty() || parts.back().first->drawn != piece.drawn) parts.emplace_back(&piece, 0);
    ++parts.back().second;
  }
  std::vector<std::string> words;
  for (const auto& [piece, count] : parts)
    words.push_back(count == 1 ? piece->name : fmt::format("{} ({})", piece->drawn->name, count));
  return fmt::format("{}", fmt::join(words, ", "));
}

// Whether a name is a surface of the room or a piece of an earlier step.
bool stands_before(const SheetJob& job, const std::vector<InstallStep>& steps, std::size_t step,
                   const std::string& name) {
  if (name == "floor" || name == "ceiling" || !wall_named(name).empty()) return true;
  for (std::size_t s = 0; s < step; ++s)
    for (int piece : steps[s].pieces)
      if (job.scene.pieces[piece].name == name) return true;
  return false;
}

std::string touches_words(const SheetJob& job, const std::vector<InstallStep>& steps,
                          std::size_t step) {
  for (const GroupFit& fit : job.fit().groups) {
    if (fit.name != steps[step].name) continue;
    std::vector<std::string> names;
    for (const std::string& name : fit.touches)
      if (stands_before(job, steps, step, name)) names.push_back(the(name));
    if (!names.empty()) return fmt::format("Push it home against {}. ", fmt::join(names, ", "));
  }
  return "";
}

std::string step_words(const SheetJob& job, const std::vector<InstallStep>& steps,
                       std::size_t step) {
  std::string words = pieces_words(job, steps[step]) + ". " + touches_words(job, steps, step);
  std::vector<std::string> lifts;
  std::string last;
  for (int index : steps[step].pieces) {
    const Piece& piece = job.scene.pieces[index];
    if (piece.drawn->name == last) continue;
    last = piece.drawn->name;
    lifts.push_back(lift_words(*job.scene.design, piece, job.style.rounding.unit));
    if (steps[step].pieces.size() > 1) lifts.back() = last + " " + lifts.back();
  }
  return words + fmt::format("{}.", fmt::join(lifts, "; "));
}

SheetSection order_section(const SheetJob& job, const std::vector<InstallStep>& steps) {
  SheetSection section{"In this order", {}};
  section.blocks.push_back(
      SheetFigure{[&job](const Canvas& canvas) { return assembled(job.scene, canvas); }, 110});
  SheetList list{{}, true};
  for (std::size_t step = 0; step < steps.size(); ++step)
    list.items.push_back(step_words(job, steps, step));
  section.blocks.push_back(std::move(list));
  return section;
}

SheetSection steps_section(const SheetJob& job, std::size_t steps) {
  SheetSection section{"Step by step", {}};
  for (std::size_t step = 1; step <= steps; ++step)
    section.blocks.push_back(SheetFigure{[&job, step](const Canvas& canvas) {
                                           return assembly(job.scene, static_cast<int>(step),
                                                           canvas);
                                         },
                                         75, 3});
  return section;
}

// All screws of one piece that take the same bit, lettered as on the cutting sheet.
struct BenchWork {
  std::string part;
  SheetTable table;
  std::vector<std::string> alike{};  // pieces with the same table
};

SheetTable& table_for(std::vector<BenchWork>& all, const std::string& part,
                      const std::string& caption) {
  for (BenchWork& work : all)
    if (work.part == part && work.table.caption == caption) return work.table;
  all.push_back({part, {caption, {"Hole", "Into", "From its end", "From its edge"}, {}}});
  return all.back().table;
}

// Equal tables once, with the names of all their pieces.
std::vector<SheetTable> tables_once(const std::vector<BenchWork>& all) {
  std::vector<BenchWork> told;
  for (const BenchWork& work : all) {
    const auto same = std::find_if(told.begin(), told.end(), [&](const BenchWork& other) {
      return other.table.caption == work.table.caption && other.table.rows == work.table.rows;
    });
    if (same == told.end()) {
      told.push_back(work);
      told.back().alike = {work.part};
    } else {
      same->alike.push_back(work.part);
    }
  }
  std::vector<SheetTable> tables;
  for (BenchWork& work : told) {
    tables.push_back(std::move(work.table));
    tables.back().caption = names_said(work.alike) + ": " + tables.back().caption;
  }
  return tables;
}

bool is_stick(const SheetJob& job, const std::string& name) {
  const auto& pieces = job.fit().pieces;
  return std::any_of(pieces.begin(), pieces.end(),
                     [&](const Piece& piece) { return piece.name == name && piece.stick; });
}

SheetSection joints_section(const SheetJob& job) {
  std::vector<BenchWork> all;
  std::map<std::string, std::size_t> lettered;
  for (const JointDrill& joint : job.drill().parts)
    for (const Hole& drilled : joint.holes) {
      const Hole hole = is_stick(job, joint.part) ? in_a_stick(drilled) : drilled;
      table_for(all, joint.part,
                fmt::format("bit {}, flag it {} from its tip",
                            bit_for(hole.pilot_mm, job.style.rounding), job.said(hole.depth_mm)))
          .rows.push_back({letter_of(lettered[joint.part]++), joint.to,
                           fmt::format("{} from the {}", job.bare(hole.from_end_mm), hole.end),
                           fmt::format("{} from the {}", job.bare(hole.from_edge_mm), hole.edge)});
    }
  SheetSection section{"Screws from piece to piece, bored on the bench", {}};
  for (SheetTable& table : tables_once(all)) section.blocks.push_back(std::move(table));
  if (SheetList list{bench_warnings(job.drill().parts)}; !list.items.empty())
    section.blocks.push_back(std::move(list));
  return section;
}

SheetSection poles_section(const SheetJob& job) {
  SheetSection section{"Marks to copy onto a stick", {}};
  for (const StoryPole& pole : job.drill().poles) {
    const bool needs_stick =
        std::any_of(pole.marks.begin(), pole.marks.end(),
                    [](const StoryPole::Mark& m) { return std::abs(m.at_mm) > kRule; });
    if (!needs_stick) continue;
    SheetTable table{fmt::format("{}, all from {}", pole.of, pole.start), {"Mark", "What"}, {}};
    for (const StoryPole::Mark& mark : pole.marks)
      table.rows.push_back({mark_at(mark, job.style.rounding), mark.what});
    section.blocks.push_back(std::move(table));
  }
  return section;
}

SheetSection way_section(const SheetJob& job) {
  SheetSection section{"The way in", {}};
  if (!job.carry) return section;
  section.blocks.push_back(unsure(carry_findings(*job.carry, job.style),
                                  "Every piece passes doors, turns and ceiling."));
  for (const WayPicture& picture : tight_passes(job.scene, *job.carry))
    section.blocks.push_back(SheetFigure{picture.draw, 90});
  return section;
}

SheetSection open_section(const SheetJob& job) {
  return {"What does not hold yet, or may miss",
          {unsure(drill_findings(job.drill(), job.style),
                  "Every hole is sure and every piece holds.")}};
}

SheetSection walls_section(const SheetJob& job) {
  SheetSection section{"The walls whole", {}};
  for (int wall = 0; wall < static_cast<int>(job.scene.room.walls.size()); ++wall)
    section.blocks.push_back(SheetFigure{
        [&job, wall](const Canvas& canvas) { return elevation(job.scene, wall, canvas); }, 105});
  return section;
}

}  // namespace

Sheet installing_sheet(const SheetJob& job) {
  Sheet sheet{"installing", "Installing: " + job.title + in_units(job.style.rounding), {}};
  const std::vector<InstallStep> steps = steps_of(job.scene);
  sheet.sections.push_back(order_section(job, steps));
  for (int wall = 0; wall < static_cast<int>(job.scene.room.walls.size()); ++wall)
    if (auto page = wall_page(job, wall)) sheet.sections.push_back(std::move(*page));
  for (SheetSection& section :
       std::vector{steps_section(job, steps.size()), walls_section(job), joints_section(job),
                   poles_section(job), way_section(job), open_section(job)})
    if (!section.blocks.empty()) sheet.sections.push_back(std::move(section));
  sheet.sections.push_back(fit_section(job));
  sheet.sections.push_back(caution_section(job));
  return sheet;
}

}  // namespace nook
