// One table a wall: every number runs from the plumb line, the level line or the piece's own edges.
#include "sheet/drill_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "sheet/cut_text.h"
#include "sheet/wrap.h"

namespace nook {
namespace {

constexpr std::string_view kCautions =
    "Probe before you drill; a bit that stops on steel has met a plate: move it.\n"
    "Strength figures are a help; your local code and a licensed person decide.\n";

class DrillPage {
 public:
  DrillPage(const DrillAnswer& answer, const Style& style) : answer_(answer), style_(style) {}

  std::string all() {
    text_ = fmt::format("Holes: {}\n\n", headline(answer_.verdict, style_));
    text_ += listed(drill_findings(answer_, style_), style_);
    for (const WallDrill& wall : answer_.walls)
      if (!wall.holes.empty() || style_.verbose) add_wall(wall);
    add_joints();
    add_probes();
    add_poles();
    add_notes();
    return text_ + "\n" + std::string(kCautions);
  }

 private:
  std::string length(double mm) const { return with_unit(millimetres(mm), style_.rounding); }
  std::string at_most(double mm) const { return rounded_down(mm, style_.rounding); }
  std::string bare(double mm) const { return written(millimetres(mm), style_.rounding); }

  void say(const std::string& words, const char* first = "  ") {
    text_ += wrapped(words, kPageWidth, first);
  }

  // "16 1/16 left": as one faces the wall.
  std::string beside(const WallDrill& wall, double away) const {
    const double shown = std::abs(away);
    if (written(millimetres(shown), style_.rounding) == "0") return "on it";
    return fmt::format("{} {}", bare(shown), (away > 0) == wall.runs_left ? "left" : "right");
  }
  std::string above(double up) const {
    const std::string shown = bare(std::abs(up));
    return shown == "0" ? "on it" : shown + (up > 0 ? " up" : " down");
  }

  void add_wall(const WallDrill& wall) {
    text_ += fmt::format("\nThe {} wall, facing it; along counts from the corner on its {}\n",
                         wall.name, wall.runs_left ? "right" : "left");
    if (wall.datum)
      say(fmt::format(
          "Strike a plumb line through the middle of the proven stud: {} from the corner, "
          "{} up. The holes count from it.",
          length(wall.datum->along_mm), length(wall.datum->height_mm)));
    else if (!wall.holes.empty())
      say("No stud is proven by nail on both edges: the holes count from the corner. Probe one "
          "stud "
          "and count from a plumb line on it.");
    for (const std::string& note : wall.stud_notes) say(note + ".");
    for (const HungPiece& piece : wall.pieces) add_piece(wall, piece);
  }

  std::vector<Hole> holes_of(const WallDrill& wall, const std::string& part) const {
    std::vector<Hole> holes;
    for (const Hole& h : wall.holes)
      if (h.part == part) holes.push_back(h);
    return holes;
  }

  void add_piece(const WallDrill& wall, const HungPiece& piece) {
    const std::vector<Hole> holes = holes_of(wall, piece.part);
    if (holes.empty()) return;
    const Hole& h = holes.front();
    const std::string top =
        piece.top_from_line_mm
            ? fmt::format("upper edge {} the level line", on_line(*piece.top_from_line_mm))
            : fmt::format("upper edge {} above the floor", length(piece.top_mm));
    text_ += "\n";
    say(fmt::format("{}: {}; {}", piece.part, top, piece.screw), "");
    say(bits(h));
    table(wall, holes);
    for (const auto& warning : warnings(holes)) say(warning, "  ! ");
    for (const std::string& note : piece.notes) say(note, "  ! ");
  }
  std::string on_line(double up) const {
    if (bare(up) == "0") return "on";
    return length(std::abs(up)) + (up > 0 ? " above" : " below");
  }

  std::string bits(const Hole& h) const {
    return fmt::format(
        "bit {} for the thread, flagged {} from its tip, {} for the shank; clearance "
        "hole {}",
        bit_for(h.pilot_mm, style_.rounding), length(h.depth_mm),
        bit_for(h.shank_pilot_mm, style_.rounding), bit_for(h.clearance_mm, style_.rounding));
  }

  void row(const std::vector<std::string>& cells) {
    static constexpr int kWidths[] = {6, 15, 15, 13, 13, 8, 7};
    std::string line = " ";
    for (std::size_t i = 0; i < cells.size(); ++i)
      line += fmt::format("{:>{}}", cells[i], kWidths[i]);
    while (line.back() == ' ') line.pop_back();
    text_ += line + "\n";
  }

  void table(const WallDrill& wall, const std::vector<Hole>& holes) {
    const Hole& h = holes.front();
    const bool line = h.from_line_mm.has_value();
    row({"hole", h.from_datum_mm ? "plumb line" : "from corner", line ? "level line" : "from floor",
         h.end + " end", h.edge + " edge", "shim", "drive"});
    for (const Hole& x : holes)
      row({fmt::format("{} {}", x.id.substr(x.id.rfind(' ') + 1), x.probe_first ? "○" : "●"),
           x.from_datum_mm ? beside(wall, *x.from_datum_mm) : bare(x.along_mm),
           line ? above(*x.from_line_mm) : bare(x.height_mm), bare(x.from_end_mm),
           bare(x.from_edge_mm), bare(x.shim_mm) == "0" ? "" : bare(x.shim_mm),
           std::to_string(x.drive)});
  }

  // Each warning once, with the holes it is for.
  std::vector<std::string> warnings(const std::vector<Hole>& holes) const {
    std::vector<std::pair<std::string, std::string>> told;
    for (const Hole& h : holes)
      for (const std::string& w : h.warnings) {
        const std::string number = h.id.substr(h.id.rfind(' ') + 1);
        const auto known =
            std::find_if(told.begin(), told.end(), [&](const auto& t) { return t.first == w; });
        if (known == told.end())
          told.emplace_back(w, number);
        else
          known->second += ", " + number;
      }
    std::vector<std::string> lines;
    for (const auto& t : told) lines.push_back(fmt::format("{}: {}", t.second, t.first));
    return lines;
  }

  // Joints that read alike (the rungs of a ladder) are told once.
  void add_joints() {
    std::vector<std::pair<std::string, std::vector<const JointDrill*>>> told;
    for (const JointDrill& joint : answer_.parts) {
      const std::string words = joint_words(joint);
      const auto known =
          std::find_if(told.begin(), told.end(), [&](const auto& t) { return t.first == words; });
      if (known == told.end())
        told.push_back({words, {&joint}});
      else
        known->second.push_back(&joint);
    }
    if (!told.empty()) text_ += "\nPiece to piece, drilled on the bench\n";
    for (const auto& [words, joints] : told) say(joints_said(joints) + ": " + words);
  }

  // "4 screws, 3/4 from the bottom; from the left 1 1/2, 16, ...; bit 7/64", 1 5/16" in the wood".
  std::string joint_words(const JointDrill& joint) const {
    const Hole& h = joint.holes.front();
    std::vector<std::string> places;
    for (const Hole& x : joint.holes) places.push_back(length(x.from_end_mm));
    const std::string row = h.from_edge_mm == 0
                                ? fmt::format("out of its {} end", h.edge)
                                : fmt::format("{} from the {}", edges_of(joint), h.edge);
    std::string words = fmt::format("{}, {}; from the {} {}; bit {}, {} in the wood",
                                    screws(joint.holes.size()), row, h.end, fmt::join(places, ", "),
                                    bit_for(h.pilot_mm, style_.rounding), at_most(h.embedment_mm));
    for (const std::string& warning : h.warnings) words += "; " + warning;
    return words;
  }
  // How far the row runs from its edge; hole by hole where it does not run along it.
  std::string edges_of(const JointDrill& joint) const {
    std::vector<std::string> all;
    for (const Hole& x : joint.holes) all.push_back(length(x.from_edge_mm));
    const bool alike = std::all_of(all.begin(), all.end(),
                                   [&](const std::string& edge) { return edge == all.front(); });
    return alike ? all.front() : fmt::format("{}", fmt::join(all, ", "));
  }
  static std::string screws(std::size_t count) {
    return count == 1 ? "1 screw" : fmt::format("{} screws", count);
  }

  void add_probes() {
    if (answer_.probes.empty()) return;
    text_ += "\nProbe next\n";
    for (const NextReading& probe : answer_.probes) say(probe.reading);
  }

  // What the figures take for granted, each once.
  void add_notes() {
    std::vector<std::string> told;
    for (const Strength& s : answer_.strength)
      for (const std::string& note : s.notes)
        if (s.load_n && std::find(told.begin(), told.end(), note) == told.end())
          told.push_back(note);
    if (!told.empty())
      text_ += "\n" + wrapped(fmt::format("{}.", fmt::join(told, "; ")), kPageWidth,
                              "Taken for granted: ");
  }

  // Of the walls and what hangs on them: joints stand in running order above.
  void add_poles() {
    std::string poles;
    for (const StoryPole& pole : answer_.poles)
      if (hangs(pole.of)) poles += pole_words(pole);
    if (!poles.empty())
      text_ += "\nStory pole: copy these marks onto a stick, all from one start\n" + poles;
  }
  bool hangs(const std::string& of) const {
    for (const WallDrill& wall : answer_.walls) {
      if (of == wall.name + " wall") return true;
      for (const HungPiece& piece : wall.pieces)
        if (of == piece.part) return true;
    }
    return false;
  }
  // "9 1/8 back: rail end", "16 hole 2".
  std::string spoken(const StoryPole::Mark& mark) const {
    const std::string at = mark_at(mark, style_.rounding);
    return at + (at.ends_with(" back") ? ": " : " ") + mark.what;
  }
  std::string pole_words(const StoryPole& pole) const {
    std::vector<std::string> marks;
    for (const auto& m : pole.marks) marks.push_back(spoken(m));
    return wrapped(fmt::format("{}, from {}: {}", pole.of, pole.start, fmt::join(marks, "; ")),
                   kPageWidth, "  ");
  }

  const DrillAnswer& answer_;
  const Style& style_;
  std::string text_;
};

}  // namespace

std::string bit_for(double diameter_mm, Rounding rounding) {
  const Length step = rounding.unit == Unit::inch ? inches(1.0 / 64) : millimetres(.5);
  constexpr double kExact = 1e-6;
  const double size = std::floor(diameter_mm / step.mm + kExact) * step.mm;
  return with_unit(millimetres(size), {rounding.unit == Unit::cm ? Unit::mm : rounding.unit, step});
}

std::string mark_at(const StoryPole::Mark& mark, Rounding rounding) {
  const std::string shown = written(millimetres(std::abs(mark.at_mm)), rounding);
  return mark.at_mm < 0 && shown != "0" ? shown + " back" : shown;
}

std::string drill_text(const DrillAnswer& answer, const Style& style) {
  return DrillPage(answer, style).all();
}

}  // namespace nook
