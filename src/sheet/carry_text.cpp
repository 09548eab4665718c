// One line a place that stops a piece, one a piece that passes, groups last.
#include "sheet/carry_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sheet/copy_names.h"
#include "sheet/wrap.h"

namespace nook {
namespace {

std::string size(double mm, Rounding rounding) {
  return with_unit(millimetres(std::abs(mm)), rounding);
}

std::string sure_to(Measured spare, Rounding rounding) {
  return "give or take " + give_or_take(millimetres(kTwoSided95 * spare.sd), rounding);
}

// "27 1/2" to spare", "3/8" too large".
std::string room_left(Measured spare, Rounding rounding) {
  return size(spare.value, rounding) + (spare.value < 0 ? " too large" : " to spare");
}

std::string place_of(const Pass& pass) {
  switch (pass.kind) {
    case Pass::Kind::doorway:
      return "through " + pass.name;
    case Pass::Kind::turn:
      return "round " + pass.name;
    case Pass::Kind::ceiling:
      return "up under the ceiling";
    case Pass::Kind::alcove:
      return "into the alcove";
  }
  return {};
}

std::string passing(const Pass& pass, Rounding rounding) {
  std::string text = fmt::format("{} {}", place_of(pass), how_held(pass, rounding));
  if (pass.spare && pass.spare->value >= 0 && pass.kind != Pass::Kind::alcove)
    text += ", " + room_left(*pass.spare, rounding);
  return text;
}

// What trying it askew says: it may rub on the way.
std::string askew_unsure(const Pass& pass, Rounding rounding) {
  if (pass.hold == Grip::slid_in) return {};
  return fmt::format("; {} it {}", how_held(pass, rounding),
                     pass.verdict == Verdict::cannot_tell ? "may rub" : "jams");
}

std::string too_wide_in_front(const Pass& pass, Rounding rounding) {
  if (std::abs(pass.slides->value) < rounding.step.mm / 2)
    return fmt::format("sliding it straight in it may rub: the alcove is no wider in front, {}",
                       sure_to(*pass.slides, rounding));
  return fmt::format("cannot slide straight in: the alcove is {} narrower in front, {}",
                     size(pass.slides->value, rounding), sure_to(*pass.slides, rounding));
}

std::string wrong(const Pass& pass, Rounding rounding) {
  if (!pass.spare) return "the height of the ceiling is not known";
  if (pass.kind == Pass::Kind::alcove)
    return too_wide_in_front(pass, rounding) + askew_unsure(pass, rounding);
  return fmt::format("{} at best {}, {}", room_left(*pass.spare, rounding),
                     how_held(pass, rounding), sure_to(*pass.spare, rounding));
}

std::string advice_for_alcove(const Pass& pass, Rounding rounding) {
  return fmt::format(
      "what slides in is {} wide at most, {}: cut it to that and close the ends with filler "
      "strips or trim, or make it in two parts",
      size(pass.widest->value, rounding), sure_to(*pass.widest, rounding));
}

std::string advice(const Pass& pass, Rounding rounding) {
  if (!pass.spare) return "measure it: from the level line up to the ceiling, near its place";
  if (pass.kind == Pass::Kind::alcove) return advice_for_alcove(pass, rounding);
  if (pass.leaf_off && pass.leaf_off->value >= 0)
    return fmt::format("take the door off its hinges: then {}",
                       room_left(*pass.leaf_off, rounding));
  if (pass.verdict == Verdict::cannot_tell)
    return "measure that place again, finer, or try it with a stick cut to size";
  if (pass.kind == Pass::Kind::ceiling)
    return "make it lower, in two parts, or build it up standing";
  return "make it in two parts to join in the room, or find another way in";
}

// A tight piece that cannot slide in, but gets in askew: said although all is well.
std::string askew(const std::vector<Pass>& passes, Rounding rounding) {
  for (const Pass& pass : passes)
    if (pass.slides && pass.hold != Grip::slid_in)
      return fmt::format("{}; what slides in is {} wide at most, {}",
                         too_wide_in_front(pass, rounding), size(pass.widest->value, rounding),
                         sure_to(*pass.widest, rounding));
  return {};
}

bool alike(const PieceCarry& a, const PieceCarry& b) {
  return a.of == b.of && a.verdict == b.verdict &&
         std::equal(a.passes.begin(), a.passes.end(), b.passes.begin(), b.passes.end(),
                    [](const Pass& x, const Pass& y) {
                      return x.verdict == y.verdict && x.hold == y.hold &&
                             x.in_the_way == y.in_the_way;
                    });
}

// The part where all its copies pass alike, else those that do.
std::string called(const CarryAnswer& carry, const PieceCarry& piece) {
  std::vector<std::string> names;
  bool all = true;
  for (const PieceCarry& other : carry.pieces) {
    if (alike(other, piece)) names.push_back(other.part);
    all = all && (other.of != piece.of || alike(other, piece));
  }
  return all ? piece.of : copies_named(names);
}

Finding stopped(const std::string& called, const Pass& pass, Rounding rounding) {
  return {pass.verdict, pass.spare ? std::abs(pass.spare->value) : 0,
          fmt::format("{} {}", called, place_of(pass)), wrong(pass, rounding),
          advice(pass, rounding)};
}

Finding passes_all(const CarryAnswer& carry, const PieceCarry& piece, Rounding rounding) {
  std::string text;
  for (const Pass& pass : piece.passes)
    text += (text.empty() ? "" : "; ") + passing(pass, rounding);
  return {Verdict::fits, 0, called(carry, piece), text, askew(piece.passes, rounding)};
}

// Copies of one part that pass alike are told once.
bool told_before(const CarryAnswer& carry, const PieceCarry& piece) {
  for (const PieceCarry& earlier : carry.pieces) {
    if (&earlier == &piece) return false;
    if (alike(earlier, piece)) return true;
  }
  return false;
}

std::string joined(const std::vector<std::string>& names) {
  return fmt::format("{}", fmt::join(names, ", "));
}

const Pass& worst_of(const GroupCarry& group) {
  const Pass* worst = &group.passes.front();
  for (const Pass& pass : group.passes)
    if (pass.verdict > worst->verdict) worst = &pass;
  return *worst;
}

std::string told(const GroupCarry& group, Rounding rounding) {
  if (group.whole == Verdict::fits) return wrapped(group.name + " goes in whole", kPageWidth, "  ");
  const Pass& worst = worst_of(group);
  const std::string why =
      group.whole == Verdict::cannot_tell ? "may not go in whole" : "does not go in whole";
  return wrapped(
      fmt::format("{} {} ({}: {}): carry it in pieces and join them in the room, in this "
                  "order: {}",
                  group.name, why, place_of(worst), wrong(worst, rounding), joined(group.order)),
      kPageWidth, "  ");
}

std::string groups_told(const CarryAnswer& carry, Rounding rounding) {
  if (carry.groups.empty() || !carry.way_known) return {};
  std::string text = "\nJoined before they are carried:\n";
  for (const GroupCarry& group : carry.groups) text += told(group, rounding);
  return text;
}

Finding nothing_measured() {
  return {
      Verdict::cannot_tell, 1e9, "the way in", "no door and no turn is written down",
      "measure the doors (width between the stops, height, the leaf) and each turn of the hall, "
      "and write them under [access] in room.toml"};
}

Finding room_unknown() {
  return {Verdict::cannot_tell, 1e9, "the room",
          "is not known yet: tipping up and alcoves are not looked at",
          "'nookfit room' says which reading is missing"};
}

}  // namespace

std::string how_held(const Pass& pass, Rounding rounding) {
  const std::string raised = size(pass.raised_mm, rounding);
  switch (pass.hold) {
    case Grip::flat:
      return "flat";
    case Grip::on_edge:
      return "on edge";
    case Grip::standing:
      return "standing";
    case Grip::tilted:
      return "tilted from corner to corner";
    case Grip::tipped:
    case Grip::tipped_flat:
      return "tipped to " + raised;
    case Grip::tipped_up:
      return "tipped up at its place";
    case Grip::stood_up:
      return fmt::format("stood up out in the room and slid home ({} is in the way)",
                         pass.in_the_way);
    case Grip::slid_in:
      return "slid straight in";
    case Grip::lowered_in:
      return fmt::format("with one end raised {}, lowered behind the narrow place", raised);
    case Grip::swung_in:
      return fmt::format("with one end {} ahead, swung square behind the narrow place", raised);
  }
  return {};
}

std::vector<Finding> carry_findings(const CarryAnswer& carry, const Style& style) {
  std::vector<Finding> findings;
  if (!carry.way_known) findings.push_back(nothing_measured());
  if (!carry.room_known) findings.push_back(room_unknown());
  for (const PieceCarry& piece : carry.pieces) {
    if (told_before(carry, piece)) continue;
    for (const Pass& pass : piece.passes)
      if (pass.verdict != Verdict::fits)
        findings.push_back(stopped(called(carry, piece), pass, style.rounding));
    if (piece.verdict == Verdict::fits && !piece.passes.empty())
      findings.push_back(passes_all(carry, piece, style.rounding));
  }
  sort(findings);
  return findings;
}

std::string carry_text(const CarryAnswer& carry, const Style& style) {
  std::string page = "The way in: " + headline(carry.verdict, style) + "\n\n";
  page += listed(carry_findings(carry, style), style);
  page += groups_told(carry, style.rounding);
  if (carry.way_known)
    page += "\n" + wrapped(
                       "Doors are taken with the leaf on. Room to swing in front of a door and "
                       "behind it is not looked at unless it is written down as a turn.",
                       kPageWidth, "");
  return page;
}

}  // namespace nook
