// Every piece and group taken along the whole way in.
#include "shop/carry.h"

#include <algorithm>

#include "shop/alcove_entry.h"
#include "shop/tip_up.h"
#include "shop/way_through.h"
#include "shop/wild.h"

namespace nook {
namespace {

CarriedPiece carried(const CarryInput& input, int k) {
  const Piece& piece = input.fit.pieces[k];
  const std::vector<WildEdge> wild = wild_edges(piece, input.design, input.fit);
  return {piece.name, input.fit.frames[k], with_wild_edges(piece, wild), piece.thickness};
}

std::vector<CarriedPiece> carried(const CarryInput& input, const std::vector<int>& pieces) {
  std::vector<CarriedPiece> all;
  for (const int k : pieces) all.push_back(carried(input, k));
  return all;
}

// The box of one piece is the least round its outline; joined pieces have several.
std::vector<Box> boxes_round(const Stance& stance) {
  if (stance.pieces.size() > 1) return boxes_of(stance.pieces);
  return {box_of(stance.pieces[0].outline, stance.pieces[0].thickness)};
}

class WayThere {
 public:
  explicit WayThere(const CarryInput& input)
      : input_(input), way_{input.survey, input.sure}, known_{input.room, input.draws} {}

  std::vector<Pass> passes(const Stance& stance, const std::vector<Stance>& standing) const {
    std::vector<Pass> all;
    const std::vector<Box> boxes = boxes_round(stance);
    for (const Doorway& door : input_.survey.doorways)
      all.push_back(through_doorway(boxes, door, way_));
    for (const HallTurn& turn : input_.survey.turns) all.push_back(round_turn(boxes, turn, way_));
    if (!input_.fit.known) return all;
    if (const auto up = tip_up(stance, standing, known_, input_.sure)) all.push_back(*up);
    for (int back = 1; back + 1 < static_cast<int>(input_.room.walls.size()); ++back)
      if (const auto entry = enter_alcove(stance, {back}, known_, input_.sure))
        all.push_back(*entry);
    return all;
  }

 private:
  const CarryInput& input_;
  WayIn way_;
  KnownRoom known_;
};

Verdict worst(const std::vector<Pass>& passes) {
  Verdict verdict = Verdict::fits;
  for (const Pass& pass : passes) verdict = worse(verdict, pass.verdict);
  return verdict;
}

GroupCarry whole(const GroupFit& group, std::vector<Pass> passes, const FitAnswer& fit) {
  GroupCarry answer{group.name, worst(passes), std::move(passes), {}};
  for (const int k : group.pieces) answer.order.push_back(fit.pieces[k].name);
  return answer;
}

// Groups in the order they go in; pieces that no group holds follow, each by itself.
std::vector<GroupFit> sequence(const FitAnswer& fit) {
  std::vector<GroupFit> groups = fit.groups;
  std::vector<bool> held(fit.pieces.size(), false);
  for (const GroupFit& group : groups)
    for (const int k : group.pieces) held[k] = true;
  for (int k = 0; k < static_cast<int>(held.size()); ++k)
    if (!held[k]) groups.push_back({fit.pieces[k].name, {k}, {}, 0, {}});
  return groups;
}

// Walks through the groups; what went in before stands.
void carry_all(const CarryInput& input, CarryAnswer& answer) {
  const WayThere there(input);
  std::vector<Stance> standing;
  answer.pieces.resize(input.fit.pieces.size());
  for (const GroupFit& group : sequence(input.fit)) {
    if (group.pieces.size() > 1) {
      const Stance joined = stance_of(group.name, carried(input, group.pieces));
      answer.groups.push_back(whole(group, there.passes(joined, standing), input.fit));
    }
    for (const int k : group.pieces) {
      const Piece& piece = input.fit.pieces[k];
      Stance stance = stance_of(piece.name, carried(input, std::vector<int>{k}));
      const std::vector<Pass> passes = there.passes(stance, standing);
      answer.pieces[k] = {piece.name, piece.drawn->name, worst(passes), passes};
      standing.push_back(std::move(stance));
    }
  }
}

}  // namespace

CarryAnswer carry(const CarryInput& input) {
  CarryAnswer answer;
  answer.said = input.survey.said();
  answer.room_known = input.fit.known;
  answer.way_known = !input.survey.doorways.empty() || !input.survey.turns.empty();
  carry_all(input, answer);
  for (const PieceCarry& piece : answer.pieces)
    answer.verdict = worse(answer.verdict, piece.verdict);
  if (!answer.way_known || !answer.room_known)
    answer.verdict = worse(answer.verdict, Verdict::cannot_tell);
  return answer;
}

}  // namespace nook
