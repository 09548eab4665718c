// The room's questions, and readings that the others foretell otherwise.
#include "command/entry.h"

#include <algorithm>

#include "command/doubt.h"
#include "command/unusual.h"
#include "job/job.h"

namespace nook {

std::vector<Question> RoomEntry::open(const std::string& text) {
  std::vector<Question> questions = first_questions(text, design_);
  const auto survey = parse_room(text, file());
  if (!survey || survey->walls.empty()) return questions;
  for (Question& next : open_questions(*survey, design_)) questions.push_back(std::move(next));
  return questions;
}

Diagnostics RoomEntry::faults(const std::string& text) const {
  auto survey = parse_room(text, file());
  if (survey) return {};
  // The file's help shows keys; here a word behind the reading says the same.
  for (Diagnostic& fault : survey.error())
    if (fault.code == "on-baseboard")
      fault.help =
          "say 'board' behind the reading where it reached the baseboard, 'wall' where it "
          "reached the wall";
  return std::move(survey.error());
}

std::optional<Question> RoomEntry::any_time(const std::string& text,
                                            const std::string& line) const {
  if (line != "more" && !is_more(line)) return {};
  const auto survey = parse_room(text, file());
  return more_question(survey ? *survey : Survey{});
}

std::string RoomEntry::doubt(const std::string& before, const std::string& after,
                             const Question&) const {
  const auto old = parse_room(before, file()), survey = parse_room(after, file());
  if (!old || !survey) return {};
  const Rounding rounding = rounding_ ? *rounding_ : usual_rounding(survey->units);
  const auto known = unusual(*old, rounding);
  for (const std::string& odd : unusual(*survey, rounding))
    if (std::find(known.begin(), known.end(), odd) == known.end()) return odd + " is unusual";
  const std::optional<Doubt> found = nook::doubt(*old, *survey);
  if (!found) return {};
  return with_unit({found->said_mm}, rounding) + "; expected " +
         with_unit({found->expected_mm.value}, rounding) + ", give or take " +
         give_or_take({kTwoSided95 * found->expected_mm.sd}, rounding);
}

}  // namespace nook
