// Corners, marks on walls and free marks as points.
#include "survey/span_places.h"

#include <algorithm>
#include <cmath>

#include "survey/mark_places.h"

namespace nook {
namespace {

VariedPoint corner_point(View& view, const SpanSpot& spot) {
  const double z = height_of(view, spot);
  const Varied along = view.corner(spot.corner, z, spot.board, spot.other_board).right;
  return view.point(spot.corner + 1, along, z, spot.other_board);
}

VariedPoint wall_point(View& view, const SpanSpot& spot) {
  const double z = height_of(view, spot);
  const Varied mark = view.unknown(spot.mark);
  if (view.model().corners() == 0) return view.point(spot.wall, mark, z, spot.board);
  const int k = spot.wall == 0 ? 0 : spot.from_right ? spot.wall : spot.wall - 1;
  const CornerSpot& corner = view.corner(k, z);
  const Varied from = (k == spot.wall ? corner.left : corner.right) + mark;
  return view.point(spot.wall, view.from_corner(k, spot.wall, from), z, spot.board);
}

// Marks and ties of all spans; what is not a free mark stays where the first state has it.
class FirstPlaces {
 public:
  explicit FirstPlaces(RoomModel& model)
      : model_(model), state_(first_state(model)), view_(model, state_) {
    for (const auto& [name, x] : model.point) {
      SpanSpot spot;
      spot.x = x;
      node(spot);
    }
    for (const SpanTie& tie : model.ties) add(tie);
  }

  void place() {
    place_marks(net_);
    prefer_room();
    for (const auto& [spot, index] : nodes_) {
      if (!spot.free()) continue;
      model_.unknowns[spot.x].start = net_.at[index].x;
      model_.unknowns[spot.x + 1].start = net_.at[index].y;
    }
  }

 private:
  void add(const SpanTie& tie) {
    const double rise = height_of(view_, tie.a) - height_of(view_, tie.b);
    const double level = std::sqrt(std::max(0.0, tie.length * tie.length - rise * rise));
    const int a = node(tie.a), b = node(tie.b);
    net_.ties.push_back({a, b, level});
  }

  int node(const SpanSpot& spot) {
    const auto [place, fresh] = nodes_.try_emplace(spot, static_cast<int>(net_.at.size()));
    if (!fresh) return place->second;
    const VariedPoint p = plan_of(view_, spot);
    net_.at.push_back({p.x.value, p.y.value});
    net_.fixed.push_back(!spot.free());
    return place->second;
  }

  double outside(const MarkNet& net) const {
    double sum = 0;
    for (std::size_t i = 0; i < net.at.size(); ++i)
      for (const WallShape& wall : view_.room().walls)
        if (!net.fixed[i]) sum += std::max(0.0, -wall.wall_from_room(net.at[i]).y);
    return sum;
  }

  // Of two nets alike over the line between two fixed marks, the one inside the room.
  void prefer_room() {
    std::vector<Vec2> fixed;
    for (std::size_t i = 0; i < net_.at.size(); ++i)
      if (net_.fixed[i]) fixed.push_back(net_.at[i]);
    if (fixed.size() < 2 || norm(fixed[0] - fixed[1]) == 0) return;
    MarkNet other = net_;
    for (std::size_t i = 0; i < other.at.size(); ++i)
      if (!other.fixed[i]) other.at[i] = mirrored(other.at[i], fixed[0], fixed[1]);
    const bool alike = stress(other) < stress(net_) * 1.01 + 1e-6;
    if (alike && outside(other) < outside(net_)) net_ = std::move(other);
  }

  RoomModel& model_;
  State state_;
  View view_;
  MarkNet net_;
  std::map<SpanSpot, int> nodes_;
};

}  // namespace

double height_of(const View& view, const SpanSpot& spot) {
  if (spot.free()) return 0;
  if (spot.corner >= 0) return view.z_of(spot.height, spot.corner + 1, 0);
  return view.z_along(spot.height, spot.wall, view.unknown(spot.mark).value, spot.from_right);
}

VariedPoint plan_of(View& view, const SpanSpot& spot) {
  if (spot.free()) return {view.unknown(spot.x), view.unknown(spot.x + 1)};
  return spot.corner >= 0 ? corner_point(view, spot) : wall_point(view, spot);
}

Varied distance(View& view, const SpanSpot& a, const SpanSpot& b) {
  const VariedPoint p = plan_of(view, a), q = plan_of(view, b);
  return hypotenuse(p.x - q.x, p.y - q.y, height_of(view, a) - height_of(view, b));
}

void place_free_marks(RoomModel& model) {
  if (model.point.empty()) return;
  FirstPlaces(model).place();
}

}  // namespace nook
