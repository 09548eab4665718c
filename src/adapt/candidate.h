// Changes worth trying against one finding of a fit, cheapest work first.
#pragma once

#include <vector>

#include "adapt/flaw.h"
#include "adapt/step.h"
#include "room/survey.h"

namespace nook {

/// Work that may settle a finding. `said`: how, where its first step has no size to tell; else what
/// is told after the size.
struct Candidate {
  std::string part, kind, finding, said;
  std::vector<Step> steps;
};

/// Kinds of work, the cheapest first; `any`: all work on the pieces of a finding, blindly.
enum class Work { move, trim, cover, taper, notch, scribe, filler, any };
inline constexpr Work kWorks[] = {Work::move,  Work::trim,   Work::cover, Work::taper,
                                  Work::notch, Work::scribe, Work::filler};

/// The same work in several sizes, the least first; `likely` is the one that should do.
struct Ladder {
  Work work = Work::move;
  std::vector<Candidate> steps;
  int likely = 0;
};

/// What candidates are made from. `rounding` has the easy number that sizes go by.
struct Workbench {
  const Survey& survey;
  const Design& design;
  const FitAnswer& answer;
  Rounding rounding;
};

/// Nothing is moved or cut by more, mm (chosen: more is another design).
inline constexpr double kLargestChange = 3 * kMillimetresPerInch;

/// The candidates of one kind of work against a flaw of `bench.answer`; `trim` lengthens too.
/// What is up already is left as it is.
std::vector<Ladder> candidates(const Workbench& bench, const Flaw& flaw, Work work);

/// Those of one kind of flaw; `candidates` asks them.
std::vector<Ladder> contact_candidates(const Workbench& bench, const Flaw& flaw);
std::vector<Ladder> clash_candidates(const Workbench& bench, const Flaw& flaw);
std::vector<Ladder> clearance_candidates(const Workbench& bench, const Flaw& flaw);
std::vector<Ladder> cover_candidates(const Workbench& bench, const Flaw& flaw);

/// Sizes to try and which of them should do, from what is missed and how surely it is known.
struct Sizes {
  std::vector<double> mm;  // easy numbers, the least first; all negative where wood comes off
  int likely = 0;
};
/// From just enough in the adjusted room to plenty; the likely one holds in 95 of 100 rooms.
Sizes sizes_for(double over_mm, double sd_mm, Rounding rounding);
Sizes inward(Sizes sizes);

/// The group of a piece moved by each size along `way` (nominal room frame); nothing where the
/// piece does not lie along the room's directions, or where it is pushed home along `way`.
Ladder group_moved(const Workbench& bench, const Flaw& flaw, int piece, Vec3 way,
                   const Sizes& sizes);

/// A piece's run of edges set out (in where negative) by each size, the ends alike.
Ladder edge_set_out(const Workbench& bench, const Flaw& flaw, int piece, const EdgeChoice& edge,
                    const Sizes& sizes);

/// Every move, straight cut, taper and way of meeting of the pieces, in sizes of 1 to 48 marks:
/// a finding may hang on where something else holds them. The steps of a ladder are to be tried
/// one by one.
std::vector<Ladder> all_candidates(const Workbench& bench, const Flaw& flaw,
                                   const std::vector<int>& pieces);
/// Every way that a contact may be made to meet.
std::vector<Ladder> refittings(const Flaw& flaw, const ContactFit& contact);

/// From the piece out of one of its edges or faces, nominal room frame, unit.
Vec3 way_out_of(const Piece& piece, const EdgeChoice& edge);

/// A piece's run of edges set out (in where negative) by `ends` at its first and last point.
Candidate run_set_out(const Workbench& bench, const Flaw& flaw, int piece, const EdgeChoice& edge,
                      Vec2 ends);

/// Easy numbers from the least to the greatest, the least first; 64 at most (chosen).
std::vector<double> easy_sizes(double least_mm, double most_mm, Rounding rounding);

}  // namespace nook
