// A sample job worked out through all its answers, ready for its sheets.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "fit/fit.h"
#include "job/job.h"
#include "sheet/sheet.h"
#include "sheet/sheet_job.h"
#include "survey/adjustment.h"

namespace nook {

/// One of the folders in rooms/, at 60 draws.
class SampleJob {
 public:
  explicit SampleJob(const std::string& name);
  SampleJob(const SampleJob&) = delete;
  SampleJob& operator=(const SampleJob&) = delete;

  const SheetJob& job() const { return *sheet_job_; }
  std::vector<Sheet> sheets() const;

 private:
  Job read_;
  Adjustment adjustment_;
  RoomReport report_;
  std::vector<RoomShape> draws_;
  FitAnswer fit_;
  DrillAnswer drill_;
  CutAnswer cut_;
  CarryAnswer carry_;
  SafetyAnswer safety_;
  std::unique_ptr<SheetJob> sheet_job_;
};

/// The job of that folder, worked out once for all tests.
const SampleJob& sample_of(const std::string& name);

}  // namespace nook
