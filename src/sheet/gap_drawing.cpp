// The air along a piece's edges, drawn large, and its bare outlines.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sheet/label.h"
#include "sheet/piece_drawing.h"

namespace nook {
namespace {

double widest_gap(const PieceView& piece) {
  double most = 1;
  for (const PieceGap& gap : piece.gaps)
    for (const PieceGap::Spot& spot : gap.spots) most = std::max(most, std::abs(spot.gap));
  return most;
}

void draw_gap(Draft& draft, const PieceGap& gap, double factor, std::vector<Label>& labels) {
  if (gap.spots.size() < 2) return;
  Polygon band;
  std::vector<Vec2> line;
  for (const PieceGap::Spot& spot : gap.spots) {
    band.push_back(spot.at);
    line.push_back(spot.at + factor * spot.gap * gap.out);
  }
  band.insert(band.end(), line.rbegin(), line.rend());
  hatch(draft, "gaps", {band, {}}, 45, 1.2);
  draft.drawing.add("gaps", Polyline{line, false, LineKind::normal}, gap.words);
  const auto wider = [](const PieceGap::Spot& a, const PieceGap::Spot& b) { return a.gap < b.gap; };
  const auto most = std::max_element(gap.spots.begin(), gap.spots.end(), wider);
  labels.push_back({gap.words, most->at + factor * most->gap * gap.out, 0.5, true, 0, "gap"});
}

}  // namespace

Drawing gap_drawing(const PieceView& piece, const Canvas& canvas, const Rounding& rounding) {
  const PageBox box = box_round(piece.outline);
  Draft draft = drafted(canvas, rounding, box, {12 * canvas.text, 8 * canvas.text});
  const double wanted = draft.paper(2.5 * canvas.text) / widest_gap(piece);
  int factor = 1;
  for (int f : {2, 5, 10, 20, 50, 100})
    if (f <= wanted) factor = f;
  draft.drawing.name = "gaps-" + piece.name;
  draft.drawing.title =
      fmt::format("{}: gaps along its edges, {}", piece.name,
                  factor == 1 ? "as wide as they are" : fmt::format("{} times as wide", factor));
  draft.drawing.description =
      "Hatched outside the outline: air between the piece and what it meets.";
  draft.drawing.add("outline", Polyline{piece.outline, true, LineKind::heavy}, piece.name);
  std::vector<Label> labels;
  for (const PieceGap& gap : piece.gaps) {
    draft.drawing.description += " " + gap.words + ".";
    draw_gap(draft, gap, factor, labels);
  }
  labels.push_back({piece.name, 0.5 * (box.low + box.high), 0, true, 0, "name"});
  place_labels(draft, labels, {}, canvas_round(draft, box));
  return finished(std::move(draft));
}

Drawing outline_drawing(const PieceView& piece) {
  Drawing drawing;
  drawing.name = piece.name;
  drawing.title = piece.name;
  drawing.description = "Outlines in millimeters, seen from the front.";
  drawing.add("outline", Polyline{piece.outline, true, LineKind::normal}, piece.name);
  if (!piece.blank.empty())
    drawing.add("blank", Polyline{piece.blank, true, LineKind::dashed}, "blank");
  for (const Cutout& cutout : piece.cutouts) {
    if (cutout.centre && cutout.diameter)
      drawing.add("cutouts",
                  Circle{*cutout.centre, cutout.diameter->mm / 2, Paint::none, LineKind::normal},
                  cutout.name);
    else
      drawing.add("cutouts", Polyline{cutout.outline, true, LineKind::normal}, cutout.name);
  }
  for (const PieceHole& hole : piece.holes)
    drawing.add("holes", Circle{hole.at, 1, Paint::none, LineKind::normal}, "hole " + hole.number);
  for (const PieceHole& screw : piece.crosses)
    drawing.add("holes", Circle{screw.at, 1, Paint::none, LineKind::normal},
                "screw " + screw.number);
  drawing.extent = box_on_page(drawing).grown(10);
  return drawing;
}

}  // namespace nook
