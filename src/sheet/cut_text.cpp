// The list by stock, the pieces one by one, the layout, the shopping.
#include "sheet/cut_text.h"

#include <fmt/format.h>

#include <cmath>

#include "fasten/said.h"
#include "sheet/cut_words.h"
#include "sheet/layout_words.h"
#include "sheet/wrap.h"

namespace nook {
namespace {

// So near to a whole step a size is that step: rounding off in the computer is no wood.
constexpr double kHair = 1e-4;

std::string stepped(double steps, Rounding rounding) {
  return with_unit(steps * rounding.step, rounding);
}

std::string stock_heading(const StockCut& stock, Rounding rounding) {
  const std::string section =
      stock.width_mm ? fmt::format("{} x {}", written(millimetres(stock.thickness_mm), rounding),
                                   with_unit(millimetres(*stock.width_mm), rounding))
                     : with_unit(millimetres(stock.thickness_mm), rounding);
  return fmt::format("{}, {} {}\n", stock.name, section, stock.kind);
}

// Sheets are 23/32 thick whatever a tape is read to.
Rounding for_thickness(Rounding rounding) {
  if (rounding.unit == Unit::inch) rounding.step = std::min(rounding.step, inches(1.0 / 32));
  return rounding;
}

std::string list_of(const CutAnswer& cut, Rounding rounding) {
  std::string text;
  for (const StockCut& stock : cut.stock) {
    std::string rows;
    for (const CutPiece& piece : cut.pieces)
      if (piece.stock == stock.name)
        rows += wrapped(fmt::format("{}: {}", called(piece), blank_words(piece, rounding)),
                        kPageWidth, fmt::format("{:>4}  ", piece.names.size()));
    if (!rows.empty()) text += stock_heading(stock, for_thickness(rounding)) + rows;
  }
  return text;
}

std::string pieces_of(const CutAnswer& cut, Rounding rounding) {
  std::string text;
  for (const CutPiece& piece : cut.pieces) text += "\n" + piece_words(piece, rounding);
  return text;
}

bool is_used(const StockCut& stock, const CutAnswer& cut) {
  for (const CutPiece& piece : cut.pieces)
    if (piece.stock == stock.name) return true;
  return false;
}

std::string layout_of(const CutAnswer& cut, Rounding rounding) {
  std::string text =
      "\nLaid out with a kerf of " + with_unit(millimetres(kKerf), for_thickness(rounding)) + ":\n";
  for (const StockCut& stock : cut.stock)
    if (is_used(stock, cut))
      text += stock_heading(stock, for_thickness(rounding)) + layout_words(stock, rounding);
  return text;
}

}  // namespace

std::string purchase_words(const Purchase& item, Rounding rounding) {
  const auto size = [&](double mm) { return with_unit(millimetres(mm), rounding); };
  switch (item.kind) {
    case Purchase::Kind::screw:
      return fmt::format(
          "{} {} x {}{}", item.count, item.name, Saying{rounding.unit}.screw(item.length_mm),
          item.width_mm > 0 ? ", " + Saying{rounding.unit}.screw(item.width_mm) + " thick" : "");
    case Purchase::Kind::shim:
      return fmt::format("shims to {} for {}", rounded_up(item.width_mm, rounding), item.name);
    case Purchase::Kind::trim:
      return fmt::format("{} of trim{} for {}", size(item.length_mm),
                         item.width_mm > 0 ? ", " + size(item.width_mm) + " wide," : "", item.name);
    case Purchase::Kind::filler:
      return fmt::format("{} of filler strip, to {} wide, for {}", size(item.length_mm),
                         rounded_up(item.width_mm, rounding), item.name);
    case Purchase::Kind::caulk:
      return fmt::format("caulk for {} along {}", size(item.length_mm), item.name);
    case Purchase::Kind::scribe_blade:
      return fmt::format("a fine jigsaw blade for {} {}", item.count, item.name);
  }
  return {};
}

namespace {

std::string shopping_of(const CutAnswer& cut, Rounding rounding) {
  std::string text;
  for (const Purchase& item : cut.shopping)
    text += wrapped(purchase_words(item, rounding), kPageWidth, "  ");
  return text.empty() ? "" : "\nBesides the stock, buy:\n" + text;
}

std::string closing_words(Rounding rounding) {
  const bool inch = rounding.unit == Unit::inch;
  rounding.step = inch ? inches(1.0 / 64) : millimetres(.1);
  const std::string paint = with_unit(inch ? inches(1.0 / 64) : millimetres(.4), rounding);
  return "\n" + wrapped("Sizes are bare wood: paint adds about " + paint +
                            " a face and is not taken off. Cut to the waste side of the line.",
                        kPageWidth, "");
}

}  // namespace

std::string rounded_down(double mm, Rounding rounding) {
  return stepped(std::floor(mm / rounding.step.mm + kHair), rounding);
}
std::string rounded_up(double mm, Rounding rounding) {
  return stepped(std::ceil(mm / rounding.step.mm - kHair), rounding);
}

std::string taken(double mm, Rounding rounding) {
  return mm < rounding.step.mm / 2 ? "nothing" : with_unit(millimetres(mm), rounding);
}

std::string cut_text(const CutAnswer& cut, const Style& style) {
  std::string page = "Cutting list: " + headline(cut.verdict, style) + "\n";
  if (!cut.known)
    page += wrapped("The room is not known yet: these are the sizes as drawn.", kPageWidth, "");
  else if (cut.verdict != Verdict::fits)
    page += wrapped("Not everything fits yet: see 'nookfit fit' before you cut.", kPageWidth, "");
  page += "\n" + list_of(cut, style.rounding);
  page += pieces_of(cut, style.rounding);
  page += layout_of(cut, style.rounding);
  page += shopping_of(cut, style.rounding);
  return page + closing_words(style.rounding);
}

}  // namespace nook
