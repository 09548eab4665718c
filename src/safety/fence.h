// What stands round a side of a deck: how high it is all along, and what is open in it.
#pragma once

#include <vector>

#include "safety/ladder.h"
#include "safety/left_opening.h"

namespace nook::safe {

/// A stretch of a side, with the least height of what stands there.
struct FenceStretch {
  double from = 0, to = 0;  // s
  double height = 0;        // mm above the deck's top
  double at = 0;            // s of the lowest place
  Owner owner;              // of what stands there; a fill where nothing does
};

/// One side of a deck as seen from outside, ladders taken as closed.
class Fence {
 public:
  /// What starts higher than `need` above the deck hangs from above and guards nothing.
  Fence(const Scene& scene, const Deck& deck, const Side& side, double need);

  const Scene& scene() const { return scene_; }
  const Deck& deck() const { return deck_; }
  const Side& side() const { return side_; }
  /// The pieces that rise over the edge; those that start higher than `need` left out.
  std::vector<int> pieces() const;
  /// Stretches of the edge with nothing on them, but for those beside a wall; none while the room
  /// is not known, where any may be.
  std::vector<FenceStretch> bare() const;
  /// The lowest place where something stands; a dip that a sphere does not pass (3.5 in, 4 in for
  /// adults) counts as filled. Nothing where all is bare or a wall.
  std::optional<FenceStretch> lowest() const;
  /// The lowest place that rises over `height`, beside walls too; nothing where nothing does.
  std::optional<FenceStretch> lowest_over(double height) const;
  /// Openings below its top that a sphere of this size passes, ladders and walls beside left out.
  std::vector<LeftOpening> leaks(double sphere) const;
  /// The stretches of the edge that are open at a height above the deck, to a hundredth of a mm;
  /// ladders count as open here.
  std::vector<Stretch> open_at(double height) const;

 private:
  struct Spot {
    double s, top;  // top above the deck, dips filled
    Owner owner;
    Station::Kind kind;
    bool way_up;
  };
  double raw_top(double s, Owner& owner) const;
  void fill_dips();
  bool counts(const Spot& spot, bool walls) const;
  std::optional<FenceStretch> lowest_over(double height, bool walls) const;
  std::vector<Shadow> lids() const;

  const Scene& scene_;
  const Deck& deck_;
  const Side& side_;
  View view_;
  double need_, sphere_;
  std::vector<Spot> spots_;
};

}  // namespace nook::safe
