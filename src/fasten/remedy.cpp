// Numbers of blocking, a longer ledger and a cleat across two studs.
#include "fasten/remedy.h"

#include <fmt/core.h>

#include <algorithm>

namespace nook {
namespace {

constexpr double kTold = 0.5;    // mm; less is no longer piece. Chosen
constexpr double kWidest = 650;  // mm between studs, usually 24 in at most: common practice

// The studs next to the piece on either side.
struct Neighbors {
  const StudLine* before = nullptr;
  const StudLine* after = nullptr;
};

double middle_z(const Hanging& h) {
  return h.face.wall_from_face(h.ruler.at(h.ruler.length() / 2, h.ruler.height() / 2)).y;
}

Neighbors neighbors(const Hanging& h, const WallStuds& studs) {
  const Stretch piece = extent_of(h);
  const double z = middle_z(h), middle = (piece.from + piece.to) / 2;
  Neighbors n;
  for (const StudLine& s : studs.lines) {
    if (s.centre(z) <= middle) n.before = &s;
    if (s.centre(z) > middle && !n.after) n.after = &s;
  }
  return n;
}

std::string where(const Hanging& h, const StudLine& s) {
  const double z = middle_z(h);
  return fmt::format("{} from the corner{}", h.say.length(h.face.wall().along(s.centre(z), z)),
                     s.found == StudReport::Found::inferred ? " (inferred)" : "");
}

std::string longer(const Hanging& h, const Neighbors& n) {
  const StudLine* best = n.before;
  if (!best || (n.after && longer_by(h, *n.after) < longer_by(h, *n.before))) best = n.after;
  if (!best || longer_by(h, *best) < kTold) return {};  // it lies behind, and takes no screw
  return fmt::format("; or make the piece {} longer, to the stud {}",
                     h.say.at_least(longer_by(h, *best)), where(h, *best));
}

std::string between(const Hanging& h, const Neighbors& n) {
  if (!n.before || !n.after) return "let in blocking between the studs";
  const double z = middle_z(h), apart = n.after->centre(z) - n.before->centre(z);
  const auto half = [](const StudLine& s) { return s.belief.plies() * s.belief.width() / 2; };
  const double clear = apart - half(*n.before) - half(*n.after);
  return fmt::format(
      "let in blocking {} long between the studs {} and {}; or screw a cleat at least {} long "
      "across those two and hang the piece on it",
      h.say.length(clear), where(h, *n.before), where(h, *n.after),
      h.say.at_least(apart + 2 * end_of(h)));
}

// A stud that lies behind the piece, too near one of its ends.
const StudLine* near_end(const Hanging& h, const WallStuds& studs) {
  const Stretch piece = extent_of(h);
  const double z = middle_z(h);
  for (const StudLine& s : studs.lines)
    if (s.centre(z) > piece.from && s.centre(z) < piece.to && longer_by(h, s) > 0) return &s;
  return nullptr;
}

}  // namespace

Stretch extent_of(const Hanging& h) {
  const double middle = h.ruler.height() / 2;
  const double a = h.face.wall_from_face(h.ruler.at(0, middle)).x;
  const double b = h.face.wall_from_face(h.ruler.at(h.ruler.length(), middle)).x;
  return {std::min(a, b), std::max(a, b)};
}

double end_of(const Hanging& h) {
  return std::max(h.distances.end, h.distances.edge);
}

double longer_by(const Hanging& h, const StudLine& s) {
  const Stretch piece = extent_of(h);
  const double c = s.centre(middle_z(h)), end = end_of(h);
  return c < piece.from + end ? piece.from - c + end : c - piece.to + end;
}

bool is_looked_behind(const Hanging& h, const WallStuds& studs) {
  const Stretch piece = extent_of(h);
  const double z = middle_z(h);
  for (const StudLine& s : studs.lines) {
    const double c = s.centre(z);
    if (s.found == StudReport::Found::inferred || (c > piece.from && c < piece.to)) return true;
  }
  const Neighbors n = neighbors(h, studs);
  return n.before && n.after && n.after->centre(z) - n.before->centre(z) < kWidest;
}

Untold no_stud_known(const Hanging& h, const std::string& wall) {
  const Stretch piece = extent_of(h);
  const double z = middle_z(h);
  const auto along = [&](double x) { return h.say.length(h.face.wall().along(x, z)); };
  const double a = h.face.wall().along(piece.from, z), b = h.face.wall().along(piece.to, z);
  return {
      fmt::format("nothing says whether a stud lies behind {} on the {} wall", h.piece.name, wall),
      fmt::format("look for studs there, from {} to {} along", along(a < b ? piece.from : piece.to),
                  along(a < b ? piece.to : piece.from))};
}

Unreachable no_stud_reason(const Hanging& h, const WallStuds& studs) {
  const Neighbors n = neighbors(h, studs);
  std::string reason = "no stud lies behind it where a screw may go";
  if (const StudLine* s = near_end(h, studs))
    reason = fmt::format("the stud {} lies nearer than {} to its end", where(h, *s),
                         h.say.at_least(end_of(h)));
  return {h.piece.name, reason, between(h, n) + longer(h, n)};
}

}  // namespace nook
