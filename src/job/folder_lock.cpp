// The lock is the kernel's: a killed process lets go of it.
#include "job/folder_lock.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <cerrno>
#include <system_error>

namespace nook {

FolderLock::FolderLock(const std::filesystem::path& folder)
    : fd_(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)) {
  if (fd_ >= 0 && ::flock(fd_, LOCK_EX | LOCK_NB) == 0) return;
  const int error = errno;
  if (fd_ >= 0) ::close(fd_);
  throw std::system_error(error, std::generic_category(), folder.string());
}

FolderLock::~FolderLock() {
  ::close(fd_);
}

}  // namespace nook
