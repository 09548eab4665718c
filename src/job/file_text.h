// The whole text of one of the user's files, or the reason why there is none.
#pragma once

#include <filesystem>
#include <string>
#include <tl/expected.hpp>

#include "base/diagnostic.h"

namespace nook {

/// No job's file is larger (chosen): 100,000 readings take some 6 MB.
inline constexpr std::size_t kLargestFile = 8u << 20;

/// Reads an ordinary file of UTF-8 text. `name` is what messages call it. A folder, device, pipe,
/// link that leads nowhere, a file too large or not UTF-8 is a fault.
tl::expected<std::string, Diagnostic> file_text(const std::filesystem::path& path,
                                                const std::string& name);

/// The fault of a text that is not UTF-8, at its place; line 0 where all of it is.
Diagnostic utf8_fault(std::string_view text, const std::string& name);

}  // namespace nook
