// Sections of the installing sheet in the order they are needed.
#include "sheet/installing_sheet.h"

#include <fmt/format.h>

#include <algorithm>

#include "sheet/assembly.h"
#include "sheet/carry_text.h"
#include "sheet/drill_text.h"
#include "sheet/elevation.h"
#include "sheet/fit_words.h"
#include "sheet/lift.h"
#include "sheet/turning.h"
#include "sheet/wall_page.h"

namespace nook {
namespace {

// "left ledger", or "ladder: rung (3), ladder rail (2)".
std::string pieces_words(const SheetJob& job, const InstallStep& step) {
  std::vector<std::pair<std::string, int>> parts;
  for (int piece : step.pieces) {
    const std::string& name = job.scene.pieces[piece].drawn->name;
    if (parts.empty() || parts.back().first != name) parts.emplace_back(name, 0);
    ++parts.back().second;
  }
  std::vector<std::string> words;
  for (const auto& [name, count] : parts)
    words.push_back(count == 1 ? name : fmt::format("{} ({})", name, count));
  return fmt::format("{}", fmt::join(words, ", "));
}

std::string touches_words(const SheetJob& job, const std::string& group) {
  for (const GroupFit& fit : job.fit().groups)
    if (fit.name == group && !fit.touches.empty()) {
      std::vector<std::string> names;
      for (const std::string& name : fit.touches) names.push_back(the(name));
      return fmt::format("Push it home against {}. ", fmt::join(names, ", "));
    }
  return "";
}

std::string step_words(const SheetJob& job, const InstallStep& step) {
  std::string words = pieces_words(job, step) + ". " + touches_words(job, step.name);
  std::string last;
  for (int index : step.pieces) {
    const Piece& piece = job.scene.pieces[index];
    if (piece.drawn->name == last) continue;
    last = piece.drawn->name;
    words += fmt::format("{}: {}. ", last,
                         lift_words(*job.scene.design, piece, job.style.rounding.unit));
  }
  words.pop_back();
  return words;
}

SheetSection order_section(const SheetJob& job, const std::vector<InstallStep>& steps) {
  SheetSection section{"In this order", {}};
  section.blocks.push_back(
      SheetFigure{[&job](const Canvas& canvas) { return assembled(job.scene, canvas); }, 110});
  SheetList list{{}, true};
  for (const InstallStep& step : steps) list.items.push_back(step_words(job, step));
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
                                         75});
  return section;
}

SheetSection joints_section(const SheetJob& job) {
  SheetSection section{"Screws from piece to piece, bored on the bench", {}};
  for (const JointDrill& joint : job.drill().parts) {
    if (joint.holes.empty()) continue;
    const Hole& first = joint.holes.front();
    SheetTable table{
        fmt::format("{} into {}: bit {}, flag it {} from its tip", joint.part, joint.to,
                    bit_for(first.pilot_mm, job.style.rounding), job.said(first.depth_mm)),
        {"Hole", "From its end", "From its edge"},
        {}};
    int number = 0;
    for (const Hole& hole : joint.holes)
      table.rows.push_back({std::to_string(++number),
                            fmt::format("{} from the {}", job.bare(hole.from_end_mm), hole.end),
                            fmt::format("{} from the {}", job.bare(hole.from_edge_mm), hole.edge)});
    section.blocks.push_back(std::move(table));
  }
  return section;
}

SheetSection poles_section(const SheetJob& job) {
  SheetSection section{"Marks to copy onto a stick", {}};
  for (const StoryPole& pole : job.drill().poles) {
    SheetTable table{fmt::format("{}, all from {}", pole.of, pole.start), {"Mark", "What"}, {}};
    for (const StoryPole::Mark& mark : pole.marks)
      table.rows.push_back({job.bare(mark.at_mm), mark.what});
    section.blocks.push_back(std::move(table));
  }
  return section;
}

std::string finding_words(const Finding& f) {
  return fmt::format("{}: {}: {}{}{}", words(f.verdict), f.where, f.what,
                     f.next.empty() ? "" : "; ", f.next);
}

// What is not sure, each with what to do; a line of its own where there is none.
SheetList unsure(const std::vector<Finding>& findings, const std::string& else_said) {
  SheetList list;
  for (const Finding& f : findings)
    if (f.verdict != Verdict::fits) list.items.push_back(finding_words(f));
  if (list.items.empty()) list.items.push_back(else_said);
  return list;
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

SheetSection caution_section(const SheetJob& job) {
  SheetSection section{"Cautions", {}};
  if (job.safety) {
    SheetList list;
    for (const Caution& caution : job.safety->cautions)
      list.items.push_back(fmt::format("{}: {}: {} ({})", words(caution.severity), caution.where,
                                       spoken(caution.text, job.style.rounding), caution.source));
    if (!list.items.empty()) section.blocks.push_back(std::move(list));
  }
  section.blocks.push_back(SheetWords{std::string(kWhoDecides), true});
  return section;
}

Sheet installing_sheet(const SheetJob& job) {
  Sheet sheet{"installing", "Installing: " + job.title, {}};
  const std::vector<InstallStep> steps = steps_of(job.scene);
  sheet.sections.push_back(order_section(job, steps));
  for (int wall = 0; wall < static_cast<int>(job.scene.room.walls.size()); ++wall)
    if (auto page = wall_page(job, wall)) sheet.sections.push_back(std::move(*page));
  for (SheetSection& section :
       std::vector{steps_section(job, steps.size()), walls_section(job), joints_section(job),
                   poles_section(job), way_section(job), open_section(job)})
    if (!section.blocks.empty()) sheet.sections.push_back(std::move(section));
  sheet.sections.push_back(caution_section(job));
  return sheet;
}

}  // namespace nook
