// Nets of marks whose distances are all determined; whatever is left over is loose.
#include "survey/loose_marks.h"

#include <algorithm>
#include <set>

#include "survey/span_places.h"

namespace nook {
namespace {

using Net = std::vector<SpanSpot>;

// The ends of spans that are tied together, walls and corners being one with each other.
std::vector<Net> nets(const RoomModel& model) {
  std::map<SpanSpot, int> of;
  const auto key = [](SpanSpot spot) { return spot.free() ? spot : SpanSpot{}; };
  int next = 0;
  for (const SpanTie& tie : model.ties) {
    const int a = of.try_emplace(key(tie.a), next++).first->second;
    const int b = of.try_emplace(key(tie.b), next++).first->second;
    for (auto& [spot, net] : of)
      if (net == b) net = a;
  }
  std::map<int, std::set<SpanSpot>> members;
  for (const SpanTie& tie : model.ties)
    for (const SpanSpot& spot : {tie.a, tie.b}) members[of.at(key(spot))].insert(spot);
  std::vector<Net> out;
  for (const auto& [net, spots] : members) out.emplace_back(spots.begin(), spots.end());
  return out;
}

class Rigidity {
 public:
  Rigidity(const RoomModel& model, const Solution& solution)
      : view_(model, solution.state), solution_(solution) {}

  bool holds(const SpanSpot& a, const SpanSpot& b) {
    if (!a.free() && !b.free()) return true;
    return solution_.linear->determined(functional(view_, distance(view_, a, b)));
  }

  // Those that hold together with `seed`.
  std::vector<bool> together(const Net& net, std::size_t seed) {
    std::vector<bool> in(net.size());
    in[seed] = true;
    for (std::size_t i = 0; i < net.size(); ++i) {
      if (in[i]) continue;
      bool all = true;
      for (std::size_t j = 0; j < net.size() && all; ++j) all = !in[j] || holds(net[i], net[j]);
      in[i] = all;
    }
    return in;
  }

 private:
  View view_;
  const Solution& solution_;
};

std::vector<bool> largest(Rigidity& rigidity, const Net& net) {
  std::vector<bool> best;
  long most = 0;
  for (std::size_t seed = 0; seed < net.size(); ++seed) {
    std::vector<bool> in = rigidity.together(net, seed);
    const long count = std::count(in.begin(), in.end(), true);
    if (count > most) most = count, best = std::move(in);
  }
  return best;
}

bool any_undetermined(const RoomModel& model, const Solution& solution) {
  return std::any_of(model.point.begin(), model.point.end(), [&](const auto& point) {
    return !solution.linear->determined(point.second) ||
           !solution.linear->determined(point.second + 1);
  });
}

}  // namespace

std::vector<std::string> loose_marks(const RoomModel& model, const Solution& solution) {
  std::vector<std::string> out;
  if (!any_undetermined(model, solution)) return out;
  Rigidity rigidity(model, solution);
  for (const Net& net : nets(model)) {
    const std::vector<bool> held = largest(rigidity, net);
    for (std::size_t i = 0; i < net.size(); ++i)
      if (!held[i] && net[i].free()) out.push_back(model.unknowns[net[i].x].name);
  }
  return out;
}

}  // namespace nook
