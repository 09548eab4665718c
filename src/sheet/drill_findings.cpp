// Findings of the drilling map: unreachable pieces, screws that carry too much, holes that may
// miss.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "fasten/said.h"
#include "sheet/alike.h"
#include "sheet/drill_text.h"

namespace nook {
namespace {

// Within one verdict: what cannot be screwed at all stands before what is weak, before doubts.
constexpr double kUnreachable = 1e6, kWeak = 1e5, kMissing = 1e4, kNoFigure = 1e3;

Finding missing(const Untold& untold) {
  return {Verdict::cannot_tell, kMissing, "holes", untold.what, untold.advice};
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

// Holes of one piece, and how surely the least sure of them holds.
struct Doubts {
  std::vector<std::string> numbers;
  double least = 1;

  void add(const Hole& h) {
    numbers.push_back(h.id.substr(h.id.rfind(' ') + 1));
    least = std::min(least, h.hit_chance);
  }
  std::string holes() const {
    return fmt::format("hole{} {}", plural(numbers.size()), fmt::join(numbers, ", "));
  }
};

// The holes of one piece that want a probe, in one finding, and those that no probe makes surer.
void add_doubts(std::vector<Finding>& findings, const std::string& place,
                const std::vector<Hole>& holes) {
  std::vector<std::string> told;
  for (const Hole& first : holes) {
    if (std::find(told.begin(), told.end(), first.part) != told.end()) continue;
    told.push_back(first.part);
    Doubts missed, thick;
    for (const Hole& h : holes)
      if (h.part == first.part && !h.sure) (h.proved ? thick : missed).add(h);
    const std::string where = fmt::format("{} at the {}", first.part, place);
    if (!missed.numbers.empty())
      findings.push_back({Verdict::cannot_tell, 1 - missed.least, where,
                          missed.holes() + " may miss",
                          "probe first, both edges of the stud, by nail, behind the piece"});
    if (!thick.numbers.empty())
      findings.push_back(
          {Verdict::cannot_tell, 1 - thick.least, where,
           thick.holes() + " may come near the edge of the stud: the screw is thick for it",
           "use a thinner screw, or mark the middle between the two edges found by nail"});
  }
}

void add_joint_doubts(std::vector<Finding>& findings, const JointDrill& joint) {
  const auto doubtful = [](const Hole& h) { return !h.sure; };
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
    findings.push_back({Verdict::does_not_fit, kUnreachable, u.part, u.reason, u.advice});
  for (const Untold& m : answer.missing) findings.push_back(missing(m));
  for (const Strength& s : answer.strength)
    if (judged(s, answer)) findings.push_back(of_strength(s, say));
  for (const WallDrill& wall : answer.walls) add_doubts(findings, wall.name + " wall", wall.holes);
  for (const JointDrill& joint : answer.parts) add_joint_doubts(findings, joint);
  sort(findings);
  return told_once(findings);
}

std::vector<std::string> bench_warnings(const std::vector<JointDrill>& joints) {
  std::vector<std::pair<std::string, std::vector<const JointDrill*>>> told;
  for (const JointDrill& joint : joints)
    for (const Hole& hole : joint.holes)
      for (const std::string& warning : hole.warnings) {
        const auto known = std::find_if(told.begin(), told.end(),
                                        [&](const auto& t) { return t.first == warning; });
        if (known == told.end())
          told.push_back({warning, {&joint}});
        else if (known->second.back() != &joint)
          known->second.push_back(&joint);
      }
  std::vector<std::string> lines;
  for (const auto& [warning, at] : told) lines.push_back(joints_said(at) + ": " + warning);
  return lines;
}

std::string joints_said(const std::vector<const JointDrill*>& joints) {
  std::vector<std::pair<std::string, std::vector<std::string>>> into;
  for (const JointDrill* joint : joints) {
    const auto known =
        std::find_if(into.begin(), into.end(), [&](const auto& i) { return i.first == joint->to; });
    if (known == into.end())
      into.push_back({joint->to, {joint->part}});
    else
      known->second.push_back(joint->part);
  }
  std::vector<std::pair<std::string, std::vector<std::string>>> by_parts;  // and what they go into
  for (const auto& [to, parts] : into) {
    const std::string all = names_said(parts);
    const auto known = std::find_if(by_parts.begin(), by_parts.end(),
                                    [&](const auto& b) { return b.first == all; });
    if (known == by_parts.end())
      by_parts.push_back({all, {to}});
    else
      known->second.push_back(to);
  }
  std::vector<std::string> said;
  for (const auto& [parts, to] : by_parts) said.push_back(parts + " into " + names_said(to));
  return fmt::format("{}", fmt::join(said, "; "));
}

}  // namespace nook
