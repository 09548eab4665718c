// Every fastening of a design worked through, wall by wall and joint by joint.
#include "fasten/drill.h"

#include <fmt/core.h>

#include <algorithm>

#include "fasten/hung_piece.h"
#include "fasten/joint.h"
#include "fasten/joint_load.h"
#include "fasten/joint_row.h"
#include "fasten/story_pole.h"
#include "fasten/stud_notes.h"
#include "fasten/wall_context.h"

namespace nook {
namespace {

constexpr double kMostShim = 38.1;  // mm, 1 1/2 in: what stands further off is not hung. Chosen

int wall_index(const Survey& survey, const std::string& name) {
  for (std::size_t i = 0; i < survey.walls.size(); ++i)
    if (survey.walls[i].name == name) return static_cast<int>(i);
  return -1;
}

class DrillMap {
 public:
  explicit DrillMap(const DrillInput& in)
      : in_(in), say_(in.survey), placed_{in.design, in.pieces, in.frames} {
    for (const Wall& wall : in.survey.walls) {
      answer_.walls.emplace_back();
      answer_.walls.back().name = wall.name;
    }
  }

  DrillAnswer all() {
    if (!in_.complete) {
      answer_.missing.push_back(
          {"the room is not determined yet", "take what `room` asks for first"});
      answer_.verdict = Verdict::cannot_tell;
      return std::move(answer_);
    }
    for (int w = 0; w < static_cast<int>(in_.survey.walls.size()); ++w) open_wall(w);
    for (const Fastening& f : in_.design.fastenings)
      for (int piece : pieces_named(in_.pieces, in_.design, f.part)) fasten(f, piece);
    finish();
    return std::move(answer_);
  }

 private:
  void open_wall(int w) {
    contexts_.push_back(context_of(in_.survey, in_.room, in_.draws, w));
    const WallContext& c = contexts_.back();
    WallDrill& wall = answer_.walls[w];
    wall.runs_left = dot(c.frame.shape().along, left_of(c.frame.shape().out)) < 0;
    wall.studs = reports_of(c.studs, c.frame);
    wall.stud_notes = stud_notes(c, in_.survey, w, say_);
    if (!c.datum) return;
    const StudLine& s = c.studs.lines[*c.datum];
    const Vec2 at{s.centre(s.z), s.z};
    wall.datum = PlumbDatum{c.report_index(*c.datum, at), c.frame.along(at.x, at.y),
                            at.y - c.frame.floor_z(at.x)};
  }

  void fasten(const Fastening& f, int piece) {
    const std::string wall = wall_named(f.to);
    if (!wall.empty())
      to_wall(f, piece, wall_index(in_.survey, wall));
    else
      to_part(f, piece);
  }

  void to_wall(const Fastening& f, int i, int w) {
    if (w < 0) return;  // a fault between room and design, refused before
    const WallContext& c = contexts_[w];
    const Piece& piece = in_.pieces[i];
    if (needs_studs(c)) return;
    const auto face = face_on(piece, in_.frames[i], f.face, c.frame);
    if (!face) {
      answer_.unreachable.push_back(
          {piece.name, fmt::format("no face of it lies on the {}", f.to), "fasten it by a cleat"});
      return;
    }
    const Distances distances = distances_for(f.screw);
    const PieceRuler ruler(piece, *face);
    const double off = face->shim(ruler.at(ruler.length() / 2, ruler.height() / 2));
    if (off > kMostShim) {
      answer_.unreachable.push_back({piece.name,
                                     fmt::format("it stands {} off the {}", say_.length(off), f.to),
                                     "move it to the wall, or fur it out"});
      return;
    }
    const PieceFace against = face->is_back() ? PieceFace::back : PieceFace::front;
    const FreeFace free(piece, in_.design, taken_up(placed_, i, against), distances);
    hang({piece, f, *face, ruler, free, c.services, in_.design, say_, distances,
          c.wall.wallboard.mm, sure()},
         w);
  }

  double sure() const { return std::max(kSureHit, in_.sure); }

  bool needs_studs(const WallContext& c) {
    const auto& studs = c.wall.studs;
    const bool none =
        !studs || (studs->kind != StudKind::steel && studs->kind != StudKind::masonry &&
                   c.studs.lines.empty() && studs->blocking.empty());
    if (!none) return false;
    miss({fmt::format("nothing says where the studs of the {} wall are", c.wall.name),
          "find them at the height of the holes, both edges"});
    return true;
  }

  void miss(const Untold& untold) {
    auto& missing = answer_.missing;
    if (std::find(missing.begin(), missing.end(), untold) == missing.end())
      missing.push_back(untold);
  }

  void hang(const Hanging& h, int w) {
    WallDrill& wall = answer_.walls[w];
    Hung hung = hung_on(h, contexts_[w], {wall.name, wall.holes.size()});
    for (Hole& hole : hung.holes) hole.fastening = index_of(h.fastening);
    wall.pieces.push_back(std::move(hung.piece));
    append(wall.holes, hung.holes);
    append(answer_.unreachable, hung.unreachable);
    if (hung.untold) return miss(*hung.untold);
    answer_.strength.push_back(std::move(hung.strength));
  }

  void to_part(const Fastening& f, int i) {
    const Placed part = placed_.at(i);
    std::vector<std::pair<int, Meeting>> met;
    Polygon row;  // corners of all overlaps
    for (int other : placed_.named(f.to)) {
      if (other == i) continue;
      const Placed to = placed_.at(other);
      auto meeting = f.screw.kind == ScrewKind::pocket ? edge_meeting(part, to)
                                                       : face_meeting(part, to, f.face);
      if (!meeting) continue;
      append(row, largest_of(meeting->overlap).outline);
      met.emplace_back(other, std::move(*meeting));
    }
    for (const auto& [other, meeting] : met)
      join({part, placed_.at(other), meeting, f, in_.design, say_, box_of(row), sure()});
    if (met.empty())
      answer_.unreachable.push_back(
          {part.piece.name, fmt::format("{} of it lies on {}{}: nothing for the screw to hold",
                                        f.screw.kind == ScrewKind::pocket ? "no edge" : "no face",
                                        f.to, missed_by(f, part))});
  }

  // ", 5 mm away": of the nearest piece that one of its faces would lie on.
  std::string missed_by(const Fastening& f, const Placed& part) const {
    std::optional<double> least;
    for (int other : placed_.named(f.to))
      if (const auto air = air_between(part, placed_.at(other)))
        least = std::min(least.value_or(*air), *air);
    return least ? fmt::format(", {} away", say_.at_least(*least)) : "";
  }

  int index_of(const Fastening& f) const {
    return static_cast<int>(&f - in_.design.fastenings.data());
  }

  // Holes of one piece into another, whichever fastening they are of.
  int holes_between(const std::string& part, const std::string& to) const {
    int count = 0;
    for (const JointDrill& joint : answer_.parts)
      if (joint.part == part && joint.to == to) count += static_cast<int>(joint.holes.size());
    return count;
  }

  void join(const Joining& j) {
    JointScrews screws = joint_screws(j);
    auto& holes = screws.drill.holes;
    int number = holes_between(j.part.piece.name, j.to.piece.name);
    for (Hole& hole : holes) {
      hole.drive = ++number;
      hole.fastening = index_of(j.fastening);
      hole.id = fmt::format("{} to {} {}", j.part.piece.name, j.to.piece.name, number);
    }
    rate_joint(j, screws);
    append(answer_.unreachable, screws.unreachable);
    if (!holes.empty()) answer_.parts.push_back(std::move(screws.drill));
  }

  // A joint without a stated load is listed only where there is a figure for it.
  void rate_joint(const Joining& j, const JointScrews& screws) {
    Strength s = strength_of_joint(j, screws);
    if (j.fastening.load_n || j.fastening.pull_n || s.capacity_n)
      answer_.strength.push_back(std::move(s));
  }

  template <class T>
  static void append(std::vector<T>& to, const std::vector<T>& from) {
    to.insert(to.end(), from.begin(), from.end());
  }

  void finish() {
    std::vector<Hole> all;
    for (const WallDrill& wall : answer_.walls) {
      if (const auto pole = wall_pole(wall, say_)) answer_.poles.push_back(*pole);
      append(all, wall.holes);
    }
    for (const JointDrill& joint : answer_.parts) append(all, joint.holes);
    append(answer_.poles, piece_poles(all, say_));
    answer_.probes = probes_for(answer_.walls, say_);
    answer_.verdict = verdict();
  }

  Verdict verdict() const {
    Verdict v = answer_.missing.empty() ? Verdict::fits : Verdict::cannot_tell;
    const auto unsure = [&](const Hole& h) {
      if (!h.sure) v = worse(v, Verdict::cannot_tell);
    };
    for (const WallDrill& wall : answer_.walls)
      std::for_each(wall.holes.begin(), wall.holes.end(), unsure);
    for (const JointDrill& joint : answer_.parts)
      std::for_each(joint.holes.begin(), joint.holes.end(), unsure);
    for (const Strength& s : answer_.strength) {
      if (!s.capacity_n) v = worse(v, Verdict::cannot_tell);
      if (s.ratio && *s.ratio > 1) v = Verdict::does_not_fit;
    }
    return answer_.unreachable.empty() ? v : Verdict::does_not_fit;
  }

  const DrillInput& in_;
  Saying say_;
  PlacedPieces placed_;
  std::vector<WallContext> contexts_;
  DrillAnswer answer_;
};

}  // namespace

DrillAnswer drill(const DrillInput& input) {
  return DrillMap(input).all();
}

std::vector<std::vector<StudReport>> studs_of(const Survey& survey, const RoomShape& room) {
  std::vector<std::vector<StudReport>> all(survey.walls.size());
  for (int w = 0; w < static_cast<int>(survey.walls.size()); ++w)
    all[w] = reports_of(studs_on(survey, room, w, 0), WallFrame(room, w));
  return all;
}

Hole in_a_stick(Hole hole) {
  if (hole.end == "bottom" || hole.end == "top") {
    std::swap(hole.end, hole.edge);
    std::swap(hole.from_end_mm, hole.from_edge_mm);
  }
  return hole;
}

}  // namespace nook
