// Pairs that contacts and fastenings name, the upper one of each against the order of the groups.
#include "fit/find_early.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "solid/polygon.h"

namespace nook {
namespace {

constexpr double kResting = 5;  // mm from the floor or from the other's top; chosen

class Order {
 public:
  Order(const Design& design, const FitAnswer& answer) : design_(design), answer_(answer) {
    step_.assign(answer.pieces.size(), 0);
    for (std::size_t g = 0; g < answer.groups.size(); ++g)
      for (int p : answer.groups[g].pieces) step_[p] = static_cast<int>(g);
    carried_.resize(answer.pieces.size());
    for (const Contact& c : design.contacts) join(c.part, c.meets);
    for (const Fastening& f : design.fastenings) join(f.part, f.to);
  }

  std::vector<EarlyFit> early() const {
    std::vector<EarlyFit> all;
    for (int p = 0; p < static_cast<int>(carried_.size()); ++p)
      if (goes_in_early(p)) all.push_back({p, answer_.pieces[p].name, names_of(carried_[p])});
    return all;
  }

 private:
  // Heights above the floor, as drawn.
  Stretch height(int piece) const {
    const Piece& drawn = answer_.pieces[piece];
    Stretch z{1e300, -1e300};
    for (Vec2 p : drawn.drawn->outline)
      for (double w : {0.0, drawn.thickness}) {
        const double at = drawn.frame.room_from_piece({p.x, p.y, w}).z;
        z = {std::min(z.from, at), std::max(z.to, at)};
      }
    return z;
  }

  std::vector<int> named(const std::string& part) const {
    return pieces_named(answer_.pieces, design_, part);
  }

  void join(const std::string& one, const std::string& other) {
    for (int a : named(one))
      for (int b : named(other)) {
        if (std::abs(height(a).from - height(b).to) < kResting) carried_[a].insert(b);
        if (std::abs(height(b).from - height(a).to) < kResting) carried_[b].insert(a);
      }
  }

  bool screwed_to_a_wall(int piece) const {
    return std::any_of(design_.fastenings.begin(), design_.fastenings.end(),
                       [&](const Fastening& f) {
                         const std::vector<int> pieces = named(f.part);
                         return !wall_named(f.to).empty() &&
                                std::find(pieces.begin(), pieces.end(), piece) != pieces.end();
                       });
  }

  // By itself or with its group: what the group hangs on or stands on holds all of it.
  bool held_otherwise(int piece) const {
    for (int p : answer_.groups[step_[piece]].pieces) {
      if (screwed_to_a_wall(p) || height(p).from < kResting) return true;
      for (int under : carried_[p])
        if (step_[under] < step_[piece]) return true;
    }
    return false;
  }

  bool goes_in_early(int piece) const {
    const bool on_later = std::any_of(carried_[piece].begin(), carried_[piece].end(),
                                      [&](int under) { return step_[under] > step_[piece]; });
    return on_later && !held_otherwise(piece);
  }

  std::vector<std::string> names_of(const std::set<int>& pieces) const {
    std::vector<std::string> names;
    for (int p : pieces) names.push_back(answer_.pieces[p].name);
    return names;
  }

  const Design& design_;
  const FitAnswer& answer_;
  std::vector<int> step_;               // by piece: its group's place in the order
  std::vector<std::set<int>> carried_;  // by piece: the pieces it rests on
};

}  // namespace

std::vector<EarlyFit> find_early(const Design& design, const FitAnswer& answer) {
  return Order(design, answer).early();
}

}  // namespace nook
