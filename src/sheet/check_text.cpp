// Everything on one page, worst first: the page that `nookfit check` prints.
#include "sheet/check_text.h"

#include <fmt/format.h>

#include <algorithm>

#include "sheet/carry_text.h"
#include "sheet/drill_text.h"
#include "sheet/fit_text.h"
#include "sheet/notch_words.h"
#include "sheet/room_text.h"
#include "sheet/safety_text.h"
#include "sheet/verify_text.h"
#include "sheet/wrap.h"

namespace nook {
namespace {

constexpr std::string_view kCautions =
    "Probe before you drill: cables and pipes follow no rule.\n"
    "Strength and safety: your local code and a licensed person decide.\n";

std::vector<Finding> all_findings(const CheckAnswer& check, const Style& style) {
  std::vector<Finding> all;
  if (check.fit.known) all = missing_findings(check.room);
  for (const auto& more : {fit_findings(check.fit, style), drill_findings(check.drill, style)}) {
    all.insert(all.end(), more.begin(), more.end());
  }
  if (check.verify)
    for (Finding& piece : verify_findings(*check.verify, style)) {
      piece.where += " as cut";
      all.push_back(std::move(piece));
    }
  // What passes the door needs no line here: it has a page of its own.
  for (const auto& more :
       {carry_findings(check.carry, style), safety_findings(check.safety, style)}) {
    std::copy_if(more.begin(), more.end(), std::back_inserter(all),
                 [](const Finding& finding) { return finding.verdict != Verdict::fits; });
  }
  sort(all);
  return all;
}

/// Those that fit by their places only; the others in full.
std::string findings_text(const std::vector<Finding>& all, const Style& style) {
  const auto first_well = std::find_if(all.begin(), all.end(), [](const Finding& finding) {
    return finding.verdict == Verdict::fits;
  });
  std::string text = listed({all.begin(), first_well}, style), well;
  for (auto finding = first_well; finding != all.end(); ++finding) {
    if (finding->told) {
      text += listed({*finding}, style);
      continue;
    }
    well += (well.empty() ? "" : "; ") + finding->where;
  }
  if (!text.empty() && !well.empty()) text += "\n";
  return well.empty() ? text : text + wrapped(well + ".", kPageWidth, "fits          ");
}

std::string cautions_text(const SafetyAnswer& safety, const Style& style) {
  const std::string text = sure_cautions(safety, style);
  return text.empty() ? "" : "\nCautions ('nookfit safety' says what to do, and more):\n" + text;
}

// Without them there is no room to look at.
std::string missing_text(const CheckAnswer& check, const Style& style) {
  if (check.fit.known) return "";
  return "Missing; measure it first, all else waits for it:\n\n" +
         listed(missing_findings(check.room), style) + "\n";
}

// First of all: whatever follows rests on them.
std::string suspects_text(const RoomReport& room, const Style& style) {
  const std::string text = listed(suspect_findings(room), style);
  return text.empty()
             ? ""
             : "Readings that disagree; take them again first, all else rests on them:\n\n" + text +
                   "\n";
}

std::string notches_text(const FitAnswer& fit, const Style& style) {
  std::string text;
  for (const NotchFit& notch : fit.notches) {
    if (notch.polygon.empty()) continue;
    std::string line = notch_words(notch, style) + finish_words(fit, notch, style);
    if (notch.follows_profile) line += ", following its profile";
    for (const std::string& warning : notch.warnings) line += "; " + warning;
    text += wrapped(line, kPageWidth, "  ");
  }
  return text.empty() ? "" : "\nNotches to cut ('nookfit fit' says how):\n" + text;
}

std::string holes_line(const WallDrill& wall, const std::string& part) {
  int count = 0, probe = 0;
  for (const Hole& hole : wall.holes) {
    if (hole.part != part) continue;
    ++count;
    probe += hole.probe_first;
  }
  const std::string first = probe ? fmt::format(", {} to probe first", probe) : "";
  return wrapped(fmt::format("{} to the {} wall: {} {}{}", part, wall.name, count,
                             count == 1 ? "hole" : "holes", first),
                 kPageWidth, "  ");
}

std::string holes_text(const DrillAnswer& drill) {
  std::string text;
  for (const WallDrill& wall : drill.walls) {
    std::vector<std::string> told;
    for (const Hole& hole : wall.holes) {
      if (std::find(told.begin(), told.end(), hole.part) != told.end()) continue;
      told.push_back(hole.part);
      text += holes_line(wall, hole.part);
    }
  }
  for (const std::string& warning : bench_warnings(drill.parts))
    text += wrapped(warning, kPageWidth, "  ");
  return text.empty() ? "" : "\nHoles ('nookfit drill' lists them):\n" + text;
}

std::string proof_text(const Foretold& proof, const Style& style) {
  if (!proof.value) return "";
  const Rounding& rounding = style.rounding;
  const std::string straight = with_unit(millimetres(proof.value->value), rounding);
  return "\n" +
         wrapped(fmt::format("Before cutting, take one more measurement: a straight tape {} "
                             "has to read {}, give or take {}. If it does not, do not cut.",
                             marks_of(proof, rounding), straight,
                             give_or_take(millimetres(kTwoSided95 * proof.tape_sd), rounding)),
                 kPageWidth, "");
}

std::string facts_text(const RoomReport& room) {
  std::string text;
  for (const std::string& fact : room.facts) text += "\n" + wrapped(fact, kPageWidth, "");
  return text;
}

}  // namespace

Verdict check_verdict(const CheckAnswer& check) {
  const Verdict built =
      worse(worse(room_verdict(check.room), check.fit.verdict), check.drill.verdict);
  const Verdict cut = check.verify ? check.verify->verdict : Verdict::fits;
  return worse(worse(built, cut), worse(check.carry.verdict, check.safety.verdict));
}

std::string check_text(const CheckAnswer& check, const Style& style) {
  return fmt::format("{}: {}\n\n", check.title, headline(check_verdict(check), style)) +
         suspects_text(check.room, style) + missing_text(check, style) +
         findings_text(all_findings(check, style), style) + cautions_text(check.safety, style) +
         notches_text(check.fit, style) + holes_text(check.drill) + proof_text(check.proof, style) +
         facts_text(check.room) + "\n" + std::string(kCautions);
}

}  // namespace nook
