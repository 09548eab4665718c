// The lock is the kernel's: a killed process lets go of it.
#include "job/folder_lock.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <cerrno>
#include <filesystem>
#include <system_error>

namespace nook {
namespace {

namespace fs = std::filesystem;

const char* made(const std::string& folder) {
  fs::create_directories(folder);
  return folder.c_str();
}

}  // namespace

bool has_room(const std::string& folder) {
  return fs::exists(fs::path(folder) / "room.toml");
}

bool has_file(const std::string& path) {
  return fs::exists(path);
}

FolderLock::FolderLock(const std::string& folder)
    : fd_(::open(made(folder), O_RDONLY | O_DIRECTORY | O_CLOEXEC)) {
  if (fd_ >= 0 && ::flock(fd_, LOCK_EX | LOCK_NB) == 0) return;
  const int error = errno;
  if (fd_ >= 0) ::close(fd_);
  throw std::system_error(error, std::generic_category(), folder);
}

FolderLock::~FolderLock() {
  ::close(fd_);
}

}  // namespace nook
