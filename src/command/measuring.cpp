// From what a design hangs on to the readings that tell it.
#include "command/measuring.h"

#include <algorithm>
#include <map>

#include "shop/tip_up.h"

namespace nook {
namespace {

// Whether something is so tall that the ceiling may be in the way of raising it.
bool tips_up(const Design& design, const RoomShape& room) {
  constexpr double kAnyShare = 0.5;  // without a ceiling nothing hangs on how sure one is to be
  std::map<std::string, std::vector<CarriedPiece>> groups;
  for (const Piece& piece : pieces_of(design))
    groups[group_of(piece)].push_back(
        {piece.name, piece.frame, piece.drawn->outline, piece.thickness});
  RoomShape open = room;
  open.ceiling.reset();
  const std::vector<RoomShape> none;
  return std::any_of(groups.begin(), groups.end(), [&](const auto& group) {
    const Stance stance = stance_of(group.first, group.second);
    return tip_up(stance, {}, {open, none}, kAnyShare).has_value();
  });
}

}  // namespace

MeasuringJob measuring_of(const Job& job, const RoomShape& room) {
  DesignWants wants;
  if (job.design) {
    wants = design_wants(*job.design, room);
    wants.plan.heights.headroom = tips_up(*job.design, room);
  }
  return {job.survey, job.design ? &*job.design : nullptr,
          measuring_plan(job.survey, job.origin_corner, wants.plan), std::move(wants.studs)};
}

}  // namespace nook
