// Distances as functionals of the adjusted room.
#include "survey/expected.h"

#include <cmath>

#include "survey/corner_frame.h"
#include "survey/mark_names.h"

namespace nook {
namespace {

tl::expected<Measured, std::string> foretold(const Solution& solution, const View& view,
                                             const Varied& distance) {
  const double sd = posterior_sd(solution, functional(view, distance));
  if (!std::isfinite(sd)) return tl::make_unexpected("the readings do not say this distance");
  return Measured{distance.value, sd};
}

tl::expected<VariedPoint, std::string> named_point(View& view, const std::string& name) {
  const RoomModel& model = view.model();
  if (const auto corner = corner_named(*model.survey, name))
    return view.point(*corner + 1, view.corner(*corner, 0).right, 0);
  const auto found = model.point.find(name);
  if (found == model.point.end()) return tl::make_unexpected("no mark is called '" + name + "'");
  return VariedPoint{view.unknown(found->second), view.unknown(found->second + 1)};
}

}  // namespace

tl::expected<Measured, std::string> expected_diagonal(const RoomModel& model,
                                                      const Solution& solution,
                                                      const DiagonalSpots& spots) {
  if (spots.corner < 0 || spots.corner >= model.corners())
    return tl::make_unexpected("these walls have no corner");
  View view(model, solution.state);
  const Sides sides{spots.corner, {millimetres(spots.height), false, {}}};
  return foretold(solution, view, straight_between(view, sides, spots.first, spots.second));
}

tl::expected<Measured, std::string> expected_span(const RoomModel& model, const Solution& solution,
                                                  const std::string& a, const std::string& b) {
  View view(model, solution.state);
  const auto p = named_point(view, a), q = named_point(view, b);
  if (!p) return tl::make_unexpected(p.error());
  if (!q) return tl::make_unexpected(q.error());
  return foretold(solution, view, hypotenuse(p->x - q->x, p->y - q->y));
}

}  // namespace nook
