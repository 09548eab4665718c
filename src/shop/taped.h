// What one length taken with the job's tape is worth, where the file gives the length alone.
#pragma once

#include "room/survey.h"

namespace nook {

/// The sd of a length between two faces (a door, a hall), read to the tape's usual mark with its
/// end set as in a corner, mm; the tape's own error is in it.
double sd_between_faces(const Survey& survey, Length length);

/// The sd of a length between two edges of a piece, mm. The tape's own error is left out: the room
/// was measured with the same tape, so a piece errs with it.
double sd_between_edges(const Survey& survey);

}  // namespace nook
