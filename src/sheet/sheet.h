// A sheet to hold: headings, words, tables and pictures, before it is HTML or paper.
#pragma once

#include <functional>
#include <string>
#include <variant>
#include <vector>

#include "sheet/draft.h"
#include "sheet/drawing.h"

namespace nook {

struct SheetWords {
  std::string words;
  bool strong = false;
};
struct SheetList {
  std::vector<std::string> items;
  bool numbered = false;
};
/// Rows as wide as the heads; cells are short.
struct SheetTable {
  std::string caption;
  std::vector<std::string> heads;
  std::vector<std::vector<std::string>> rows;
};
/// A picture, drawn for the canvas it gets: narrow for a phone, wide for paper.
struct SheetFigure {
  std::function<Drawing(const Canvas&)> draw;
  double tallest = 0;  // mm of paper it needs at most; 0 = what there is
  int abreast = 1;     // so many of those that follow each other share one row of a wide page
  double fair = 75;    // mm of height that it gets before words get bigger. Chosen
};
using SheetBlock = std::variant<SheetWords, SheetList, SheetTable, SheetFigure>;

struct SheetSection {
  std::string heading;
  std::vector<SheetBlock> blocks;
  bool one_page = false;  // one side of paper by itself, in as big type as it takes
};

enum class PaperSize { letter, a4 };

struct Sheet {
  std::string name;  // of its files: "installing"
  std::string title;
  std::vector<SheetSection> sections;
  PaperSize paper = PaperSize::letter;
};

/// How many blocks from `first` on stand in one row: 1 where it is no figure or stands alone.
std::size_t abreast(const std::vector<SheetBlock>& blocks, std::size_t first);

/// Free mm between figures that stand abreast. Chosen.
inline constexpr double kAbreastGap = 6;

/// Width and height of a sheet of paper, mm (ANSI/ASME Y14.1 letter; ISO 216 A4).
Vec2 size_of(PaperSize paper);

}  // namespace nook
