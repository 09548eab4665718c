// Folders made by the standard library.
#include "sheet/folder.h"

#include <filesystem>
#include <system_error>

namespace nook {

void make_folder(const std::string& path) {
  std::error_code error;
  std::filesystem::create_directories(path, error);
  if (!error && !std::filesystem::is_directory(path))
    error = std::make_error_code(std::errc::not_a_directory);
  if (error) throw std::system_error(error, "cannot make the folder " + path);
}

}  // namespace nook
