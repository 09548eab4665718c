// The dialogue of a guided entry.
#include "command/entry.h"

#include <cerrno>
#include <iostream>
#include <system_error>

#include "command/doubt.h"
#include "command/output.h"
#include "job/file_text.h"
#include "job/job.h"
#include "job/whole_file.h"
#include "sheet/wrap.h"

namespace nook {
namespace {

constexpr const char* kWords =
    "  ?: where to measure  back: the last one anew  again: once more  skip  done\n";

std::string trimmed(const std::string& line) {
  const auto from = line.find_first_not_of(" \t\r");
  if (from == std::string::npos) return {};
  return line.substr(from, line.find_last_not_of(" \t\r") - from + 1);
}

// A doubted reading as it stays in the file: struck, with the reason.
std::string struck(const std::string& answer) {
  return "{ is = " + nook::quoted(answer) + ", struck = true, note = 'read again' }";
}

}  // namespace

Entry::Entry(const std::string& folder, const Design* design, bool aside) try
    : folder_(folder), file_(folder + "/room.toml"), lock_(folder), design_(design), aside_(aside) {
} catch (const std::system_error& fault) {
  if (fault.code().value() != EWOULDBLOCK) throw;
  throw UsageFault("another entry is open in " + folder, "entry-open",
                   "finish that one first, or type 'done' there");
}

void Entry::say(const std::string& text) const {
  aside_ ? complain(text) : print(text);
}

void Entry::walk(const Rounding* rounding) {
  rounding_ = rounding;
  say(kWords);
  std::string line;
  while (true) {
    refresh();
    const std::optional<Question> question = next();
    if (!question) break;
    say("\n" + wrapped(question->ask, kPageWidth, "") + "  like " + question->like + "\n> ");
    if (!std::getline(std::cin, line)) break;
    line = trimmed(line);
    if (line == "done") break;
    heard(*question, line);
  }
  say("\n");
}

// The file is the truth: what was written into it meanwhile counts.
void Entry::refresh() {
  if (!has_room(folder_)) return;
  const auto read = file_text(file_, file_);
  if (!read) throw std::runtime_error(message(read.error(), ""));
  if (*read == text_) return;
  text_ = *read;
  steps_.clear();
}

std::optional<Survey> Entry::survey_of(const std::string& text) const {
  const auto survey = parse_room(text, file_);
  if (survey) return *survey;
  const Diagnostic& fault = survey.error().front();
  say(wrapped(fault.what, kPageWidth, "  not taken: ") + wrapped(fault.help, kPageWidth, "  "));
  return {};
}

std::optional<Question> Entry::next() {
  if (again_) return steps_.back().question;
  std::vector<Question> open = first_questions(text_);
  if (open.empty()) {
    const std::optional<Survey> survey = survey_of(text_);
    if (survey) open = open_questions(*survey, design_);
  }
  for (Question& question : open)
    if (!skipped_.count(question.id)) return std::move(question);
  return {};
}

void Entry::heard(const Question& question, const std::string& line) {
  if (line == "?") return say(question.sketch.empty() ? "\n" : question.sketch);
  if (line == "back") return back();
  if (line == "again") {
    again_ = !steps_.empty() && !steps_.back().question.repeats;
    return again_ ? void() : say("  there is no reading to take again yet\n");
  }
  if (line.empty()) return say(kWords);
  if (line == "skip") {
    again_ = false;
    doubted_.reset();
    skipped_.insert(question.id);
    return;
  }
  take(question, line);
}

void Entry::back() {
  doubted_.reset();
  again_ = false;
  if (steps_.empty()) return say("  this is the first one here\n");
  const Step step = steps_.back();
  say("  it was " + step.answers.back() + "\n");
  write_whole(file_, step.before);
  text_ = step.before;
  steps_.pop_back();
  skipped_.erase(step.question.id);
  --accepted_;
}

void Entry::take(const Question& question, const std::string& line) {
  std::vector<std::string> answers;
  std::string before = text_;
  if (again_) {
    before = steps_.back().before;
    answers = steps_.back().answers;
  }
  const bool keep = doubted_ && line == "keep";
  if (doubted_ && !keep && *doubted_ != line) answers.push_back(struck(*doubted_));
  answers.push_back(keep ? *doubted_ : line);
  if (!accept(before, question, answers)) return;
  doubted_.reset();
  again_ = false;
}

bool Entry::accept(const std::string& before, const Question& question,
                   const std::vector<std::string>& answers) {
  TextEdit edit(before);
  const TextEdit::Done done = question.write(edit, answers);
  if (!done) return say(wrapped(done.error(), kPageWidth, "  not taken: ")), false;
  if (!survey_of(edit.text())) return false;
  if (doubted(edit.text(), question, answers.back())) return false;
  write_whole(file_, edit.text());
  text_ = edit.text();
  if (again_) steps_.pop_back();
  steps_.push_back({before, question, answers});
  ++accepted_;
  return true;
}

// Asks once more where the others foretell something else; `keep` or the same again takes it.
bool Entry::doubted(const std::string& text, const Question& question, const std::string& line) {
  if (doubted_ || question.repeats) return false;
  const auto before = parse_room(text_, file_), after = parse_room(text, file_);
  if (!before || !after) return false;
  const std::optional<Doubt> found = doubt(*before, *after);
  if (!found) return false;
  const Rounding rounding = rounding_of(*after);
  say(wrapped(with_unit({found->said_mm}, rounding) + "; expected " +
                  with_unit({found->expected_mm.value}, rounding) + ", give or take " +
                  give_or_take({kTwoSided95 * found->expected_mm.sd}, rounding) +
                  ": read again? Type the reading, or keep.",
              kPageWidth, "  "));
  doubted_ = line;
  return true;
}

Rounding Entry::rounding_of(const Survey& survey) const {
  return rounding_ ? *rounding_ : usual_rounding(survey.units);
}

}  // namespace nook
