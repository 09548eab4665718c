// Reads a job's folder: three files, all their faults at once.
#include "job/job.h"

#include <fmt/format.h>

#include "job/file_text.h"

namespace nook {
namespace {

namespace fs = std::filesystem;

class JobReader {
 public:
  explicit JobReader(const fs::path& folder) : folder_(folder) {
    names_ = {name("room.toml"), name("design.toml"), name("pieces.toml")};
  }

  tl::expected<Job, Faults> read() {
    std::error_code ignored;
    if (!fs::is_directory(folder_, ignored)) return tl::unexpected(no_folder());
    Job job;
    job.folder = folder_.string();
    const auto survey = file<Survey>(names_.room, parse_room, needed_);
    job.design = file<Design>(names_.design, parse_design, optional_);
    job.pieces = file<PiecesAsCut>(names_.pieces, parse_pieces, optional_);
    if (survey && job.design && faults_.faults.empty())
      add(faults_between(*survey, *job.design, names_));
    if (job.design && job.pieces) add(faults_between(*job.design, *job.pieces, names_));
    if (!faults_.faults.empty()) {
      sort(faults_.faults);
      return tl::unexpected(std::move(faults_));
    }
    job.survey = *survey;
    if (job.design) job.origin_corner = corner_of(job.survey, *job.design).value();
    return job;
  }

 private:
  static constexpr bool needed_ = true, optional_ = false;

  std::string name(const char* file) const {
    return folder_ == "." ? file : (folder_ / file).string();
  }

  Faults no_folder() const {
    std::error_code ignored;
    const bool there = fs::exists(folder_, ignored);
    return {{{folder_.string(),
              {},
              there ? "this is not a folder" : "there is no such folder",
              there ? "not-a-folder" : "folder-missing",
              "a job is a folder that holds room.toml and design.toml"}},
            {}};
  }

  std::string how_to_begin() const {
    const std::string job = folder_ == "." ? "" : " " + folder_.string();
    return fmt::format("'nookfit survey{}' makes it; or check the folder's name", job);
  }

  void add(Diagnostics more) {
    faults_.faults.insert(faults_.faults.end(), more.begin(), more.end());
  }

  template <class T, class Parse>
  std::optional<T> file(const std::string& name, Parse parse, bool must) {
    auto text = file_text(name, name);
    if (!text) {
      const bool missing = text.error().code == "file-missing";
      if (must && missing) text.error().help = how_to_begin();
      if (must || !missing) add({text.error()});
      return std::nullopt;
    }
    auto value = parse(*text, name);
    faults_.texts.push_back({name, std::move(*text)});
    if (value) return std::move(*value);
    add(std::move(value.error()));
    return std::nullopt;
  }

  fs::path folder_;
  FileNames names_;
  Faults faults_;
};

}  // namespace

tl::expected<Job, Faults> read_job(const std::filesystem::path& folder) {
  return JobReader(folder).read();
}

}  // namespace nook
