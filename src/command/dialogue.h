// Guided entry of a file: one question at a time, each accepted answer on disk before the next.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "job/folder_lock.h"
#include "job/walk.h"

namespace nook {

/// A walk through one file of a job.
/// 1. The file is written whole and synced before the next question; a killed entry loses nothing.
/// 2. What the file already says stays as it is, byte for byte.
/// 3. The answers taken are those the file's reader takes, no others.
class Dialogue {
 public:
  /// Makes the folder where it is missing. Throws UsageFault where another entry holds it.
  /// `aside`: the dialogue goes to standard error, since an answer follows on standard output.
  Dialogue(const std::string& folder, const std::string& name, bool aside);
  virtual ~Dialogue() = default;

  /// Asks until nothing is open, the input ends or the person says `done`.
  void walk();

  int accepted() const { return accepted_; }

 protected:
  void say(const std::string& text) const;
  const std::string& file() const { return file_; }

 private:
  /// What is still open in the file, in the order to ask it.
  virtual std::vector<Question> open(const std::string& text) = 0;
  virtual Diagnostics faults(const std::string& text) const = 0;
  /// Why the last of the answers should be read again; empty where nothing speaks against it.
  virtual std::string doubt(const std::string& before, const std::string& after,
                            const Question& question) const = 0;

  /// The question that a line answers whatever was asked; `more` asks for its sketch.
  virtual std::optional<Question> any_time(const std::string&, const std::string&) const {
    return {};
  }

  struct Step {
    std::string before;  // the text without this answer
    Question question;
    Answers answers;
  };

  /// Whether the file has changed since it was last read or written here.
  bool refresh();
  std::optional<Question> still_open(const Question& question, const std::string& line);
  bool sound(const std::string& text) const;
  std::optional<Question> next();
  void heard(const Question& question, const std::string& line);
  void back();
  void forget_doubt();
  /// Says what is forgotten.
  void leave_out_doubted();
  void say_words() const;
  void take(const Question& question, const std::string& line);
  bool accept(const std::string& before, const Question& question, const Answers& answers);
  bool doubted(const std::string& text, const Question& question, const std::string& line);

  std::string folder_, file_;
  FolderLock lock_;
  bool aside_;
  std::string text_;
  std::vector<Step> steps_;
  std::set<std::string> skipped_;
  std::vector<std::string> just_skipped_;    // since the last answer, for `back`
  std::optional<std::string> doubted_;       // an answer that awaits `keep` or another reading
  std::vector<std::string> doubted_before_;  // and answers to the same question before it
  bool doubted_aside_ = false;               // it is of a kind that was not asked for
  bool again_ = false;                       // the next answer is the last question's, taken again
  int accepted_ = 0;
};

}  // namespace nook
