// Carries a job's files into a new folder.
#include "job/new_job.h"

#include <filesystem>

#include "job/file_text.h"
#include "job/whole_file.h"

namespace nook {
namespace {

namespace fs = std::filesystem;

std::string text_of(const fs::path& file) {
  auto text = file_text(file, file.string());
  return text ? *text : std::string{};
}

}  // namespace

NewJobRefused refused_by(const std::string& job, const std::string& folder) {
  std::error_code error;
  if (fs::equivalent(job, folder, error)) return NewJobRefused::same_folder;
  const fs::path room = fs::path(folder) / "room.toml";
  const bool other =
      fs::exists(room, error) && text_of(room) != text_of(fs::path(job) / "room.toml");
  return other ? NewJobRefused::other_job : NewJobRefused::no;
}

std::string lost_under(const std::string& job, const std::string& folder,
                       const std::string& design) {
  std::error_code error;
  const auto differs = [&](const char* name, const std::string& text) {
    const fs::path there = fs::path(folder) / name;
    return fs::exists(there, error) && text_of(there) != text;
  };
  const fs::path pieces = fs::path(job) / "pieces.toml";
  if (differs("design.toml", design)) return (fs::path(folder) / "design.toml").string();
  if (fs::exists(pieces, error) && differs("pieces.toml", text_of(pieces)))
    return (fs::path(folder) / "pieces.toml").string();
  return {};
}

std::string design_text(const std::string& job) {
  return text_of(fs::path(job) / "design.toml");
}

void write_job(const std::string& job, const std::string& folder, const std::string& design) {
  fs::create_directories(folder);
  for (const char* name : {"room.toml", "pieces.toml"})
    if (const fs::path from = fs::path(job) / name; fs::exists(from))
      write_whole(fs::path(folder) / name, text_of(from));
  write_whole(fs::path(folder) / "design.toml", design);
}

}  // namespace nook
