// Reads design.toml from its root.
#include "job/design_file.h"

#include <fmt/format.h>

#include <algorithm>

#include "job/job.h"

namespace nook {
namespace {

using namespace design_keys;

void read_corner(const Table& design, Design& to) {
  const Node* corner = design.find({"corner", needed});
  const auto* names = corner ? design.source().list(*corner, "corner", kTwoWalls) : nullptr;
  if (!names) return;
  for (int k = 0; k < 2; ++k)
    to.corner[k] = design.source().text((*names)[k], "a wall's name").value_or("");
  for (int k = 0; k < 2; ++k) to.walls_named.push_back({to.corner[k], (*names)[k].place});
  if (!to.corner[0].empty() && to.corner[0] == to.corner[1])
    design.source().fault((*names)[1].place, "a wall has no corner with itself", "no-such-corner",
                          "the corner's left wall first, then its right one");
}

// Years of a person, at most (chosen).
constexpr double kOldest = 120;

void read_ages(const Table& table, Use& use) {
  const Node* node = table.find({"ages"});
  const auto* ages =
      node ? table.source().list(*node, "ages", {2, 2, "[youngest, oldest]"}) : nullptr;
  if (!ages) return;
  for (int k = 0; k < 2; ++k) {
    use.ages[k] = table.source().plain_number((*ages)[k], "an age");
    if (use.ages[k] && (*use.ages[k] < 0 || *use.ages[k] > kOldest))
      table.source().fault((*ages)[k].place, "nobody has this age", "absurd-value",
                           "ages are years");
  }
  if (use.ages[0] && use.ages[1] && *use.ages[0] > *use.ages[1])
    table.source().fault(node->place, "the youngest is older than the oldest", "pair-reversed",
                         "write [youngest, oldest]");
}

void read_use(Source& source, const Node& node, Use& use) {
  Table table(source, node, kUse);
  use.place = node.place;
  using U = Word<User>;
  use.by = table.word<User>(
      {"by"}, {U{"child", User::child}, U{"adult", User::adult}, U{"anyone", User::anyone}});
  read_ages(table, use);
  using P = Word<Purpose>;
  use.purpose =
      table.word<Purpose>({"purpose"}, {P{"play", Purpose::play}, P{"sleep", Purpose::sleep},
                                        P{"storage", Purpose::storage}, P{"seat", Purpose::seat},
                                        P{"desk", Purpose::desk}});
  use.mattress = table.length({"mattress"});
}

}  // namespace

const PartName* DesignFile::part(const Table& table, std::string_view key) const {
  const auto name = table.text({key, needed});
  if (!name) return nullptr;
  if (const PartName* found = part_named(*name)) return found;
  const PartName* original = original_of(*this, *name);
  const std::string help =
      original ? fmt::format("the copies of '{}' are 1 to {}", original->name, original->copies)
               : source.meant(*name, part_names.views(),
                              "parts are named in [[part]]; copies are called \"rung 1\"");
  source.fault(table.place_of(key), fmt::format("there is no part '{}'", *name), "unknown-part",
               help);
  return nullptr;
}

std::string DesignFile::target(const Node& value, std::string_view name,
                               bool level_surfaces) const {
  const auto text = source.text(value, name);
  if (!text) return "";
  if (const std::string wall = wall_named(*text); !wall.empty())
    return design.walls_named.push_back({wall, value.place}), *text;
  if (part_named(*text)) return *text;
  const bool level = *text == "floor" || *text == "ceiling";
  if (level && level_surfaces) return *text;
  const std::string walls[] = {design.corner[0] + " wall", design.corner[1] + " wall"};
  std::vector<std::string_view> known = {walls[0], walls[1]};
  if (level_surfaces) known.insert(known.end(), {"floor", "ceiling"});
  for (const std::string& part : part_names.all()) known.push_back(part);
  const bool bare_wall = *text == design.corner[0] || *text == design.corner[1];
  const std::string how = "a wall is its name and ' wall', as in 'left wall'; else name a part";
  source.fault(value.place, fmt::format("{} '{}' is no wall and no part", name, *text),
               "unknown-part",
               bare_wall ? fmt::format("a wall is called '{} wall' here", *text)
                         : source.meant(*text, known, how));
  return "";
}

bool DesignFile::overlap(const std::string& a, const std::string& b) const {
  const PartName *p = part_named(a), *q = part_named(b);
  return p && p == q && (a == b || a == p->name || b == p->name);
}

tl::expected<Design, Diagnostics> parse_design(std::string_view text, const std::string& name) {
  const auto tree = parse_tree(text, name);
  if (!tree) return tl::unexpected(Diagnostics{tree.error()});
  Source source(text, name);
  Design design;
  DesignFile file{source, design};
  Table root(source, *tree, kDesign);
  design.title = root.text({"title"}).value_or("");
  source.read_units(root.find({"units"}));
  design.units = source.units();
  read_corner(root, design);
  if (const Node* use = root.table({"use"})) read_use(source, *use, design.use);
  read_stock(file, root);
  read_parts(file, root);
  read_groups(file, root);
  read_contacts(file, root);
  read_fastenings(file, root);
  if (!source.sound_since(0)) return tl::unexpected(std::move(source).faults());
  return design;
}

}  // namespace nook
