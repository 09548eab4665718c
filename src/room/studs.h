// Studs and blocking as found.
#pragma once

#include "room/reading.h"

namespace nook {

enum class StudKind { wood, steel, masonry, furring, unknown };
enum class FoundBy { nail, magnet, finder };
/// One stud as found, by its two edges or by its centre (the other list is empty).
struct StudFound {
  Readings left_edge, right_edge;  // nearer to and further from where `along` starts
  Readings centre;
  std::optional<Height> height;  // left out = 1 m
  FoundBy by = FoundBy::finder;
  bool from_right = false;
  std::string id;  // "wall[0].studs.found[2]"
  Place place;
};
struct Blocking {
  Length along[2];
  bool from_right = false;
  Height height[2];
  Place place;
};
struct Studs {
  StudKind kind = StudKind::unknown;
  std::optional<Length> spacing;  // nominal, on center
  Length width = inches(1.5);
  std::optional<Length> depth;    // as stated
  std::optional<double> gravity;  // specific gravity; left out = 0.42, and said so
  std::vector<StudFound> found;
  std::vector<Blocking> blocking;
  Place place;

  /// How deep a screw finds wood: 3 1/2 in where nothing says; nothing of furring, which is thin.
  std::optional<Length> wood_depth() const {
    if (depth || kind == StudKind::furring) return depth;
    return inches(3.5);
  }
};

}  // namespace nook
