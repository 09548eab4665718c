// Each number that changes is set where it stands; a rectangle that is none any more gets points.
#include "adapt/reshape.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "design/piece.h"
#include "design/symmetry.h"

namespace nook {
namespace {

constexpr double kSame = 1e-6;  // mm; numbers nearer than this are not set anew

struct Writer {
  const Design& design;
  int part;
  std::vector<Edit> edits;

  const Part& drawn() const { return design.parts[part]; }
  std::string path(const std::string& rest) const { return fmt::format("part[{}].{}", part, rest); }
  std::string text(double mm) const { return quoted(typed(mm, design.units)); }
  void set(const std::string& at, double before, double after, bool if_there = false) {
    if (std::abs(before - after) > kSame) edits.push_back({key_path(at), text(after), if_there});
  }
};

bool is_rectangle(const Polygon& p) {
  return p.size() == 4 && std::abs(p[0].x - p[3].x) < kSame && std::abs(p[1].x - p[2].x) < kSame &&
         std::abs(p[0].y - p[1].y) < kSame && std::abs(p[2].y - p[3].y) < kSame;
}

std::string points_of(const Writer& w, const Polygon& outline) {
  std::string points;
  for (const Vec2 p : outline)
    points += fmt::format("{}[{}, {}]", points.empty() ? "" : ", ", w.text(p.x), w.text(p.y));
  return "{ points = [" + points + "] }";
}

void set_points(Writer& w, const Polygon& outline) {
  const int n = static_cast<int>(outline.size());
  for (int k = 0; k < n; ++k) {
    const Vec2 before = w.drawn().outline[k], after = outline[k];
    const int row = w.drawn().typed_clockwise ? (n - k) % n : k;
    // The first point may stand once more at the end.
    for (const int at : {row, row == 0 ? n : row}) {
      const std::string point = w.path(fmt::format("shape.points[{}]", at));
      w.set(point + "[0]", before.x, after.x, at == n);
      w.set(point + "[1]", before.y, after.y, at == n);
      if (row != 0) break;
    }
  }
}

void set_shape(Writer& w, const Polygon& outline) {
  const Part& part = w.drawn();
  if (!part.rectangle) return set_points(w, outline);
  const Vec2 before = part.outline[2], after = outline[2];
  const bool lumber = w.design.stock[part.stock].kind == StockKind::lumber;
  const bool same_height = std::abs(before.y - after.y) < kSame;
  if (!is_rectangle(outline) || (lumber && !same_height)) {
    w.edits.push_back({key_path(w.path("shape")), points_of(w, outline)});
  } else if (lumber) {
    w.set(w.path("shape.length"), before.x, after.x);
  } else {
    w.set(w.path("shape.size[0]"), before.x, after.x);
    w.set(w.path("shape.size[1]"), before.y, after.y);
  }
}

void shift_cutout(Writer& w, int index, Vec2 by) {
  const std::string cutout = w.path(fmt::format("cutouts[{}].", index));
  const Cutout& drawn = w.drawn().cutouts[index];
  if (drawn.centre) {
    w.set(cutout + "circle[0]", drawn.centre->x, drawn.centre->x + by.x);
    w.set(cutout + "circle[1]", drawn.centre->y, drawn.centre->y + by.y);
    return;
  }
  const Vec2 corner = drawn.outline[0];
  w.edits.push_back({key_path(cutout + "rect[0]"), w.text(corner.x + by.x), true});
  w.edits.push_back({key_path(cutout + "rect[1]"), w.text(corner.y + by.y), true});
  const int n = static_cast<int>(drawn.outline.size());
  // A free cutout is written whole, anticlockwise; the first point may stand once more at the end.
  for (int k = 0; k <= n; ++k) {
    const std::string point = cutout + fmt::format("points[{}]", k);
    w.edits.push_back({key_path(point + "[0]"), w.text(drawn.outline[k % n].x + by.x), true});
    w.edits.push_back({key_path(point + "[1]"), w.text(drawn.outline[k % n].y + by.y), true});
  }
}

void set_place(Writer& w, Vec3 by) {
  const Vec3 at = w.drawn().place_in_room.at;
  w.set(w.path("place.at[0]"), at.x, at.x + by.x);
  w.set(w.path("place.at[1]"), at.y, at.y + by.y);
  w.set(w.path("place.at[2]"), at.z, at.z + by.z);
}

// Whether a name means the part, or one of its copies.
bool means(const std::string& name, const Design& design, int part) {
  const std::vector<Piece> pieces = pieces_of(design);
  return std::any_of(pieces.begin(), pieces.end(), [&](const Piece& piece) {
    return piece.part == part && is_named(piece, name);
  });
}

// u and v count from the new corner `low`: what lies on the piece is told anew.
void count_from(Writer& w, Vec2 low) {
  for (int k = 0; k < static_cast<int>(w.drawn().cutouts.size()); ++k) shift_cutout(w, k, -low);
  for (std::size_t k = 0; k < w.design.fastenings.size(); ++k) {
    const Fastening& fastening = w.design.fastenings[k];
    if (fastening.load_at && means(fastening.part, w.design, w.part))
      w.set(fmt::format("fasten[{}].at", k), fastening.load_at->mm, fastening.load_at->mm - low.x);
  }
  const Frame frame = frame_of(w.drawn().place_in_room);
  set_place(w, low.x * frame.u + low.y * frame.v);
}

}  // namespace

Polygon shifted(const Polygon& outline, const EdgeRun& run, double first_mm, double last_mm) {
  const int n = static_cast<int>(outline.size());
  const int edges = (run.last - run.first + n) % n + 1;
  const Vec2 start = outline[run.first], end = outline[(run.first + edges) % n];
  const Vec2 along = end - start;
  const Vec2 outward = (-1 / norm(along)) * left_of(along);
  Polygon moved = outline;
  for (int k = 0; k <= edges; ++k) {
    const int i = (run.first + k) % n;
    const double share = dot(outline[i] - start, along) / dot(along, along);
    moved[i] = outline[i] + (first_mm + share * (last_mm - first_mm)) * outward;
  }
  return moved;
}

Polygon set_out(const Part& part, const EdgeRun& run, Vec2 ends) {
  const Polygon outline = shifted(part.outline, run, ends.x, ends.y);
  if (!part.symmetric) return outline;
  const EdgeRun other = run_across(part.outline, run);
  if (other.first == run.first && other.last == run.last) return outline;
  return shifted(outline, other, ends.y, ends.x);
}

std::vector<Edit> reshape(const Design& design, int part, const Polygon& outline) {
  Writer w{design, part, {}};
  Vec2 low = outline[0];
  for (const Vec2 p : outline) low = {std::min(low.x, p.x), std::min(low.y, p.y)};
  Polygon counted;
  for (const Vec2 p : outline) counted.push_back(p - low);
  set_shape(w, counted);
  if (norm(low) > kSame) count_from(w, low);
  return w.edits;
}

std::vector<Edit> move_part(const Design& design, int part, Vec3 by) {
  Writer w{design, part, {}};
  set_place(w, by);
  return w.edits;
}

std::vector<Edit> move_group(const Design& design, const std::string& group, Vec3 by) {
  std::vector<Edit> edits;
  for (int p = 0; p < static_cast<int>(design.parts.size()); ++p) {
    if (design.parts[p].group != group) continue;
    for (Edit& edit : move_part(design, p, by)) edits.push_back(std::move(edit));
  }
  return edits;
}

std::vector<Edit> longer_below(const Design& design, int part, double mm) {
  const Part& drawn = design.parts[part];
  const Frame frame = frame_of(drawn.place_in_room);
  for (const EdgeSide side : {EdgeSide::bottom, EdgeSide::left, EdgeSide::right, EdgeSide::top}) {
    const EdgeRun run = side_of(drawn.outline, side);
    const Vec2 d = drawn.outline[(run.last + 1) % drawn.outline.size()] - drawn.outline[run.first];
    const Vec2 out = (-1 / norm(d)) * left_of(d);
    if ((out.x * frame.u + out.y * frame.v).z > -0.9) continue;
    std::vector<Edit> edits = reshape(design, part, shifted(drawn.outline, run, mm, mm));
    const std::string height = fmt::format("part[{}].place.at[2]", part);
    edits.push_back({key_path(height), quoted(typed(drawn.place_in_room.at.z, design.units))});
    return edits;
  }
  return {};
}

double height_of(const Part& part) {
  const Frame frame = frame_of(part.place_in_room);
  double low = 1e300, high = -1e300;
  for (const Vec2 p : part.outline) {
    const double z = p.x * frame.u.z + p.y * frame.v.z;
    low = std::min(low, z), high = std::max(high, z);
  }
  return high - low;
}

std::vector<Edit> respace(const Design& design, int part, double mm) {
  Writer w{design, part, {}};
  w.set(w.path("repeat.step[2]"), design.parts[part].repeat->step.z, mm);
  return w.edits;
}

namespace {

std::string_view spelled(Fitting by) {
  constexpr std::string_view kWords[] = {"butt",   "clear", "shim",  "caulk",
                                         "filler", "trim",  "taper", "scribe"};
  return kWords[static_cast<int>(by)];
}

}  // namespace

Length cover_width(Unit unit) {
  return unit == Unit::inch ? inches(0.75) : millimetres(19);
}

std::vector<Edit> refit(const Design& design, int contact, Fitting by, bool notch) {
  const std::string path = fmt::format("contact[{}].", contact);
  std::string value = fmt::format("\"{}\"", spelled(by));
  if (notch) value = by == Fitting::butt ? "\"notch\"" : fmt::format("[\"notch\", {}]", value);
  std::vector<Edit> edits{{key_path(path + "by"), value}};
  const bool covered = design.contacts[contact].trim.has_value();
  if (by == Fitting::trim && !covered)
    edits.push_back(
        {key_path(path + "trim"), quoted(typed(cover_width(design.units).mm, design.units))});
  if (by != Fitting::trim && covered)
    edits.insert(edits.begin(), {key_path(path + "trim"), "", false, true});
  return edits;
}

std::string fitting_words(Fitting by, bool notch) {
  if (!notch) return std::string(spelled(by));
  return by == Fitting::butt ? "notch" : fmt::format("notch and {}", spelled(by));
}

}  // namespace nook
