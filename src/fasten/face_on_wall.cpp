// Points of a face carried to the wall behind it.
#include "fasten/face_on_wall.h"

#include <algorithm>
#include <cmath>

namespace nook {
namespace {

const double kFlat = direction(degrees(30)).cos;  // a face further turned lies on no wall. Chosen

}  // namespace

FaceOnWall::FaceOnWall(const Frame& frame, double w, Vec3 into, const WallFrame& wall)
    : frame_(frame), w_(w), into_(into), wall_(wall) {
  const Vec2 along = wall.shape().along;
  const auto on_wall = [&](Vec3 d) { return Vec2{dot(Vec2{d.x, d.y}, along), d.z}; };
  const Vec3 p = frame.room_from_piece({0, 0, w});
  origin_ = {wall.shape().wall_from_room({p.x, p.y}).x, p.z};
  du_ = on_wall(frame.u);
  dv_ = on_wall(frame.v);
  level_ = std::abs(du_.x) >= std::abs(dv_.x);
  along_sign_ = (level_ ? du_.x : dv_.x) > 0 ? 1 : -1;
  up_sign_ = (level_ ? dv_.y : du_.y) > 0 ? 1 : -1;
}

Vec2 FaceOnWall::wall_from_face(Vec2 uv) const {
  return origin_ + uv.x * du_ + uv.y * dv_;
}

Vec2 FaceOnWall::face_from_wall(Vec2 az) const {
  const double det = cross(du_, dv_);
  const Vec2 d = az - origin_;
  return {cross(d, dv_) / det, cross(du_, d) / det};
}

double FaceOnWall::shim(Vec2 uv) const {
  const Vec3 p = frame_.room_from_piece({uv.x, uv.y, w_});
  const Vec2 at = wall_.shape().wall_from_room({p.x, p.y});
  return std::max(0.0, at.y - wall_.shape().out_at(at.x, p.z));
}

double FaceOnWall::axis(Vec2 uv, double depth) const {
  const Vec3 p = frame_.room_from_piece({uv.x, uv.y, w_}) + depth * into_;
  return wall_.shape().wall_from_room({p.x, p.y}).x;
}

std::optional<FaceOnWall> face_on(const Piece& piece, const Frame& frame,
                                  std::optional<PieceFace> asked, const WallFrame& wall) {
  const Vec2 out = wall.shape().out;
  const double back = dot(Vec2{frame.w.x, frame.w.y}, out);  // > 0: the back is turned to the wall
  const PieceFace face = asked.value_or(back > 0 ? PieceFace::back : PieceFace::front);
  const double facing = face == PieceFace::back ? back : -back;
  if (facing < kFlat) return std::nullopt;
  const bool is_back = face == PieceFace::back;
  return FaceOnWall(frame, is_back ? 0 : piece.thickness, is_back ? -frame.w : frame.w, wall);
}

}  // namespace nook
