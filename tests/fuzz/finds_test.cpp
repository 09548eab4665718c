// Odd inputs that fuzzing came upon, under tests/fuzz/finds/TARGET, and every sample.
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "fuzz/targets.h"
#include "source_dir.h"

using namespace nook;
namespace fs = std::filesystem;

namespace {

std::string bytes_of(const fs::path& file) {
  std::ifstream stream(file, std::ios::binary);
  std::stringstream bytes;
  bytes << stream.rdbuf();
  return bytes.str();
}

std::vector<fs::path> files_in(const fs::path& folder, const std::string& ending) {
  std::vector<fs::path> files;
  if (!fs::exists(folder)) return files;
  for (const auto& entry : fs::recursive_directory_iterator(folder)) {
    const std::string name = entry.path().filename().string();
    if (entry.is_regular_file() && name.ends_with(ending)) files.push_back(entry.path());
  }
  return files;
}

}  // namespace

TEST_CASE("fuzz: what fuzzing came upon keeps each reader's promises", "[fuzz-regression]") {
  for (const auto& [name, feed] : feeds()) {
    const auto files = files_in(fs::path(NOOKFIT_SOURCE_DIR) / "tests/fuzz/finds" / name, "");
    CHECK(files.size() >= 10);
    for (const fs::path& file : files) {
      INFO(file.string());
      CHECK_NOTHROW(feed(bytes_of(file)));
    }
  }
}

TEST_CASE("fuzz: the samples and the bad files keep each reader's promises", "[fuzz-regression]") {
  int fed = 0;
  for (const std::string_view name : {"room", "design", "pieces"}) {
    for (const char* folder : {"rooms", "tests/job/bad"}) {
      for (const fs::path& file : files_in(fs::path(NOOKFIT_SOURCE_DIR) / folder, ".toml")) {
        for (const auto& [target, feed] : feeds()) {
          INFO(file.string() << " as " << target);
          CHECK_NOTHROW(feed(bytes_of(file)));
        }
        fed += name == "room";
      }
    }
  }
  CHECK(fed > 200);
}
