// What is screwed to what, and what hangs on a wall in the end.
#pragma once

#include <vector>

#include "safety/scene.h"

namespace nook::safe {

/// Pieces joined by fastenings into things that stand or fall together.
class Holding {
 public:
  explicit Holding(const Scene& scene);

  /// The number of the thing a piece belongs to, from 0 in the order of their first pieces.
  int thing_of(int piece) const { return thing_[piece]; }
  int things() const { return things_; }
  /// Whether a chain of fastenings leads from the piece to a wall.
  bool to_wall(int piece) const { return walled_[thing_[piece]]; }

 private:
  std::vector<int> thing_;
  std::vector<char> walled_;
  int things_ = 0;
};

/// The pieces that a fastening joins.
std::vector<int> pieces_of(const Scene& scene, const Fastening& fastening);

}  // namespace nook::safe
