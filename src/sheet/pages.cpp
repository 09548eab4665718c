// Blocks set one below the other until a page is full.
#include "sheet/pages.h"

#include <fmt/format.h>

#include <algorithm>

#include "sheet/setter.h"

namespace nook {
namespace {

constexpr double kSmallType = 3.6;  // mm of the em: no smaller than 10 points for a picture's sake

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
