// A room's report as a page of text.
#include "sheet/room_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/measured.h"
#include "sheet/plan.h"
#include "sheet/reading_name.h"
#include "sheet/room_table.h"
#include "sheet/wrap.h"
#include "survey/missing.h"

namespace nook {
namespace {

constexpr int kNextShown = 3;  // readings to take next that a person can keep in mind. Chosen
constexpr std::size_t kUncheckedShown = 4;  // enough to see what they have in common. Chosen

std::string length(double mm, const Style& style) {
  return with_unit(millimetres(mm), style.rounding);
}

std::string give_or_take_mm(double sd, const Style& style) {
  return "give or take " + give_or_take(millimetres(kTwoSided95 * sd), style.rounding);
}

std::string corner_line(const CornerReport& corner, const Style&) {
  const std::string where = fmt::format("The {}/{} corner", corner.walls[0], corner.walls[1]);
  if (!std::isfinite(corner.angle_deg.sd)) return where + ": not known yet.";
  const double give = kTwoSided95 * corner.angle_deg.sd;
  return fmt::format("{} is {:.1f} degrees, give or take {:.1f}: {}.", where,
                     corner.angle_deg.value, std::max(0.1, std::ceil(10 * give - 0.01) / 10),
                     squareness(corner.angle_deg));
}

// How far the wall leans over the height of a level.
std::string lean_words(const WallReport& wall, const Survey& survey, const Style& style) {
  const double high = survey.level.length.mm / 1000;
  if (!lean_known(wall)) return "may lean: nothing says how far";
  const double lean = wall.lean_mm_per_m.value * high, sd = wall.lean_mm_per_m.sd * high;
  const std::string over = length(survey.level.length.mm, style);
  if (std::abs(lean) < style.rounding.step.mm / 2)
    return fmt::format("stands plumb in {}, {}", over, give_or_take_mm(sd, style));
  return fmt::format("leans {} {} in {}, {}", lean > 0 ? "into the room" : "away",
                     length(std::abs(lean), style), over, give_or_take_mm(sd, style));
}

std::string wall_line(const WallReport& wall, const Survey& survey, const Style& style) {
  std::string text = fmt::format("The {} wall", wall.name);
  if (wall.length_mm && std::isfinite(wall.length_mm->sd))
    text += fmt::format(" is {} long, {};", length(wall.length_mm->value, style),
                        give_or_take_mm(wall.length_mm->sd, style));
  text += " " + lean_words(wall, survey, style);
  if (std::abs(wall.hump_mm) >= style.rounding.step.mm)
    text += fmt::format("; {} of {}", wall.hump_mm > 0 ? "hump" : "hollow",
                        length(std::abs(wall.hump_mm), style));
  return text + ".";
}

std::string flatness_line(const RoomReport& report, const Style& style) {
  const char* source = report.flatness_from_file ? "as the file says" : "as the readings have it";
  if (report.flatness_sd_mm == 0) return fmt::format("The walls are taken as flat ({}).", source);
  return fmt::format("Walls usually stray {} from flat over {} ({}).",
                     length(report.flatness_sd_mm, style), length(report.flatness_reach_mm, style),
                     source);
}

// An opening between what is up, as measured: its readings as typed.
std::string opening_line(const Opening& opening, const Style& style) {
  std::vector<std::string> read;
  for (const Reading& reading : opening.is)
    read.push_back(length(reading.value.mm, style) + (reading.struck ? " (struck)" : ""));
  std::string at = length(opening.out.mm, style) + " out";
  if (opening.height) {
    const double up = opening.height->value.mm;
    const char* from = !opening.height->from_line ? "up"
                       : up < 0                   ? "below the line"
                                                  : "above the line";
    at += fmt::format(", {} {}", length(std::abs(up), style), from);
  }
  return fmt::format("Between the {} and the {}, {}: {} as measured.", opening.between[0],
                     opening.between[1], at, fmt::join(read, ", again "));
}

std::string room_lines(const RoomReport& report, const Survey& survey, const Style& style) {
  std::string text;
  for (const CornerReport& corner : report.corners)
    text += wrapped(corner_line(corner, style), kPageWidth, "");
  for (const WallReport& wall : report.walls)
    text += wrapped(wall_line(wall, survey, style), kPageWidth, "");
  if (!report.walls.empty()) text += wrapped(flatness_line(report, style), kPageWidth, "");
  for (const Installed& up : survey.installed)
    for (const Opening& opening : up.openings)
      text += wrapped(opening_line(opening, style), kPageWidth, "");
  return text;
}

bool suspected(const std::string& id, const RoomReport& report) {
  return std::any_of(report.suspects.begin(), report.suspects.end(), [&](const Suspect& s) {
    return std::find(s.ids.begin(), s.ids.end(), id) != s.ids.end();
  });
}

// All of them with --verbose; what is suspected has been checked after all.
std::string unchecked(const RoomReport& report, const Style& style) {
  std::vector<std::string> ids;
  for (const std::string& id : report.uncheckable)
    if (!suspected(id, report)) ids.push_back(id);
  if (ids.empty()) return {};
  const std::size_t most = style.verbose ? ids.size() : kUncheckedShown;
  return "\n" +
         wrapped(fmt::format("Other readings hardly check these; take again what matters: {}{}.",
                             names_of(ids, report, most),
                             ids.size() > most ? " ('nookfit room --verbose' names them)" : ""),
                 kPageWidth, "");
}

std::string next_readings(const RoomReport& report) {
  if (report.measure_next.empty()) return {};
  std::string text = "\nMeasure next:\n";
  int shown = 0;
  for (const NextReading& next : report.measure_next)
    if (shown++ < kNextShown)
      text += wrapped(
          fmt::format("{} (settles {:.0f} % of what is open)", next.reading, 100 * next.gain),
          kPageWidth, "  ");
  return text;
}

// "nothing says ...: take ..." in two.
Finding missing_finding(const Missing& missing) {
  const auto colon = missing.what.find(": ");
  Finding finding{Verdict::cannot_tell, missing.blocks ? 1e6 : 0, "the room", missing.what, ""};
  if (colon == std::string::npos) return finding;
  finding.what = missing.what.substr(0, colon);
  finding.next = missing.what.substr(colon + 2);
  return finding;
}

Finding suspect_finding(const Suspect& suspect, const RoomReport& report) {
  const std::string first = reading_name(suspect.ids.front(), report);
  const bool one = suspect.repeats || suspect.ids.size() == 1;
  const std::string names = one ? first : names_of(suspect.ids, report);
  const std::string again = one ? "take it again" : "take " + first + " again first";
  return {Verdict::cannot_tell, 1e3 + std::min(suspect.odds, 1e5), one ? names : "one of " + names,
          suspect.reason, again + ", or strike what is wrong (struck = true)"};
}

}  // namespace

std::vector<Finding> missing_findings(const RoomReport& report) {
  std::vector<Finding> findings;
  for (const Missing& missing : report.missing) findings.push_back(missing_finding(missing));
  sort(findings);
  return findings;
}

std::vector<Finding> suspect_findings(const RoomReport& report) {
  std::vector<Finding> findings;
  for (const Suspect& suspect : report.suspects)
    findings.push_back(suspect_finding(suspect, report));
  sort(findings);
  return findings;
}

std::vector<Finding> room_findings(const RoomReport& report) {
  std::vector<Finding> findings = missing_findings(report);
  for (Finding& suspect : suspect_findings(report)) findings.push_back(std::move(suspect));
  sort(findings);
  return findings;
}

std::string room_text(const RoomReport& report, const Survey& survey, const Style& style) {
  const std::string title = survey.title.empty() ? "Room" : survey.title;
  std::string text = fmt::format("{}: {}\n", title, headline(room_verdict(report), style));
  if (style.quiet) return text;
  if (const std::string lines = room_lines(report, survey, style); !lines.empty())
    text += "\n" + lines;
  const std::vector<Finding> findings = room_findings(report);
  if (!findings.empty()) text += "\n" + listed(findings, style);
  for (const std::string& fact : report.facts) text += "\n" + wrapped(fact, kPageWidth, "");
  text += unchecked(report, style) + next_readings(report);
  if (style.verbose) text += "\n" + readings_table(report, style);
  return text;
}

}  // namespace nook
