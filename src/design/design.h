// The design as drawn for a square corner: stock, pieces, how they meet, how they are fastened.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/diagnostic.h"
#include "base/length.h"
#include "base/notation.h"
#include "base/vector.h"

namespace nook {

enum class User { child, adult, anyone };
enum class Purpose { play, sleep, storage, seat, desk };
struct Use {
  std::optional<User> by;
  std::optional<double> ages[2];
  std::optional<Purpose> purpose;
  std::optional<Length> mattress;
  Place place;
};

enum class StockKind { plywood, board, lumber };  // board: solid wood glued up wide, or mdf
struct Stock {
  std::string name;
  StockKind kind = StockKind::plywood;
  std::string kind_given;  // as typed
  Length thickness;
  std::optional<Length> width;     // lumber: the outline is length by this width
  std::optional<Length> sheet[2];  // width, length
  std::vector<Length> lengths;
  std::optional<double> density;  // kg/m3
  std::optional<double> gravity;  // specific gravity, for fastener values
  Place place;
};

struct Cutout {
  std::string name;
  Polygon outline;             // anticlockwise in u, v; a circle is a fine polygon
  std::optional<Vec2> centre;  // of a circle
  std::optional<Length> diameter;
  Place place;
};

/// Where a piece stands in the nominal room frame (room/survey.h), square corner.
struct Placement {
  Vec3 at;     // the lower left corner of the outline
  Vec3 u, v;   // unit, square to each other; turn and lean not yet applied
  Angle turn;  // about w = u x v
  Angle lean;  // about u, after the turn
};

enum class ShowFace { front, back, both, none };
struct Repeat {
  int count = 1;
  Vec3 step;
};

struct Part {
  std::string name;
  int stock = 0;                 // index into Design::stock
  Polygon outline;               // anticlockwise in u, v, from (0, 0) up and to the right
  bool typed_clockwise = false;  // then edge n as typed is edge size - 1 - n of the outline
  bool rectangle = false;        // size = [...] or length
  bool symmetric = false;        // to stay alike on both sides of its upright center line
  std::vector<Cutout> cutouts;
  Placement place_in_room;
  std::string group;  // its own name where left out
  ShowFace show = ShowFace::front;
  std::optional<Repeat> repeat;
  Place place;  // of its name
};

enum class HeightFrom { level_line, floor };
struct Group {
  std::string name;
  std::optional<double> order;
  std::optional<bool> turn;
  std::vector<std::string> tight_to;
  std::optional<std::string> parallel_to;
  std::optional<HeightFrom> height_from;
  Place place;
};

/// A stretch of an outline, or a face.
enum class EdgeSide { left, right, bottom, top };
enum class PieceFace { front, back };
struct EdgeRun {
  int first = 0, last = 0;  // edges first..last of Part::outline, edge n from point n to
                            // n + 1; first > last runs through point 0
};
using EdgeChoice = std::variant<EdgeSide, EdgeRun, PieceFace>;

enum class Fitting { butt, clear, shim, caulk, filler, trim, taper, scribe };
struct Contact {
  std::string part;
  EdgeChoice edge = EdgeSide::left;
  std::string edge_given;  // as printed: "left", "edge 3", "edges 3 to 9", "back"
  std::string meets;       // "left wall", "floor", "ceiling" or a part
  Fitting by = Fitting::butt;
  bool notch = false;
  bool notch_profile = false;          // follows the molding instead of square
  Length clearance = inches(1.0 / 8);  // of the notch; chosen
  bool shop = false, keep = false;
  Length gap;                   // wanted
  std::optional<Length> allow;  // widest accepted; left out = the usual one for `by`
  std::optional<Length> trim;   // width of the cover
  Place place;
};

struct Covered {
  std::string part;
  EdgeChoice edge = EdgeSide::left;
  std::string edge_given;
  std::string behind;
  Length margin;
  Place place;
};

enum class ScrewKind { wood, lag, pocket, structural, drywall };
struct Screw {
  double gauge = 0;                // wood and pocket screws: number; 0 = diameter given
  std::optional<Length> diameter;  // lag and structural
  Length length;
  ScrewKind kind = ScrewKind::wood;
  Length head_below;
  std::optional<double> allowable_n;  // structural: as published by its maker
  std::string allowable_source;
  Place place;
};
struct Fastening {
  std::string part;
  std::optional<PieceFace> face;
  std::string to;  // "left wall" = into studs; or a part
  Screw screw;
  int per_stud = 2;
  std::optional<double> load_n;   // down along the wall
  std::optional<Length> load_at;  // u on the piece; left out = spread
  std::optional<double> pull_n;   // away from the wall
  double duration = 1.0;
  bool prebored = false;
  Place place;
};

struct Foot {
  std::string part;
  std::optional<double> load_n;
  Place place;
};

/// The whole of design.toml.
struct Design {
  std::string title;
  Unit units = Unit::inch;
  std::string corner[2];  // wall names, left one first
  Use use;
  std::vector<Stock> stock;
  std::vector<Part> parts;    // in file order
  std::vector<Group> groups;  // those the file names
  std::vector<Contact> contacts;
  std::vector<Covered> covered;
  std::vector<Fastening> fastenings;
  std::vector<Foot> feet;
  std::vector<Mention> walls_named;  // every mention of a wall, without " wall"
};

/// "left wall" -> "left"; empty where `meets` is not a wall.
std::string wall_named(const std::string& meets);

}  // namespace nook
