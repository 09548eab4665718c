// A wall as one faces it, under way: its outline, what is behind its surface and what hangs on it.
#pragma once

#include <string>
#include <vector>

#include "sheet/draft.h"
#include "sheet/label.h"
#include "sheet/scene.h"

namespace nook {

/// A drawing of one wall with the labels still to be placed.
struct WallDraft {
  const JobScene& scene;
  int index;
  FacedWall faced;
  double top;     // z where the drawing ends if no ceiling was measured
  PageBox shown;  // the part of the wall that is drawn
  Draft draft;
  std::vector<Label> labels;   // most important first
  std::vector<PageBox> marks;  // never covered by a label

  const Wall& survey() const { return scene.survey.walls[index]; }
  /// The drilling map of this wall, or null.
  const WallDrill* drill() const;
  void add(const std::string& layer, std::variant<Polyline, Patch, Circle, Text> form,
           const std::string& name) {
    draft.drawing.add(layer, std::move(form), name);
  }
  /// A round mark of `radius` paper mm that no label may cover.
  void mark(const std::string& layer, Vec2 at, double radius, Paint paint, const std::string& name);
};

/// What a wall covers on the page.
PageBox whole_wall(const JobScene& scene, int wall);

/// An empty draft of that wall whose scale brings `shown` onto the canvas.
WallDraft wall_draft(const JobScene& scene, int wall, const Canvas& canvas, const PageBox& shown);

/// Ground, studs, baseboard, floor, ceiling, corners, obstacles, cable runs, level line.
void draw_wall(WallDraft& wall);

/// Cuts everything drawn so far, and the labels, to what is shown.
void cut_to_shown(WallDraft& wall);

/// Places the labels and hands the drawing out.
Drawing finished(WallDraft wall);

/// Where cables are likely: level between boxes and straight up and down from each (common
/// practice, no source). Base-line distance and z of each run's two ends.
struct CableRun {
  Vec2 from, to;
};
std::vector<CableRun> cable_runs(const JobScene& scene, int wall);

}  // namespace nook
