// Reads stock and parts of design.toml.
#include <fmt/format.h>

#include <algorithm>
#include <charconv>

#include "design/symmetry.h"
#include "job/design_file.h"

namespace nook {
namespace {

using namespace design_keys;

// Copies of one part, at most (chosen).
constexpr int kMostCopies = 1000;

// The last word says what it is: "birch plywood", "oak board".
void read_kind(const Table& table, Stock& stock) {
  const auto given = table.text({"kind", needed});
  if (!given) return;
  stock.kind_given = *given;
  const std::string_view word = std::string_view(*given).substr(given->rfind(' ') + 1);
  static const std::vector<std::string_view> kKinds = {"plywood", "mdf", "board", "lumber"};
  if (std::find(kKinds.begin(), kKinds.end(), word) == kKinds.end()) {
    table.source().fault(
        table.place_of("kind"), fmt::format("kind cannot be '{}'", *given), "unknown-word",
        table.source().meant(word, kKinds,
                             fmt::format("its last word is one of: {}", fmt::join(kKinds, ", "))));
  }
  stock.kind = word == "plywood"  ? StockKind::plywood
               : word == "lumber" ? StockKind::lumber
                                  : StockKind::board;
}

void read_section(const Table& table, Stock& stock) {
  const bool lumber = stock.kind == StockKind::lumber;
  const std::string_view strange = lumber ? "sheet" : "lengths";
  if (table.has(strange))
    table.source().fault(table.place_of(strange),
                         lumber ? "lumber is not sold in sheets" : "a sheet is not sold in lengths",
                         "key-without-meaning",
                         "lumber: lengths = ['96', '120']; sheets: sheet = [width, length]");
  const std::string_view wrong = lumber ? "thickness" : "section";
  if (table.has(wrong))
    table.source().fault(
        table.place_of(wrong),
        lumber ? "lumber has a section, not a thickness" : "a sheet has a thickness, not a section",
        "key-without-meaning", "lumber: section = [thickness, width]");
  if (!lumber) {
    stock.thickness =
        table.length({"thickness", !table.has(wrong), Range::positive}).value_or(Length{});
  } else if (const auto two = table.lengths({"section", !table.has(wrong), Range::positive},
                                            {2, 2, "[thickness, width]"})) {
    stock.thickness = (*two)[0];
    stock.width = (*two)[1];
  }
}

void read_one_stock(DesignFile& file, const Entry& entry) {
  file.stock_names.add(entry.key);
  if (!entry.value.is(Node::Kind::table))
    return file.source.wrong_type(entry.value, "a stock", "a table",
                                  "each stock has its header: [stock.ply]");
  const std::size_t before = file.source.troubles();
  Table table(file.source, entry.value, kStock);
  Stock stock;
  stock.name = entry.key;
  stock.place = entry.place;
  read_kind(table, stock);
  if (file.source.sound_since(before)) read_section(table, stock);
  if (const auto sheet =
          table.lengths({"sheet", false, Range::positive}, {2, 2, "[width, length]"}))
    stock.sheet[0] = (*sheet)[0], stock.sheet[1] = (*sheet)[1];
  if (const auto lengths =
          table.lengths({"lengths", false, Range::positive}, {1, 100, "the lengths it is sold in"}))
    stock.lengths = *lengths;
  if (const Node* density = table.find({"density"}))
    stock.density = file.source.density(*density, "density");
  stock.gravity = gravity_in(table);
  if (file.source.sound_since(before)) file.design.stock.push_back(std::move(stock));
}

// Placement

std::optional<Vec3> read_vector(const Table& table, std::string_view key) {
  const auto three = table.lengths({key, needed, Range::any}, {3, 3, "[x, y, z]"});
  if (!three) return std::nullopt;
  return Vec3{(*three)[0].mm, (*three)[1].mm, (*three)[2].mm};
}

std::optional<Vec3> read_axis(const Table& table, std::string_view key) {
  using W = Word<Vec3>;
  return table.word<Vec3>({key, needed},
                          {W{"+x", {1, 0, 0}}, W{"-x", {-1, 0, 0}}, W{"+y", {0, 1, 0}},
                           W{"-y", {0, -1, 0}}, W{"+z", {0, 0, 1}}, W{"-z", {0, 0, -1}}});
}

void read_place(Source& source, const Node& node, Placement& to) {
  Table table(source, node, kPlace);
  to.at = read_vector(table, "at").value_or(Vec3{});
  const auto u = read_axis(table, "u"), v = read_axis(table, "v");
  if (u && v && dot(*u, *v) != 0)
    source.fault(table.place_of("v"), "u and v lie along one line", "not-square",
                 "u goes to the right and v up as one sees the piece's front");
  to.u = u.value_or(Vec3{1, 0, 0});
  to.v = v.value_or(Vec3{0, 0, 1});
  to.turn = table.angle({"turn"}).value_or(Angle{});
  to.lean = table.angle({"lean"}).value_or(Angle{});
}

void read_repeat(Source& source, const Node& node, Part& part, PartName& name) {
  Table table(source, node, kRepeat);
  const auto count = table.whole({"count", needed});
  const auto step = read_vector(table, "step");
  name.copies = std::clamp(count.value_or(1), 1, kMostCopies);
  if (count && (*count < 1 || *count > kMostCopies))
    source.fault(table.place_of("count"), fmt::format("a part is there 1 to {} times", kMostCopies),
                 "absurd-value", "count says how many there are, the first one too");
  else if (count && step && *count > 1 && norm(*step) == 0)
    source.fault(table.place_of("step"), "all copies would stand in one place", "not-above-zero",
                 "step is how far each stands from the one before: [x, y, z]");
  part.repeat = Repeat{name.copies, step.value_or(Vec3{})};
}

// Names

void check_name(DesignFile& file, const std::string& name, Place place, std::string_view what) {
  if (name.empty())
    file.source.fault(place, fmt::format("a {} needs a name", what), "bad-name",
                      "call it as you would say it: \"front panel\"");
  if (is_reserved(name))
    file.source.fault(place, fmt::format("a {} cannot be called '{}'", what, name), "name-reserved",
                      "walls, floor and ceiling are called so");
}

void read_part_name(DesignFile& file, const Table& table, PartName& name) {
  const auto typed = table.text({"name", needed});
  name.place = table.place_of("name");
  if (!typed) return;
  name.name = *typed;
  check_name(file, name.name, name.place, "part");
  if (file.part_names.holds(*typed))
    file.source.fault(name.place, fmt::format("a second part called '{}'", *typed), "name-taken",
                      "every part has its own name; equal ones are copies by 'repeat'");
}

const Stock* read_part_stock(DesignFile& file, const Table& table, Part& part) {
  const auto name = table.text({"stock", needed});
  if (!name) return nullptr;
  const auto& stock = file.design.stock;
  for (std::size_t i = 0; i < stock.size(); ++i)
    if (stock[i].name == *name) return part.stock = static_cast<int>(i), &stock[i];
  if (file.stock_names.holds(*name)) return nullptr;  // its own fault
  file.source.fault(table.place_of("stock"), fmt::format("there is no stock '{}'", *name),
                    "unknown-stock",
                    file.source.meant(*name, file.stock_names.views(),
                                      fmt::format("describe it in [stock.{}]", *name)));
  return nullptr;
}

void check_symmetric(const Table& table, const Part& part) {
  if (!part.symmetric || alike_on_both_sides(part)) return;
  table.source().fault(
      table.place_of("symmetric"),
      fmt::format("'{}' is not alike on both sides of its center line", part.name), "not-symmetric",
      "the outline and the cutouts mirror about the upright line at half its width");
}

void read_part(DesignFile& file, const Node& node) {
  const std::size_t before = file.source.troubles();
  Table table(file.source, node, kPart);
  Part part;
  PartName name;
  read_part_name(file, table, name);
  part.name = name.name;
  part.place = name.place;
  part.group = name.group = table.text({"group"}).value_or(name.name);
  if (table.has("group")) check_name(file, name.group, table.place_of("group"), "group");
  const Stock* stock = read_part_stock(file, table, part);
  const auto shape = read_shape(file.source, table, stock);
  if (const Node* place = table.table({"place", needed}))
    read_place(file.source, *place, part.place_in_room);
  using W = Word<ShowFace>;
  part.show = table
                  .word<ShowFace>({"show"}, {W{"front", ShowFace::front}, W{"back", ShowFace::back},
                                             W{"both", ShowFace::both}, W{"none", ShowFace::none}})
                  .value_or(ShowFace::front);
  part.symmetric = table.flag({"symmetric"}).value_or(false);
  if (const Node* repeat = table.table({"repeat"})) read_repeat(file.source, *repeat, part, name);
  if (shape && stock && file.source.sound_since(before)) {
    part.outline = shape->outline;
    part.rectangle = shape->rectangle;
    part.typed_clockwise = shape->typed_clockwise;
    part.cutouts = shape->cutouts;
    check_symmetric(table, part);
    name.index = static_cast<int>(file.design.parts.size());
    file.design.parts.push_back(std::move(part));
  }
  file.part_names.add(name.name);
  file.groups.add(name.group);
  file.parts.push_back(std::move(name));
}

void check_called_like_copies(DesignFile& file) {
  for (const PartName& part : file.parts)
    if (const PartName* original = original_of(file, part.name))
      file.source.fault(
          part.place, fmt::format("'{}' is called like a copy of '{}'", part.name, original->name),
          "name-reserved", "give it a name of its own");
}

}  // namespace

bool is_reserved(const std::string& name) {
  return name == "floor" || name == "ceiling" || !wall_named(name).empty();
}

const PartName* original_of(const DesignFile& file, std::string_view name) {
  const std::size_t space = name.rfind(' ');
  if (space == std::string_view::npos || space + 1 == name.size()) return nullptr;
  const std::string_view number = name.substr(space + 1);
  const auto digit = [](char c) { return c >= '0' && c <= '9'; };
  if (!std::all_of(number.begin(), number.end(), digit)) return nullptr;
  const int base = file.part_names.number(name.substr(0, space));
  return base >= 0 && file.parts[base].copies > 0 ? &file.parts[base] : nullptr;
}

const PartName* DesignFile::part_named(std::string_view name) const {
  if (const int found = part_names.number(name); found >= 0) return &parts[found];
  const PartName* original = original_of(*this, name);
  if (!original) return nullptr;
  int number = 0;
  const std::string_view digits = name.substr(name.rfind(' ') + 1);
  std::from_chars(digits.data(), digits.data() + digits.size(), number);
  return number >= 1 && number <= original->copies && digits[0] != '0' ? original : nullptr;
}

void read_stock(DesignFile& file, const Table& design) {
  const Node* stock = design.table({"stock"});
  if (!stock) return;
  for (const Entry& entry : stock->entries) read_one_stock(file, entry);
}

void read_parts(DesignFile& file, const Table& design) {
  for (const Node* entry : design.tables("part")) read_part(file, *entry);
  check_called_like_copies(file);
}

}  // namespace nook
