// A job worked out step by step: its files, the room, the fit, the holes.
#pragma once

#include <optional>
#include <vector>

#include "command/request.h"
#include "fasten/drill.h"
#include "fit/fit.h"
#include "job/job.h"
#include "safety/safety.h"
#include "shop/carry.h"
#include "survey/adjustment.h"

namespace nook {

/// The room of a job: adjusted, reported with its studs, and drawn from what the readings leave
/// open.
struct RoomWorked {
  Adjustment adjustment;
  RoomReport report;
  std::vector<RoomShape> draws;
  std::optional<RoomShape> built;  // the room given openings between parts that are up

  const RoomShape& shape() const { return built ? *built : adjustment.room(); }
};

/// The room alone, without draws.
RoomWorked room_of(const Job& job);

/// The room with the draws that joint verdicts need; none where readings are missing. Openings
/// between parts of the design that are up have joined it; one that cannot be right is a suspect.
RoomWorked drawn_room_of(const Job& job);

/// The design put into the room. Requires: job.design.
FitAnswer fit_of(const Job& job, const RoomWorked& room, double sure);

/// Fills `room.report.measure_next`: what would settle most of any room.
void name_next(RoomWorked& room);

/// Fills `fit.measure_next` where something cannot be told.
void name_next(const RoomWorked& room, FitAnswer& fit);

/// The holes for the pieces as placed. Requires: job.design.
DrillAnswer drill_of(const Job& job, const RoomWorked& room, const FitAnswer& fit, double sure);

/// The way in for the pieces as placed. Requires: job.design.
CarryAnswer carry_of(const Job& job, const RoomWorked& room, const FitAnswer& fit, double sure);

/// The pieces as placed, and their holes.
struct FitAndHoles {
  const FitAnswer& fit;
  const DrillAnswer& drill;
};
/// The cautions for them. Requires: job.design.
SafetyAnswer safety_of(const Job& job, const RoomWorked& room, const FitAndHoles& pieces,
                       double sure);

/// Reads a job that has to have a design; its absence is a fault of its own.
tl::expected<Job, Faults> designed_job(const std::string& folder);

}  // namespace nook
