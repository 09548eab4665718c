// The one adjustment of the whole room: readings -> room with certainty.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "base/measured.h"
#include "room/shape.h"
#include "room/survey.h"
#include "survey/report.h"
#include "survey/undecided.h"

namespace nook {

/// The room as found, with its joint certainty.
/// 1. `room()` is the adjusted room in the room frame of corner `origin_corner`.
/// 2. `draws(n)` are n rooms from the joint posterior, the same on every run and machine; they come
///    in antithetic pairs, so their mean is `room()` to first order.
/// 3. Nothing here stands while `complete()` is false: `report().missing` says what is wanted, or
/// `report().suspects` what bends the room.
class Adjustment {
 public:
  struct Parts;
  explicit Adjustment(std::shared_ptr<const Parts> parts);

  bool complete() const;
  const RoomShape& room() const;
  const RoomReport& report() const;
  std::vector<RoomShape> draws(int count, std::uint64_t seed = 1) const;

  /// The straight distance between exact marks `first` and `second` (mm from the real corner, on
  /// the two walls of corner `corner`) at `height` above the floor; sd without reading errors.
  tl::expected<Measured, std::string> expected_diagonal(int corner, double first, double second,
                                                        double height) const;
  /// The straight distance between two named marks.
  tl::expected<Measured, std::string> expected_span(const std::string& a,
                                                    const std::string& b) const;

  /// The readings that settle most of what is undecided, best first; with nothing given, of what
  /// matters in any room.
  std::vector<NextReading> measure_next(const std::vector<Undecided>& undecided, int count) const;
  /// The posterior variance of a quantity, mm^2 over its tolerance squared; infinite where the
  /// readings do not determine it.
  double variance(const Undecided& undecided) const;

 private:
  std::shared_ptr<const Parts> parts_;
};

/// Weighted least squares with priors over every reading that is not struck.
Adjustment adjust(const Survey& survey, int origin_corner = 0);

}  // namespace nook
