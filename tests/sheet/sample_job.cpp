// The same steps as the command takes, with fewer draws.
#include "sheet/sample_job.h"

#include <catch2/catch.hpp>
#include <map>

#include "sheet/cutting_sheet.h"
#include "sheet/installing_sheet.h"
#include "sheet/measuring_sheet.h"
#include "sheet/sheet_set.h"
#include "source_dir.h"

namespace nook {
namespace {

constexpr int kDraws = 60;

Job read(const std::string& name) {
  auto job = read_job(NOOKFIT_SOURCE_DIR "/rooms/" + name);
  REQUIRE(job);
  return std::move(*job);
}

}  // namespace

SampleJob::SampleJob(const std::string& name)
    : read_(read(name)),
      adjustment_(adjust(read_.survey, read_.origin_corner)),
      report_(adjustment_.report()),
      draws_(adjustment_.draws(kDraws)) {
  const RoomShape& room = adjustment_.room();
  const Design& design = *read_.design;
  fit_ = fit({read_.survey, design, room, draws_});
  drill_ = drill({read_.survey, design, room, draws_, fit_.pieces, fit_.frames});
  cut_ = cut({design, fit_, &drill_});
  carry_ = carry({read_.survey, design, room, draws_, fit_});
  safety_ = safety({read_.survey, design, room, draws_, fit_.pieces, fit_.frames, &fit_});
  const Rounding rounding = usual_rounding(read_.survey.units);
  const JobScene scene{read_.survey, room,    draws_, report_, fit_.pieces,
                       fit_.frames,  &design, &fit_,  &drill_, rounding};
  Foretold proof;
  proof.ends[0] = design.corner[0], proof.ends[1] = design.corner[1];
  proof.along[0] = proof.along[1] = millimetres(900);
  proof.value = Measured{1280, 1};
  proof.tape_sd = 1.5;
  Style style;
  style.rounding = rounding;
  sheet_job_ = std::make_unique<SheetJob>(SheetJob{design.title,
                                                   scene,
                                                   &cut_,
                                                   &carry_,
                                                   &safety_,
                                                   adjustment_.measure_next({}, 3),
                                                   {},
                                                   0,
                                                   proof,
                                                   style});
}

const SampleJob& sample_of(const std::string& name) {
  static std::map<std::string, std::unique_ptr<SampleJob>> known;
  std::unique_ptr<SampleJob>& sample = known[name];
  if (!sample) sample = std::make_unique<SampleJob>(name);
  return *sample;
}

std::vector<Sheet> SampleJob::sheets() const {
  std::vector<Sheet> sheets{measuring_sheet(job(), true), cutting_sheet(job()),
                            installing_sheet(job())};
  for (Sheet& sheet : sheets) sheet.paper = usual_paper(job().style.rounding.unit);
  return sheets;
}

}  // namespace nook
