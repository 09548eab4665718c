// Screws counted by their holes, the rest by the contacts.
#include "shop/shopping.h"

#include <fmt/format.h>

#include <algorithm>

#include "shop/outline.h"

namespace nook {
namespace {

const char* kind_of(ScrewKind kind) {
  switch (kind) {
    case ScrewKind::wood:
      return "wood screw";
    case ScrewKind::lag:
      return "lag screw";
    case ScrewKind::pocket:
      return "pocket screw";
    case ScrewKind::structural:
      return "structural screw";
    case ScrewKind::drywall:
      return "drywall screw";
  }
  return "";
}

std::string name_of(const Screw& screw) {
  return screw.gauge > 0 ? fmt::format("#{:g} {}", screw.gauge, kind_of(screw.kind))
                         : std::string(kind_of(screw.kind));
}

void add_screws(std::vector<Purchase>& all, const Screw& screw, int count) {
  if (count == 0) return;
  Purchase next{Purchase::Kind::screw, name_of(screw), count, screw.length.mm,
                screw.diameter ? screw.diameter->mm : 0};
  for (Purchase& known : all)
    if (known.kind == next.kind && known.name == next.name && known.length_mm == next.length_mm &&
        known.width_mm == next.width_mm) {
      known.count += count;
      return;
    }
  all.push_back(std::move(next));
}

int holes_of(int fastening, const DrillAnswer& drill) {
  const auto count = [&](const std::vector<Hole>& holes) {
    return static_cast<int>(std::count_if(holes.begin(), holes.end(),
                                          [&](const Hole& h) { return h.fastening == fastening; }));
  };
  int found = 0;
  for (const WallDrill& wall : drill.walls) found += count(wall.holes);
  for (const JointDrill& joint : drill.parts) found += count(joint.holes);
  return found;
}

// Of a face the longer side of its piece: so long is the line that closes it.
double edge_length(const Polygon& outline, const EdgeChoice& edge) {
  if (std::holds_alternative<PieceFace>(edge)) {
    const Vec2 size = box_of(outline).high - box_of(outline).low;
    return std::max(size.x, size.y);
  }
  const auto run = run_of(outline, edge);
  if (!run) return 0;
  return norm(outline[(run->last + 1) % outline.size()] - outline[run->first]);
}

std::string where(const ContactFit& found) {
  return fmt::format("{} at the {}", found.part, found.meets);
}

constexpr double kNoGap = 0.5;  // mm; no shim and no strip goes into less. Chosen

void add_closers(std::vector<Purchase>& all, const FitAnswer& fit) {
  using Kind = Purchase::Kind;
  for (const ContactFit& found : fit.contacts) {
    const bool open = found.gap.most >= kNoGap;
    const double length = edge_length(fit.pieces[found.piece].drawn->outline, found.how->edge);
    switch (found.how->by) {
      case Fitting::trim:
        all.push_back(
            {Kind::trim, where(found), 0, length, found.how->trim ? found.how->trim->mm : 0});
        break;
      case Fitting::filler:
        if (open) all.push_back({Kind::filler, where(found), 0, length, found.gap.most});
        break;
      case Fitting::caulk:
        all.push_back({Kind::caulk, where(found), 0, length, 0});
        break;
      case Fitting::shim:
        if (open) all.push_back({Kind::shim, where(found), 0, 0, found.gap.most});
        break;
      default:
        break;
    }
  }
}

int cut_to_line(const FitAnswer& fit) {
  const auto scribed =
      std::count_if(fit.contacts.begin(), fit.contacts.end(),
                    [](const ContactFit& found) { return found.how->by == Fitting::scribe; });
  return static_cast<int>(scribed) + static_cast<int>(fit.notches.size());
}

}  // namespace

std::vector<Purchase> shopping(const Design& design, const FitAnswer& fit,
                               const DrillAnswer* drill) {
  std::vector<Purchase> all;
  if (drill)
    for (std::size_t f = 0; f < design.fastenings.size(); ++f)
      add_screws(all, design.fastenings[f].screw, holes_of(static_cast<int>(f), *drill));
  add_closers(all, fit);
  if (const int cuts = cut_to_line(fit))
    all.push_back({Purchase::Kind::scribe_blade, "scribes and notches", cuts, 0, 0});
  return all;
}

}  // namespace nook
