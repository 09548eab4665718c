// Lines in, lines out; the file is the only memory.
#include "command/dialogue.h"

#include <cerrno>
#include <iostream>
#include <system_error>

#include "command/output.h"
#include "job/file_text.h"
#include "job/whole_file.h"
#include "sheet/wrap.h"

namespace nook {
namespace {

constexpr const char* kMore = "more";
constexpr const char* kWords =
    "  ?: where to measure  back: the last one anew  again: once more  skip  done\n";

std::string trimmed(const std::string& line) {
  const auto from = line.find_first_not_of(" \t\r");
  if (from == std::string::npos) return {};
  return line.substr(from, line.find_last_not_of(" \t\r") - from + 1);
}

}  // namespace

Dialogue::Dialogue(const std::string& folder, const std::string& name, bool aside) try
    : folder_(folder), file_(folder + "/" + name), lock_(folder), aside_(aside) {
} catch (const std::system_error& fault) {
  if (fault.code().value() != EWOULDBLOCK) throw;
  throw UsageFault("another entry is open in " + folder, "entry-open",
                   "finish that one first, or type 'done' there");
}

void Dialogue::say(const std::string& text) const {
  aside_ ? complain(text) : print(text);
}

void Dialogue::walk() {
  say_words();
  std::string line;
  while (true) {
    refresh();
    std::optional<Question> question = next();
    if (!question) break;
    say("\n" + wrapped(question->ask, kPageWidth, "") + "  like " + question->like + "\n> ");
    if (!std::getline(std::cin, line)) break;
    line = trimmed(line);
    if (line == "done") break;
    if (refresh()) question = still_open(*question, line);
    if (question) heard(*question, line);
  }
  leave_out_doubted();
  say("\n");
}

// The file is the truth: what was written into it meanwhile counts.
bool Dialogue::refresh() {
  if (!has_file(file_)) return false;
  const auto read = file_text(file_, file_);
  if (!read) throw std::runtime_error(message(read.error(), ""));
  if (*read == text_) return false;
  text_ = *read;
  steps_.clear();
  again_ = false;
  return true;
}

// The same question to the file as it is now, or nothing where the file answers it.
std::optional<Question> Dialogue::still_open(const Question& question, const std::string& line) {
  for (Question& now : open(text_))
    if (now.id == question.id) return std::move(now);
  say(wrapped(line, kPageWidth, "  left out, the file has been changed: "));
  return {};
}

bool Dialogue::sound(const std::string& text) const {
  const Diagnostics found = faults(text);
  if (found.empty()) return true;
  say(wrapped(found.front().what, kPageWidth, "  not taken: ") +
      wrapped(found.front().help, kPageWidth, "  "));
  return false;
}

std::optional<Question> Dialogue::next() {
  if (again_) return steps_.back().question;
  for (Question& question : open(text_))
    if (!skipped_.count(question.id)) return std::move(question);
  return {};
}

void Dialogue::heard(const Question& question, const std::string& line) {
  if (line == "?") return say(question.sketch.empty() ? "\n" : question.sketch);
  if (line == kMore)
    if (const std::optional<Question> more = any_time(text_, line)) return say(more->sketch);
  if (line == "back") return back();
  if (line == "again") {
    leave_out_doubted();
    again_ = !steps_.empty() && !steps_.back().question.repeats;
    return again_ ? void() : say("  there is no reading to take again yet\n");
  }
  if (line.empty()) return say_words();
  if (line == "skip") {
    again_ = false;
    leave_out_doubted();
    skipped_.insert(question.id);
    just_skipped_.push_back(question.id);
    return;
  }
  // A doubted line of another kind waits for `keep`; anything else answers the question.
  const bool keep = doubted_aside_ && line == "keep";
  if (doubted_aside_ && !keep) leave_out_doubted();
  const std::optional<Question> other = any_time(text_, keep ? *doubted_ : line);
  if (!other) return take(question, line);
  if (!keep) forget_doubt();
  again_ = false;
  const int before = accepted_;
  take(*other, line);
  doubted_aside_ = doubted_.has_value();
  if (accepted_ > before) say("  taken\n");
}

void Dialogue::forget_doubt() {
  doubted_.reset();
  doubted_before_.clear();
  doubted_aside_ = false;
}

void Dialogue::leave_out_doubted() {
  for (const std::string& line : doubted_before_) say(wrapped(line, kPageWidth, "  left out: "));
  if (doubted_) say(wrapped(*doubted_, kPageWidth, "  left out: "));
  forget_doubt();
}

void Dialogue::say_words() const {
  say(kWords);
  if (any_time(text_, kMore)) say("  more: what else can be read, typed at any question\n");
}

void Dialogue::back() {
  leave_out_doubted();
  again_ = false;
  if (!just_skipped_.empty()) {
    skipped_.erase(just_skipped_.back());
    just_skipped_.pop_back();
    return say("  it was skipped\n");
  }
  if (steps_.empty()) return say("  this is the first one here\n");
  const Step step = steps_.back();
  say("  it was " + step.answers.back().text + "\n");
  write_whole(file_, step.before);
  text_ = step.before;
  steps_.pop_back();
  skipped_.erase(step.question.id);
  --accepted_;
}

void Dialogue::take(const Question& question, const std::string& line) {
  Answers answers;
  std::string before = text_;
  if (again_) {
    before = steps_.back().before;
    answers = steps_.back().answers;
  }
  const bool keep = doubted_ && line == "keep";
  for (const std::string& other : doubted_before_) answers.push_back({other, true});
  if (doubted_ && !keep && *doubted_ != line) answers.push_back({*doubted_, true});
  answers.push_back({keep ? *doubted_ : line});
  if (!accept(before, question, answers)) return;
  forget_doubt();
  again_ = false;
}

bool Dialogue::accept(const std::string& before, const Question& question, const Answers& answers) {
  TextEdit edit(before);
  const TextEdit::Done done = question.write(edit, answers);
  if (!done) return say(wrapped(done.error(), kPageWidth, "  not taken: ")), false;
  if (!sound(edit.text())) return false;
  if (doubted(edit.text(), question, answers.back().text)) return false;
  write_whole(file_, edit.text());
  text_ = edit.text();
  if (again_) steps_.pop_back();
  just_skipped_.clear();
  steps_.push_back({before, question, answers});
  ++accepted_;
  return true;
}

// Asks once more where something speaks against it, each new reading too; `keep` or the same again
// takes it.
bool Dialogue::doubted(const std::string& text, const Question& question, const std::string& line) {
  if (doubted_ == line) return false;
  const std::string why = doubt(text_, text, question);
  if (why.empty()) return false;
  say(wrapped(why + ": read again? Type the reading, or keep.", kPageWidth, "  "));
  if (doubted_) doubted_before_.push_back(*doubted_);
  doubted_ = line;
  return true;
}

}  // namespace nook
