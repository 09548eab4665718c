// The lock is the kernel's: a killed process lets go of it.
#include "job/folder_lock.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <cerrno>
#include <filesystem>
#include <system_error>

namespace nook {

namespace fs = std::filesystem;

bool has_room(const std::string& folder) {
  return fs::exists(fs::path(folder) / "room.toml");
}

bool has_file(const std::string& path) {
  return fs::exists(path);
}

FolderLock::FolderLock(const std::string& folder)
    : folder_(folder),
      made_(fs::create_directories(folder)),
      fd_(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)) {
  if (fd_ >= 0 && ::flock(fd_, LOCK_EX | LOCK_NB) == 0) return;
  const int error = errno;
  if (fd_ >= 0) ::close(fd_);
  throw std::system_error(error, std::generic_category(), folder);
}

FolderLock::~FolderLock() {
  if (made_) ::rmdir(folder_.c_str());  // refused by the kernel where it holds anything
  ::close(fd_);
}

}  // namespace nook
