// A job folder read whole: room.toml, design.toml and pieces.toml as plain values.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "base/diagnostic.h"
#include "design/as_cut.h"
#include "design/design.h"
#include "room/survey.h"

namespace nook {

/// The faults of a job's files together with the texts their messages quote.
struct Faults {
  struct Text {
    std::string file, text;
  };
  Diagnostics faults;  // sorted
  std::vector<Text> texts;
};

struct Job {
  std::string folder;  // as named by the user
  Survey survey;
  std::optional<Design> design;
  std::optional<PiecesAsCut> pieces;
  int origin_corner = 0;  // of the survey: the design's corner
};

/// Reads a job folder; room.toml must be there, the other two may be missing. All faults at once.
tl::expected<Job, Faults> read_job(const std::filesystem::path& folder);

/// The parts, for tests and for text that is not on disk. `file` is the name messages use.
tl::expected<Survey, Diagnostics> parse_room(std::string_view text, const std::string& file);
tl::expected<Design, Diagnostics> parse_design(std::string_view text, const std::string& file);
tl::expected<PiecesAsCut, Diagnostics> parse_pieces(std::string_view text, const std::string& file);
/// Faults that show only when two files are seen together: a wall, part or corner that is not
/// there. Each is filed under the name of the file that mentions it.
struct FileNames {
  std::string room, design, pieces;
};
Diagnostics faults_between(const Survey& survey, const Design& design, const FileNames& names);
Diagnostics faults_between(const Design& design, const PiecesAsCut& pieces, const FileNames& names);

/// The corner of the survey that a design stands in; nothing where its walls are not neighbors
/// there, left one first.
std::optional<int> corner_of(const Survey& survey, const Design& design);

}  // namespace nook
