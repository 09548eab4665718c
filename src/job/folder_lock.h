// One guided entry at a time: a lock on the job's folder that ends with the process.
#pragma once

#include <filesystem>

namespace nook {

/// Holds the folder until it goes out of scope or the process dies, however it dies; leaves no file
/// behind. Throws std::system_error: EWOULDBLOCK where another process holds it.
class FolderLock {
 public:
  explicit FolderLock(const std::filesystem::path& folder);
  FolderLock(const FolderLock&) = delete;
  FolderLock& operator=(const FolderLock&) = delete;
  ~FolderLock();

 private:
  int fd_;
};

}  // namespace nook
