// Pieces gathered where they are alike, sorted, and laid out on their stock.
#include "shop/cut.h"

#include <algorithm>
#include <cmath>

#include "shop/cut_piece.h"

namespace nook {
namespace {

constexpr double kAlike = 0.5;  // mm by which pieces cut alike may differ. Chosen

bool near(double a, double b) {
  return std::abs(a - b) < kAlike;
}

bool alike(const CutPilot& a, const CutPilot& b) {
  return a.end == b.end && a.edge == b.edge && near(a.from_end_mm, b.from_end_mm) &&
         near(a.from_edge_mm, b.from_edge_mm) && near(a.bore_mm, b.bore_mm);
}

bool alike(const CutPiece& a, const CutPiece& b) {
  if (!near(a.blank.width, b.blank.width) || !near(a.blank.height, b.blank.height) ||
      a.outline.size() != b.outline.size() || a.pilots.size() != b.pilots.size())
    return false;
  for (size_t i = 0; i < a.outline.size(); ++i)
    if (norm(a.outline[i] - b.outline[i]) >= kAlike) return false;
  for (size_t i = 0; i < a.pilots.size(); ++i)
    if (!alike(a.pilots[i], b.pilots[i])) return false;
  return true;
}

// All copies of a part alike make one entry under the part's name.
void gather(std::vector<CutPiece>& pieces, std::vector<const Part*>& drawn, CutPiece next,
            const Piece& piece) {
  for (size_t k = 0; k < pieces.size(); ++k)
    if (drawn[k] == piece.drawn && alike(pieces[k], next)) {
      pieces[k].names.push_back(piece.name);
      for (size_t i = 0; i < next.pilots.size(); ++i)
        pieces[k].pilots[i].twins.push_back({next.pilots[i].id, next.pilots[i].probe_first});
      if (pieces[k].names.size() == static_cast<size_t>(piece.drawn->repeat->count))
        pieces[k].part = piece.drawn->name;
      return;
    }
  pieces.push_back(std::move(next));
  drawn.push_back(piece.drawn);
}

std::vector<CutPiece> gathered(const CutInput& input) {
  const std::vector<NeededPiece> needed = needed_pieces(input.design, input.fit);
  std::vector<CutPiece> pieces;
  std::vector<const Part*> drawn;
  for (int k = 0; k < static_cast<int>(needed.size()); ++k)
    gather(pieces, drawn, cut_piece(input, k, needed[k]), input.fit.pieces[k]);
  return pieces;
}

double longest(const CutPiece& piece) {
  return std::max(piece.blank.width, piece.blank.height);
}

void sort_by_stock(std::vector<CutPiece>& pieces, const Design& design) {
  const auto order = [&](const std::string& stock) {
    return std::find_if(design.stock.begin(), design.stock.end(),
                        [&](const Stock& s) { return s.name == stock; }) -
           design.stock.begin();
  };
  std::stable_sort(pieces.begin(), pieces.end(), [&](const CutPiece& a, const CutPiece& b) {
    return a.stock != b.stock ? order(a.stock) < order(b.stock) : longest(a) > longest(b);
  });
}

BoardPlan boards_of(const Stock& stock, const std::vector<CutPiece>& pieces) {
  std::vector<Stick> sticks;
  for (const CutPiece& piece : pieces)
    if (piece.stock == stock.name)
      for (const std::string& name : piece.names) sticks.push_back({name, piece.blank.width});
  std::vector<double> lengths;
  for (const Length length : stock.lengths) lengths.push_back(length.mm);
  return lay_on_boards(std::move(sticks), std::move(lengths));
}

// The grain of a panel runs along its longer side, as grain_along_v has it.
SheetPlan sheets_of(const Stock& stock, const std::vector<CutPiece>& pieces) {
  std::vector<Panel> panels;
  for (const CutPiece& piece : pieces)
    if (piece.stock == stock.name)
      for (const std::string& name : piece.names)
        panels.push_back({name, std::min(piece.blank.width, piece.blank.height),
                          std::max(piece.blank.width, piece.blank.height)});
  return lay_on_sheets(std::move(panels), stock.sheet[0]->mm, stock.sheet[1]->mm);
}

StockCut laid_out(const Stock& stock, const std::vector<CutPiece>& pieces) {
  StockCut laid{stock.name,   stock.kind_given, stock.thickness.mm,
                std::nullopt, std::nullopt,     std::nullopt};
  if (stock.kind == StockKind::lumber) {
    if (stock.width) laid.width_mm = stock.width->mm;
    if (!stock.lengths.empty()) laid.boards = boards_of(stock, pieces);
  } else if (stock.sheet[0] && stock.sheet[1]) {
    laid.sheets = sheets_of(stock, pieces);
  }
  return laid;
}

}  // namespace

CutAnswer cut(const CutInput& input) {
  CutAnswer answer;
  answer.verdict = input.fit.verdict;
  answer.known = input.fit.known;
  answer.pieces = gathered(input);
  sort_by_stock(answer.pieces, input.design);
  for (const Stock& stock : input.design.stock)
    answer.stock.push_back(laid_out(stock, answer.pieces));
  answer.shopping = shopping(input.design, input.fit, input.drill);
  return answer;
}

}  // namespace nook
