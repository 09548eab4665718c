// Drawings as SVG, by themselves or inside an HTML page.
#pragma once

#include <string>
#include <string_view>

#include "sheet/drawing.h"

namespace nook {

/// Text safe inside XML and HTML, attributes included; characters XML forbids become U+FFFD.
std::string escaped(std::string_view text);

/// A whole file: valid XML with title and description, its own style, light and dark. One unit of
/// its view box is one paper mm; x to the right and y down from the drawing's upper left corner.
std::string svg(const Drawing& drawing);

/// The same for inside a page that holds `svg_style()`; `id` makes its identifiers unique there.
std::string inline_svg(const Drawing& drawing, const std::string& id);

/// The rules both need: kinds of line and ground, words, and what changes in the dark and on paper.
std::string svg_style();

}  // namespace nook
