// Changes worth trying against one finding of a fit, cheapest work first.
#pragma once

#include <vector>

#include "adapt/change.h"
#include "adapt/draft.h"
#include "adapt/flaw.h"
#include "room/survey.h"

namespace nook {

struct Candidate {
  Change change;
  std::vector<Edit> edits;
};

/// The same work in several sizes, the least first.
using Ladder = std::vector<Candidate>;

/// What candidates are made from. `rounding` has the easy number that sizes go by.
struct Workbench {
  const Survey& survey;
  const Design& design;
  const FitAnswer& answer;
  Rounding rounding;
};

/// The candidates against a flaw of `bench.answer`, in the order to try them: move, trim or
/// lengthen, caulk, shim or cover trim, taper, notch, scribe, filler. Nothing larger than 3 in is
/// moved or cut (chosen).
std::vector<Ladder> candidates(const Workbench& bench, const Flaw& flaw);

/// Those of one kind of flaw; `candidates` asks them.
std::vector<Ladder> contact_candidates(const Workbench& bench, const Flaw& flaw);
std::vector<Ladder> clash_candidates(const Workbench& bench, const Flaw& flaw);
std::vector<Ladder> cover_candidates(const Workbench& bench, const Flaw& flaw);

/// The group of a piece moved by `mm` along `way` (nominal room frame); nothing where the piece
/// does not lie along the room's directions.
Ladder group_moved(const Workbench& bench, const Flaw& flaw, int piece, Vec3 way,
                   const std::vector<double>& sizes);

/// A piece's run of edges set out (in where negative) by each of `sizes`, the ends alike.
Ladder edge_set_out(const Workbench& bench, const Flaw& flaw, int piece, const EdgeChoice& edge,
                    const std::vector<double>& sizes);

/// A piece's run of edges set out by `first` and `last` at its two ends.
Candidate edge_tapered(const Workbench& bench, const Flaw& flaw, int piece, const EdgeRun& run,
                       Vec2 ends);

/// Easy numbers from the least to the greatest, the least first; 64 at most (chosen).
std::vector<double> easy_sizes(double least_mm, double most_mm, Rounding rounding);

}  // namespace nook
