// Every file that `nookfit sheet` leaves in its folder.
#pragma once

#include <string>
#include <vector>

#include "sheet/sheet.h"
#include "sheet/sheet_job.h"

namespace nook {

struct SheetFile {
  std::string name;  // "installing.html"
  std::string bytes;
};

/// The files, in the order one looks at them. With `known` false only the measuring sheet: what
/// stands in no room yet is neither cut nor installed. Throws NoPaper.
std::vector<SheetFile> sheet_files(const SheetJob& job, bool known);

/// Pictures and outlines of the pieces alone, and the templates that fit on paper. Throws NoPaper.
std::vector<SheetFile> piece_files(const JobScene& scene, const CutAnswer& cut);

/// Letter where lengths are in inches, else A4.
PaperSize usual_paper(Unit unit);

/// `wall-left` of "wall-left", `front-panel` of "front panel": letters, digits and hyphens only.
std::string file_name(const std::string& words);

/// {"files": [...]} after the opening of an answer; text: the files, one a line.
std::string sheet_json(const std::vector<SheetFile>& files, const std::string& job,
                       Verdict verdict);
std::string sheet_text(const std::vector<SheetFile>& files, const std::string& folder,
                       Verdict verdict, const Style& style);

}  // namespace nook
