// A job worked out step by step: its files, the room, the fit, the holes.
#include "command/worked.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "fit/design_wants.h"
#include "shop/as_built.h"
#include "survey/missing.h"
#include "survey/room_report.h"

namespace nook {
namespace {

/// Chosen: with 400 draws a share of .95 is known to about .01.
constexpr int kDraws = 400;

constexpr int kNextReadings = 5;  // a person keeps no more in mind. Chosen

RoomReport report_of(const Job& job, const Adjustment& adjustment) {
  RoomReport report = adjustment.report();
  if (job.design) {
    const auto heights = missing_heights(job.survey, heights_of(*job.design));
    report.missing.insert(report.missing.end(), heights.begin(), heights.end());
  }
  const auto slips = stud_suspects(job.survey);
  report.suspects.insert(report.suspects.end(), slips.begin(), slips.end());
  if (!adjustment.complete()) return report;
  const auto studs = studs_of(job.survey, adjustment.room());
  for (std::size_t wall = 0; wall < report.walls.size() && wall < studs.size(); ++wall) {
    report.walls[wall].studs = studs[wall];
  }
  return report;
}

std::string suspect_words(const OpeningRead& opening, Rounding rounding) {
  return "it reads " + with_unit({opening.read}, rounding) +
         "; the room and the parts that are up foretell " + with_unit({opening.adjusted}, rounding);
}

void join_openings(const Job& job, RoomWorked& room) {
  if (!job.design || job.survey.installed.empty()) return;
  const FitAnswer before = fit({job.survey, *job.design, room.adjustment.room(), room.draws});
  const auto openings = openings_read(job.survey, before, room.adjustment.room(), room.draws);
  if (openings.empty()) return;
  for (const OpeningRead& opening : openings) {
    room.report.names[opening.id] = opening.name;
    if (std::abs(opening.w()) > w_limit())
      room.report.suspects.push_back(
          {{opening.id}, suspect_words(opening, job.survey.said()), opening.adjusted, 0});
  }
  RoomDrawn built = as_built(room.adjustment.room(), room.draws, openings);
  room.built = std::move(built.room);
  room.draws = std::move(built.draws);
}

}  // namespace

RoomWorked room_of(const Job& job) {
  Adjustment adjustment = adjust(job.survey, job.origin_corner);
  RoomReport report = report_of(job, adjustment);
  return {std::move(adjustment), std::move(report), {}, {}};
}

RoomWorked drawn_room_of(const Job& job) {
  RoomWorked room = room_of(job);
  if (!room.adjustment.complete()) return room;
  room.draws = room.adjustment.draws(kDraws);
  join_openings(job, room);
  return room;
}

FitAnswer fit_of(const Job& job, const RoomWorked& room, double sure) {
  return fit({job.survey, *job.design, room.shape(), room.draws, sure, room.adjustment.complete()});
}

void name_next(RoomWorked& room) {
  room.report.measure_next = room.adjustment.measure_next({}, kNextReadings);
}

void name_next(const RoomWorked& room, FitAnswer& fit) {
  std::vector<Undecided> undecided;
  for (const OpenFinding& open : fit.undecided) undecided.push_back(open.hangs_on);
  if (!undecided.empty()) fit.measure_next = room.adjustment.measure_next(undecided, 1);
}

DrillAnswer drill_of(const Job& job, const RoomWorked& room, const FitAnswer& fit, double sure) {
  return drill({job.survey, *job.design, room.shape(), room.draws, fit.pieces, fit.frames, sure,
                room.adjustment.complete()});
}

CarryAnswer carry_of(const Job& job, const RoomWorked& room, const FitAnswer& fit, double sure) {
  return carry({job.survey, *job.design, room.shape(), room.draws, fit, sure});
}

SafetyAnswer safety_of(const Job& job, const RoomWorked& room, const FitAndHoles& pieces,
                       double sure) {
  const FitAnswer& fit = pieces.fit;
  return safety({job.survey, *job.design, room.shape(), room.draws, fit.pieces, fit.frames, &fit,
                 room.adjustment.complete(), sure, &pieces.drill});
}

tl::expected<Job, Faults> designed_job(const std::string& folder) {
  auto job = read_job(folder);
  if (!job || job->design) return job;
  return tl::unexpected(Faults{{{folder + "/design.toml",
                                 {},
                                 "no such file",
                                 "no-file",
                                 "this command needs a design; 'nookfit room' does without"}},
                               {}});
}

}  // namespace nook
