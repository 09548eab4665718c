// Every key the readers know, table by table: what unknown keys are told from, and what the schemas
// and docs/formats.md are compared with.
#pragma once

#include <string_view>
#include <vector>

namespace nook {

/// The keys of one kind of table. `name` is its definition in the JSON Schema ("room" is the root).
struct KeyList {
  std::string_view name;
  std::vector<std::string_view> keys;
};

namespace room_keys {
extern const KeyList kRoom, kTape, kLevelTool, kLevelLine, kFlatness, kWall, kBaseboard, kLevel,
    kStraightedge, kPlumb, kString, kStuds, kFound, kBlocking, kObstacle, kCorner, kSquare, kAngle,
    kBuildup, kAcross, kMark, kSpan, kSpot, kFloor, kCovering, kSquash, kCeiling, kInstalled,
    kOpening, kAccess, kDoorway, kTurn;
}
namespace design_keys {
extern const KeyList kDesign, kUse, kStock, kPart, kShape, kCutout, kPlace, kRepeat, kGroup,
    kContact, kCovered, kFasten, kScrew, kFeet;
}
namespace pieces_keys {
extern const KeyList kPieces, kPiece, kNotch;
}
namespace reading_keys {
extern const KeyList kReading, kPosition, kFromLine;
}

/// Every list that one of the files uses, its root first.
std::vector<const KeyList*> room_key_lists();
std::vector<const KeyList*> design_key_lists();
std::vector<const KeyList*> pieces_key_lists();

}  // namespace nook
