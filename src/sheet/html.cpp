// Headings, words, tables and inline pictures, with the one style sheet they need.
#include "sheet/html.h"

#include <fmt/format.h>

#include <algorithm>

#include "sheet/svg.h"
#include "sheet/wrap.h"

namespace nook {
namespace {

// Canvases in CSS millimeters: a phone 390 px wide less its margins, and a sheet of paper.
constexpr Canvas kNarrow{94, 150, 3.4};
constexpr Canvas kWide{180, 190, 4};
constexpr Canvas kWideOnePage{180, 95, 4};

// As it may stand in a page; numbers stay with their fractions and units.
std::string text_of(std::string_view words) {
  std::string kept;
  while (!words.empty()) {
    const std::size_t end = break_after(words, 0);
    for (const char c : words.substr(0, end)) kept += c == ' ' ? "\xC2\xA0" : std::string(1, c);
    if (end < words.size()) kept += ' ';
    words.remove_prefix(std::min(end + 1, words.size()));
  }
  return escaped(kept);
}

std::string style(const Sheet& sheet) {
  const char* paper = sheet.paper == PaperSize::letter ? "letter" : "A4";
  return svg_style() +
         "body{margin:0;background:var(--paper);color:var(--ink);"
         "font:16px/1.4 'DejaVu Sans',Verdana,Roboto,sans-serif;overflow-wrap:break-word}\n"
         "main{max-width:182mm;margin:0 auto;padding:0 16px 32px}\n"
         "h1{font-size:1.6em;line-height:1.2}h2{font-size:1.3em;line-height:1.2;margin-top:1.6em;"
         "border-top:2px solid var(--ink);padding-top:.5em}\n"
         ".row{display:flex;flex-wrap:wrap;gap:0 6mm;align-items:flex-end}"
         ".row figure{flex:0 1 auto}"
         "figure{margin:1em 0}figcaption{font-size:.9em;margin-top:.3em}"
         "figure svg{display:block;width:100%;height:auto;margin:0 auto}\n"
         "table{border-collapse:collapse;width:100%;margin:1em "
         "0;font-variant-numeric:tabular-nums}\n"
         "caption{text-align:left;font-weight:bold;padding-bottom:.3em}\n"
         "th,td{text-align:left;vertical-align:top;padding:.25em .5em .25em 0;"
         "border-bottom:1px solid var(--shade)}thead th{border-bottom:2px solid var(--ink)}\n"
         "li{margin:.3em 0}.strong{font-weight:bold}.one-page{font-size:1.1em}\n"
         ".narrow{display:none}\n"
         "@media screen and (max-width:699px){.wide{display:none}.narrow{display:block}"
         "table{font-size:.85em}th,td{padding-right:.35em}}\n" +
         fmt::format("@page{{size:{};margin:12mm}}\n", paper) +
         "@media print{body{font-size:11pt}main{max-width:none;padding:0}"
         "h2,caption{break-after:avoid}figure,tr{break-inside:avoid}thead{display:table-header-"
         "group}"
         ".one-page{break-before:page;break-inside:avoid;font-size:10.5pt}"
         ".one-page p,.one-page table,.one-page figure,.one-page ul{margin:.4em 0}"
         ".one-page figcaption{display:none}.one-page h2{margin-top:0}"
         ".one-page th,.one-page td{padding-top:.12em;padding-bottom:.12em}"
         ".one-page+section{break-before:page}}\n";
}

class Writer {
 public:
  explicit Writer(const Sheet& sheet) : sheet_(sheet) {}

  std::string whole() {
    out_ = fmt::format(
        "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
        "<meta name=\"viewport\" content=\"width=device-width,initial-scale=1\">\n"
        "<meta name=\"color-scheme\" content=\"light dark\">\n<title>{0}</title>\n"
        "<link rel=\"icon\" href=\"data:,\">\n<style>\n{1}</style>\n</head>\n<body>\n<main>\n"
        "<h1>{0}</h1>\n",
        text_of(sheet_.title), style(sheet_));
    for (const SheetSection& section : sheet_.sections) put(section);
    return out_ + "</main>\n</body>\n</html>\n";
  }

 private:
  void put(const SheetSection& section) {
    one_page_ = section.one_page;
    const int number = ++sections_;
    out_ += fmt::format("<section{} aria-labelledby=\"s{}\">\n<h2 id=\"s{}\">{}</h2>\n",
                        section.one_page ? " class=\"one-page\"" : "", number, number,
                        text_of(section.heading));
    for (std::size_t i = 0; i < section.blocks.size();) {
      const std::size_t together = abreast(section.blocks, i);
      const auto* figure = std::get_if<SheetFigure>(&section.blocks[i]);
      const bool row = figure && figure->abreast > 1;
      if (row) out_ += "<div class=\"row\">\n";
      for (const std::size_t end = i + together; i < end; ++i)
        std::visit([&](const auto& form) { put(form); }, section.blocks[i]);
      if (row) out_ += "</div>\n";
    }
    out_ += "</section>\n";
  }
  void put(const SheetWords& words) {
    out_ +=
        fmt::format("<p{}>{}</p>\n", words.strong ? " class=\"strong\"" : "", text_of(words.words));
  }
  void put(const SheetList& list) {
    const char* tag = list.numbered ? "ol" : "ul";
    out_ += fmt::format("<{}>\n", tag);
    for (const std::string& item : list.items) out_ += fmt::format("<li>{}</li>\n", text_of(item));
    out_ += fmt::format("</{}>\n", tag);
  }
  void put(const SheetTable& table) {
    out_ += "<table>\n";
    if (!table.caption.empty())
      out_ += fmt::format("<caption>{}</caption>\n", text_of(table.caption));
    out_ += "<thead><tr>";
    for (const std::string& head : table.heads)
      out_ += fmt::format("<th scope=\"col\">{}</th>", text_of(head));
    out_ += "</tr></thead>\n<tbody>\n";
    for (const std::vector<std::string>& row : table.rows) put(row);
    out_ += "</tbody>\n</table>\n";
  }
  void put(const std::vector<std::string>& row) {
    out_ += "<tr>";
    for (std::size_t i = 0; i < row.size(); ++i)
      out_ += i == 0 ? fmt::format("<th scope=\"row\">{}</th>", text_of(row[i]))
                     : fmt::format("<td>{}</td>", text_of(row[i]));
    out_ += "</tr>\n";
  }
  void put(const SheetFigure& figure) {
    Canvas canvas = one_page_ ? kWideOnePage : kWide;
    if (figure.tallest > 0) canvas.height = std::min(canvas.height, figure.tallest);
    canvas.width = (canvas.width + kAbreastGap) / figure.abreast - kAbreastGap;
    const Drawing wide = figure.draw(canvas);
    const Drawing narrow = figure.draw(kNarrow);
    const int number = ++figures_;
    out_ += "<figure>\n<div class=\"wide\">\n" + inline_svg(wide, fmt::format("w{}", number)) +
            "</div>\n<div class=\"narrow\">\n" + inline_svg(narrow, fmt::format("n{}", number)) +
            fmt::format("</div>\n<figcaption>{}</figcaption>\n</figure>\n", text_of(wide.title));
  }

  const Sheet& sheet_;
  std::string out_;
  bool one_page_ = false;
  int sections_ = 0, figures_ = 0;
};

}  // namespace

std::string html(const Sheet& sheet) {
  return Writer(sheet).whole();
}

}  // namespace nook
