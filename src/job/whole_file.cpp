// A new file beside the old one, synced, then renamed over it, then the folder synced.
#include "job/whole_file.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <string>
#include <system_error>

#include "job/descriptor.h"

namespace nook {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void fail(const fs::path& path, int error) {
  throw std::system_error(error, std::generic_category(), "cannot write " + path.string());
}

Descriptor opened(const fs::path& path, int flags, mode_t mode) {
  const int fd = ::open(path.c_str(), flags | O_CLOEXEC, mode);
  if (fd < 0) fail(path, errno);
  return Descriptor(fd);
}

// The draft beside the file, locked: what a killed writer left of one is used again.
class Draft {
 public:
  Draft(fs::path path, fs::path target)
      : path_(std::move(path)),
        target_(std::move(target)),
        file_(opened(path_, O_WRONLY | O_CREAT | O_NOFOLLOW, 0666)) {
    if (::flock(file_.get(), LOCK_EX | LOCK_NB) != 0) fail(target_, errno);
    // Between opening and locking another writer may have renamed it away.
    struct stat opened {
    }, named{};
    ::fstat(file_.get(), &opened);
    const bool ours = ::lstat(path_.c_str(), &named) == 0 && opened.st_ino == named.st_ino &&
                      opened.st_dev == named.st_dev && S_ISREG(opened.st_mode);
    if (!ours) fail(target_, EWOULDBLOCK);
    placed_ = false;
  }
  ~Draft() {
    if (!placed_) ::unlink(path_.c_str());
  }

  void write(std::string_view text) {
    check(::ftruncate(file_.get(), 0));
    while (!text.empty()) {
      const ssize_t written = ::write(file_.get(), text.data(), text.size());
      if (written < 0 && errno == EINTR) continue;
      check(written < 0 ? -1 : 0);
      text.remove_prefix(static_cast<std::size_t>(written));
    }
    struct stat old {};
    if (::stat(target_.c_str(), &old) == 0) check(::fchmod(file_.get(), old.st_mode & 07777));
    check(::fsync(file_.get()));
  }

  void place() {
    check(::rename(path_.c_str(), target_.c_str()));
    placed_ = true;
  }

 private:
  void check(int result) const {
    if (result != 0) fail(target_, errno);
  }

  fs::path path_, target_;
  Descriptor file_;
  bool placed_ = true;  // until it is known to be ours
};

}  // namespace

void write_whole(const fs::path& path, std::string_view text) {
  std::error_code unresolved;
  fs::path target = fs::is_symlink(path, unresolved) ? fs::weakly_canonical(path) : path;
  const fs::path folder = target.has_parent_path() ? target.parent_path() : fs::path(".");
  if (fs::is_directory(target, unresolved)) fail(target, EISDIR);
  Draft draft(folder / ("." + target.filename().string() + ".draft"), target);
  draft.write(text);
  draft.place();
  const Descriptor synced = opened(folder, O_RDONLY | O_DIRECTORY, 0);
  if (::fsync(synced.get()) != 0 && errno != EINVAL)
    fail(target, errno);  // EINVAL: no folder sync here
}

}  // namespace nook
