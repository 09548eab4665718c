// Places of the ends of spans in plan.
#pragma once

#include "survey/view.h"

namespace nook {

/// Height over z = 0; free marks lie on the floor.
double height_of(const View& view, const SpanSpot& spot);
/// In the room frame.
VariedPoint plan_of(View& view, const SpanSpot& spot);
/// Straight from one to the other.
Varied distance(View& view, const SpanSpot& a, const SpanSpot& b);

/// Gives free marks their first values from the model's ties. Requires: every unknown is there.
void place_free_marks(RoomModel& model);

}  // namespace nook
