// Reads one file, careful about what is not an ordinary one.
#include "job/file_text.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>

#include "base/utf8.h"
#include "job/descriptor.h"

namespace nook {
namespace {

Diagnostic fault(const std::string& name, std::string what, std::string code, std::string help) {
  return {name, {}, std::move(what), std::move(code), std::move(help)};
}

Diagnostic unopened(const std::string& name, int error) {
  if (error == ENOENT || error == ENOTDIR)
    return fault(name, "there is no such file", "file-missing",
                 "check the name of the job's folder");
  if (error == ELOOP)
    return fault(name, "the link leads in a circle", "file-unreadable", "put the file itself here");
  return fault(name, fmt::format("the file cannot be read: {}", std::strerror(error)),
               "file-unreadable", "check who may read it");
}

Diagnostic too_large(const std::string& name) {
  return fault(name, fmt::format("the file is larger than {} MB", kLargestFile >> 20),
               "file-too-large", "no room or design needs as much: is it the right file?");
}

tl::expected<std::string, int> all_bytes(int fd) {
  std::string text;
  while (text.size() <= kLargestFile) {
    char piece[1 << 16];
    const ssize_t got = ::read(fd, piece, sizeof piece);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return tl::unexpected(errno);
    if (got == 0) break;
    text.append(piece, static_cast<std::size_t>(got));
  }
  return text;
}

}  // namespace

Diagnostic utf8_fault(std::string_view text, const std::string& name) {
  const auto bad = first_bad_byte(text);
  if (!bad) return {name, {}, "", "", ""};
  const std::string_view before = text.substr(0, *bad);
  const std::size_t line_start = before.rfind('\n') + 1;  // npos + 1 = 0
  const int line = 1 + static_cast<int>(std::count(before.begin(), before.end(), '\n'));
  const int column = 1 + static_cast<int>(code_points(before.substr(line_start))->size());
  return {
      name, {line, column, 1}, "this byte is not UTF-8 text", "not-utf8", "save the file as UTF-8"};
}

tl::expected<std::string, Diagnostic> file_text(const std::filesystem::path& path,
                                                const std::string& name) {
  // Not blocking: a pipe in place of the file must not hold us up.
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_NONBLOCK | O_CLOEXEC));
  const int error = errno;
  if (file.get() < 0) {
    std::error_code ignored;
    if (error == ENOENT && std::filesystem::is_symlink(path, ignored))
      return tl::unexpected(
          fault(name, "the link leads nowhere", "file-unreadable", "put the file itself here"));
    return tl::unexpected(unopened(name, error));
  }
  struct stat status {};
  if (::fstat(file.get(), &status) != 0) return tl::unexpected(unopened(name, errno));
  if (!S_ISREG(status.st_mode))
    return tl::unexpected(fault(
        name,
        S_ISDIR(status.st_mode) ? "this is a folder, not a file" : "this is not an ordinary file",
        "not-a-file", "the job's files are plain text files"));
  auto text = all_bytes(file.get());
  if (!text) return tl::unexpected(unopened(name, text.error()));
  if (text->size() > kLargestFile) return tl::unexpected(too_large(name));
  return std::move(*text);
}

}  // namespace nook
