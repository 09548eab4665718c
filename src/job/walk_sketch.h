// Sketches in characters of where to hold the tape, 60 columns wide.
#pragma once

namespace nook {

inline constexpr const char* kDiagonalSketch = R"(
        seen from above, the room below
      o------------------x-------> the second wall
      |               .
      |           .       <- the straight tape between the marks
      |       .
      x   .                  x = marks, both at one height
      |
      v  the first wall, on the left as you face the corner
)";
inline constexpr const char* kLengthSketch = R"(
        seen from above
      o============================| far end, casing or corner
      ^ set the tape's end here, always in the same way
)";
inline constexpr const char* kLevelSketch = R"(
        seen along the wall
      |  |#     # = the level, bubble centered: plumb
      |  |#
      |  |#  <- here it touches, there it gaps:
      |  |#     say the gap and at which end, top or bottom
      |  |#
     wall
)";
inline constexpr const char* kStringSketch = R"(
        seen from above
      o================================ wall
      .    |    |    |    |   <- measure from the line
      .--------------------------------    square to the wall
        string or level laser, an inch or so off the wall
)";
inline constexpr const char* kAcrossSketch = R"(
        seen from above
      o==========================o  back wall
      |            | out         |
      |<-------------------------|  wall to wall, level and
      |                          |  square to the back wall's middle
      left wall        right wall
)";
inline constexpr const char* kFloorSketch = R"(
      - - - - - - - - - - - - - - -  level line
            |
            |  <- hook the tape down from the line
            |
      ______v______________________  floor as walked on
)";
inline constexpr const char* kCeilingSketch = R"(
      ____________________________  ceiling
            ^
            |  <- push the tape's case or a stick up to it
            |
      - - - - - - - - - - - - - - -  level line
)";
inline constexpr const char* kCoveringSketch = R"(
      | weight |
      +--------+  block, as large as a foot of the piece
  ~~~~|        |~~~~~~~  covering at rest   ---
      +--------+         under the block    ---  sinks by
  =======================  subfloor
)";
inline constexpr const char* kStudSketch = R"(
        seen from above
      o=====[##]===========[##]======== wallboard
      |<-->|                edge nearer to the corner
      |<------>|            edge further from it
      or one number: its center. Say how: nail, magnet, finder
)";
inline constexpr const char* kBoardSketch = R"(
        seen along the wall
      |  |
      |  |__   ---
      |  |  |   ^  height, from the floor to its top
      |  |  |   v
      |__|__|____
         |<>|  thickness, at its thickest
)";
inline constexpr const char* kDoorSketch = R"(
      the narrowest that a piece has to pass:
      width between the stops, or from the stop to the open leaf;
      height from the floor to the head
)";
inline constexpr const char* kTurnSketch = R"(
        seen from above
      |  before  |
      |          +-------------
      |             after
      +------------------------   height: floor to ceiling there
)";
inline constexpr const char* kBoxSketch = R"(
      |<-- from -->+-----+   along the wall: from, to
                   |     |
                   +-----+   height: from, to
      floor ____________________________________________
)";

}  // namespace nook
