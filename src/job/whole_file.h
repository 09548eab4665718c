// Writes a file whole or not at all.
#pragma once

#include <filesystem>
#include <string_view>

namespace nook {

/// Replaces the file at `path` (or makes it) in one step, and returns when it is on disk: whoever
/// reads it, also after a crash, finds the old text or the new one. A link is written through.
/// Throws std::system_error where that cannot be; the old file is left whole. One writer at a time:
/// a second one throws with EWOULDBLOCK.
void write_whole(const std::filesystem::path& path, std::string_view text);

}  // namespace nook
