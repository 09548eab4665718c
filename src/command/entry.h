// Guided entry of the room: one question at a time, each accepted answer on disk before the next.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "job/folder_lock.h"
#include "job/walk.h"
#include "room/survey.h"
#include "sheet/answer.h"

namespace nook {

/// A walk through one job's room.toml.
/// 1. The file is written whole and synced before the next question; a killed entry loses nothing.
/// 2. What the file already says stays as it is, byte for byte.
/// 3. The answers taken are those the file's reader takes, no others.
class Entry {
 public:
  /// Makes the folder where it is missing. Throws UsageFault where another entry holds it.
  /// `aside`: the dialogue goes to standard error, since an answer follows on standard output.
  Entry(const std::string& folder, const Design* design, bool aside);

  /// Asks until nothing is open, the input ends or the person says `done`.
  void walk(const Rounding* rounding);

  int accepted() const { return accepted_; }

 private:
  struct Step {
    std::string before;  // the text without this answer
    Question question;
    std::vector<std::string> answers;
  };

  void say(const std::string& text) const;
  void refresh();
  std::optional<Survey> survey_of(const std::string& text) const;
  std::optional<Question> next();
  void heard(const Question& question, const std::string& line);
  void back();
  void take(const Question& question, const std::string& line);
  bool accept(const std::string& before, const Question& question,
              const std::vector<std::string>& answers);
  bool doubted(const std::string& text, const Question& question, const std::string& line);
  Rounding rounding_of(const Survey& survey) const;

  std::string folder_, file_;
  FolderLock lock_;
  const Design* design_;
  bool aside_;
  const Rounding* rounding_ = nullptr;
  std::string text_;
  std::vector<Step> steps_;
  std::set<std::string> skipped_;
  std::optional<std::string> doubted_;  // an answer that awaits `keep` or another reading
  bool again_ = false;                  // the next answer is the last question's, taken again
  int accepted_ = 0;
};

}  // namespace nook
