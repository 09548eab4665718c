// Runs an outside program in a test and keeps what it says.
#pragma once

#include <cstdlib>
#include <filesystem>
#include <string>

namespace nook {

/// What a shell command prints; the test stops where it fails.
std::string output_of(const std::string& command);

/// A folder of its own, gone at the end of its scope.
class TestFolder {
 public:
  TestFolder();
  ~TestFolder() { std::filesystem::remove_all(path_); }
  TestFolder(const TestFolder&) = delete;
  TestFolder& operator=(const TestFolder&) = delete;

  /// The path of a file in it.
  std::string operator/(const std::string& name) const { return (path_ / name).string(); }
  /// Writes a file there and gives its path.
  std::string write(const std::string& name, const std::string& bytes) const;

 private:
  std::filesystem::path path_;
};

}  // namespace nook
