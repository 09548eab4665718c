// Oddities of studs, and which of them a nail should settle.
#include "fasten/stud_notes.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace nook {
namespace {

std::string place_of(const StudLine& s, const WallFrame& frame, const Saying& say) {
  return fmt::format("the stud {} from the corner", say.length(frame.along(s.centre(s.z), s.z)));
}

// Out of plumb over the height that a 4 ft level spans.
std::string leaning(const StudLine& s, const std::string& place, const Saying& say) {
  constexpr double kSpan = 1219.2;
  constexpr double kTold = 3;  // mm, 1/8 in. Chosen
  const double off = s.belief.lean() * kSpan;
  if (!s.leans || std::abs(off) < kTold) return {};
  return fmt::format("{} leans {} {} the corner in {} going up", place, say.length(std::abs(off)),
                     off > 0 ? "away from" : "toward", say.length(kSpan));
}

// Odds that one of two edges is a slip, by the densities of `off` either way; the errors as normal.
double slip_odds(double off, double sd) {
  constexpr double kMost = 1e9;
  const double slip = std::hypot(sd, kSlipSd);
  const double as_slip = 2 * kSlipShare / slip * std::exp(-off * off / (2 * slip * slip));
  const double as_error = (1 - 2 * kSlipShare) / sd * std::exp(-off * off / (2 * sd * sd));
  return std::min(kMost, as_slip / std::max(as_error, 1e-300));
}

struct Doubt {
  const WallDrill* wall;
  int stud;
  double height, doubt;
};

void add_doubt(std::vector<Doubt>& doubts, const WallDrill& wall, const Hole& h) {
  if (!h.stud || !h.probe_first) return;
  for (Doubt& d : doubts)
    if (d.wall == &wall && d.stud == *h.stud) {
      d.doubt += 1 - h.hit_chance;
      return;
    }
  doubts.push_back({&wall, *h.stud, h.height_mm, 1 - h.hit_chance});
}

// Two edges of one stud as read.
struct EdgePair {
  const Reading& left;
  const Reading& right;
  FoundBy by;
  double width;

  double apart() const { return right.value.mm - left.value.mm; }
  // Beside the nearest whole number of studs: a doubled stud agrees too.
  double off() const { return apart() - std::clamp(std::round(apart() / width), 1.0, 3.0) * width; }
  double sd() const {
    const double usual = sight_sd(by, true);
    return std::hypot(left.sd ? left.sd->mm : usual, right.sd ? right.sd->mm : usual);
  }
  bool disagree() const { return std::abs(off()) > 3 * sd(); }

  Suspect suspect(const Saying& say) const {
    return {{left.id, right.id},
            fmt::format("the edges are {} apart, a stud is taken as {} wide: probe both again, or "
                        "state the `width` of the studs",
                        say.length(apart()), say.length(width)),
            right.value.mm - width,
            slip_odds(off(), sd())};
  }
};

}  // namespace

std::vector<std::string> stud_notes(const WallContext& context, const Survey& survey, int wall,
                                    const Saying& say) {
  std::vector<std::string> notes;
  constexpr double kEven = .9;  // certainty from which a wall has an even spacing. Chosen
  const bool even = context.studs.pattern && context.studs.pattern->certainty > kEven;
  for (const StudLine& s : context.studs.lines) {
    if (s.found == StudReport::Found::inferred) continue;
    const std::string place = place_of(s, context.frame, say);
    if (s.belief.plies() > 1)
      notes.push_back(
          fmt::format("{} is {}", place, s.belief.plies() == 2 ? "doubled" : "tripled"));
    if (!s.on_pattern && even) notes.push_back(place + " stands outside the even spacing");
    if (auto note = leaning(s, place, say); !note.empty()) notes.push_back(std::move(note));
  }
  for (const std::string& box : boxes_without_stud(survey, context.room, wall, context.studs))
    notes.push_back(fmt::format(
        "the {} hangs on no stud found: look for one beside it, or its cable follows no rule",
        box));
  return notes;
}

std::vector<NextReading> probes_for(const std::vector<WallDrill>& walls, const Saying& say) {
  std::vector<Doubt> doubts;
  double total = 0;
  for (const WallDrill& wall : walls)
    for (const Hole& h : wall.holes) add_doubt(doubts, wall, h);
  for (const Doubt& d : doubts) total += d.doubt;
  std::stable_sort(doubts.begin(), doubts.end(),
                   [](const Doubt& a, const Doubt& b) { return a.doubt > b.doubt; });
  std::vector<NextReading> probes;
  for (const Doubt& d : doubts)
    probes.push_back(
        {fmt::format(
             "{} wall: both edges of the stud {} from the corner, by nail, {} up, where the "
             "piece hides the holes",
             d.wall->name, say.length(d.wall->studs[d.stud].centre_mm), say.length(d.height)),
         d.doubt / total});
  return probes;
}

std::vector<Suspect> stud_suspects(const Survey& survey) {
  std::vector<Suspect> suspects;
  for (const Wall& wall : survey.walls) {
    if (!wall.studs) continue;
    for (const StudFound& f : wall.studs->found)
      for (const Reading& left : f.left_edge)
        for (const Reading& right : f.right_edge) {
          if (left.struck || right.struck) continue;
          const EdgePair pair{left, right, f.by, wall.studs->width.mm};
          if (pair.disagree()) suspects.push_back(pair.suspect(Saying(survey)));
        }
  }
  return suspects;
}

}  // namespace nook
