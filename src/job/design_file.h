// What the readers of the parts of design.toml share.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "design/design.h"
#include "job/names.h"
#include "job/table.h"

namespace nook {

/// A part's name as typed, also where the rest of the part is wrong.
struct PartName {
  std::string name, group;
  int copies = 0;  // 0 = no repeat
  int index = -1;  // into Design::parts; -1 where the part is not sound
  Place place;
};

/// design.toml half read.
struct DesignFile {
  Source& source;
  Design& design;
  Names stock_names = {};  // every [stock.NAME], sound or not
  std::vector<PartName> parts = {};
  Names part_names = {};  // of `parts`, in their order
  Names groups = {};

  /// The part a name means, itself or as a copy ("rung 2"); null where it means none.
  const PartName* part_named(std::string_view name) const;
  /// Reads the name of a part or copy; a fault where there is none.
  const PartName* part(const Table& table, std::string_view key) const;
  /// Reads what something meets: a wall, "floor", "ceiling" or a part. Empty where there is none.
  std::string target(const Node& value, std::string_view name, bool level_surfaces) const;
  /// Whether two names mean a common piece.
  bool overlap(const std::string& a, const std::string& b) const;
};

/// Whether a part or group may not be called so: it would read as a wall, floor or ceiling.
bool is_reserved(const std::string& name);

/// The part whose copy a name would be, "rung" for "rung 2" where rung repeats; null where it is
/// none.
const PartName* original_of(const DesignFile& file, std::string_view name);

void read_stock(DesignFile& file, const Table& design);
void read_parts(DesignFile& file, const Table& design);
void read_groups(DesignFile& file, const Table& design);
void read_contacts(DesignFile& file, const Table& design);
void read_fastenings(DesignFile& file, const Table& design);

/// An outline and cutouts, checked. Nothing where there was a fault.
struct Shape {
  Polygon outline;
  bool rectangle = false, typed_clockwise = false;
  std::vector<Cutout> cutouts;
};
std::optional<Shape> read_shape(Source& source, const Table& part, const Stock* stock);

}  // namespace nook
