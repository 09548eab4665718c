// One guided entry at a time: a lock on the job's folder that ends with the process.
#pragma once

#include <string>

namespace nook {

/// Whether the folder has a room.toml.
bool has_room(const std::string& folder);
/// Whether there is a file of that path.
bool has_file(const std::string& path);

/// Makes the folder where it is missing, and takes it away again at the end where nothing was put
/// into it. Holds the folder until it goes out of scope or the process dies, however it dies;
/// leaves no file behind. Throws std::system_error: EWOULDBLOCK where another process holds it.
class FolderLock {
 public:
  explicit FolderLock(const std::string& folder);
  FolderLock(const FolderLock&) = delete;
  FolderLock& operator=(const FolderLock&) = delete;
  ~FolderLock();

 private:
  std::string folder_;
  bool made_;
  int fd_;
};

}  // namespace nook
