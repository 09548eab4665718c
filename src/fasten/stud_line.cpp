// Looks gathered into studs, and places of the pattern where none was looked for.
#include "fasten/stud_line.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

#include "survey/worth.h"

namespace nook {
namespace {

// Chosen: a stud stands within 3 mm per metre of the corner's line (DIN 18202 table 3 and NHBC 2020
// 9.1.3 let finished walls stray as much).
constexpr double kStudLean = 3e-3;
// Looks nearer to each other than this share of a stud's width are at the same stud. Chosen
constexpr double kSameStud = .6;

// A stud found beside the even spacing, this share of a bay from a place of it, stands for that
// place. Chosen.
constexpr double kBesidePlace = 1.0 / 3;

// Studs are inferred from a pattern that is likelier than not. Chosen
constexpr double kLikely = .5;

struct Look {
  StudLook sight;
  double middle;  // of the stud as this look has it
  double tape_sd;
  std::string id;
  std::size_t entry;  // index into Studs::found
};

double tape_share(const Survey& survey, const Reading& reading) {
  if (reading.sd) return 0;
  return permitted_error(survey.tape.accuracy, reading.value.mm) / std::numbers::sqrt3;
}

class LookGatherer {
 public:
  LookGatherer(const Survey& survey, const WallFrame& frame, const Studs& studs)
      : survey_(survey), frame_(frame), studs_(studs) {}

  std::vector<Look> all() {
    for (std::size_t i = 0; i < studs_.found.size(); ++i) {
      const StudFound& f = studs_.found[i];
      add(i, f.left_edge, -1);
      add(i, f.right_edge, 1);
      add(i, f.centre, 0);
    }
    return std::move(looks_);
  }

 private:
  void add(std::size_t entry, const Readings& readings, int side) {
    const StudFound& f = studs_.found[entry];
    const Height height = f.height.value_or(Height{millimetres(kUsualHeight), false, {}});
    for (const Reading& r : readings) {
      if (r.struck) continue;
      const auto z = frame_.z(height, frame_.base(r.value.mm, kUsualHeight, f.from_right));
      if (!z) continue;
      const double base = frame_.base(r.value.mm, *z, f.from_right);
      const int toward = f.from_right ? -side : side;
      std::optional<double> sd;
      if (r.sd) sd = r.sd->mm;
      looks_.push_back({{base, *z, toward, f.by, sd},
                        base - toward * middle_offset(f),
                        tape_share(survey_, r),
                        r.id,
                        entry});
    }
  }
  // The first reading that is not struck; null where none is.
  static const Reading* counted(const Readings& readings) {
    const auto first =
        std::find_if(readings.begin(), readings.end(), [](const Reading& r) { return !r.struck; });
    return first == readings.end() ? nullptr : &*first;
  }
  // Half of what lies between the two edges as read; half a stud where only one was.
  double middle_offset(const StudFound& f) const {
    const Reading *left = counted(f.left_edge), *right = counted(f.right_edge);
    if (!left || !right) return studs_.width.mm / 2;
    return (right->value - left->value).mm / 2;
  }

  const Survey& survey_;
  const WallFrame& frame_;
  const Studs& studs_;
  std::vector<Look> looks_;
};

// Looks at one stud stand next to each other once sorted by the middle they give.
std::vector<std::vector<Look>> grouped(std::vector<Look> looks, double width) {
  std::stable_sort(looks.begin(), looks.end(),
                   [](const Look& a, const Look& b) { return a.middle < b.middle; });
  std::vector<std::vector<Look>> groups;
  for (Look& look : looks) {
    const bool joins =
        !groups.empty() && look.middle - groups.back().back().middle < kSameStud * width;
    if (!joins) groups.emplace_back();
    groups.back().push_back(std::move(look));
  }
  return groups;
}

StudLine line_of(const std::vector<Look>& group, double width, double lean_sd) {
  std::vector<StudLook> sights;
  bool left = false, right = false, nail_left = false, nail_right = false;
  double low = group.front().sight.z, high = low, sum = 0, tape = 0;
  std::vector<std::string> ids;
  for (const Look& look : group) {
    const StudLook& s = look.sight;
    sights.push_back(s);
    left |= s.side < 0;
    right |= s.side > 0;
    nail_left |= s.side < 0 && s.by == FoundBy::nail;
    nail_right |= s.side > 0 && s.by == FoundBy::nail;
    low = std::min(low, s.z);
    high = std::max(high, s.z);
    sum += s.z;
    tape = std::max(tape, look.tape_sd);
    ids.push_back(look.id);
  }
  constexpr double kTwoHeights = 300;  // mm apart before a lean is worth telling. Chosen
  StudLine line(believe(std::move(sights), width, lean_sd));
  line.found = left && right ? StudReport::Found::edges : StudReport::Found::centre;
  line.by_nail = nail_left && nail_right;
  line.z = sum / static_cast<double>(group.size());
  line.tape_sd = tape;
  line.leans = high - low > kTwoHeights;
  line.ids = std::move(ids);
  return line;
}

// Every ply of every stud found, for the pattern.
std::vector<Measured> plies_of(const std::vector<StudLine>& lines, double z,
                               std::vector<std::size_t>& line_of_ply) {
  std::vector<Measured> plies;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const StudBelief& b = lines[i].belief;
    for (int k = 0; k < b.plies(); ++k) {
      plies.push_back({b.centre(z) + (k - (b.plies() - 1) / 2.0) * b.width(), b.sd(z)});
      line_of_ply.push_back(i);
    }
  }
  return plies;
}

StudLine inferred(const StudPattern& pattern, int n, double z, const Studs& studs) {
  const double sd = pattern.sd(n);
  const StudGuess guess{kUnbroken * pattern.certainty, 1, 0, pattern.centre(n), 0, sd * sd, 0,
                        kStudLean * kStudLean};
  StudLine line(StudBelief(studs.width.mm, z, {guess}));
  line.z = z;
  return line;
}

// Places of the pattern on the wall that no stud found fills or stands for.
void infer(WallStuds& wall, const WallFrame& frame, const Studs& studs, double z) {
  const StudPattern& p = *wall.pattern;
  const double half = studs.width.mm / 2;
  const int first = static_cast<int>(std::ceil((frame.start(z) + half - p.phase) / p.spacing));
  const int last = static_cast<int>(std::floor((frame.end(z) - half - p.phase) / p.spacing));
  const std::size_t found = wall.lines.size();
  for (int n = first; n <= last; ++n) {
    if (std::find(p.number.begin(), p.number.end(), n) != p.number.end()) continue;
    const bool taken = std::any_of(
        wall.lines.begin(), wall.lines.begin() + static_cast<long>(found), [&](const StudLine& s) {
          const double off = std::abs(s.belief.ply(p.centre(n), z) - p.centre(n));
          return off < (s.on_pattern ? studs.width.mm : kBesidePlace * p.spacing);
        });
    if (!taken) wall.lines.push_back(inferred(p, n, z, studs));
  }
}

}  // namespace

WallStuds studs_on(const Survey& survey, const RoomShape& room, int wall, double corner_lean_sd) {
  WallStuds result;
  const auto& studs = survey.walls[wall].studs;
  if (!studs || room.walls.empty()) return result;
  const WallFrame frame(room, wall);
  const double lean_sd = std::hypot(kStudLean, corner_lean_sd);
  const auto groups = grouped(LookGatherer(survey, frame, *studs).all(), studs->width.mm);
  double z = 0;
  for (const auto& group : groups) {
    result.lines.push_back(line_of(group, studs->width.mm, lean_sd));
    z += result.lines.back().z / static_cast<double>(groups.size());
  }
  std::vector<std::size_t> line_of_ply;
  const auto plies = plies_of(result.lines, z, line_of_ply);
  std::optional<double> spacing;
  if (studs->spacing) spacing = studs->spacing->mm;
  result.pattern = pattern_of(plies, spacing);
  if (!result.pattern) return result;
  for (StudLine& line : result.lines) line.on_pattern = false;
  for (std::size_t i = 0; i < plies.size(); ++i)
    if (result.pattern->number[i]) result.lines[line_of_ply[i]].on_pattern = true;
  if (result.pattern->certainty > kLikely) infer(result, frame, *studs, z);
  std::stable_sort(result.lines.begin(), result.lines.end(),
                   [&](const StudLine& a, const StudLine& b) { return a.centre(z) < b.centre(z); });
  return result;
}

double corner_lean_sd(const std::vector<RoomShape>& draws, int wall) {
  constexpr double kLow = 200, kHigh = 1800;  // mm; heights between which pieces hang. Chosen
  if (draws.size() < 2 || draws.front().walls.size() < 2) return 0;
  double sum = 0, squares = 0;
  for (const RoomShape& d : draws) {
    const int corner = wall == 0 ? 0 : wall - 1;
    const double lean =
        (d.corner_along(corner, wall, kHigh) - d.corner_along(corner, wall, kLow)) / (kHigh - kLow);
    sum += lean;
    squares += lean * lean;
  }
  const double n = static_cast<double>(draws.size());
  return std::sqrt(std::max(0.0, (squares - sum * sum / n) / (n - 1)));
}

std::vector<StudReport> reports_of(const WallStuds& studs, const WallFrame& frame) {
  std::vector<StudReport> reports;
  for (const StudLine& line : studs.lines) {
    const StudBelief& b = line.belief;
    for (int k = 0; k < b.plies(); ++k) {
      const double base = b.centre(line.z) + (k - (b.plies() - 1) / 2.0) * b.width();
      reports.push_back({frame.along(base, line.z), std::hypot(b.sd(line.z), line.tape_sd),
                         line.found, line.z - frame.floor_z(base)});
    }
  }
  return reports;
}

}  // namespace nook
