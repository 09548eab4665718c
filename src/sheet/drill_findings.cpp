// Findings of the drilling map: unreachable pieces, screws that carry too much, holes that may
// miss.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "fasten/said.h"
#include "sheet/drill_text.h"

namespace nook {
namespace {

// Within one verdict: what cannot be screwed at all stands before what is weak, before doubts.
constexpr double kUnreachable = 1e6, kWeak = 1e5, kMissing = 1e4, kNoFigure = 1e3;

// "reason: what to do" in two.
Finding split(Verdict verdict, double weight, const std::string& where, const std::string& reason) {
  const auto colon = reason.find(": ");
  if (colon == std::string::npos) return {verdict, weight, where, reason, ""};
  return {verdict, weight, where, reason.substr(0, colon), reason.substr(colon + 2)};
}

std::string joint_name(const Strength& s) {
  return fmt::format("{} at the {}", s.part, s.to);
}

std::string joined(const std::vector<std::string>& words) {
  return fmt::format("{}", fmt::join(words, "; "));
}

std::string source_words(const Strength& s) {
  return s.source.empty() ? "" : fmt::format("mode {}, {}", s.mode, s.source);
}

Finding weak(const Strength& s, const Saying& say) {
  return {Verdict::does_not_fit, kWeak + *s.ratio, joint_name(s),
          fmt::format("holds {} of the {} it is to carry ({})", say.load(*s.capacity_n),
                      say.load(*s.load_n), source_words(s)),
          joined(s.advice)};
}

Finding holds(const Strength& s, const Saying& say) {
  return {Verdict::fits, s.ratio.value_or(0), joint_name(s),
          fmt::format("holds {}, is to carry {} ({})", say.load(*s.capacity_n), say.load(*s.load_n),
                      source_words(s)),
          ""};
}

Finding no_figure(const Strength& s) {
  return {Verdict::cannot_tell, kNoFigure, joint_name(s), "what it holds is not known: " + s.mode,
          s.advice.empty()
              ? "use screws and wood that have a figure, or let a licensed person decide"
              : joined(s.advice)};
}

Finding of_strength(const Strength& s, const Saying& say) {
  if (!s.capacity_n) return no_figure(s);
  return s.ratio && *s.ratio > 1 ? weak(s, say) : holds(s, say);
}

// What no screw holds is told as unreachable, what carries no stated load only in the JSON.
bool judged(const Strength& s, const DrillAnswer& answer) {
  if (s.capacity_n) return s.load_n.has_value();
  return std::none_of(answer.unreachable.begin(), answer.unreachable.end(),
                      [&](const Unreachable& u) { return u.part == s.part; });
}

std::string plural(std::size_t count) {
  return count == 1 ? "" : "s";
}

// The holes of one piece that want a probe, in one finding.
void add_doubts(std::vector<Finding>& findings, const std::string& place,
                const std::vector<Hole>& holes) {
  std::vector<std::string> told;
  for (const Hole& first : holes) {
    if (std::find(told.begin(), told.end(), first.part) != told.end()) continue;
    told.push_back(first.part);
    std::vector<std::string> numbers;
    double least = 1;
    for (const Hole& h : holes) {
      if (h.part != first.part || h.hit_chance >= .999) continue;
      numbers.push_back(h.id.substr(h.id.rfind(' ') + 1));
      least = std::min(least, h.hit_chance);
    }
    if (numbers.empty()) continue;
    findings.push_back(
        {Verdict::cannot_tell, 1 - least, fmt::format("{} at the {}", first.part, place),
         fmt::format("hole{} {} may miss", plural(numbers.size()), fmt::join(numbers, ", ")),
         "probe first, both edges of the stud, by nail, behind the piece"});
  }
}

void add_joint_doubts(std::vector<Finding>& findings, const JointDrill& joint) {
  const auto doubtful = [](const Hole& h) { return h.hit_chance < .999; };
  if (std::none_of(joint.holes.begin(), joint.holes.end(), doubtful)) return;
  findings.push_back({Verdict::cannot_tell, 0, fmt::format("{} into {}", joint.part, joint.to),
                      "the wood is thin for the screw: it may break out",
                      "pre-bore through both pieces clamped together, or use a thinner screw"});
}

}  // namespace

std::vector<Finding> drill_findings(const DrillAnswer& answer, const Style& style) {
  const Saying say{style.rounding.unit};
  std::vector<Finding> findings;
  for (const Unreachable& u : answer.unreachable)
    findings.push_back(split(Verdict::does_not_fit, kUnreachable, u.part, u.reason));
  for (const std::string& m : answer.missing)
    findings.push_back(split(Verdict::cannot_tell, kMissing, "holes", m));
  for (const Strength& s : answer.strength)
    if (judged(s, answer)) findings.push_back(of_strength(s, say));
  for (const WallDrill& wall : answer.walls) add_doubts(findings, wall.name + " wall", wall.holes);
  for (const JointDrill& joint : answer.parts) add_joint_doubts(findings, joint);
  sort(findings);
  return findings;
}

}  // namespace nook
