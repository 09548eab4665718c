// All work that may be done to a piece, blindly: where none of it helps, wishes contradict.
#include <algorithm>

#include "adapt/candidate.h"
#include "adapt/reshape.h"

namespace nook {
namespace {

// Marks of the tape; chosen: closely where it is little work, at last 3 in or 48 mm.
constexpr int kMarks[] = {1, 2, 3, 4, 6, 8, 12, 16, 24, 48};
constexpr EdgeSide kSides[] = {EdgeSide::left, EdgeSide::right, EdgeSide::bottom, EdgeSide::top};
// How a side is set out at its two ends, in turns: as a whole, then tapers.
constexpr Vec2 kCuts[] = {{-1, -1}, {1, 1}, {0, -1}, {-1, 0}, {0, 1}, {1, 0}};

struct Writer {
  const Workbench& bench;
  const Flaw& flaw;
  std::vector<Ladder> found;

  void add(Ladder ladder) {
    ladder.work = Work::any;
    found.push_back(std::move(ladder));
  }

  void add_moves(int piece) {
    const std::string& group = bench.answer.pieces[piece].drawn->group;
    for (const Vec3 way : {Vec3{1, 0, 0}, Vec3{-1, 0, 0}, Vec3{0, 1, 0}, Vec3{0, -1, 0},
                           Vec3{0, 0, 1}, Vec3{0, 0, -1}}) {
      Ladder ladder;
      for (const int marks : kMarks)
        ladder.steps.push_back({group,
                                "move",
                                flaw.text,
                                "",
                                {GroupMoved{group, way, marks * bench.rounding.step.mm}}});
      add(std::move(ladder));
    }
  }

  void add_cuts(int piece) {
    for (const EdgeSide side : kSides)
      for (const Vec2 cut : kCuts) {
        Ladder ladder;
        for (const int marks : kMarks)
          ladder.steps.push_back(
              run_set_out(bench, flaw, piece, side, marks * bench.rounding.step.mm * cut));
        add(std::move(ladder));
      }
  }

  void add_fittings(int piece) {
    const Part* part = bench.answer.pieces[piece].drawn;
    for (const ContactFit& contact : bench.answer.contacts) {
      if (bench.answer.pieces[contact.piece].drawn != part) continue;
      for (Ladder& ladder : refittings(flaw, contact)) add(std::move(ladder));
    }
  }
};

}  // namespace

std::vector<Ladder> all_candidates(const Workbench& bench, const Flaw& flaw,
                                   const std::vector<int>& pieces) {
  Writer writer{bench, flaw, {}};
  for (const int piece : pieces) writer.add_moves(piece);
  for (const int piece : pieces) writer.add_fittings(piece);
  for (const int piece : pieces) writer.add_cuts(piece);
  return std::move(writer.found);
}

}  // namespace nook
