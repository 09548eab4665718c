// Files replaced in one step.
#include "job/whole_file.h"

#include <sys/resource.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <system_error>

#include "job/file_text.h"

using namespace nook;
namespace fs = std::filesystem;

namespace {

// A folder of its own for each test, gone afterwards.
struct Folder {
  fs::path path;
  Folder() {
    std::string name = (fs::temp_directory_path() / "nookfit-XXXXXX").string();
    path = ::mkdtemp(name.data());
  }
  ~Folder() { fs::remove_all(path); }
  std::size_t files() const {
    return std::distance(fs::directory_iterator(path), fs::directory_iterator{});
  }
};

void put(const fs::path& path, const std::string& text) {
  std::ofstream(path, std::ios::binary) << text;
}

std::string get(const fs::path& path) {
  const auto text = file_text(path, path.string());
  return text ? *text : text.error().what;
}

}  // namespace

TEST_CASE("whole file: made, replaced, nothing left beside it") {
  const Folder folder;
  write_whole(folder.path / "a.toml", "one");
  CHECK(get(folder.path / "a.toml") == "one");
  write_whole(folder.path / "a.toml", "two");
  CHECK(get(folder.path / "a.toml") == "two");
  CHECK(folder.files() == 1);
}

TEST_CASE("whole file: keeps who may read it, and writes through a link") {
  const Folder folder;
  put(folder.path / "real.toml", "one");
  fs::permissions(folder.path / "real.toml", fs::perms::owner_read | fs::perms::owner_write);
  fs::create_symlink("real.toml", folder.path / "link.toml");
  write_whole(folder.path / "link.toml", "two");
  CHECK(fs::is_symlink(folder.path / "link.toml"));
  CHECK(get(folder.path / "real.toml") == "two");
  CHECK(fs::status(folder.path / "real.toml").permissions() ==
        (fs::perms::owner_read | fs::perms::owner_write));
}

TEST_CASE("whole file: a draft that a killed writer left is no hindrance") {
  const Folder folder;
  put(folder.path / ".a.toml.draft", "half a te");
  write_whole(folder.path / "a.toml", "x");
  CHECK(get(folder.path / "a.toml") == "x");
  CHECK(folder.files() == 1);
}

TEST_CASE("whole file: where it cannot be written the old one stays whole") {
  const Folder folder;
  CHECK_THROWS_AS(write_whole(folder.path / "none" / "a.toml", "x"), std::system_error);
  fs::create_directory(folder.path / "b.toml");
  CHECK_THROWS_AS(write_whole(folder.path / "b.toml", "x"), std::system_error);
  // A file may grow to 4 bytes only: the disk is as good as full.
  put(folder.path / "a.toml", "old");
  std::signal(SIGXFSZ, SIG_IGN);
  rlimit before{}, small{};
  ::getrlimit(RLIMIT_FSIZE, &before);
  small = before;
  small.rlim_cur = 4;
  ::setrlimit(RLIMIT_FSIZE, &small);
  CHECK_THROWS_AS(write_whole(folder.path / "a.toml", "much longer"), std::system_error);
  ::setrlimit(RLIMIT_FSIZE, &before);
  CHECK(get(folder.path / "a.toml") == "old");
  CHECK_FALSE(fs::exists(folder.path / ".a.toml.draft"));
}

TEST_CASE("file text: what is no ordinary file is said") {
  const Folder folder;
  CHECK(get(folder.path / "none") == "there is no such file");
  CHECK(get(folder.path) == "this is a folder, not a file");
  CHECK(get("/dev/zero") == "this is not an ordinary file");
  fs::create_symlink("loop", folder.path / "loop");
  CHECK(get(folder.path / "loop") == "the link leads in a circle");
  fs::create_symlink("nowhere", folder.path / "dangling");
  CHECK(get(folder.path / "dangling") == "the link leads nowhere");
  put(folder.path / "large", std::string(kLargestFile + 1, ' '));
  CHECK(get(folder.path / "large") == "the file is larger than 8 MB");
  put(folder.path / "fits", std::string(kLargestFile, ' '));
  CHECK(get(folder.path / "fits").size() == kLargestFile);
}
