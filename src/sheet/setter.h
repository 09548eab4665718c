// Sets blocks one below the other on pages of paper.
#pragma once

#include <string>
#include <vector>

#include "sheet/drawing.h"
#include "sheet/sheet.h"

namespace nook {

inline constexpr double kMargin = 15, kFooter = 8;  // mm. Chosen
inline constexpr double kTapedMargin = 11;          // mm round a page that is taped up. Chosen
inline constexpr double kBody = 4;                  // mm of the em: 11 points
inline constexpr double kLeading = 1.3;             // lines are 1.3 ems apart

/// What is being set: pages so far, and where the next line goes.
class Setter {
 public:
  Setter(const Sheet& sheet, double body, double margin = kMargin)
      : sheet_(sheet), paper_(size_of(sheet.paper)), body_(body), margin_(margin) {}

  /// Sets a section; one that has a page to itself starts a new one.
  void section(const SheetSection& section);
  /// Starts a new page with a title.
  void title(const std::string& text);
  std::vector<Drawing> pages() && { return std::move(pages_); }
  /// Mm left on the last page.
  double room() const { return y_ - margin_ - kFooter; }
  /// The height that figures without a limit of their own may take; 0 = what is left of a page.
  double figure_height = 0;
  /// How high a figure comes out at most, its caption included.
  double height_of(const SheetFigure& figure) const;

 private:
  double width() const { return paper_.x - 2 * margin_; }
  double column_of(const SheetFigure& figure) const;
  void new_page();
  void gap(double ems) { y_ -= ems * body_; }
  void need(double height);
  void line_at(Vec2 at, const std::string& text, double size, bool bold);
  void line(double x, const std::string& text, double size, bool bold);
  // Lines from x to the right margin; `keep` mm must be free below the first, else a new page.
  void words(const std::string& text, double size, bool bold, double x, double keep);
  // What a section opens with stays together: its heading, words, and the first thing after them.
  double opening_of(const SheetSection& section) const;
  void put(const SheetWords& block);
  void put(const SheetList& list);
  void put(const SheetTable& table);
  double height_of(const std::vector<std::string>& cells, const std::vector<double>& columns,
                   bool head) const;
  void row(const std::vector<std::string>& cells, const std::vector<double>& columns, bool head);
  void put(const SheetFigure& figure);
  // A drawing in the middle of a column of the page, its top where the next line goes.
  void place(const Drawing& drawing, double left, double column);
  // Figures side by side, the words of each under it.
  void put_abreast(const std::vector<SheetBlock>& blocks, std::size_t first, std::size_t count);

  const Sheet& sheet_;
  Vec2 paper_;
  double body_, margin_, y_ = 0;
  bool captionless_ = false;
  std::vector<Drawing> pages_;
};

}  // namespace nook
