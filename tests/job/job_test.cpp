// A job's folder read whole: which files must be there, and all faults of all of them at once.
#include "job/job.h"

#include <unistd.h>

#include <catch2/catch.hpp>
#include <fstream>

#include "job/samples.h"

using namespace nook;
namespace fs = std::filesystem;

namespace {

// A job's folder of its own for each test, gone afterwards.
struct JobFolder {
  fs::path path;
  JobFolder() {
    std::string name = (fs::temp_directory_path() / "nookfit-XXXXXX").string();
    path = ::mkdtemp(name.data());
  }
  ~JobFolder() { fs::remove_all(path); }
  void put(const std::string& name, const std::string& text) const {
    std::ofstream(path / name, std::ios::binary) << text;
  }
};

std::vector<std::string> codes(const Faults& faults) {
  std::vector<std::string> found;
  for (const Diagnostic& fault : faults.faults) found.push_back(fault.code);
  return found;
}

}  // namespace

TEST_CASE("job: three files that fit together") {
  const JobFolder folder;
  folder.put("room.toml", kRoom);
  folder.put("design.toml", kDesign);
  folder.put("pieces.toml", kPieces);
  const auto job = read_job(folder.path);
  REQUIRE(job);
  CHECK(job->survey.walls.size() == 2);
  CHECK(job->design->parts.size() == 5);
  CHECK(job->pieces->pieces.size() == 1);
  CHECK(job->origin_corner == 0);
}

TEST_CASE("job: room.toml alone is enough") {
  const JobFolder folder;
  folder.put("room.toml", "");
  const auto job = read_job(folder.path);
  REQUIRE(job);
  CHECK_FALSE(job->design);
  CHECK_FALSE(job->pieces);
}

TEST_CASE("job: a design in the second corner of an alcove") {
  const JobFolder folder;
  folder.put("room.toml", kAlcove);
  folder.put("design.toml", "corner = ['back', 'right']\n");
  const auto job = read_job(folder.path);
  REQUIRE(job);
  CHECK(job->origin_corner == 1);
}

TEST_CASE("job: a folder or a room.toml that is not there is said") {
  const JobFolder folder;
  const auto none = read_job(folder.path / "none");
  REQUIRE_FALSE(none);
  CHECK(codes(none.error()) == std::vector<std::string>{"folder-missing"});
  const auto empty = read_job(folder.path);
  REQUIRE_FALSE(empty);
  CHECK(codes(empty.error()) == std::vector<std::string>{"file-missing"});
  CHECK(empty.error().faults[0].file == (folder.path / "room.toml").string());
  folder.put("room.toml", "");
  const auto file = read_job(folder.path / "room.toml");
  REQUIRE_FALSE(file);
  CHECK(codes(file.error()) == std::vector<std::string>{"not-a-folder"});
}

TEST_CASE("job: faults of every file come together, with the texts they quote") {
  const JobFolder folder;
  folder.put("room.toml", "lenght = 1\n[[wall]]\nname = 3\n");
  folder.put("design.toml", "corner = ['left', 'right']\nx = 1\n");
  folder.put("pieces.toml", "[[piece]]\n");
  const auto job = read_job(folder.path);
  REQUIRE_FALSE(job);
  CHECK(codes(job.error()) ==
        std::vector<std::string>{"unknown-key", "missing-key", "unknown-key", "wrong-type"});
  REQUIRE(job.error().texts.size() == 3);
  CHECK(job.error().texts[1].text == "corner = ['left', 'right']\nx = 1\n");
}

TEST_CASE("job: walls of the design that the room does not have, and pieces of no part") {
  const JobFolder folder;
  folder.put("room.toml", kAlcove);
  folder.put("design.toml", "corner = ['left', 'bakc']\n");
  folder.put("pieces.toml", "[[piece]]\npart = 'shelf'\n");
  const auto job = read_job(folder.path);
  REQUIRE_FALSE(job);
  REQUIRE(codes(job.error()) == std::vector<std::string>{"unknown-wall", "unknown-part"});
  CHECK(job.error().faults[0].help == "did you mean 'back'?");
  CHECK(job.error().faults[1].what == "design.toml has no part 'shelf'");
}

TEST_CASE("job: a design that cannot be read is no reason to miss the others' faults") {
  const JobFolder folder;
  folder.put("room.toml", "x = 1\n");
  fs::create_directory(folder.path / "design.toml");
  folder.put("pieces.toml", "\xff");
  const auto job = read_job(folder.path);
  REQUIRE_FALSE(job);
  CHECK(codes(job.error()) == std::vector<std::string>{"not-a-file", "not-utf8", "unknown-key"});
}

TEST_CASE("job: in the folder itself, files are called by their bare names") {
  const JobFolder folder;
  const fs::path before = fs::current_path();
  fs::current_path(folder.path);
  const auto job = read_job(".");
  fs::current_path(before);
  REQUIRE_FALSE(job);
  CHECK(job.error().faults[0].file == "room.toml");
}
