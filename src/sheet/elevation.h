// One wall as one faces it, with the pieces on it and their holes numbered.
#pragma once

#include <string>

#include "sheet/draft.h"
#include "sheet/scene.h"

namespace nook {

/// The wall as one faces it; never mirrored: the left wall's corner stands at the right-hand end.
/// Found studs are shaded strips with whole edges, inferred ones open strips with dashed edges and
/// a question mark. A sure hole is a filled spot, one to probe first an open circle.
Drawing elevation(const JobScene& scene, int wall, const Canvas& canvas);

/// The part of it round what hangs there and the level line, larger.
Drawing elevation_of_work(const JobScene& scene, int wall, const Canvas& canvas);

/// How high that part is for its width.
double shape_of_work(const JobScene& scene, int wall);

/// The wall without pieces, with the spots where its readings were taken.
Drawing where_measured(const JobScene& scene, int wall, const Canvas& canvas);

/// The number by which a hole goes on its wall: "3" of "left 3".
std::string number_of(const std::string& hole_id);

}  // namespace nook
