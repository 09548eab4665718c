// The whole message of every fault in the files of tests/job/bad, compared with the .expected
// beside it. After a wanted change of words: NOOKFIT_ACCEPT=1 build/release/tests/test_job 'bad
// files:*', then read the difference.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "base/diagnostic.h"
#include "job/job.h"
#include "job/samples.h"
#include "source_dir.h"

using namespace nook;
namespace fs = std::filesystem;

namespace {

const fs::path kFolder = NOOKFIT_SOURCE_DIR "/tests/job/bad";

std::vector<std::string> bad_files() {
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator(kFolder))
    if (entry.path().extension() == ".toml") names.push_back(entry.path().filename().string());
  std::sort(names.begin(), names.end());
  return names;
}

template <class T>
Diagnostics faults_of(const tl::expected<T, Diagnostics>& read) {
  return read ? Diagnostics{} : read.error();
}

// The kind of file is the first word of its name.
Diagnostics faults(const std::string& name, const std::string& text) {
  if (name.starts_with("room-")) return faults_of(parse_room(text, name));
  if (name.starts_with("design-")) return faults_of(parse_design(text, name));
  return faults_of(parse_pieces(text, name));
}

std::string messages(const std::string& name, const std::string& text) {
  std::string said;
  for (const Diagnostic& fault : faults(name, text)) said += message(fault, text);
  return said;
}

}  // namespace

TEST_CASE("bad files: every fault is said in the words expected", "[golden]") {
  const bool accept = std::getenv("NOOKFIT_ACCEPT") != nullptr;
  const auto names = bad_files();
  CHECK(names.size() >= 200);
  for (const std::string& name : names) {
    INFO(name);
    const std::string said = messages(name, test_file("bad/" + name));
    CHECK_FALSE(said.empty());
    const fs::path expected = (kFolder / name).replace_extension(".expected");
    if (accept) std::ofstream(expected, std::ios::binary) << said;
    CHECK(said == test_file("bad/" + expected.filename().string()));
  }
}

TEST_CASE("bad files: every fault says what to do") {
  std::size_t count = 0;
  for (const std::string& name : bad_files())
    for (const Diagnostic& fault : faults(name, test_file("bad/" + name))) {
      INFO(name << ": " << fault.what);
      CHECK(fault.help.size() > 4);
      CHECK(message(fault, "").find("\nhelp: ") != std::string::npos);
      ++count;
    }
  CHECK(count > 300);
}

TEST_CASE("bad files: one with three faults reports three, in the order of their places") {
  const std::string name = "room-three-faults.toml";
  const Diagnostics found = faults(name, test_file("bad/" + name));
  REQUIRE(found.size() == 3);
  CHECK(found[0].code == "unknown-word");
  CHECK(found[1].code == "unknown-key");
  CHECK(found[2].code == "decimal-comma");
  CHECK(found[2].place == Place{9, 35, 1});
}

TEST_CASE("bad files: cut off anywhere, a good file ends in an answer or a fault") {
  for (const std::string& text : {kRoom, kDesign, kPieces})
    for (std::size_t size = 0; size < text.size(); ++size) {
      const std::string cut = text.substr(0, size);
      for (const auto& found : {faults_of(parse_room(cut, "f")), faults_of(parse_design(cut, "f"))})
        for (const Diagnostic& fault : found) CHECK_FALSE(message(fault, cut).empty());
    }
}
