// Reads fastenings and feet of design.toml.
#include <fmt/format.h>

#include <algorithm>

#include "design/piece.h"
#include "job/design_file.h"

namespace nook {
namespace {

using namespace design_keys;

// Load duration factors of NDS 2018, table 2.3.2, span 0.9 to 2.0.
constexpr double kLeastDuration = 0.9, kGreatestDuration = 2.0;
// Numbered screws are made from about 2 to 24 (common practice, no source).
constexpr double kLeastGauge = 2, kGreatestGauge = 24;
constexpr int kMostPerStud = 10;  // chosen

void read_thickness(const Table& table, Screw& screw) {
  Source& source = table.source();
  const bool numbered = screw.kind == ScrewKind::wood || screw.kind == ScrewKind::pocket ||
                        screw.kind == ScrewKind::drywall;
  screw.diameter = table.length({"diameter", false, Range::positive});
  const auto gauge = table.plain_number({"gauge"});
  screw.gauge = gauge.value_or(0);
  if (gauge && (*gauge < kLeastGauge || *gauge > kGreatestGauge))
    source.fault(table.place_of("gauge"), "no screw has this gauge", "absurd-value",
                 "numbered screws go from 2 to 24; #10 is 0.190 in thick");
  if (table.has("gauge") && table.has("diameter"))
    source.fault(table.place_of("diameter"), "'gauge' and 'diameter' together", "two-diameters",
                 "say one of them");
  else if (!table.has("gauge") && !table.has("diameter"))
    table.find({numbered ? "gauge" : "diameter", needed});
}

void read_allowable(const Table& table, Screw& screw) {
  const bool structural = screw.kind == ScrewKind::structural;
  const char* const why = "only a structural screw has an allowable load published by its maker";
  for (const std::string_view key : {"allowable", "source"})
    if (!structural && table.has(key))
      table.source().fault(table.place_of(key), fmt::format("'{}' has no meaning here", key),
                           "key-without-meaning", why);
  if (!structural) return;
  screw.allowable_n = table.load({"allowable", needed, Range::positive});
  screw.allowable_source = table.text({"source", needed}).value_or("");
}

Screw read_screw(Source& source, const Node& node) {
  const std::size_t before = source.troubles();
  Table table(source, node, kScrew);
  Screw screw;
  screw.place = node.place;
  using W = Word<ScrewKind>;
  screw.kind = table
                   .word<ScrewKind>({"kind"}, {W{"wood", ScrewKind::wood}, W{"lag", ScrewKind::lag},
                                               W{"pocket", ScrewKind::pocket},
                                               W{"structural", ScrewKind::structural},
                                               W{"drywall", ScrewKind::drywall}})
                   .value_or(ScrewKind::wood);
  screw.length = table.length({"length", needed, Range::positive}).value_or(Length{});
  screw.head_below = table.length({"head_below"}).value_or(Length{});
  if (!source.sound_since(before)) return screw;
  read_thickness(table, screw);
  read_allowable(table, screw);
  if (screw.head_below >= screw.length)
    source.fault(table.place_of("head_below"), "the head is set deeper than the screw is long",
                 "absurd-value", "head_below is how far the head goes below the surface");
  return screw;
}

void read_loads(DesignFile& file, const Table& table, Fastening& fastening) {
  Source& source = file.source;
  fastening.load_n = table.load({"load"});
  fastening.pull_n = table.load({"pull"});
  fastening.load_at = table.length({"at"});
  if (table.has("at") && !table.has("load") && !table.has("pull"))
    source.fault(table.place_of("at"), "'at' without a load or pull", "key-without-meaning",
                 "it says where on the piece they stand");
  fastening.duration = table.plain_number({"duration"}).value_or(1.0);
  if (fastening.duration < kLeastDuration || fastening.duration > kGreatestDuration)
    source.fault(table.place_of("duration"), "no load has this duration factor", "absurd-value",
                 "0.9 permanent, 1.0 ten years, 1.15 two months, 1.25 seven days, 1.6 ten minutes");
}

void check_drywall(Source& source, const Fastening& fastening) {
  const bool loaded = fastening.load_n.value_or(0) > 0 || fastening.pull_n.value_or(0) > 0;
  if (loaded && fastening.screw.kind == ScrewKind::drywall)
    source.fault(fastening.screw.place, "drywall screws under a load", "drywall-screw-loaded",
                 "they snap: take wood screws, lags or structural screws");
}

void check_face(DesignFile& file, const Table& table, const Fastening& fastening) {
  if (!fastening.face || fastening.screw.kind != ScrewKind::pocket) return;
  file.source.fault(table.place_of("face"), "'face' has no meaning here", "key-without-meaning",
                    "pocket screws leave through an edge: leave it out");
}

void check_load_spot(DesignFile& file, const Table& table, const Fastening& fastening) {
  const PartName* name = file.part_named(fastening.part);
  if (!name || name->index < 0 || !fastening.load_at) return;
  double width = 0;
  for (const Vec2 p : file.design.parts[name->index].outline) width = std::max(width, p.x);
  if (fastening.load_at->mm > width)
    file.source.fault(table.place_of("at"), "the load stands beyond the piece", "load-off-piece",
                      "'at' is u on the piece, from its lower left corner");
}

// What is screwed to one thing twice would get the same holes twice.
void check_twice(DesignFile& file, const Fastening& fastening) {
  const auto pocket = [](const Fastening& f) { return f.screw.kind == ScrewKind::pocket; };
  const auto& all = file.design.fastenings;
  if (std::any_of(all.begin(), all.end(), [&](const Fastening& other) {
        return other.part == fastening.part && other.to == fastening.to &&
               other.face == fastening.face && pocket(other) == pocket(fastening);
      }))
    file.source.fault(fastening.place,
                      fmt::format("'{}' is fastened to '{}' twice", fastening.part, fastening.to),
                      "fastened-twice", "say it once: `load` and `pull` go in one [[fasten]]");
}

void check_head(DesignFile& file, const Node& screw, const Fastening& fastening) {
  const PartName* name = file.part_named(fastening.part);
  const Length below = fastening.screw.head_below;
  if (!name || name->index < 0 || fastening.screw.kind == ScrewKind::pocket) return;
  const int stock = file.design.parts[name->index].stock;
  if (below.mm == 0 || below.mm < file.design.stock[stock].thickness.mm) return;
  file.source.fault(screw.place, "the head goes right through the piece", "absurd-value",
                    "head_below is how far the head goes below the surface");
}

void read_fastening(DesignFile& file, const Node& node) {
  const std::size_t before = file.source.troubles();
  Table table(file.source, node, kFasten);
  Fastening fastening;
  fastening.place = node.place;
  file.part(table, "part");
  using W = Word<PieceFace>;
  fastening.face =
      table.word<PieceFace>({"face"}, {W{"front", PieceFace::front}, W{"back", PieceFace::back}});
  if (const Node* to = table.find({"to", needed})) fastening.to = file.target(*to, "to", false);
  const Node* screw = table.table({"screw", needed});
  if (screw) fastening.screw = read_screw(file.source, *screw);
  fastening.per_stud = table.whole({"per_stud"}).value_or(2);
  if (fastening.per_stud < 1 || fastening.per_stud > kMostPerStud)
    file.source.fault(table.place_of("per_stud"),
                      fmt::format("a stud takes 1 to {} screws", kMostPerStud), "absurd-value",
                      "say how many screws go into each stud; left out: 2");
  read_loads(file, table, fastening);
  fastening.prebored = table.flag({"prebored"}).value_or(false);
  if (!file.source.sound_since(before)) return;
  fastening.part = table.find({"part"})->text;
  if (file.overlap(fastening.part, fastening.to))
    file.source.fault(table.place_of("to"),
                      fmt::format("'{}' cannot be fastened to itself", fastening.part),
                      "contact-with-itself", "name the wall or the piece that its screws go into");
  check_drywall(file.source, fastening);
  check_load_spot(file, table, fastening);
  check_face(file, table, fastening);
  check_twice(file, fastening);
  check_head(file, *screw, fastening);
  file.design.fastenings.push_back(std::move(fastening));
}

// The load of what hangs is its fastenings'.
void check_stands(DesignFile& file, const Table& table, const std::string& part) {
  constexpr double kFootHigh = 152.4;  // mm, 6 in; what begins higher does not stand. Chosen
  std::optional<double> up;
  for (const Piece& piece : pieces_of(file.design))
    if (is_named(piece, part)) {
      const double low = lowest(piece, piece.frame);
      up = std::min(up.value_or(low), low);
    }
  if (!up || *up <= kFootHigh) return;
  file.source.fault(table.place_of("part"),
                    fmt::format("'{}' is drawn {} above the floor: it has no foot", part,
                                with_unit(millimetres(*up), usual_rounding(file.design.units))),
                    "foot-in-the-air",
                    "what hangs on a wall is loaded by the 'load' of its [[fasten]]");
}

void read_foot(DesignFile& file, const Node& node) {
  const std::size_t before = file.source.troubles();
  Table table(file.source, node, kFeet);
  file.part(table, "part");
  const auto load = table.load({"load"});
  if (!file.source.sound_since(before)) return;
  check_stands(file, table, table.find({"part"})->text);
  file.design.feet.push_back({table.find({"part"})->text, load, node.place});
}

}  // namespace

void read_fastenings(DesignFile& file, const Table& design) {
  for (const Node* entry : design.tables("fasten")) read_fastening(file, *entry);
  for (const Node* entry : design.tables("feet")) read_foot(file, *entry);
}

}  // namespace nook
