// The walk through a room: what its file still lacks, as questions in the order one walks.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "design/design.h"
#include "job/edit.h"
#include "room/survey.h"

namespace nook {

/// An answer as typed. One that the other readings spoke against stays in the file, struck.
struct Answer {
  std::string text;
  bool struck = false;
};
using Answers = std::vector<Answer>;

/// One thing to ask. `write` puts the answers into the file: one, or the same thing taken again.
struct Question {
  std::string id;        // the same on every walk through the same file
  std::string ask;       // one line
  std::string like;      // an answer as it may be typed
  std::string sketch;    // what `?` shows: where to stand and where to hold the tape
  bool repeats = false;  // the same question comes back (the next stud) until it is skipped
  std::function<TextEdit::Done(TextEdit&, const Answers&)> write;
};

/// What a new file is asked first: units, walls (those of `design`, or null, as the example), how
/// the tape's end is set. Nothing of a text that is not TOML.
std::vector<Question> first_questions(const std::string& text, const Design* design);

/// What the readings still lack, in walking order: lengths and boards, floor down and
/// ceiling up from the level line, diagonals across the corners, walls beside the pieces of
/// `design` (null: at usual places), studs, obstacles, doors.
std::vector<Question> open_questions(const Survey& survey, const Design* design);

/// What else can be read; asked last, and understood at any question.
Question more_question(const Survey& survey);
/// Whether a line is such a reading: "plumb left, 24, 8, 2 1/16".
bool is_more(const std::string& answer);

/// Parts of an answer with several numbers: "14 9/16, 16 1/16 nail" -> two and "nail".
std::vector<std::string> parts_of(const std::string& answer);

}  // namespace nook
