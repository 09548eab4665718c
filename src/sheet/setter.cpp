// Lines, tables and figures as they fill a page.
#include "sheet/setter.h"

#include <fmt/format.h>

#include <algorithm>

#include "sheet/table_widths.h"
#include "sheet/text_width.h"

namespace nook {
namespace {

constexpr double kLeastFigure = 60;  // mm of height below which a figure goes over the page

}  // namespace

void Setter::section(const SheetSection& section) {
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

void Setter::title(const std::string& text) {
  new_page();
  words(text, 1.7 * body_, true, 0, 0);
  gap(0.6);
}

double Setter::height_of(const SheetFigure& figure) const {
  const double most = figure.tallest > 0 ? figure.tallest : figure.fair;
  const Drawing drawing = figure.draw({column_of(figure), most, std::clamp(body_, 4.0, 5.0)});
  return drawing.extent.height() * drawing.scale + kLeading * body_;
}

double Setter::column_of(const SheetFigure& figure) const {
  return (width() + kAbreastGap) / figure.abreast - kAbreastGap;
}

void Setter::new_page() {
  Drawing page;
  page.name = sheet_.name;
  page.title = sheet_.title;
  page.extent = {{0, 0}, paper_};
  pages_.push_back(std::move(page));
  y_ = paper_.y - margin_;
}

void Setter::need(double height) {
  if (room() < height) new_page();
}

void Setter::line_at(Vec2 at, const std::string& text, double size, bool bold) {
  pages_.back().add("words", Text{at, text, size, Align::start, 0, bold, false});
}

void Setter::line(double x, const std::string& text, double size, bool bold) {
  line_at({margin_ + x, y_}, text, size, bold);
}

void Setter::words(const std::string& text, double size, bool bold, double x, double keep) {
  const std::vector<std::string> lines = lines_within(text, size, width() - x, bold);
  need(kLeading * size * lines.size() + keep);
  for (const std::string& one : lines) {
    need(kLeading * size);
    y_ -= kLeading * size / 2;
    line(x, one, size, bold);
    y_ -= kLeading * size / 2;
  }
}

double Setter::opening_of(const SheetSection& section) const {
  double height = 4 * body_;
  for (const SheetBlock& block : section.blocks) {
    if (const auto* words = std::get_if<SheetWords>(&block)) {
      height += kLeading * body_ * lines_within(words->words, body_, width(), true).size() + body_;
      continue;
    }
    const auto* figure = std::get_if<SheetFigure>(&block);
    return height + (!figure               ? 5 * kLeading * body_
                     : figure->tallest > 0 ? height_of(*figure) + kLeading * body_
                                           : kLeastFigure);
  }
  return height;
}

void Setter::put(const SheetWords& block) {
  words(block.words, body_, block.strong, 0, 0);
  gap(0.5);
}

void Setter::put(const SheetList& list) {
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

void Setter::put(const SheetTable& table) {
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

double Setter::height_of(const std::vector<std::string>& cells, const std::vector<double>& columns,
                         bool head) const {
  std::size_t most = 1;
  for (std::size_t c = 0; c < cells.size(); ++c)
    most = std::max(
        most, lines_within(cells[c], body_, columns[c] - kCellGap * body_, head || c == 0).size());
  return kLeading * body_ * most + 0.3 * body_;
}

void Setter::row(const std::vector<std::string>& cells, const std::vector<double>& columns,
                 bool head) {
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

void Setter::put(const SheetFigure& figure) {
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

void Setter::place(const Drawing& drawing, double left, double column) {
  const double wide = drawing.extent.width() * drawing.scale;
  const double high = drawing.extent.height() * drawing.scale;
  const Vec2 corner{margin_ + left + (column - wide) / 2, y_ - high};
  append(pages_.back(), drawing, corner - drawing.scale * drawing.extent.low, drawing.scale);
}

void Setter::put_abreast(const std::vector<SheetBlock>& blocks, std::size_t first,
                         std::size_t count) {
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

}  // namespace nook
