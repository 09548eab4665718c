// A part's end is the side or face that looks at the other end most nearly; a wall's its surface.
#include "shop/opening_line.h"

#include <algorithm>
#include <cmath>

namespace nook {
namespace {

constexpr double kFaces =
    0.5;  // cosine: a side that looks further away is not the opening's. Chosen

struct Extent {
  Vec3 low{1e300, 1e300, 1e300}, high{-1e300, -1e300, -1e300};
};

// Indices of the pieces that a name means: one, or every copy of a part.
std::vector<int> pieces_meant(const Built& built, const std::string& name) {
  std::vector<int> meant;
  for (int p = 0; p < static_cast<int>(built.pieces.size()); ++p)
    if (is_named(built.pieces[p], name)) meant.push_back(p);
  return meant;
}

int wall_index(const Built& built, const std::string& name) {
  for (int w = 0; w < static_cast<int>(built.room.walls.size()); ++w)
    if (built.room.walls[w].name + " wall" == name) return w;
  return -1;
}

Extent extent_of(const Piece& piece, const Frame& frame) {
  Extent all;
  for (const Vec2 p : piece.drawn->outline)
    for (const double w : {0.0, piece.thickness}) {
      const Vec3 at = frame.room_from_piece({p.x, p.y, w});
      all.low = {std::min(all.low.x, at.x), std::min(all.low.y, at.y), std::min(all.low.z, at.z)};
      all.high = {std::max(all.high.x, at.x), std::max(all.high.y, at.y),
                  std::max(all.high.z, at.z)};
    }
  return all;
}

Extent both(const Extent& a, const Extent& b) {
  return {
      {std::min(a.low.x, b.low.x), std::min(a.low.y, b.low.y), std::min(a.low.z, b.low.z)},
      {std::max(a.high.x, b.high.x), std::max(a.high.y, b.high.y), std::max(a.high.z, b.high.z)}};
}

Extent extent_of(const Built& built, const std::string& name) {
  const std::vector<int> meant = pieces_meant(built, name);
  Extent all;
  for (const int p : meant) all = both(all, extent_of(built.pieces[p], built.frames[p]));
  if (!meant.empty()) return all;
  const WallShape& wall = built.room.walls[wall_index(built, name)];
  const Vec2 a = wall.start, b = wall.start + wall.length * wall.along;
  return {{std::min(a.x, b.x), std::min(a.y, b.y), 0}, {std::max(a.x, b.x), std::max(a.y, b.y), 0}};
}

double along(Vec3 p, int axis) {
  return axis == 0 ? p.x : p.y;
}

Vec3 point_on(const OpeningLine& line, double t) {
  return line.axis == 0 ? Vec3{t, line.cross, line.height} : Vec3{line.cross, t, line.height};
}

// A plane of a piece in the room: normal . p = offset, normal out of the wood.
struct Plane {
  Vec3 normal;
  double offset = 0;
};

std::vector<Plane> planes_of(const Piece& piece, const Frame& frame) {
  std::vector<Plane> planes;
  const auto add = [&](Vec3 normal, Vec3 at) { planes.push_back({normal, dot(normal, at)}); };
  add(-frame.w, frame.at);
  add(frame.w, frame.room_from_piece({0, 0, piece.thickness}));
  const Polygon& outline = piece.drawn->outline;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Vec2 a = outline[i], d = outline[(i + 1) % outline.size()] - a;
    if (norm(d) <= 0) continue;
    const Vec2 out = (-1 / norm(d)) * left_of(d);
    add(out.x * frame.u + out.y * frame.v, frame.room_from_piece({a.x, a.y, 0}));
  }
  return planes;
}

// Where the line meets the plane of the piece that looks along `way` (+1 or -1) most nearly.
std::optional<double> end_at_piece(const OpeningLine& line, const Piece& piece, const Frame& frame,
                                   double way) {
  std::optional<double> end;
  double best = kFaces;
  for (const Plane& plane : planes_of(piece, frame)) {
    const double looks = way * along(plane.normal, line.axis);
    if (looks <= best) continue;
    best = looks;
    end = (plane.offset - dot(plane.normal, point_on(line, 0))) / along(plane.normal, line.axis);
  }
  return end;
}

std::optional<double> end_at_wall(const OpeningLine& line, const WallShape& wall) {
  const double slope = line.axis == 0 ? wall.out.x : wall.out.y;
  if (std::abs(slope) < kFaces) return std::nullopt;
  double t = 0;
  for (int round = 0; round < 8; ++round) {  // it settles in three
    const Vec3 p = point_on(line, t);
    const Vec2 q = wall.wall_from_room({p.x, p.y});
    t += (wall.out_at(q.x, line.height) - q.y) / slope;
  }
  return t;
}

// Of the copies that a name means, that at the tape's height (else any) which is nearest to the
// other end.
std::optional<double> end_at_pieces(const OpeningLine& line, const Built& built,
                                    const std::vector<int>& meant, double way) {
  std::optional<double> end;
  bool met = false;
  for (const int p : meant) {
    const Extent at = extent_of(built.pieces[p], built.frames[p]);
    const bool meets = line.height >= at.low.z && line.height <= at.high.z;
    const auto next = end_at_piece(line, built.pieces[p], built.frames[p], way);
    if (!next || (met && !meets)) continue;
    if (!end || (meets && !met) || way * *next > way * *end) end = next;
    met = met || meets;
  }
  return end;
}

std::optional<double> end_at(const OpeningLine& line, const Built& built, int end) {
  const std::string& name = line.ends[end];
  if (const auto meant = pieces_meant(built, name); !meant.empty())
    return end_at_pieces(line, built, meant, end == 0 ? 1 : -1);
  return end_at_wall(line, built.room.walls[wall_index(built, name)]);
}

// Half way up the lower part.
double middle_height(const Opening& opening, const Built& built) {
  double height = 1e300;
  for (const std::string& name : opening.between) {
    if (pieces_meant(built, name).empty()) continue;
    const Extent part = extent_of(built, name);
    height = std::min(height, (part.low.z + part.high.z) / 2);
  }
  return height;
}

// Room z: as said from the level line or above the floor at `spot`; nothing where the line is not
// known.
std::optional<double> height_for(const Opening& opening, const Built& built, Vec2 spot) {
  if (!opening.height) return middle_height(opening, built);
  if (!opening.height->from_line) return built.room.floor.z(spot) + opening.height->value.mm;
  if (!built.room.line_z) return std::nullopt;
  return *built.room.line_z + opening.height->value.mm;
}

}  // namespace

std::optional<OpeningLine> line_of(const Opening& opening, const Built& built) {
  bool part = false;
  for (const std::string& name : opening.between) {
    const bool piece = !pieces_meant(built, name).empty();
    if (!piece && wall_index(built, name) < 0) return std::nullopt;
    part = part || piece;
  }
  if (!part) return std::nullopt;
  const Extent a = extent_of(built, opening.between[0]), b = extent_of(built, opening.between[1]);
  const double apart[] = {std::max(b.low.x - a.high.x, a.low.x - b.high.x),
                          std::max(b.low.y - a.high.y, a.low.y - b.high.y)};
  const int axis = apart[0] >= apart[1] ? 0 : 1;
  const double ends[] = {along(a.low + a.high, axis) / 2, along(b.low + b.high, axis) / 2};
  const double middle = (ends[0] + ends[1]) / 2;
  const auto height = height_for(
      opening, built, axis == 0 ? Vec2{middle, opening.out.mm} : Vec2{opening.out.mm, middle});
  if (!height) return std::nullopt;
  OpeningLine line{axis, opening.out.mm, *height, {opening.between[0], opening.between[1]}};
  if (ends[0] > ends[1]) std::swap(line.ends[0], line.ends[1]);
  return line;
}

std::optional<double> opening_in(const OpeningLine& line, const Built& built) {
  const auto from = end_at(line, built, 0), to = end_at(line, built, 1);
  if (!from || !to) return std::nullopt;
  return *to - *from;
}

}  // namespace nook
