// First screw, level, second screw, then the others.
#include "fasten/drive_order.h"

#include <algorithm>
#include <cmath>

namespace nook {
namespace {

constexpr double kSameRow = 1;   // mm. Chosen
constexpr double kSurer = 1e-4;  // chances nearer than this are alike. Chosen

// The top row of a piece, as it is hung.
class TopRow {
 public:
  explicit TopRow(const std::vector<Hole>& holes) : holes_(holes) {
    top_ = holes.front().from_edge_mm;
    for (const Hole& h : holes) top_ = std::min(top_, h.from_edge_mm);
  }

  bool has(const Hole& h) const { return h.from_edge_mm < top_ + kSameRow; }
  const Hole* surest() const {
    const Hole* first = nullptr;
    for (const Hole& h : holes_)
      if (has(h) && (!first || h.hit_chance > first->hit_chance + kSurer)) first = &h;
    return first;
  }
  const Hole* furthest_from(const Hole& first) const {
    const auto away = [&](const Hole& h) { return std::abs(h.along_mm - first.along_mm); };
    const Hole* second = nullptr;
    for (const Hole& h : holes_)
      if (has(h) && &h != &first && !h.probe_first && (!second || away(h) > away(*second)))
        second = &h;
    return second;
  }

 private:
  const std::vector<Hole>& holes_;
  double top_;
};

}  // namespace

void number_drives(std::vector<Hole>& holes) {
  if (holes.empty()) return;
  const TopRow top(holes);
  const Hole* first = top.surest();
  const Hole* second = top.furthest_from(*first);
  std::vector<Hole*> order;
  for (Hole& h : holes) order.push_back(&h);
  const auto rank = [&](const Hole* h) {
    if (h == first) return 0;
    if (h == second) return 1;
    return 2 + (top.has(*h) ? 0 : 1) + (h->probe_first ? 2 : 0);
  };
  std::stable_sort(order.begin(), order.end(),
                   [&](const Hole* a, const Hole* b) { return rank(a) < rank(b); });
  for (std::size_t i = 0; i < order.size(); ++i) order[i]->drive = static_cast<int>(i) + 1;
}

}  // namespace nook
