// What a fuzzer feeds: each reader with any bytes. Each throws BrokenInvariant where a promise of
// the reader does not hold; a crash or a sanitizer's finding speaks for itself.
#pragma once

#include <string_view>
#include <utility>
#include <vector>

namespace nook {

/// Lengths, slopes, loads, densities and angles as typed; the first byte chooses which.
void feed_notation(std::string_view bytes);
/// room.toml, design.toml, pieces.toml.
void feed_room(std::string_view bytes);
void feed_design(std::string_view bytes);
void feed_pieces(std::string_view bytes);
/// A command line, its words parted by line ends.
void feed_command_line(std::string_view bytes);

/// All of them, by name.
using Feed = void (*)(std::string_view);
const std::vector<std::pair<std::string_view, Feed>>& feeds();

}  // namespace nook
