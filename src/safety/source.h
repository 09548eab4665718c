// Documents that cautions name without a figure: one table, each with how it is known.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "safety/limit.h"

namespace nook {

struct NamedSource {
  std::string_view caution;   // id of the caution that names it
  std::string_view document;  // and section
  Known known;
};

/// Every named document, in the order of the table.
enum class From { wedge_block, window_fall, escape_window, pipe_depth, toy_chests, lead_dust };

/// All of them, in the order of `From`.
std::span<const NamedSource> named_sources();

/// "ASTM F963, 4.27, toy chests (from memory)".
std::string cited(From which);

}  // namespace nook
