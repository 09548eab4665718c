// Upright chords through everything round an edge.
#include "safety/fence.h"

#include <algorithm>
#include <cmath>

namespace nook::safe {
namespace {

constexpr double kStep = 5;      // mm between chords; chosen
constexpr double kBare = 25;     // mm: what rises less above the deck is nothing; chosen
constexpr double kHigh = 5000;   // mm: higher than any room
constexpr double kMargin = 300;  // mm shown round the pieces

bool holds(const Stretch& stretch, double s) {
  return s >= stretch.from && s <= stretch.to;
}

bool in_any(const std::vector<Stretch>& stretches, double s) {
  return std::any_of(stretches.begin(), stretches.end(),
                     [&](const Stretch& stretch) { return holds(stretch, s); });
}

// A rectangle that closes the side from `from` to `to`.
Shadow fill(double from, double to, double low, double high) {
  return {{Owner::Kind::fill, 0}, {{{from, low}, {to, low}, {to, high}, {from, high}}, {}}};
}

View view_round(const Scene& scene, const Deck& deck, const Side& side) {
  const View view = view_of(scene, side.sight, {-mm(Of::probe_depth), mm(Of::head_large)}, kMargin);
  std::vector<Shadow> kept;
  for (const Shadow& shadow : view.air.shadows()) {
    const bool of_deck =
        shadow.owner.kind == Owner::Kind::piece &&
        std::find(deck.pieces.begin(), deck.pieces.end(), shadow.owner.index) != deck.pieces.end();
    if (!of_deck) kept.push_back(shadow);
  }
  return {view.sight, view.slab, view.window, Air(std::move(kept))};
}

Station::Kind kind_at(const Side& side, double s) {
  Station::Kind kind = Station::Kind::inner;               // beyond the ends
  double nearest = mm(Of::head_small) / 2 + kStationStep;  // slats may lie so far apart
  for (const Station& station : side.stations)
    if (std::abs(station.s - s) < nearest) nearest = std::abs(station.s - s), kind = station.kind;
  return kind;
}

}  // namespace

Fence::Fence(const Scene& scene, const Deck& deck, const Side& side, double need)
    : scene_(scene),
      deck_(deck),
      side_(side),
      view_(view_round(scene, deck, side)),
      need_(need),
      sphere_(mm(scene.audience.children ? Of::head_small : Of::guard_sphere)) {
  const double pad = sphere_;
  const int count = 1 + static_cast<int>((side.to - side.from + 2 * pad) / kStep);
  for (int i = 0; i < count; ++i) {
    const double s = side.from - pad + (i + 0.5) / count * (side.to - side.from + 2 * pad);
    Spot spot{s, 0, {Owner::Kind::fill, 0}, kind_at(side, s), in_any(side.ways_up, s)};
    spot.top = spot.way_up ? kHigh : raw_top(s, spot.owner);
    spots_.push_back(spot);
  }
  fill_dips();
}

double Fence::raw_top(double s, Owner& owner) const {
  double top = 0;
  for (const Shadow& shadow : view_.air.shadows())
    for (const Stretch& chord : inside(shadow.region, {s, 0}, {0, 1})) {
      // A wall goes on to the ceiling, past the picture's edge.
      const double to = shadow.owner.kind == Owner::Kind::wall ? kHigh : chord.to;
      if (chord.from < need_ && to > top) top = to, owner = shadow.owner;
    }
  return top;
}

// Closing of the outline by a sphere's width: raised to the highest within half of it, then lowered
// to the lowest of those.
void Fence::fill_dips() {
  const int reach = static_cast<int>(std::ceil(sphere_ / 2 / kStep));  // leaks are measured exactly
  const int count = static_cast<int>(spots_.size());
  const auto extreme = [&](const std::vector<Spot>& from, int i, bool highest) {
    Spot best = from[i];
    for (int k = std::max(0, i - reach); k <= std::min(count - 1, i + reach); ++k)
      if (highest ? from[k].top > best.top : from[k].top < best.top)
        best.top = from[k].top, best.owner = from[k].owner;
    return best;
  };
  std::vector<Spot> raised, filled;
  for (int i = 0; i < count; ++i) raised.push_back(extreme(spots_, i, true));
  for (int i = 0; i < count; ++i) filled.push_back(extreme(raised, i, false));
  spots_ = filled;
}

bool Fence::counts(const Spot& spot, bool walls) const {
  if (spot.way_up || !holds({side_.from, side_.to}, spot.s)) return false;
  return spot.kind == Station::Kind::open || (walls && spot.kind == Station::Kind::wall);
}

std::vector<int> Fence::pieces() const {
  std::vector<int> found;
  for (const Shadow& shadow : view_.air.shadows()) {
    const Box2 box = box_of(shadow.region.outline);
    const bool beside = box.high.x > side_.from && box.low.x < side_.to;
    if (shadow.owner.kind != Owner::Kind::piece || !beside) continue;
    if (box.high.y < kBare || box.low.y > need_) continue;
    if (std::find(found.begin(), found.end(), shadow.owner.index) == found.end())
      found.push_back(shadow.owner.index);
  }
  return found;
}

std::vector<FenceStretch> Fence::bare() const {
  if (!scene_.room_known()) return {};
  std::vector<FenceStretch> found;
  bool running = false;
  for (const Spot& spot : spots_) {
    const bool bare = counts(spot, false) && spot.top < kBare;
    if (bare && !running) found.push_back({spot.s, spot.s, spot.top, spot.s, spot.owner});
    if (bare) found.back().to = spot.s;
    running = bare;
  }
  // Chords are kStep apart; the true ends lie up to a step further.
  for (const Stretch& open : open_at(kBare))
    for (FenceStretch& bare : found) {
      if (open.from < bare.from && bare.from - open.from <= kStep) bare.from = open.from;
      if (open.to > bare.to && open.to - bare.to <= kStep) bare.to = open.to;
    }
  return found;
}

std::optional<FenceStretch> Fence::lowest() const {
  return lowest_over(kBare, false);
}

std::optional<FenceStretch> Fence::lowest_over(double height) const {
  return lowest_over(height, true);
}

std::optional<FenceStretch> Fence::lowest_over(double height, bool walls) const {
  std::optional<FenceStretch> low;
  for (const Spot& spot : spots_) {
    if (!counts(spot, walls) || spot.top < height) continue;
    if (!low || spot.top < low->height) low = {side_.from, side_.to, spot.top, spot.s, spot.owner};
  }
  return low;
}

// Everything above the fence's top, below the deck, and where it is not asked for: no lid reaches
// from there into what is.
std::vector<Shadow> Fence::lids() const {
  std::vector<Shadow> lids{fill(side_.from - kHigh, side_.to + kHigh, -kHigh, 0)};
  lids.push_back(fill(side_.from - kHigh, spots_.front().s, 0, kHigh));
  lids.push_back(fill(spots_.back().s, side_.to + kHigh, 0, kHigh));
  for (std::size_t i = 0; i + 1 < spots_.size();) {
    const bool fenced = counts(spots_[i], false);
    Polygon lid;
    do lid.push_back({spots_[i].s, fenced ? spots_[i].top : 0});
    while (++i < spots_.size() && counts(spots_[i], false) == fenced);
    if (fenced && i < spots_.size()) lid.push_back({spots_[i].s, lid.back().y});
    lid.push_back({lid.back().x, kHigh});
    lid.push_back({lid.front().x, kHigh});
    lids.push_back({{Owner::Kind::fill, 0}, {lid, {}}});
  }
  return lids;
}

std::vector<LeftOpening> Fence::leaks(double sphere) const {
  std::vector<Shadow> shadows = view_.air.shadows();
  for (Shadow& lid : lids()) shadows.push_back(std::move(lid));
  double top = 0;
  for (const Spot& spot : spots_)
    if (counts(spot, false)) top = std::max(top, spot.top);
  const Air air(std::move(shadows));
  const Window window{{side_.from - kMargin, -kMargin}, {side_.to + kMargin, top + kMargin}};
  return openings(air, Grid(air, window), sphere, 2 * kHigh);
}

std::vector<Stretch> Fence::open_at(double height) const {
  std::vector<Stretch> solid;
  for (const Shadow& shadow : view_.air.shadows())
    for (const Stretch& chord : inside(shadow.region, {0, height}, {1, 0})) solid.push_back(chord);
  std::sort(solid.begin(), solid.end(), [](Stretch a, Stretch b) { return a.from < b.from; });
  std::vector<Stretch> open;
  double from = side_.from;
  for (const Stretch& chord : solid) {
    if (chord.from > from + 0.01 && from < side_.to)
      open.push_back({from, std::min(chord.from, side_.to)});
    from = std::max(from, chord.to);
  }
  if (from < side_.to - 0.01) open.push_back({from, side_.to});
  return open;
}

}  // namespace nook::safe
