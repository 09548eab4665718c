// A square corner with plumb flat walls, a ledger and screws: what the tests of holes start from.
#pragma once

#include <string>
#include <vector>

#include "fasten/drill.h"

/// From the corner on, and how long; inches.
struct Along {
  double start = 0, length = 0;
};

/// Inches in, as on site. The left wall (0) runs along +x, the right one (1) along +y.
struct Bench {
  nook::Survey survey;
  nook::Design design;
  nook::RoomShape room;
  std::vector<nook::RoomShape> draws;

  Bench();
  /// A stud probed by nail at both edges, `centre` inches from the corner, 38 in up.
  nook::StudFound& nailed(int wall, double centre);
  nook::StudFound& found_centre(int wall, double centre, double height = 38);
  /// A level piece, its back on the wall, its bottom `height` up.
  nook::Part& ledger(int wall, const std::string& name, Along place, double height);
  /// Screws of #10 x 3, head set flush, of the named part into the wall.
  nook::Fastening& screws(const std::string& part, const std::string& to);

  /// The answer with every piece as drawn.
  nook::DrillAnswer drilled(double sure = .95) const;

 private:
  mutable std::vector<nook::Piece> pieces_;
};

nook::Reading reading(double inches, const std::string& id);

/// A ledger of 46 in on studs nailed at 15 5/16 and 31 3/8, 37 in up.
Bench two_studs(int wall = 0);
/// From `left` to `right` inches along, 12 to 16 1/2 up, 1/4 out.
nook::Obstacle obstacle(nook::ObstacleKind kind, const std::string& name, double left,
                        double right);
/// Whether a warning of the hole has the words in it.
bool warns(const nook::Hole& hole, const std::string& words);
