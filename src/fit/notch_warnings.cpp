// Rays from the notch's inner sides into the wood, and pieces counted before and after.
#include "fit/notch_warnings.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "solid/boolean.h"
#include "solid/cells.h"

namespace nook {
namespace {

constexpr double kLittleWood = 19;  // mm, 3/4 in; less than this beside a notch breaks off. Chosen
constexpr double kApart = 10;       // mm between rays; chosen
constexpr double kInset = 1;        // mm from the corners of the notch; chosen
constexpr double kOnBorder = 0.01;  // mm; an edge this near the outline is not one of the wood

class Weakness {
 public:
  Weakness(const Trials& trials, const std::vector<NotchFit>& all, const NotchFit& notch)
      : piece_(trials.layout.scene.pieces[notch.piece]),
        notch_(notch),
        little_(with_unit(millimetres(kLittleWood), trials.layout.scene.survey.said())) {
    std::vector<Polygon> others;
    for (const NotchFit& other : all)
      if (&other != &notch && other.piece == notch.piece) others.push_back(other.polygon);
    const Regions whole{trials.layout.scene.bodies[notch.piece].region};
    others_ = !others.empty();
    wood_ = others_ ? subtract(whole, unite(others)) : whole;
    alone_ = whole;
    wide_ = grown(hull_of(notch.polygon), kLittleWood);
  }

  // Fills its warnings, and the one after which the piece is another one.
  void tell(NotchFit& told) const {
    add_cutouts(told.warnings);
    add_lost_edges(told);
    if (parts_without(alone_, notch_.polygon) > alone_.size())
      add_ruin("cuts the piece in two", told);
    else if (others_ && parts_without(wood_, notch_.polygon) > wood_.size())
      add_ruin("cuts the piece in two, together with its other notches", told);
    else if (!add_thin_wood(told.warnings) && parts_without(alone_, wide_) > alone_.size())
      told.warnings.push_back("leaves a neck of less than " + little_);
  }

 private:
  static void add_ruin(const std::string& words, NotchFit& told) {
    told.warnings.push_back(words);
    told.ruins = words;
  }

  // A hole that the cut does not come near parts nothing: it is not looked at.
  static std::size_t parts_without(Regions wood, const Polygon& cut) {
    for (Region& region : wood)
      std::erase_if(region.holes, [&](const Polygon& hole) { return far_apart(hole, cut); });
    return subtract(wood, Regions{{cut, {}}}).size();
  }

  void add_cutouts(std::vector<std::string>& words) const {
    for (const Cutout& cutout : piece_.drawn->cutouts) {
      const Regions opening{{cutout.outline, {}}};
      const std::string name = "the " + (cutout.name.empty() ? "cutout" : cutout.name);
      if (!intersect(opening, Regions{{notch_.polygon, {}}}).empty())
        words.push_back("runs into " + name);
      else if (!intersect(opening, Regions{{wide_, {}}}).empty())
        words.push_back("comes within " + little_ + " of " + name);
    }
  }

  // Edges that go altogether: what they met is not met any more.
  void add_lost_edges(NotchFit& told) const {
    const Box2 whole = box_of(piece_.drawn->outline);
    Polygon left;
    for (const Region& region : subtract(alone_, Regions{{notch_.polygon, {}}}))
      left.insert(left.end(), region.outline.begin(), region.outline.end());
    if (left.empty()) return;
    const Box2 now = box_of(left);
    const auto look = [&](double lost, const char* edge) {
      if (lost > kOnBorder) add_ruin(fmt::format("takes the whole {} edge off", edge), told);
    };
    look(now.low.x - whole.low.x, "left");
    look(whole.high.x - now.high.x, "right");
    look(now.low.y - whole.low.y, "bottom");
    look(whole.high.y - now.high.y, "top");
  }

  // Each way that too little wood is left, once.
  bool add_thin_wood(std::vector<std::string>& words) const {
    bool thin[4] = {false, false, false, false};
    const std::size_t n = notch_.polygon.size();
    for (std::size_t i = 0; i < n; ++i) {
      const Vec2 a = notch_.polygon[i], d = notch_.polygon[(i + 1) % n] - a;
      const double length = norm(d), inset = std::min(kInset, length / 4);
      const int rays = 1 + static_cast<int>(std::ceil((length - 2 * inset) / kApart));
      if (length < kOnBorder) continue;
      for (int k = 0; k <= rays; ++k)
        look(a + ((inset + (length - 2 * inset) * k / rays) / length) * d,
             (-1 / length) * left_of(d), thin);
    }
    static const char* kWhere[] = {"right of", "above", "left of", "below"};
    for (int q = 0; q < 4; ++q)
      if (thin[q]) words.push_back("leaves less than " + little_ + " of wood " + kWhere[q] + " it");
    return std::any_of(std::begin(thin), std::end(thin), [](bool t) { return t; });
  }

  // `p` on a side of the notch, `out` square to it, away from the notch.
  void look(Vec2 p, Vec2 out, bool (&thin)[4]) const {
    if (border_distance({piece_.drawn->outline, {}}, p) < kOnBorder) return;
    for (const Region& region : wood_)
      for (const Stretch& s : inside(region, p, out)) {
        if (s.from > kOnBorder || s.to < kOnBorder || s.to >= kLittleWood) continue;
        const bool level = std::abs(out.x) > std::abs(out.y);
        thin[level ? (out.x > 0 ? 0 : 2) : (out.y > 0 ? 1 : 3)] = true;
      }
  }

  const Piece& piece_;
  const NotchFit& notch_;
  std::string little_;    // kLittleWood in words
  bool others_ = false;   // whether the piece has other notches
  Regions wood_, alone_;  // what is left without the other notches, and the piece as drawn
  Polygon wide_;          // the notch and the wood beside it that should be left
};

}  // namespace

void warn_of_notches(const Trials& trials, std::vector<NotchFit>& notches) {
  const std::vector<NotchFit> all = notches;
  for (std::size_t k = 0; k < all.size(); ++k) Weakness(trials, all, all[k]).tell(notches[k]);
}

}  // namespace nook
