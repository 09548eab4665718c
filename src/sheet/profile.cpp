// Strays worked out from the room and its draws, then drawn side by side.
#include "sheet/profile.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sheet/text_width.h"

namespace nook {
namespace {

constexpr int kStations = 32;
constexpr std::size_t kDrawsUsed = 60;  // they know an sd to a tenth: enough for a band. Chosen

// How far the surface of wall `wall` stands out of the adjusted base line's upright plane.
double out_of(const JobScene& scene, const RoomShape& room, int wall, Vec2 spot) {
  const Vec3 p = room.walls[wall].point(spot.x, spot.y);
  return scene.room.walls[wall].wall_from_room({p.x, p.y}).y;
}

// Out at each spot (base-line distance, z), less the straight line that `straight` takes from it.
template <class Straight>
std::vector<double> strays_of(const JobScene& scene, const RoomShape& room, int wall,
                              const std::vector<Vec2>& spots, Straight straight) {
  std::vector<double> out;
  for (Vec2 spot : spots) out.push_back(out_of(scene, room, wall, spot));
  straight(out);
  return out;
}

template <class Straight>
std::vector<Measured> measured(const JobScene& scene, int wall, const std::vector<Vec2>& spots,
                               Straight straight) {
  const std::vector<double> mean = strays_of(scene, scene.room, wall, spots, straight);
  std::vector<Measured> all;
  for (double value : mean) all.push_back({value, 0});
  if (scene.draws.empty()) return all;
  const std::size_t used = std::min(scene.draws.size(), kDrawsUsed);
  for (std::size_t k = 0; k < used; ++k) {
    const std::vector<double> drawn = strays_of(scene, scene.draws[k], wall, spots, straight);
    for (std::size_t i = 0; i < all.size(); ++i) all[i].sd += std::pow(drawn[i] - mean[i], 2);
  }
  for (Measured& m : all) m.sd = std::sqrt(m.sd / used);
  return all;
}

void less_first(std::vector<double>& out) {
  const double first = out.front();
  for (double& o : out) o -= first;
}

void less_chord(std::vector<double>& out) {
  const double first = out.front(), last = out.back();
  const double n = static_cast<double>(out.size()) - 1;
  for (std::size_t i = 0; i < out.size(); ++i) out[i] -= first + (last - first) * i / n;
}

double widest(const std::vector<Stray>& strays) {
  double most = 0;
  for (const Stray& s : strays)
    most = std::max(most, std::abs(s.out.value) + kTwoSided95 * s.out.sd);
  return most;
}

// One profile in paper mm: `along` runs from the start, `out` shows what is out of true.
struct Axis {
  Vec2 start, along, out;
  double along_scale = 1, out_scale = 1;

  Vec2 operator()(double at, double stray) const {
    return start + along_scale * at * along + out_scale * stray * out;
  }
};

void draw_stray(Draft& draft, const std::vector<Stray>& strays, const Axis& axis) {
  Polygon band;
  std::vector<Vec2> found;
  for (const Stray& s : strays) {
    band.push_back(axis(s.at, s.out.value + kTwoSided95 * s.out.sd));
    found.push_back(axis(s.at, s.out.value));
  }
  for (auto s = strays.rbegin(); s != strays.rend(); ++s)
    band.push_back(axis(s->at, s->out.value - kTwoSided95 * s->out.sd));
  draft.drawing.add("band", Patch{{band, {}}, Paint::shade, LineKind::none}, "give or take");
  draft.drawing.add(
      "true",
      Polyline{{axis(strays.front().at, 0), axis(strays.back().at, 0)}, false, LineKind::dash_dot},
      "true");
  draft.drawing.add("found", Polyline{found, false, LineKind::heavy}, "as found");
}

// One, two or five times a power of ten, so that `most` millimeters of paper are not exceeded.
int round_factor(double largest) {
  int best = 1;
  for (int factor : {1, 2, 5, 10, 20, 50, 100})
    if (factor <= largest) best = factor;
  return best;
}

std::string at_words(const Draft& draft, double mm) {
  const Rounding whole{draft.rounding.unit,
                       draft.rounding.unit == Unit::inch ? inches(1) : millimetres(10)};
  return with_unit(millimetres(mm), whole);
}

// Lines of words down from `at`, no wider than `width`.
void words(Draft& draft, Vec2 at, double width, const std::string& text, bool bold = false) {
  double y = at.y;
  for (const std::string& line : lines_within(text, draft.text(), width, bold)) {
    draft.drawing.add("words", Text{{at.x, y}, line, draft.text(), Align::middle, 0, bold});
    y -= 1.25 * draft.text();
  }
}

class ProfilePage {
 public:
  ProfilePage(const JobScene& scene, int wall, const Canvas& canvas)
      : scene_(scene),
        wall_(wall),
        faced_(scene.room, wall),
        draft_(drafted_at(1, canvas, scene.rounding)) {
    const Vec2 ends = faced_.ends_at(0);
    for (double share : {0.15, 0.5, 0.85}) at_.push_back(ends.x + share * (ends.y - ends.x));
    if (faced_.side() < 0) std::reverse(at_.begin(), at_.end());
    for (double a : at_) up_.push_back(stray_up(scene, wall, a));
    along_ = stray_along(scene, wall, height());
  }

  Drawing drawn() {
    name_it();
    const double width = draft_.canvas.width;
    const double cell = width / 3, tall = 0.8 * cell;
    draw_upright(cell, tall);
    draw_level(width);
    return finished(std::move(draft_));
  }

 private:
  double height() const { return scene_.room.line_z.value_or(1000); }

  void name_it() {
    const std::string& name = scene_.room.walls[wall_].name;
    draft_.drawing.name = "profile-" + name;
    draft_.drawing.title = fmt::format(
        "{} wall: plumb and flat; heavy as found, shaded give or take, "
        "dash-dotted true",
        name);
    std::string text = "Heavy: as found. Shaded: give or take, 19 times in 20. Dash-dotted: true.";
    for (std::size_t i = 0; i < at_.size(); ++i)
      text += fmt::format(" {} from its start: {}.", at_words(draft_, at_[i]),
                          lean_words(up_[i], scene_.rounding));
    draft_.drawing.description = text + " Along it: " + hump_words(along_, scene_.rounding) + ".";
  }

  void draw_upright(double cell, double tall) {
    const double high = up_.front().back().at, scale = tall / high;
    double most = 1;
    for (const auto& strays : up_) most = std::max(most, widest(strays));
    const int factor = round_factor(0.3 * cell / (scale * most));
    for (std::size_t i = 0; i < at_.size(); ++i) {
      const Vec2 foot{cell * (i + 0.5), 0};
      // The wall's inside is to the right, as if it were cut and looked at from its start.
      const Axis axis{foot, {0, 1}, {1, 0}, scale, scale * factor};
      draft_.drawing.add("floor", Polyline{{foot - Vec2{0.4 * cell, 0}, foot + Vec2{0.4 * cell, 0}},
                                           false,
                                           LineKind::normal});
      draw_stray(draft_, up_[i], axis);
      words(draft_, foot - Vec2{0, draft_.text()}, 0.94 * cell,
            at_words(draft_, at_[i]) + " along");
      words(draft_, foot - Vec2{0, 2.3 * draft_.text()}, 0.94 * cell,
            lean_words(up_[i], scene_.rounding));
    }
    words(draft_, {draft_.canvas.width / 2, tall + 1.2 * draft_.text()}, draft_.canvas.width,
          fmt::format("out of plumb, {} times (room on the right)", factor), true);
  }

  void draw_level(double width) {
    const double scale = 0.96 * width / along_.back().at;
    const int factor = round_factor(6 / (scale * std::max(widest(along_), 0.5)));
    const double reach = scale * factor * widest(along_);
    const double title = -7 * draft_.text(), line = title - draft_.text() - reach;
    const double side = faced_.side();
    words(draft_, {width / 2, title}, width,
          fmt::format("out of flat, {} times (room below)", factor), true);
    const Vec2 start{side > 0 ? 0.02 * width : 0.98 * width, line};
    draw_stray(draft_, along_, {start, {side, 0}, {0, -1}, scale, scale * factor});
    const double foot = line - reach - draft_.text();
    words(draft_, {width / 2, foot}, 0.6 * width, hump_words(along_, scene_.rounding));
    words(draft_, {start.x + side * 2.5 * draft_.text(), foot}, 0.2 * width, "corner");
  }

  const JobScene& scene_;
  int wall_;
  FacedWall faced_;
  Draft draft_;
  std::vector<double> at_;
  std::vector<std::vector<Stray>> up_;
  std::vector<Stray> along_;
};

}  // namespace

std::vector<Stray> stray_up(const JobScene& scene, int wall, double a) {
  const FacedWall faced(scene.room, wall);
  const double foot = faced.floor_at(a), head = faced.top_at(a, usual_top(scene));
  std::vector<Vec2> spots;
  for (int i = 0; i <= kStations; ++i) spots.push_back({a, foot + (head - foot) * i / kStations});
  const std::vector<Measured> out = measured(scene, wall, spots, less_first);
  std::vector<Stray> strays;
  for (std::size_t i = 0; i < out.size(); ++i) strays.push_back({spots[i].y - foot, out[i]});
  return strays;
}

std::vector<Stray> stray_along(const JobScene& scene, int wall, double z) {
  const Vec2 ends = FacedWall(scene.room, wall).ends_at(z);
  std::vector<Vec2> spots;
  for (int i = 0; i <= kStations; ++i)
    spots.push_back({ends.x + (ends.y - ends.x) * i / kStations, z});
  const std::vector<Measured> out = measured(scene, wall, spots, less_chord);
  std::vector<Stray> strays;
  for (std::size_t i = 0; i < out.size(); ++i) strays.push_back({spots[i].x - ends.x, out[i]});
  return strays;
}

std::string lean_words(const std::vector<Stray>& up, const Rounding& rounding) {
  // The straight line of least squares through the strays says the lean.
  double n = 0, sx = 0, sy = 0, sxx = 0, sxy = 0;
  for (const Stray& s : up)
    n += 1, sx += s.at, sy += s.out.value, sxx += s.at * s.at, sxy += s.at * s.out.value;
  const double rise = up.back().at - up.front().at;
  const double by = rise * (n * sxy - sx * sy) / (n * sxx - sx * sx);
  if (std::abs(by) < rounding.step.mm / 2) return "plumb";
  const Rounding whole{rounding.unit, rounding.unit == Unit::inch ? inches(1) : millimetres(10)};
  return fmt::format("leans {} {} in {}", by > 0 ? "in" : "away",
                     with_unit(millimetres(std::abs(by)), rounding),
                     with_unit(millimetres(rise), whole));
}

std::string hump_words(const std::vector<Stray>& along, const Rounding& rounding) {
  const auto less = [](const Stray& a, const Stray& b) { return a.out.value < b.out.value; };
  const Stray hump = *std::max_element(along.begin(), along.end(), less);
  const Stray hollow = *std::min_element(along.begin(), along.end(), less);
  const Rounding whole{rounding.unit, rounding.unit == Unit::inch ? inches(1) : millimetres(10)};
  const auto said = [&](const char* word, const Stray& s) {
    return fmt::format("{} {} at {}", word, with_unit(millimetres(std::abs(s.out.value)), rounding),
                       with_unit(millimetres(s.at), whole));
  };
  std::string text;
  if (hump.out.value >= rounding.step.mm / 2) text = said("proud", hump);
  if (-hollow.out.value >= rounding.step.mm / 2)
    text += (text.empty() ? "" : ", ") + said("hollow", hollow);
  return text.empty() ? "flat" : text;
}

Drawing profile(const JobScene& scene, int wall, const Canvas& canvas) {
  return ProfilePage(scene, wall, canvas).drawn();
}

}  // namespace nook
