// Pipes and folders for tests.
#include "sheet/tool.h"

#include <array>
#include <catch2/catch.hpp>
#include <cstdio>
#include <fstream>

namespace nook {

std::string output_of(const std::string& command) {
  INFO(command);
  std::FILE* pipe = popen(command.c_str(), "r");
  REQUIRE(pipe);
  std::string text;
  std::array<char, 4096> part;
  for (std::size_t n; (n = std::fread(part.data(), 1, part.size(), pipe)) > 0;)
    text.append(part.data(), n);
  const int status = pclose(pipe);
  INFO(text);
  REQUIRE(status == 0);
  return text;
}

TestFolder::TestFolder() {
  std::string name = (std::filesystem::temp_directory_path() / "nookfit-XXXXXX").string();
  REQUIRE(mkdtemp(name.data()));
  path_ = name;
}

std::string TestFolder::write(const std::string& name, const std::string& bytes) const {
  std::ofstream(path_ / name, std::ios::binary) << bytes;
  return *this / name;
}

}  // namespace nook
