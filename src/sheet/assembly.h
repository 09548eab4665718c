// The whole seen from the room, piece after piece as it goes in.
#pragma once

#include <string>
#include <vector>

#include "sheet/draft.h"
#include "sheet/scene.h"

namespace nook {

/// One step of the work: what goes in together.
struct InstallStep {
  std::string name;
  std::vector<int> pieces;  // indices into JobScene::pieces
};

/// The groups in the order they go in: that of the fit, else by `order`, else that of the file.
std::vector<InstallStep> steps_of(const JobScene& scene);

/// The pieces of the first `count` steps in an isometric view, as one looks into the corner; those
/// of the last step stand out by a hatch. Each step's number stands on its pieces.
Drawing assembly(const JobScene& scene, int count, const Canvas& canvas);

/// All pieces with their step numbers, none standing out.
Drawing assembled(const JobScene& scene, const Canvas& canvas);

}  // namespace nook
