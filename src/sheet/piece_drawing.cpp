// Outline, dimensions and marks of one piece.
#include "sheet/piece_drawing.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sheet/dimension.h"
#include "sheet/label.h"

namespace nook {
namespace {

constexpr double kBend = 0.9659;  // cosine of 15 degrees. Chosen
constexpr double kNearest = 10;   // mm. Chosen
constexpr double kSame = 0.4;     // mm: dimensions closer than that are one

PageBox whole_of(const PieceView& piece) {
  PageBox box = box_round(piece.outline);
  for (Vec2 p : piece.blank) box.take_in(p);
  return box;
}

// A ring between two outlines: the blank with the finished piece taken out of it.
Region left_wild(const PieceView& piece) {
  return {piece.blank, {piece.outline}};
}

// Dimensions of one direction: from `start` on, `at` and words, without doubles.
struct Measures {
  double start = 0;
  std::vector<RunningMark> marks;

  void add(const Draft& draft, double at, const std::string& after = {}) {
    const double run = at - start;
    if (std::abs(run) < kSame) return;
    for (RunningMark& m : marks)
      if (std::abs(m.at - run) < kSame) {
        if (m.words.find(after) == std::string::npos) m.words += after;
        return;
      }
    marks.push_back({run, draft.bare(std::abs(run)) + after, "from the start"});
  }
};

class PiecePicture {
 public:
  PiecePicture(const PieceView& piece, const Canvas& canvas, const Rounding& rounding, Vec2 free)
      : piece_(piece),
        box_(whole_of(piece)),
        finished_(box_round(piece.outline)),
        draft_(drafted(canvas, rounding, box_, free)) {}

  Drawing drawn(bool with_dimensions) {
    name_it();
    outline();
    cutouts();
    holes();
    if (with_dimensions) {
      up();
      across();
    }
    faces();
    place_labels(draft_, labels_, marks_, canvas_round(draft_, box_));
    return finished(std::move(draft_));
  }

 private:
  void name_it() {
    draft_.drawing.name = piece_.name;
    draft_.drawing.title = piece_.name + (piece_.note.empty() ? "" : ", " + piece_.note) +
                           ", seen from its front" + in_units(draft_.rounding);
    draft_.drawing.description = fmt::format(
        "Finished {} by {}. Hatched: left wild. Small crosses with letters: screws into other "
        "pieces. "
        "Distances run from one start, the small circle.",
        draft_.said(finished_.width()), draft_.said(finished_.height()));
  }

  void outline() {
    if (!piece_.blank.empty()) {
      draft_.drawing.add("blank", Polyline{piece_.blank, true, LineKind::dashed}, "blank");
      hatch(draft_, "blank", left_wild(piece_), 45, 1.6);
    }
    Region region{piece_.outline, {}};
    for (const Cutout& cutout : piece_.cutouts) region.holes.push_back(cutout.outline);
    draft_.drawing.add("outline", Patch{region, Paint::wood, LineKind::heavy}, piece_.name);
  }

  void cutouts() {
    for (const Cutout& cutout : piece_.cutouts) {
      const PageBox box = box_round(cutout.outline);
      const Vec2 middle = 0.5 * (box.low + box.high);
      std::string words = cutout.name;
      if (cutout.diameter) words += ", " + draft_.said(cutout.diameter->mm) + " across";
      const double clear = 0.5 * draft_.drawing.scale * std::min(box.width(), box.height());
      labels_.push_back({words, middle, clear, false, 0, "label " + cutout.name});
      if (cutout.centre) cross("cutouts", middle, 2);
    }
  }

  void cross(const std::string& layer, Vec2 at, double arm) {
    for (Vec2 d : {Vec2{draft_.paper(arm), 0}, Vec2{0, draft_.paper(arm)}})
      draft_.drawing.add(layer, Polyline{{at - d, at + d}, false, LineKind::thin}, "cross");
  }

  void holes() {
    for (const PieceHole& screw : piece_.crosses) {
      cross("holes", screw.at, 1.2);
      labels_.push_back({screw.number, screw.at, 1.2, false, 0, "screw " + screw.number});
    }
    for (const PieceHole& hole : piece_.holes) {
      const double radius = 1.1;
      draft_.drawing.add("holes",
                         Circle{hole.at, draft_.paper(radius),
                                hole.probe_first ? Paint::paper : Paint::ink, LineKind::normal},
                         "hole " + hole.number);
      PageBox mark;
      mark.take_in(hole.at);
      marks_.push_back(mark.grown(draft_.paper(radius)));
      labels_.insert(labels_.begin(),
                     {hole.number, hole.at, radius, true, 0, "number " + hole.number});
    }
  }

  // Points of the outline go to the run on their own side; cutouts and holes to the first one.
  template <class Coordinate, class Other>
  void measure(Measures& first, Measures& second, Coordinate at, Other other) const {
    const double middle = other(0.5 * (finished_.low + finished_.high));
    for (Vec2 p : corners_of(piece_.outline))
      (other(p) <= middle ? first : second).add(draft_, at(p));
    for (const Cutout& cutout : piece_.cutouts) {
      const PageBox box = box_round(cutout.outline);
      if (cutout.centre) {
        first.add(draft_, at(*cutout.centre), " center");
      } else {
        first.add(draft_, at(box.low));
        first.add(draft_, at(box.high));
      }
    }
    for (const PieceHole& hole : piece_.holes) first.add(draft_, at(hole.at));
  }

  // The runs up the sides come first; those across keep below and above all their words.
  void up() {
    const bool from_top = piece_.shy_of_bottom;
    const double start = from_top ? finished_.high.y : finished_.low.y;
    Measures left{start, {}}, right = left;
    measure(
        left, right, [](Vec2 p) { return p.y; }, [](Vec2 p) { return p.x; });
    const std::string zero = from_top ? "0 top edge" : "0 bottom edge";
    runs_ = draw(draft_, Running{{box_.low.x, start}, {0, 1}, {-1, 0}, 3, zero}, left.marks);
    if (more_than_whole(right, finished_.height()))
      runs_.take_in(
          draw(draft_, Running{{box_.high.x, start}, {0, 1}, {1, 0}, 3, ""}, right.marks));
  }
  void across() {
    const bool from_right = piece_.shy_of_left;
    const double start = from_right ? finished_.high.x : finished_.low.x;
    Measures below{start, {}}, above = below;
    measure(
        below, above, [](Vec2 p) { return p.x; }, [](Vec2 p) { return p.y; });
    const double down = 3 + draft_.drawing.scale * std::max(0.0, box_.low.y - runs_.low.y);
    const double over = 3 + draft_.drawing.scale * std::max(0.0, runs_.high.y - box_.high.y);
    const std::string zero = from_right ? "0 right edge" : "0 left edge";
    draw(draft_, Running{{start, box_.low.y}, {1, 0}, {0, -1}, down, zero}, below.marks);
    if (more_than_whole(above, finished_.width()))
      draw(draft_, Running{{start, box_.high.y}, {1, 0}, {0, 1}, over, ""}, above.marks);
  }
  // A second run is worth its place only where it says more than the whole width or height.
  static bool more_than_whole(const Measures& measures, double whole) {
    return std::any_of(measures.marks.begin(), measures.marks.end(), [&](const RunningMark& m) {
      return std::abs(std::abs(m.at) - whole) > kSame;
    });
  }

  Vec2 on_side(EdgeSide side) const {
    const Vec2 middle = 0.5 * (finished_.low + finished_.high);
    return side == EdgeSide::left    ? Vec2{finished_.low.x, middle.y}
           : side == EdgeSide::right ? Vec2{finished_.high.x, middle.y}
                                     : Vec2{middle.x, finished_.low.y};
  }

  void faces() {
    const Vec2 middle = 0.5 * (finished_.low + finished_.high);
    labels_.push_back({"TOP", {middle.x, finished_.high.y}, 0, true, 0, "top"});
    labels_.push_back({"LEFT", {finished_.low.x, middle.y}, 0, true, 0, "left"});
    if (piece_.up) labels_.push_back({"THIS END UP", on_side(*piece_.up), 0, true, 0, "up"});
    const char* face = piece_.show == ShowFace::front  ? "SHOW FACE"
                       : piece_.show == ShowFace::back ? "BACK OF SHOW FACE"
                       : piece_.show == ShowFace::both ? "BOTH FACES SHOW"
                                                       : "";
    if (*face) labels_.push_back({face, middle, 0, true, 0, "show face"});
  }

  const PieceView& piece_;
  PageBox box_, finished_, runs_;
  Draft draft_;
  std::vector<Label> labels_;
  std::vector<PageBox> marks_;
};

}  // namespace

std::vector<Vec2> corners_of(const Polygon& outline) {
  std::vector<Vec2> corners;
  const std::size_t n = outline.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Vec2 a = outline[i] - outline[(i + n - 1) % n], b = outline[(i + 1) % n] - outline[i];
    if (dot(a, b) > kBend * norm(a) * norm(b)) continue;
    if (!corners.empty() && norm(corners.back() - outline[i]) < kNearest) continue;
    corners.push_back(outline[i]);
  }
  return corners;
}

Drawing piece_drawing(const PieceView& piece, const Canvas& canvas, const Rounding& rounding) {
  const Vec2 free{15 * canvas.text, 11 * canvas.text};
  return PiecePicture(piece, canvas, rounding, free).drawn(true);
}

Drawing piece_picture(const PieceView& piece, const Canvas& canvas, const Rounding& rounding) {
  const Vec2 free{2 * canvas.text, 4 * canvas.text};
  return PiecePicture(piece, canvas, rounding, free).drawn(false);
}

}  // namespace nook
