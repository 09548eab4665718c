// Sheets and pictures in all the formats they come in.
#include "sheet/sheet_set.h"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "sheet/assembly.h"
#include "sheet/cutting_sheet.h"
#include "sheet/dxf.h"
#include "sheet/elevation.h"
#include "sheet/full_size.h"
#include "sheet/html.h"
#include "sheet/installing_sheet.h"
#include "sheet/measuring_sheet.h"
#include "sheet/pages.h"
#include "sheet/paper.h"
#include "sheet/piece_drawing.h"
#include "sheet/plan.h"
#include "sheet/profile.h"
#include "sheet/svg.h"
#include "sheet/template.h"

namespace nook {
namespace {

constexpr Canvas kPicture{180, 200, 4};
constexpr double kDots = 6;  // of a PNG to a millimeter: 150 to the inch

class Files {
 public:
  explicit Files(PaperSize paper) : paper_(paper) {}

  void sheet(Sheet sheet) {
    sheet.paper = paper_;
    add(sheet.name + ".html", html(sheet));
    add(sheet.name + ".pdf", pdf(pages_of(sheet), sheet.title));
  }
  void picture(const Drawing& drawing) { add(file_name(drawing.name) + ".svg", svg(drawing)); }
  // What one sends to somebody by phone is a PNG too.
  void photo(const Drawing& drawing) {
    picture(drawing);
    add(file_name(drawing.name) + ".png", png(drawing, kDots));
  }
  void pieces(const JobScene& scene, const CutAnswer& cut) {
    std::vector<Drawing> full_size;
    for (const CutPiece& each : cut.pieces) {
      const PieceView view = cut_view(scene, each);
      piece(view, scene.rounding);
      for (Drawing& one : templates_of(view, scene.rounding))
        if (tiling_of(one, PaperSize::letter).pages() <= kMostTiles)
          full_size.push_back(std::move(one));
    }
    templates(full_size);
  }
  std::vector<SheetFile> all() && { return std::move(files_); }

 private:
  void piece(const PieceView& view, const Rounding& rounding) {
    Drawing drawing = piece_drawing(view, kPicture, rounding);
    drawing.name = "piece " + view.name;
    picture(drawing);
    add(file_name(drawing.name) + ".dxf", dxf(outline_drawing(view)));
  }
  // Templates on both papers, so that whoever prints them has the right one.
  void templates(const std::vector<Drawing>& all) {
    if (all.empty()) return;
    for (const auto& [paper, name] : {std::pair{PaperSize::letter, "templates-letter.pdf"},
                                      std::pair{PaperSize::a4, "templates-a4.pdf"}}) {
      std::vector<Drawing> pages;
      for (const Drawing& one : all)
        for (Drawing& page : template_pages(one, paper)) pages.push_back(std::move(page));
      add(name, pdf(pages, "Templates in full size"));
    }
  }
  // Two names that come to one file name are told apart by a number.
  void add(const std::string& name, std::string bytes) {
    std::string free = name;
    const std::size_t dot = name.rfind('.');
    for (int n = 2; taken(free); ++n)
      free = fmt::format("{}-{}{}", name.substr(0, dot), n, name.substr(dot));
    files_.push_back({free, std::move(bytes)});
  }
  bool taken(const std::string& name) const {
    return std::any_of(files_.begin(), files_.end(),
                       [&](const SheetFile& f) { return f.name == name; });
  }

  PaperSize paper_;
  std::vector<SheetFile> files_;
};

}  // namespace

std::vector<SheetFile> sheet_files(const SheetJob& job, bool known) {
  Files files(usual_paper(job.style.rounding.unit));
  files.sheet(measuring_sheet(job, known));
  if (!known) return std::move(files).all();
  files.sheet(cutting_sheet(job));
  files.sheet(installing_sheet(job));
  files.photo(plan(job.scene, kPicture));
  files.picture(plan_made_large(job.scene, kPicture));
  for (int wall = 0; wall < static_cast<int>(job.scene.room.walls.size()); ++wall) {
    files.photo(elevation(job.scene, wall, kPicture));
    files.picture(profile(job.scene, wall, kPicture));
  }
  files.photo(assembled(job.scene, kPicture));
  files.pieces(job.scene, *job.cut);
  return std::move(files).all();
}

std::vector<SheetFile> piece_files(const JobScene& scene, const CutAnswer& cut) {
  Files files(usual_paper(scene.rounding.unit));
  files.pieces(scene, cut);
  return std::move(files).all();
}

PaperSize usual_paper(Unit unit) {
  return unit == Unit::inch ? PaperSize::letter : PaperSize::a4;
}

std::string file_name(const std::string& words) {
  std::string name;
  for (unsigned char c : words) {
    const bool plain = (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z');
    if (plain)
      name += static_cast<char>(c);
    else if (c >= 'A' && c <= 'Z')
      name += static_cast<char>(c - 'A' + 'a');
    else if (!name.empty() && name.back() != '-')
      name += '-';
  }
  while (!name.empty() && name.back() == '-') name.pop_back();
  return name.empty() ? "unnamed" : name;
}

std::string sheet_json(const std::vector<SheetFile>& files, const std::string& job,
                       Verdict verdict) {
  Json json = opening("sheet", job, verdict);
  json["files"] = Json::array();
  for (const SheetFile& file : files) json["files"].push_back(file.name);
  return dumped(json);
}

std::string sheet_text(const std::vector<SheetFile>& files, const std::string& folder,
                       Verdict verdict, const Style& style) {
  std::string text = fmt::format("Sheets: {}\n\n", headline(verdict, style));
  for (const SheetFile& file : files) text += fmt::format("  {}/{}\n", folder, file.name);
  return text;
}

}  // namespace nook
