// Which end and edge a piece is measured from.
#include "fasten/piece_ruler.h"

#include <algorithm>
#include <cmath>

#include "solid/polygon.h"

namespace nook {

PieceRuler::PieceRuler(const Piece& piece, const FaceOnWall& face) : level_(face.level()) {
  const Box2 box = box_of(piece.drawn->outline);
  const Range u{box.low.x, box.high.x}, v{box.low.y, box.high.y};
  length_ = level_ ? u : v;
  height_ = level_ ? v : u;
  const Vec2 low = face.wall_from_face(box.low), high = face.wall_from_face(box.high);
  const double z = (low.y + high.y) / 2, near = std::min(low.x, high.x),
               far = std::max(low.x, high.x);
  // The end nearest to a corner; only a wall between two corners has one at its far end.
  const bool far_end =
      face.wall().has_far_corner() && face.wall().end(z) - far < near - face.wall().start(z);
  end_high_ = (face.along_sign() < 0) != far_end;
  edge_high_ = face.up_sign() > 0;
  const char* ends[] = {"left", "right"};
  const char* edges[] = {"bottom", "top"};
  end_ = (level_ ? ends : edges)[end_high_];
  edge_ = (level_ ? edges : ends)[edge_high_];
}

Vec2 PieceRuler::at(double from_end, double from_edge) const {
  const double along = end_high_ ? length_.to - from_end : length_.from + from_end;
  const double up = edge_high_ ? height_.to - from_edge : height_.from + from_edge;
  return level_ ? Vec2{along, up} : Vec2{up, along};
}

double PieceRuler::from_end(Vec2 uv) const {
  const double along = level_ ? uv.x : uv.y;
  return end_high_ ? length_.to - along : along - length_.from;
}

double PieceRuler::from_edge(Vec2 uv) const {
  const double up = level_ ? uv.y : uv.x;
  return edge_high_ ? height_.to - up : up - height_.from;
}

}  // namespace nook
