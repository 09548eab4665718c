// First fit decreasing, then each board exchanged for the shortest that holds the same.
#include "shop/boards.h"

#include <algorithm>

namespace nook {
namespace {

constexpr double kHair = 1e-6;  // mm of rounding that is no overlap. Chosen

bool takes(const BoardCut& board, const Stick& stick) {
  const double kerf = board.sticks.empty() ? 0 : kKerf;
  return board.used() + kerf + stick.length <= board.length + kHair;
}

void lay(BoardPlan& plan, const Stick& stick, double longest) {
  if (stick.length > longest + kHair) return plan.too_long.push_back(stick);
  for (BoardCut& board : plan.boards)
    if (takes(board, stick)) return board.sticks.push_back(stick);
  plan.boards.push_back({longest, {stick}});
}

}  // namespace

double BoardCut::used() const {
  double sum = 0;
  for (const Stick& stick : sticks) sum += stick.length;
  return sticks.empty() ? 0 : sum + kKerf * (static_cast<double>(sticks.size()) - 1);
}

double BoardPlan::waste() const {
  double bought = 0, used = 0;
  for (const BoardCut& board : boards) {
    bought += board.length;
    for (const Stick& stick : board.sticks) used += stick.length;
  }
  return bought > 0 ? 1 - used / bought : 0;
}

BoardPlan lay_on_boards(std::vector<Stick> sticks, std::vector<double> for_sale) {
  BoardPlan plan;
  std::sort(for_sale.begin(), for_sale.end());
  std::stable_sort(sticks.begin(), sticks.end(),
                   [](const Stick& a, const Stick& b) { return a.length > b.length; });
  const double longest = for_sale.empty() ? 0 : for_sale.back();
  for (const Stick& stick : sticks) lay(plan, stick, longest);
  for (BoardCut& board : plan.boards)
    board.length = *std::find_if(for_sale.begin(), for_sale.end(),
                                 [&](double length) { return board.used() <= length + kHair; });
  std::stable_sort(plan.boards.begin(), plan.boards.end(),
                   [](const BoardCut& a, const BoardCut& b) { return a.length > b.length; });
  return plan;
}

}  // namespace nook
