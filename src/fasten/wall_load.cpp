// Loads shared by the stiff ledger, stud by stud; a pull pries.
#include "fasten/wall_load.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "fasten/load_share.h"
#include "fasten/prying.h"
#include "fasten/remedy.h"

namespace nook {
namespace {

// The screws of one stud stand at its mean; blocking screws each for themselves.
std::vector<Vec2> stations_of(const WallScrews& screws) {
  std::vector<Vec2> at;
  for (std::size_t i = 0; i < screws.holes.size(); ++i) {
    double sum = 0, count = 0;
    for (std::size_t j = 0; j < screws.holes.size(); ++j)
      if (j == i || (screws.holes[i].stud && screws.holes[j].stud == screws.holes[i].stud)) {
        sum += screws.seats[j].at.x;
        ++count;
      }
    at.push_back({sum / count, screws.seats[i].at.y});
  }
  return at;
}

// Where load and pull stand on the wall: the piece's middle where `at` does not say.
Vec2 load_place(const Hanging& h) {
  Vec2 uv = h.ruler.at(h.ruler.length() / 2, h.ruler.height() / 2);
  if (h.fastening.load_at) uv.x = h.fastening.load_at->mm;
  return h.face.wall_from_face(uv);
}

PullAway pull_on(const Hanging& h) {
  PullAway pull{h.fastening.pull_n.value_or(0), load_place(h), {}};
  for (Vec2 uv : h.piece.drawn->outline) pull.bearing.push_back(h.face.wall_from_face(uv));
  return pull;
}

// Sum of the shares on each stud, by its place, in order along the wall.
std::vector<std::pair<double, double>> by_stud(const std::vector<Vec2>& at,
                                               const std::vector<ScrewLoad>& loads) {
  std::map<double, double> sums;
  for (std::size_t i = 0; i < at.size(); ++i) sums[at[i].x] += loads[i].down;
  return {sums.begin(), sums.end()};
}

std::string listed(const std::vector<std::pair<double, double>>& studs, const Saying& say) {
  std::string text;
  for (std::size_t i = 0; i < studs.size(); ++i)
    text += (i == 0 ? "" : i + 1 == studs.size() ? " and " : ", ") + say.load(studs[i].second);
  return text;
}

class WallLoad {
 public:
  WallLoad(const Hanging& h, const WallContext& c, WallScrews& screws)
      : h_(h), context_(c), screws_(screws), say_(h.say) {}

  Strength rated() {
    Loaded l{h_.fastening, h_.piece.name, h_.fastening.to, h_.fastening.load_n,
             h_.fastening.pull_n};
    l.no_figure = screws_.no_figure;
    l.no_figure_advice = screws_.no_figure_advice;
    set_woods(l);
    std::vector<std::pair<double, double>> studs;
    if (!screws_.holes.empty()) studs = load_screws(l);
    Strength out = strength_of(l, say_);
    note_woods(out);
    out.advice.insert(out.advice.end(), screws_.left_out.begin(), screws_.left_out.end());
    if (studs.size() > 1) note_lever(out, studs);
    if (bears_at_) note_prying(out);
    if (std::any_of(screws_.holes.begin(), screws_.holes.end(),
                    [](const Hole& h) { return h.probe_first; }))
      out.notes.push_back("counts the probe-first screws as holding");
    return out;
  }

 private:
  const Stock& stock() const { return h_.design.stock[h_.piece.drawn->stock]; }

  void set_woods(Loaded& l) const {
    if (context_.wall.studs) l.main_gravity = context_.wall.studs->gravity.value_or(kUsualGravity);
    l.side_gravity = stock().gravity.value_or(kUsualGravity);
    l.side_length = h_.piece.thickness - h_.fastening.screw.head_below.mm;
    // A load down runs along the grain of a stud, across that of blocking and of a level piece.
    l.main_angle = screws_.in_blocking ? 90 : 0;
    l.side_angle = stock().kind == StockKind::lumber && !h_.face.level() ? 0 : 90;
  }

  std::vector<std::pair<double, double>> load_screws(Loaded& l) {
    const auto at = stations_of(screws_);
    std::vector<ScrewLoad> down(at.size());
    if (l.load) down = shares(at, *l.load, load_place(h_).x);
    if (down.empty()) {
      l.no_figure = "one screw and a load beside it: the piece turns about it";
      l.no_figure_advice =
          "give it two: at a second stud or blocking, or one above the other in a wider piece";
      return {};
    }
    const Pried out = pried(at, pull_on(h_));
    bears_at_ = out.bears_at;
    if (out.newtons.empty()) {
      l.no_figure = kNoHold;
      return {};
    }
    for (std::size_t i = 0; i < at.size(); ++i) {
      const Seated& s = screws_.seats[i];
      screws_.holes[i].load_n = down[i].down;
      l.screws.push_back({screws_.holes[i].id, s.gap, s.embedment,
                          std::hypot(down[i].down, down[i].level), out.newtons[i]});
    }
    return by_stud(at, down);
  }

  void note_woods(Strength& out) const {
    if (out.source.empty() || h_.fastening.screw.kind == ScrewKind::structural) return;
    if (!context_.wall.studs->gravity)
      out.notes.push_back(
          fmt::format("studs taken as spruce-pine-fir, G {:.2f}: nothing says", kUsualGravity));
    if (!stock().gravity)
      out.notes.push_back(
          fmt::format("{} taken as G {:.2f}: nothing says", stock().name, kUsualGravity));
    out.notes.push_back("heads pulling through the piece are not checked");
  }

  // Prying is reckoned with the piece lying on the wall there; on a shim at the screw alone the
  // screw would carry more.
  void note_prying(Strength& out) const {
    const double below = h_.ruler.from_edge(h_.face.face_from_wall(*bears_at_));
    out.notes.push_back(fmt::format(
        "the pull on {} pries: it bears on the wall {} from the corner, {} from its {} edge (pack "
        "it there)",
        h_.piece.name, say_.length(h_.face.wall().along(bears_at_->x, bears_at_->y)),
        say_.length(below), h_.ruler.edge()));
  }

  void note_lever(Strength& out, const std::vector<std::pair<double, double>>& studs) {
    const double x = load_place(h_).x;
    for (const auto& s : studs) out.lift_n = std::max(out.lift_n, -s.second);
    const bool after = x > studs.back().first, before = x < studs.front().first;
    if (!h_.fastening.load_n || (!after && !before)) return;
    const double past = after ? x - studs.back().first : studs.front().first - x;
    std::string note =
        fmt::format("the load stands {} past the last stud and levers: the studs carry {}",
                    say_.length(past), listed(studs, say_));
    if (const StudLine* next = next_stud(studs, after)) note += reaching(*next, after);
    out.advice.push_back(note);
  }

  const StudLine* next_stud(const std::vector<std::pair<double, double>>& studs, bool after) const {
    const double z = screws_.seats.front().at.y;
    const StudLine* next = nullptr;
    for (const StudLine& s : context_.studs.lines) {
      const double c = s.centre(z);
      if (after && c > studs.back().first + s.belief.width() && !next) next = &s;
      if (!after && c < studs.front().first - s.belief.width()) next = &s;
    }
    return next;
  }

  // What the studs would carry with as many screws in one more, and what keeps them from it.
  std::string reaching(const StudLine& next, bool after) const {
    auto at = stations_of(screws_);
    const double z = screws_.seats.front().at.y, c = next.centre(z);
    const double last = after ? std::max_element(at.begin(), at.end(), less_x)->x
                              : std::min_element(at.begin(), at.end(), less_x)->x;
    const auto count = std::count_if(at.begin(), at.end(), [&](Vec2 p) { return p.x == last; });
    for (long i = 0; i < count; ++i) at.push_back({c, z});
    const auto loads = shares(at, *h_.fastening.load_n, load_place(h_).x);
    return fmt::format("; {} makes it {}", way_to(next), listed(by_stud(at, loads), say_));
  }
  std::string way_to(const StudLine& next) const {
    const double z = screws_.seats.front().at.y, c = next.centre(z), more = longer_by(h_, next);
    const std::string stud =
        fmt::format("the stud {} from the corner", say_.length(h_.face.wall().along(c, z)));
    const Stretch piece = extent_of(h_);
    if (c < piece.from || c > piece.to)
      return fmt::format("a piece {} longer, which reaches {},", say_.at_least(more), stud);
    if (more <= 0) return fmt::format("a screw in {}, where none may go as drawn,", stud);
    return fmt::format("a piece {} longer, since {} lies nearer than {} to its end,",
                       say_.at_least(more), stud, say_.at_least(end_of(h_)));
  }
  static bool less_x(Vec2 a, Vec2 b) { return a.x < b.x; }

  const Hanging& h_;
  const WallContext& context_;
  WallScrews& screws_;
  const Saying& say_;
  std::optional<Vec2> bears_at_;
};

}  // namespace

Strength strength_on_wall(const Hanging& hanging, const WallContext& context, WallScrews& screws) {
  return WallLoad(hanging, context, screws).rated();
}

}  // namespace nook
