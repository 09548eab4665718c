// Small whole files that the tests of this folder change one thing of.
#pragma once

namespace nook {

/// A corner with every kind of entry, inches.
extern const char* const kRoom;
/// Three walls, millimetres.
extern const char* const kAlcove;
/// The lookout, inches.
extern const char* const kDesign;
extern const char* const kPieces;

}  // namespace nook
