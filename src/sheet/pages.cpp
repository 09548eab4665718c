// Blocks set one below the other until a page is full.
#include "sheet/pages.h"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>

#include "base/invariant.h"
#include "sheet/table_widths.h"
#include "sheet/text_width.h"

namespace nook {
namespace {

constexpr double kMargin = 15, kFooter = 8;  // mm. Chosen
constexpr double kTapedMargin = 11;          // mm round a page that is taped up. Chosen
constexpr double kBody = 4;                  // mm of the em: 11 points
constexpr double kLeading = 1.3;             // lines are 1.3 ems apart
constexpr double kSmallType = 3.6;   // mm of the em: no smaller than 10 points for a picture's sake
constexpr double kLeastFigure = 60;  // mm of height below which a figure goes over the page

// What is being set: pages so far, and where the next line goes.
class Setter {
 public:
  Setter(const Sheet& sheet, double body, double margin = kMargin)
      : sheet_(sheet), paper_(size_of(sheet.paper)), body_(body), margin_(margin) {}

  void section(const SheetSection& section) {
    captionless_ = section.one_page;  // there the heading says what is seen
    if (pages_.empty() || section.one_page) new_page();
    if (room() < opening_of(section)) new_page();
    words(section.heading, 1.35 * body_, true, 0, 0);
    gap(0.4);
    for (std::size_t i = 0; i < section.blocks.size();) {
      const std::size_t together = abreast(section.blocks, i);
      const auto* figure = std::get_if<SheetFigure>(&section.blocks[i]);
      if (figure && figure->abreast > 1)
        put_abreast(section.blocks, i, together);
      else
        std::visit([&](const auto& form) { put(form); }, section.blocks[i]);
      i += together;
    }
    gap(1);
  }
  void title(const std::string& text) {
    new_page();
    words(text, 1.7 * body_, true, 0, 0);
    gap(0.6);
  }
  std::vector<Drawing> pages() && { return std::move(pages_); }
  /// How far down the last page is filled, mm from its top.
  double filled() const { return paper_.y - y_; }
  double room() const { return y_ - margin_ - kFooter; }
  /// The height that figures without a limit of their own may take; 0 = what is left of a page.
  double figure_height = 0;
  /// How high a figure comes out at most, its caption included.
  double height_of(const SheetFigure& figure) const {
    const double most = figure.tallest > 0 ? figure.tallest : figure.fair;
    const Drawing drawing = figure.draw({column_of(figure), most, std::clamp(body_, 4.0, 5.0)});
    return drawing.extent.height() * drawing.scale + kLeading * body_;
  }

 private:
  double width() const { return paper_.x - 2 * margin_; }
  double column_of(const SheetFigure& figure) const {
    return (width() + kAbreastGap) / figure.abreast - kAbreastGap;
  }

  void new_page() {
    Drawing page;
    page.name = sheet_.name;
    page.title = sheet_.title;
    page.extent = {{0, 0}, paper_};
    pages_.push_back(std::move(page));
    y_ = paper_.y - margin_;
  }
  void gap(double ems) { y_ -= ems * body_; }
  void need(double height) {
    if (room() < height) new_page();
  }
  void line_at(Vec2 at, const std::string& text, double size, bool bold) {
    pages_.back().add("words", Text{at, text, size, Align::start, 0, bold, false});
  }
  void line(double x, const std::string& text, double size, bool bold) {
    line_at({margin_ + x, y_}, text, size, bold);
  }
  // Lines from x to the right margin; `keep` mm must be free below the first, else a new page.
  void words(const std::string& text, double size, bool bold, double x, double keep) {
    const std::vector<std::string> lines = lines_within(text, size, width() - x, bold);
    need(kLeading * size * lines.size() + keep);
    for (const std::string& one : lines) {
      need(kLeading * size);
      y_ -= kLeading * size / 2;
      line(x, one, size, bold);
      y_ -= kLeading * size / 2;
    }
  }

  // What a section opens with stays together: its heading, words, and the first thing after them.
  double opening_of(const SheetSection& section) const {
    double height = 4 * body_;
    for (const SheetBlock& block : section.blocks) {
      if (const auto* words = std::get_if<SheetWords>(&block)) {
        height +=
            kLeading * body_ * lines_within(words->words, body_, width(), true).size() + body_;
        continue;
      }
      const auto* figure = std::get_if<SheetFigure>(&block);
      return height + (!figure               ? 5 * kLeading * body_
                       : figure->tallest > 0 ? height_of(*figure) + kLeading * body_
                                             : kLeastFigure);
    }
    return height;
  }

  void put(const SheetWords& block) {
    words(block.words, body_, block.strong, 0, 0);
    gap(0.5);
  }
  void put(const SheetList& list) {
    const double indent = (list.numbered ? 2.2 : 1.2) * body_;
    for (std::size_t i = 0; i < list.items.size(); ++i) {
      const std::vector<std::string> lines = lines_within(list.items[i], body_, width() - indent);
      need(kLeading * body_ * lines.size());
      const std::string mark = list.numbered ? fmt::format("{}.", i + 1) : "\xE2\x80\xA2";
      const double top = y_;
      y_ -= kLeading * body_ / 2;
      line(0, mark, body_, false);
      y_ = top;
      words(list.items[i], body_, false, indent, 0);
      gap(0.25);
    }
    gap(0.4);
  }

  void put(const SheetTable& table) {
    const std::vector<double> columns = column_widths(table, body_, width());
    if (!table.caption.empty()) words(table.caption, body_, true, 0, 4 * kLeading * body_);
    row(table.heads, columns, true);
    for (const std::vector<std::string>& cells : table.rows) {
      if (room() < height_of(cells, columns, false)) {
        new_page();
        row(table.heads, columns, true);
      }
      row(cells, columns, false);
    }
    gap(0.7);
  }
  double height_of(const std::vector<std::string>& cells, const std::vector<double>& columns,
                   bool head) const {
    std::size_t most = 1;
    for (std::size_t c = 0; c < cells.size(); ++c)
      most = std::max(
          most,
          lines_within(cells[c], body_, columns[c] - kCellGap * body_, head || c == 0).size());
    return kLeading * body_ * most + 0.3 * body_;
  }
  void row(const std::vector<std::string>& cells, const std::vector<double>& columns, bool head) {
    const double height = height_of(cells, columns, head), top = y_;
    double x = 0;
    for (std::size_t c = 0; c < cells.size(); x += columns[c++]) {
      y_ = top - 0.15 * body_;
      for (const std::string& one :
           lines_within(cells[c], body_, columns[c] - kCellGap * body_, head || c == 0)) {
        y_ -= kLeading * body_ / 2;
        line(x, one, body_, head || c == 0);
        y_ -= kLeading * body_ / 2;
      }
    }
    y_ = top - height;
    pages_.back().add("rules", Polyline{{{margin_, y_}, {paper_.x - margin_, y_}},
                                        false,
                                        head ? LineKind::normal : LineKind::thin});
  }

  void put(const SheetFigure& figure) {
    const double caption = (captionless_ ? 0.7 : 2) * kLeading * body_;
    const double whole = paper_.y - 2 * margin_ - kFooter - 40;
    const double most = figure.tallest > 0  ? figure.tallest
                        : figure_height > 0 ? figure_height
                                            : whole;
    Drawing drawing = figure.draw({width(), most, std::clamp(body_, 4.0, 5.0)});
    const double high = drawing.extent.height() * drawing.scale;
    if (room() < high + caption) {
      if (figure_height <= 0 && figure.tallest <= 0 && room() > kLeastFigure + caption)
        drawing = figure.draw({width(), room() - caption, std::clamp(body_, 4.0, 5.0)});
      if (room() < drawing.extent.height() * drawing.scale + caption) new_page();
    }
    place(drawing, 0, width());
    y_ -= drawing.extent.height() * drawing.scale + 0.3 * body_;
    if (!captionless_) words(drawing.title, 0.9 * body_, false, 0, 0);
    gap(0.6);
  }
  // A drawing in the middle of a column of the page, its top where the next line goes.
  void place(const Drawing& drawing, double left, double column) {
    const double wide = drawing.extent.width() * drawing.scale;
    const double high = drawing.extent.height() * drawing.scale;
    const Vec2 corner{margin_ + left + (column - wide) / 2, y_ - high};
    append(pages_.back(), drawing, corner - drawing.scale * drawing.extent.low, drawing.scale);
  }

  // Figures side by side, the words of each under it.
  void put_abreast(const std::vector<SheetBlock>& blocks, std::size_t first, std::size_t count) {
    const double size = 0.9 * body_;
    std::vector<Drawing> drawings;
    std::vector<std::vector<std::string>> captions;
    const double column = column_of(std::get<SheetFigure>(blocks[first]));
    double high = 0, low = 0;
    for (std::size_t i = first; i < first + count; ++i) {
      const auto& figure = std::get<SheetFigure>(blocks[i]);
      drawings.push_back(figure.draw({column, figure.tallest, kBody}));
      captions.push_back(lines_within(drawings.back().title, size, column));
      high = std::max(high, drawings.back().extent.height() * drawings.back().scale);
      low = std::max(low, kLeading * size * captions.back().size());
    }
    need(high + low + body_);
    for (std::size_t i = 0; i < count; ++i) {
      const double left = i * (column + kAbreastGap);
      place(drawings[i], left, column);
      double y = y_ - high - 0.3 * body_ - kLeading * size / 2;
      for (const std::string& one : captions[i]) {
        line_at({margin_ + left, y}, one, size, false);
        y -= kLeading * size;
      }
    }
    y_ -= high + low + body_;
  }

  const Sheet& sheet_;
  Vec2 paper_;
  double body_, margin_, y_ = 0;
  bool captionless_ = false;
  std::vector<Drawing> pages_;
};

// What the figures of a section take: those with a limit of their own together, how many have
// none, and how high the highest of these comes out at its fair height. Mm.
struct Figures {
  double limited = 0;
  int open = 0;
  double natural = 0;
};
Figures figures_of(const SheetSection& section, const Setter& setter) {
  Figures figures;
  for (const SheetBlock& block : section.blocks)
    if (const auto* figure = std::get_if<SheetFigure>(&block)) {
      const double high = setter.height_of(*figure);
      if (figure->tallest > 0)
        figures.limited += high;
      else
        ++figures.open, figures.natural = std::max(figures.natural, high);
    }
  return figures;
}

// One side of paper: the biggest type that leaves its pictures a fair height.
std::vector<Drawing> one_page(const Sheet& sheet, const SheetSection& section) {
  SheetSection bare = section;
  std::erase_if(bare.blocks,
                [](const SheetBlock& b) { return std::holds_alternative<SheetFigure>(b); });
  for (double body : {6.5, 6.0, 5.5, 5.0, 4.5, 4.0, 3.5, 3.0}) {
    Setter trial(sheet, body, kTapedMargin);
    trial.section(bare);
    const Figures figures = figures_of(section, trial);
    const double room = trial.room() - figures.limited;
    if (std::move(trial).pages().size() > 1) continue;
    const double each = figures.open > 0 ? room / figures.open - kLeading * body : 0;
    for (double share : {1.0, 0.9, 0.8, 0.7}) {
      if (figures.open > 0 && share * each < (body > kSmallType ? figures.natural : 30)) break;
      Setter setter(sheet, body, kTapedMargin);
      setter.figure_height = share * each;
      setter.section(section);
      std::vector<Drawing> pages = std::move(setter).pages();
      if (pages.size() == 1) return pages;
    }
  }
  Setter small(sheet, 3, kTapedMargin);
  small.figure_height = 40;
  small.section(section);
  return std::move(small).pages();
}

void number(std::vector<Drawing>& pages, const Sheet& sheet) {
  const Vec2 paper = size_of(sheet.paper);
  for (std::size_t i = 0; i < pages.size(); ++i)
    pages[i].add("footer", Text{{paper.x / 2, kTapedMargin},
                                fmt::format("{} - {} of {}", sheet.title, i + 1, pages.size()),
                                3,
                                Align::middle,
                                0,
                                false});
}

}  // namespace

std::vector<Drawing> pages_of(const Sheet& sheet) {
  std::vector<Drawing> pages;
  const auto take = [&](std::vector<Drawing> more) {
    std::move(more.begin(), more.end(), std::back_inserter(pages));
  };
  auto section = sheet.sections.begin();
  bool titled = false;
  while (section != sheet.sections.end()) {
    if (section->one_page) {
      take(one_page(sheet, *section++));
      continue;
    }
    Setter setter(sheet, kBody);
    if (!titled) setter.title(sheet.title);
    titled = true;
    while (section != sheet.sections.end() && !section->one_page) setter.section(*section++);
    take(std::move(setter).pages());
  }
  number(pages, sheet);
  return pages;
}

}  // namespace nook
