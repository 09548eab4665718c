// An HTML page as a browser lays it out.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

namespace nook {

/// What a headless browser found in the pages, each at each width: an array of
///   {"width", "scroll_width", "wide": [...], "overlaps": [...], "outside": [...], "texts",
///   "headings"}
/// in the order of pages, then widths. `wide`: elements that stand out of the page or whose content
/// stands out of them; `overlaps`: pairs of words in one picture that cover each other; `outside`:
/// words that stand out of their picture. The test stops where the browser's console says anything.
nlohmann::json laid_out(const std::vector<std::string>& pages, const std::vector<int>& widths);

/// What a page says on the browser's console; empty where nothing.
std::string heard(const std::string& page);

/// The page printed to PDF by the browser.
std::string printed(const std::string& html_file, const std::string& pdf_file);

}  // namespace nook
