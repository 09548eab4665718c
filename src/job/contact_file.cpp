// Reads groups, contacts and covered edges of design.toml.
#include <fmt/format.h>

#include <algorithm>

#include "design/fitting.h"
#include "job/design_file.h"

namespace nook {
namespace {

using namespace design_keys;

// Edges

std::optional<EdgeSide> side_named(const std::string& word) {
  if (word == "left") return EdgeSide::left;
  if (word == "right") return EdgeSide::right;
  if (word == "bottom") return EdgeSide::bottom;
  if (word == "top") return EdgeSide::top;
  return std::nullopt;
}

const Part* drawn(const DesignFile& file, const PartName* name) {
  return name && name->index >= 0 ? &file.design.parts[name->index] : nullptr;
}

// A number as typed -> of the outline, which runs anticlockwise.
int outline_edge(const Part& part, int typed) {
  return part.typed_clockwise ? static_cast<int>(part.outline.size()) - 1 - typed : typed;
}

std::optional<int> edge_number(Source& source, const Node& node, const Part* part) {
  const auto number = source.whole(node, "an edge");
  if (!number || !part) return number;
  const int last = static_cast<int>(part->outline.size()) - 1;
  if (*number >= 0 && *number <= last) return number;
  source.fault(node.place, fmt::format("'{}' has no edge {}", part->name, *number),
               "edge-out-of-range",
               fmt::format("its edges are 0 to {}; edge 0 goes from point 0 to point 1", last));
  return std::nullopt;
}

struct EdgeRead {
  EdgeChoice choice = EdgeSide::left;
  std::string given;
};

std::optional<EdgeRead> edge_run(Source& source, const Node& node, const Part* part) {
  const bool list = node.is(Node::Kind::list);
  const auto* items = list ? source.list(node, "edge", {2, 2, "[first edge, last edge]"}) : nullptr;
  if (list && !items) return std::nullopt;
  const auto first = edge_number(source, list ? (*items)[0] : node, part);
  const auto last = list ? edge_number(source, (*items)[1], part) : first;
  if (!first || !last) return std::nullopt;
  EdgeRead edge;
  edge.given = *first == *last ? fmt::format("edge {}", *first)
                               : fmt::format("edges {} to {}", *first, *last);
  if (!part) return edge;
  EdgeRun run{outline_edge(*part, *first), outline_edge(*part, *last)};
  if (part->typed_clockwise) std::swap(run.first, run.last);
  edge.choice = run;
  return edge;
}

std::optional<EdgeRead> read_edge(Source& source, const Node& node, const Part* part) {
  if (!node.is(Node::Kind::string)) {
    if (node.is(Node::Kind::integer) || node.is(Node::Kind::list))
      return edge_run(source, node, part);
    source.wrong_type(node, "edge", "a side, an edge number or a run [3, 9]",
                      "edge = \"left\", edge = 3 or edge = [3, 9]");
    return std::nullopt;
  }
  if (!source.word(node, "edge", {"left", "right", "bottom", "top"})) return std::nullopt;
  return EdgeRead{*side_named(node.text), node.text};
}

std::optional<EdgeRead> read_edge_or_face(const Table& table, const Part* part) {
  const Node* edge = table.find({"edge"});
  const Node* face = table.find({"face"});
  Source& source = table.source();
  if (edge && face) {
    source.fault(face->place, "'edge' and 'face' together", "two-edges",
                 "a contact has one of them");
    return std::nullopt;
  }
  if (edge) return read_edge(source, *edge, part);
  if (!face && (table.misspelt("edge") || table.misspelt("face"))) return std::nullopt;
  if (!face) {
    source.fault(table.place(), "neither 'edge' nor 'face' is there", "missing-key",
                 "edge = \"left\", an edge number or a run [3, 9]; or face = \"back\"");
    return std::nullopt;
  }
  const auto back = source.word(*face, "face", {"front", "back"});
  if (!back) return std::nullopt;
  return EdgeRead{*back == 0 ? PieceFace::front : PieceFace::back, face->text};
}

// What a contact is fitted by

constexpr std::string_view kNotch = "notch";
const std::vector<std::string_view> kFittings = {"butt", "clear", "shim",   "caulk", "filler",
                                                 "trim", "taper", "scribe", kNotch};

void read_by(Source& source, const Node& node, Contact& contact) {
  const bool list = node.is(Node::Kind::list);
  const std::vector<Node> one(list ? 0 : 1, node);
  std::optional<std::string_view> fitting;
  for (const Node& item : list ? node.items : one) {
    const auto index = source.word(item, "by", kFittings);
    if (!index) continue;
    const std::string_view word = kFittings[*index];
    if (word == kNotch) {
      contact.notch = true;
    } else if (fitting) {
      source.fault(item.place, fmt::format("'{}' and '{}' together", *fitting, word),
                   "two-fittings", "a contact is fitted by one of them, and may be notched too");
    } else {
      fitting = word;
      contact.by = static_cast<Fitting>(*index);
    }
  }
}

void read_allowances(const Table& table, Contact& contact) {
  Source& source = table.source();
  const std::size_t before = source.troubles();
  if (const Node* by = table.find({"by"})) read_by(source, *by, contact);
  const bool by_known = source.sound_since(before) && !table.misspelt("by");
  const auto clearance = table.length({"clearance"});
  contact.clearance = clearance.value_or(contact.clearance);
  if (by_known && clearance && !contact.notch)
    source.fault(table.place_of("clearance"), "the clearance of a notch that 'by' does not ask for",
                 "key-without-meaning",
                 "add \"notch\" to by; how wide a gap may be is said by gap and allow");
  using W = Word<bool>;
  const auto profile = table.word<bool>({"notch"}, {W{"square", false}, W{"profile", true}});
  contact.notch_profile = profile.value_or(false);
  if (by_known && profile && !contact.notch)
    source.fault(table.place_of("notch"), "a notch that 'by' does not ask for",
                 "key-without-meaning", "add \"notch\" to by");
  contact.shop = table.flag({"shop"}).value_or(false);
  if (by_known && contact.shop && !is_cut_to_fit(contact.by))
    source.fault(table.place_of("shop"), "'shop' without a line to cut", "key-without-meaning",
                 "it goes with by = \"taper\" or \"scribe\"");
  contact.keep = table.flag({"keep"}).value_or(false);
  contact.gap = table.length({"gap"}).value_or(Length{});
  contact.allow = table.length({"allow"});
  const bool trim = contact.by == Fitting::trim;
  contact.trim = table.length({"trim", trim, Range::positive});
  if (by_known && table.has("trim") && !trim)
    source.fault(table.place_of("trim"), "a trim that 'by' does not ask for", "key-without-meaning",
                 "add \"trim\" to by");
}

void read_contact(DesignFile& file, const Node& node) {
  const std::size_t before = file.source.troubles();
  Table table(file.source, node, kContact);
  Contact contact;
  contact.place = node.place;
  const PartName* part = file.part(table, "part");
  const auto edge = read_edge_or_face(table, drawn(file, part));
  if (const Node* meets = table.find({"meets", needed}))
    contact.meets = file.target(*meets, "meets", true);
  read_allowances(table, contact);
  if (!file.source.sound_since(before)) return;
  contact.part = table.find({"part"})->text;
  contact.edge = edge->choice;
  contact.edge_given = edge->given;
  if (file.overlap(contact.part, contact.meets))
    file.source.fault(table.place_of("meets"), fmt::format("'{}' cannot meet itself", contact.part),
                      "contact-with-itself", "name what it stands against");
  if (contact.allow && contact.by != Fitting::clear && *contact.allow < contact.gap)
    file.source.fault(table.place_of("allow"), "less is allowed than is wanted", "allow-under-gap",
                      "allow is the widest gap accepted, gap the one wanted");
  file.design.contacts.push_back(std::move(contact));
}

void read_covered(DesignFile& file, const Node& node) {
  const std::size_t before = file.source.troubles();
  Table table(file.source, node, kCovered);
  Covered covered;
  covered.place = node.place;
  const PartName* part = file.part(table, "part");
  const Node* typed = table.find({"edge", needed});
  const auto edge = typed ? read_edge(file.source, *typed, drawn(file, part)) : std::nullopt;
  file.part(table, "behind");
  covered.margin = table.length({"margin"}).value_or(Length{});
  if (!file.source.sound_since(before)) return;
  covered.part = table.find({"part"})->text;
  covered.behind = table.find({"behind"})->text;
  covered.edge = edge->choice;
  covered.edge_given = edge->given;
  if (file.overlap(covered.part, covered.behind))
    file.source.fault(table.place_of("behind"),
                      fmt::format("'{}' cannot cover itself", covered.part), "contact-with-itself",
                      "name the piece that stands before it");
  file.design.covered.push_back(std::move(covered));
}

// Groups

void read_group_name(DesignFile& file, const Table& table, Group& group) {
  const auto name = table.text({"name", needed});
  if (!name) return;
  group.name = *name;
  group.place = table.place_of("name");
  const auto same = [&](const Group& other) { return other.name == *name; };
  if (std::any_of(file.design.groups.begin(), file.design.groups.end(), same))
    file.source.fault(group.place, fmt::format("the group '{}' a second time", *name), "name-taken",
                      "say all of it in one [[group]]");
  if (file.groups.holds(*name)) return;
  file.source.fault(
      group.place, fmt::format("no part is in a group '{}'", *name), "unknown-group",
      file.source.meant(*name, file.groups.views(),
                        "parts say theirs by 'group'; one without is a group by itself"));
}

// What a group is pushed against; never one of its own parts.
std::string outside(DesignFile& file, const Group& group, const Node& node, std::string_view key) {
  const std::string target = file.target(node, key, false);
  const PartName* part = target.empty() ? nullptr : file.part_named(target);
  if (part && part->group == group.name)
    file.source.fault(node.place, fmt::format("'{}' belongs to the group itself", target),
                      "contact-with-itself", "name a wall, or a piece that is up before it");
  return target;
}

void read_group(DesignFile& file, const Node& node) {
  Table table(file.source, node, kGroup);
  Group group;
  read_group_name(file, table, group);
  group.order = table.plain_number({"order"});
  group.turn = table.flag({"turn"});
  for (const Node& item : table.list({"tight_to"}))
    group.tight_to.push_back(outside(file, group, item, "tight_to"));
  if (const Node* wall = table.find({"parallel_to"}))
    group.parallel_to = outside(file, group, *wall, "parallel_to");
  using W = Word<HeightFrom>;
  group.height_from = table.word<HeightFrom>(
      {"height_from"}, {W{"level line", HeightFrom::level_line}, W{"floor", HeightFrom::floor}});
  file.design.groups.push_back(std::move(group));
}

// Whether a contact says where the group meets that part.
bool touches(const DesignFile& file, const Group& group, const std::string& target) {
  const auto in_group = [&](const std::string& name) {
    const PartName* part = file.part_named(name);
    return part && part->group == group.name;
  };
  return std::any_of(file.design.contacts.begin(), file.design.contacts.end(),
                     [&](const Contact& c) {
                       return (in_group(c.part) && file.overlap(c.meets, target)) ||
                              (in_group(c.meets) && file.overlap(c.part, target));
                     });
}

void check_tight(DesignFile& file, const Group& group) {
  for (const std::string& target : group.tight_to)
    if (file.part_named(target) && !touches(file, group, target))
      file.source.fault(
          group.place,
          fmt::format("'{}' is to be tight to '{}', and no contact says where", group.name, target),
          "tight-without-contact",
          fmt::format("add a [[contact]] of one of its parts with meets = \"{}\"", target));
}

}  // namespace

void read_groups(DesignFile& file, const Table& design) {
  for (const Node* entry : design.tables("group")) read_group(file, *entry);
}

void read_contacts(DesignFile& file, const Table& design) {
  const std::size_t before = file.source.troubles();
  for (const Node* entry : design.tables("contact")) read_contact(file, *entry);
  const bool all_contacts = file.source.sound_since(before);
  for (const Node* entry : design.tables("covered")) read_covered(file, *entry);
  for (const Group& group : file.design.groups)
    if (all_contacts && !group.name.empty()) check_tight(file, group);
}

}  // namespace nook
