// Every side of a piece and every way to move it, in sizes that grow.
#include "adapt/candidate.h"

namespace nook {
namespace {

// Marks of the tape; chosen: closely where it is little work, at last 3 in or 48 mm.
constexpr int kMarks[] = {1, 2, 3, 4, 6, 8, 12, 16, 24, 48};

Sizes growing(Rounding rounding) {
  Sizes sizes;
  for (const int marks : kMarks) sizes.mm.push_back(marks * rounding.step.mm);
  return sizes;
}

}  // namespace

std::vector<Ladder> elsewhere_candidates(const Workbench& bench, const Flaw& flaw,
                                         const std::vector<int>& pieces) {
  std::vector<Ladder> found;
  const Sizes sizes = growing(bench.rounding);
  for (const int piece : pieces) {
    for (const EdgeSide side : {EdgeSide::left, EdgeSide::right, EdgeSide::bottom, EdgeSide::top})
      for (const Sizes& way : {inward(sizes), sizes})
        found.push_back(edge_set_out(bench, flaw, piece, side, way));
    for (const double way : {1.0, -1.0}) {
      found.push_back(group_moved(bench, flaw, piece, {way, 0, 0}, sizes));
      found.push_back(group_moved(bench, flaw, piece, {0, way, 0}, sizes));
      found.push_back(group_moved(bench, flaw, piece, {0, 0, way}, sizes));
    }
  }
  for (Ladder& ladder : found) ladder.work = Work::elsewhere;
  return found;
}

}  // namespace nook
