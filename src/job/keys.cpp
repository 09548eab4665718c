// The keys of room.toml, design.toml and pieces.toml.
#include "job/keys.h"

namespace nook {

namespace room_keys {
const KeyList kRoom = {
    "room",
    {"title", "units", "tape", "level", "level_line", "flatness", "wall", "corner", "across",
     "mark", "span", "floor", "ceiling", "installed", "access"}};
const KeyList kTape = {"tape", {"class", "read_to", "corner"}};
const KeyList kLevelTool = {"level_tool", {"length", "class"}};
const KeyList kLevelLine = {"level_line", {"by"}};
const KeyList kFlatness = {"flatness", {"sd", "reach"}};
const KeyList kWall = {
    "wall",
    {"name", "from_corner", "length", "length_height", "ends_at", "wallboard", "baseboard", "level",
     "straightedge", "plumb", "string", "studs", "obstacle"}};
const KeyList kBaseboard = {
    "baseboard", {"height", "thickness", "shoe", "profile", "starts", "ends", "removable"}};
const KeyList kLevel = {
    "level", {"at", "from_corner", "from", "to", "gap", "gap_at", "sd", "note", "struck", "on"}};
const KeyList kStraightedge = {"straightedge", {"height", "from_line", "from_corner", "gaps"}};
const KeyList kPlumb = {"plumb", {"at", "from_corner", "line"}};
const KeyList kString = {"string", {"height", "from_line", "from_corner", "line"}};
const KeyList kStuds = {"studs",
                        {"kind", "spacing", "width", "depth", "gravity", "found", "blocking"}};
const KeyList kFound = {
    "found",
    {"edges", "centre", "height", "from_line", "from_corner", "by", "sd", "note", "struck"}};
const KeyList kBlocking = {"blocking", {"along", "height", "from_corner"}};
const KeyList kObstacle = {"obstacle", {"kind", "name", "along", "height", "out", "from_corner"}};
const KeyList kCorner = {
    "corner", {"walls", "height", "from_line", "diagonals", "square", "angles", "buildup"}};
const KeyList kSquare = {"square", {"blade", "gap", "at", "sd", "note", "struck"}};
const KeyList kAngle = {"angle", {"is", "blade", "sd", "note", "struck"}};
const KeyList kBuildup = {"buildup", {"proud", "reach"}};
const KeyList kAcross = {"across",
                         {"walls", "out", "height", "from_line", "is", "sd", "note", "struck"}};
const KeyList kMark = {"mark", {"name"}};
const KeyList kSpan = {"span", {"between", "is", "sd", "note", "struck"}};
const KeyList kSpot = {"spot", {"wall", "along", "height", "from_line", "from_corner"}};
const KeyList kFloor = {"floor", {"down", "covering", "squash", "heated"}};
const KeyList kCovering = {"covering", {"kind", "thickness", "tack_strip"}};
const KeyList kSquash = {"squash", {"load", "on", "by"}};
const KeyList kCeiling = {"ceiling", {"up"}};
const KeyList kInstalled = {"installed", {"parts", "openings"}};
const KeyList kOpening = {"opening",
                          {"between", "out", "height", "from_line", "is", "sd", "note", "struck"}};
const KeyList kAccess = {"access", {"openings", "turns"}};
const KeyList kDoorway = {"doorway", {"name", "width", "height", "leaf"}};
const KeyList kTurn = {"turn", {"name", "from", "to", "height"}};
}  // namespace room_keys

namespace design_keys {
const KeyList kDesign = {"design",
                         {"title", "units", "corner", "use", "stock", "part", "group", "contact",
                          "covered", "fasten", "feet"}};
const KeyList kUse = {"use", {"by", "ages", "purpose", "mattress"}};
const KeyList kStock = {"stock",
                        {"kind", "thickness", "section", "sheet", "lengths", "density", "gravity"}};
const KeyList kPart = {
    "part", {"name", "stock", "shape", "cutouts", "symmetric", "place", "repeat", "group", "show"}};
const KeyList kShape = {"shape", {"size", "points", "length"}};
const KeyList kCutout = {"cutout", {"name", "circle", "diameter", "rect", "points"}};
const KeyList kPlace = {"place", {"at", "u", "v", "turn", "lean"}};
const KeyList kRepeat = {"repeat", {"count", "step"}};
const KeyList kGroup = {"group",
                        {"name", "order", "turn", "tight_to", "parallel_to", "height_from"}};
const KeyList kContact = {"contact",
                          {"part", "edge", "face", "meets", "by", "clearance", "notch", "shop",
                           "keep", "gap", "allow", "trim"}};
const KeyList kCovered = {"covered", {"part", "edge", "behind", "margin"}};
const KeyList kFasten = {
    "fasten",
    {"part", "face", "to", "screw", "per_stud", "load", "at", "pull", "duration", "prebored"}};
const KeyList kScrew = {
    "screw", {"gauge", "diameter", "length", "kind", "head_below", "allowable", "source"}};
const KeyList kFeet = {"feet", {"part", "load"}};
}  // namespace design_keys

namespace pieces_keys {
const KeyList kPieces = {"pieces", {"units", "piece"}};
const KeyList kPiece = {"piece",
                        {"part", "show_face", "widths", "heights", "diagonals", "notches"}};
const KeyList kNotch = {"notch", {"corner", "width", "height"}};
}  // namespace pieces_keys

namespace reading_keys {
const KeyList kReading = {"reading", {"is", "sd", "note", "struck", "on"}};
const KeyList kPosition = {"position", {"is", "note"}};
const KeyList kFromLine = {"from_line", {"from_line"}};
}  // namespace reading_keys

std::vector<const KeyList*> room_key_lists() {
  using namespace room_keys;
  using namespace reading_keys;
  return {&kRoom,     &kTape,         &kLevelTool, &kLevelLine, &kFlatness, &kWall,     &kBaseboard,
          &kLevel,    &kStraightedge, &kPlumb,     &kString,    &kStuds,    &kFound,    &kBlocking,
          &kObstacle, &kCorner,       &kSquare,    &kAngle,     &kBuildup,  &kAcross,   &kMark,
          &kSpan,     &kSpot,         &kFloor,     &kCovering,  &kSquash,   &kCeiling,  &kInstalled,
          &kOpening,  &kAccess,       &kDoorway,   &kTurn,      &kReading,  &kPosition, &kFromLine};
}

std::vector<const KeyList*> design_key_lists() {
  using namespace design_keys;
  return {&kDesign,  &kUse,    &kStock,  &kPart,  &kShape,
          &kCutout,  &kPlace,  &kRepeat, &kGroup, &kContact,
          &kCovered, &kFasten, &kScrew,  &kFeet,  &reading_keys::kPosition};
}

std::vector<const KeyList*> pieces_key_lists() {
  using namespace pieces_keys;
  return {&kPieces, &kPiece, &kNotch, &reading_keys::kReading, &reading_keys::kPosition};
}

}  // namespace nook
