// Rows of screws in an overlap.
#include "fasten/joint_row.h"

#include <algorithm>
#include <cmath>

#include "base/normal.h"
#include "fasten/free_face.h"
#include "fasten/hole_rows.h"
#include "fasten/screw_size.h"

namespace nook {
namespace {

constexpr double kInset = 38;    // mm; first and last screw of a long joint, 1 1/2 in. Chosen
constexpr double kSquare = .01;  // of a side's length: more out of square is cut slanted. Chosen
constexpr double kEvery = 305;   // mm; a long joint has a screw every 12 in (common practice)

// Chosen: two pocket screws stand side by side in a narrow end.
Distances usual_for(const Screw& screw) {
  Distances d = distances_for(screw);
  if (screw.kind == ScrewKind::pocket) {
    d.edge = 1.5 * diameter_of(screw);
    d.apart = 3 * diameter_of(screw);
  }
  return d;
}

Distances tight_for(const Screw& screw) {
  Distances d = usual_for(screw);
  d.edge = diameter_of(screw);
  d.end = 4 * diameter_of(screw);
  return d;
}

// Whether a side is tapered or scribed to what it meets.
bool cut_to_fit(const Placed& placed, const Design& design, EdgeSide side) {
  const Part& part = *placed.piece.drawn;
  const EdgeRun run = side_of(part.outline, side);
  return std::any_of(design.contacts.begin(), design.contacts.end(), [&](const Contact& contact) {
    if (contact.part != placed.piece.name && contact.part != part.name) return false;
    if (contact.by != Fitting::taper && contact.by != Fitting::scribe) return false;
    const auto* edges = std::get_if<EdgeRun>(&contact.edge);
    const auto* named = std::get_if<EdgeSide>(&contact.edge);
    return (edges && edges->first == run.first) || (named && *named == side);
  });
}

// Whether a side ends in one point: cut slanted, or a tip.
bool slanted(const Polygon& outline, EdgeSide side) {
  const bool upright = side == EdgeSide::left || side == EdgeSide::right;
  const EdgeRun run = side_of(outline, side);
  const Vec2 d = outline[(run.last + 1) % outline.size()] - outline[run.first];
  return std::abs(upright ? d.x : d.y) > kSquare * norm(d);
}

// Whether no tape is to be hooked on a side.
bool no_start(const Joining& j, EdgeSide side) {
  return cut_to_fit(j.part, j.design, side) || slanted(j.part.piece.drawn->outline, side);
}

constexpr double kLong = 300;  // mm; longer joints are tried in coarser steps. Chosen
constexpr int kCoarse = 8;

class RowMaker {
 public:
  explicit RowMaker(const Joining& j)
      : joining_(j),
        part_(j.part),
        meeting_(j.meeting),
        fastening_(j.fastening),
        design_(j.design),
        step_(j.say.step()),
        region_(largest_of(j.meeting.overlap)),
        box_(box_of(region_.outline)) {
    const Vec2 span = box_.high - box_.low;
    along_x_ = meeting_.by_edge || span.x >= span.y;
  }

  std::optional<JointRow> with(const Distances& d) const {
    const FreeFace face(part_.piece, design_, {}, d);
    std::vector<double> starts;
    for (double x : candidates(d.edge))
      if (const auto p = place(x, d))
        if (meeting_.by_edge || face.free(p->at)) starts.push_back(x);
    if (starts.empty()) return std::nullopt;
    JointRow row{along_x_, {}, d.edge, false};
    for (double x : spread_over(starts, count(), d.apart)) row.places.push_back(*place(x, d));
    return row;
  }

 private:
  double low() const { return along_x_ ? box_.low.x : box_.low.y; }
  double high() const { return along_x_ ? box_.high.x : box_.high.y; }
  int count() const {
    return std::max(fastening_.per_stud, 1 + static_cast<int>((high() - low()) / kEvery));
  }
  // Along the row, in steps from the piece's side.
  std::vector<double> candidates(double edge) const {
    const double inset = std::max(edge, std::min(kInset, (high() - low()) / 8));
    const SideScale scale = scale_of(joining_, along_x_);
    const double a = meeting_.by_edge ? low() : scale.from(low());
    const double b = meeting_.by_edge ? high() : scale.from(high());
    std::vector<double> found;
    const double step = high() - low() > kLong ? kCoarse * step_ : step_;
    for (double x = std::ceil(std::min(a, b) / step) * step; x <= std::max(a, b); x += step)
      if (x >= std::min(a, b) + inset && x <= std::max(a, b) - inset)
        found.push_back(meeting_.by_edge ? x : scale.at(x));
    std::sort(found.begin(), found.end());
    return found;
  }
  std::optional<RowPlace> place(double along, const Distances& d) const {
    const Vec2 p = along_x_ ? Vec2{along, 0} : Vec2{0, along};
    for (const Stretch& s : inside(region_, p, along_x_ ? Vec2{0, 1} : Vec2{1, 0})) {
      if (s.to - s.from < 2 * d.edge) continue;
      const double across = middle(s);
      return RowPlace{along_x_ ? Vec2{along, across} : Vec2{across, along}, s};
    }
    return std::nullopt;
  }
  double middle(const Stretch& s) const {
    if (meeting_.by_edge) return (s.from + s.to) / 2;
    const SideScale scale = scale_of(joining_, !along_x_);
    return scale.at(std::round(scale.from((s.from + s.to) / 2) / step_) * step_);
  }

  const Joining& joining_;
  const Placed& part_;
  const Meeting& meeting_;
  const Fastening& fastening_;
  const Design& design_;
  double step_;
  const Region& region_;
  Box2 box_;
  bool along_x_ = true;
};

}  // namespace

const Region& largest_of(const Regions& regions) {
  return *std::max_element(regions.begin(), regions.end(),
                           [](const Region& a, const Region& b) { return area({a}) < area({b}); });
}

SideScale scale_of(const Joining& joining, bool along_u) {
  const Box2 whole = box_of(joining.part.piece.drawn->outline), row = joining.row;
  const double low = along_u ? whole.low.x : whole.low.y,
               high = along_u ? whole.high.x : whole.high.y;
  const double middle = along_u ? (row.low.x + row.high.x) / 2 : (row.low.y + row.high.y) / 2;
  const bool low_fails = no_start(joining, along_u ? EdgeSide::left : EdgeSide::bottom);
  const bool high_fails = no_start(joining, along_u ? EdgeSide::right : EdgeSide::top);
  const bool nearer_low = middle - low < high - middle - 1e-6;
  if (low_fails == high_fails ? nearer_low : high_fails)
    return {low, 1, along_u ? "left" : "bottom"};
  return {high, -1, along_u ? "right" : "top"};
}

double chance_of(const RowPlace& place, const JointRow& row) {
  const double across = row.along_x ? place.at.y : place.at.x;
  return normal_below(place.across.to - row.keep - across, kLayingOut) -
         normal_below(place.across.from + row.keep - across, kLayingOut);
}

std::optional<JointRow> row_of(const Joining& joining) {
  const RowMaker maker(joining);
  const auto usual = maker.with(usual_for(joining.fastening.screw));
  const auto sure = [&](const RowPlace& place) { return chance_of(place, *usual) >= joining.sure; };
  if (usual && std::all_of(usual->places.begin(), usual->places.end(), sure)) return usual;
  auto row = maker.with(tight_for(joining.fastening.screw));
  if (row) row->tight = true;
  return row ? row : usual;
}

}  // namespace nook
