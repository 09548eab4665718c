// Drawings as PDF pages and PNG pictures, through cairo.
#pragma once

#include <stdexcept>
#include <string>
#include <vector>

#include "sheet/drawing.h"

namespace nook {

/// The machine lacks something: cairo could not be loaded or ran out of memory.
struct NoPaper : std::runtime_error {
  using std::runtime_error::runtime_error;
};

/// One PDF page a drawing, each as large as its extent at its scale; words in DejaVu Sans. The same
/// drawings give the same bytes. Cairo is loaded at the first call, so that a run without drawings
/// does not pay for it. Throws NoPaper.
std::string pdf(const std::vector<Drawing>& pages, const std::string& title);

/// A PNG on white, `dots` to a millimeter of paper. Throws NoPaper.
std::string png(const Drawing& drawing, double dots);

}  // namespace nook
