// Rows are tried on the grid of easy numbers; what is not free, or not clear of services, falls
// out.
#include "fasten/hole_rows.h"

#include <algorithm>
#include <cmath>

#include "base/normal.h"
#include "fasten/screw_size.h"

namespace nook {
namespace {

constexpr double kTallFace = 300;    // mm; taller faces are tried in coarser rows. Chosen
constexpr int kCoarse = 8;           // steps
constexpr double kStaggered = 6.35;  // mm, the widest stagger: 1/4 in. Chosen
// A stagger must leave every hole this sure, so that it spoils none (chosen).
constexpr double kSpare = .9999;

double row_step(const Hanging& h) {
  return h.ruler.height() > kTallFace ? kCoarse * h.say.step() : h.say.step();
}

// Height on the wall of a row of the face; level pieces have one for all of it.
double row_z(const Hanging& h, double from_edge) {
  return h.face.wall_from_face(h.ruler.at(h.ruler.length() / 2, from_edge)).y;
}

double snapped(const Hanging& h, Vec2 wall_point) {
  return std::round(h.ruler.from_end(h.face.face_from_wall(wall_point)) / h.say.step()) *
         h.say.step();
}

double chance_on(const Hanging& h, const StudLine& stud, const Seated& s) {
  const Strike strike{s.at.y, h.face.axis(s.uv, s.gap), h.face.axis(s.uv, s.gap + s.embedment)};
  return stud.belief.chance(strike, h.distances.stud_edge, std::hypot(kLayingOut, stud.tape_sd));
}

// The service that keeps a screw out of a place; one that does not is kept as a caution.
std::optional<ServiceHit> kept_out(const Hanging& h, Seated& s) {
  auto hit = service_at(h.services, s.at, s.embedment);
  if (hit) s.caution = hit->caution;
  return hit && hit->forbidden ? hit : std::nullopt;
}

// The place `off` beside the middle of the ply nearest to the piece's middle, in one row.
Seated place_in(const Hanging& h, const StudLine& stud, double from_edge, double off) {
  const double z = row_z(h, from_edge);
  const Vec2 middle = h.face.wall_from_face(h.ruler.at(h.ruler.length() / 2, from_edge));
  const double ply = stud.belief.ply(middle.x, z);
  Seated s = seat_at(h, snapped(h, {ply + off, z}), from_edge);
  s.edge_distance = stud.belief.width() / 2 - std::abs(s.at.x - stud.belief.ply(s.at.x, z));
  s.chance = chance_on(h, stud, s);
  return s;
}

bool usable(const Hanging& h, Seated& s) {
  return h.free.free(s.uv) && !kept_out(h, s);
}

// The places of `rows` with a stagger of `off`, outwards first; empty where one is not usable or
// not as sure as `least`.
std::vector<Seated> staggered(const Hanging& h, const StudLine& stud,
                              const std::vector<double>& rows, double off) {
  std::vector<Seated> seats;
  for (double row : rows) {
    Seated s = place_in(h, stud, row, off);
    if (!usable(h, s) || s.chance < kSpare) return {};
    seats.push_back(std::move(s));
    off = -off;
  }
  return seats;
}

}  // namespace

Seated seat_at(const Hanging& h, double from_end, double from_edge) {
  Seated s;
  s.from_end = from_end;
  s.from_edge = from_edge;
  s.uv = h.ruler.at(from_end, from_edge);
  s.at = h.face.wall_from_face(s.uv);
  s.shim = h.face.shim(s.uv);
  s.gap = s.shim + h.wallboard;
  s.embedment = embedment_of(h.fastening.screw, h.piece.thickness, s.gap);
  return s;
}

std::vector<double> spread_over(const std::vector<double>& places, int count, double apart) {
  if (places.empty()) return {};
  const double first = places.front(), last = places.back();
  const auto nearest = [&](double target) {
    return *std::min_element(places.begin(), places.end(), [&](double a, double b) {
      return std::abs(a - target) < std::abs(b - target);
    });
  };
  for (int n = count; n > 1; --n) {
    std::vector<double> chosen;
    for (int i = 0; i < n; ++i) chosen.push_back(nearest(first + i * (last - first) / (n - 1)));
    bool wide = true;
    for (int i = 1; i < n; ++i) wide &= chosen[i] - chosen[i - 1] >= apart - 1e-6;
    if (wide) return chosen;
  }
  return {nearest((first + last) / 2)};
}

StudHoles holes_on(const Hanging& h, const StudLine& stud) {
  StudHoles found;
  std::vector<double> rows;
  found.beside = true;
  const double step = row_step(h);
  for (double row = step; row < h.ruler.height(); row += step) {
    Seated s = place_in(h, stud, row, 0);
    if (!h.free.free(s.uv)) continue;
    found.beside = false;
    if (auto service = kept_out(h, s))
      found.blocked_by = std::move(service);
    else
      rows.push_back(row);
  }
  if (rows.empty()) return found;
  found.blocked_by.reset();
  const auto chosen = spread_over(rows, h.fastening.per_stud, h.distances.apart);
  for (double off = std::floor(kStaggered / h.say.step()) * h.say.step();
       chosen.size() > 1 && off >= h.say.step() / 2 && found.seats.empty(); off -= h.say.step())
    found.seats = staggered(h, stud, chosen, off);
  if (!found.seats.empty()) return found;
  for (double row : chosen) {
    Seated s = place_in(h, stud, row, 0);
    usable(h, s);
    found.seats.push_back(std::move(s));
  }
  return found;
}

StudHoles holes_in(const Hanging& h, Vec2 low, Vec2 high) {
  constexpr double kEdgeSd = 1;
  const double sd = std::hypot(kLayingOut, kEdgeSd), edge = h.distances.stud_edge;
  StudHoles found;
  found.beside = true;
  // The row lies in the middle of the height that the piece and the blocking share.
  const double top = h.ruler.from_edge(h.face.face_from_wall({low.x, high.y}));
  const double bottom = h.ruler.from_edge(h.face.face_from_wall({low.x, low.y}));
  const double first = std::max(std::min(top, bottom) + edge, h.distances.edge);
  const double last = std::min(std::max(top, bottom) - edge, h.ruler.height() - h.distances.edge);
  if (first > last) return found;
  const double row = std::round((first + last) / 2 / h.say.step()) * h.say.step();
  std::vector<double> ends;
  for (double end = h.say.step(); end < h.ruler.length(); end += h.say.step()) {
    Seated s = seat_at(h, end, row);
    if (s.at.x < low.x + edge || s.at.x > high.x - edge || !h.free.free(s.uv)) continue;
    found.beside = false;
    if (auto service = kept_out(h, s))
      found.blocked_by = std::move(service);
    else
      ends.push_back(end);
  }
  if (!ends.empty()) found.blocked_by.reset();
  for (double end : spread_over(ends, h.fastening.per_stud, h.distances.apart)) {
    Seated s = seat_at(h, end, row);
    kept_out(h, s);
    const auto within = [&](double x, double from, double to) {
      return normal_below(to - edge - x, sd) - normal_below(from + edge - x, sd);
    };
    s.chance = within(s.at.x, low.x, high.x) * within(s.at.y, low.y, high.y);
    s.edge_distance = std::min({s.at.x - low.x, high.x - s.at.x, s.at.y - low.y, high.y - s.at.y});
    found.seats.push_back(std::move(s));
  }
  return found;
}

}  // namespace nook
