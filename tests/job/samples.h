// The whole files in tests/job/good, which the tests of this folder change one thing of.
#pragma once

#include <string>

namespace nook {

/// The text of a file in tests/job.
std::string test_file(const std::string& name);

/// A corner with every kind of entry, inches.
extern const std::string kRoom;
/// Three walls, millimeters.
extern const std::string kAlcove;
/// The lookout, inches.
extern const std::string kDesign;
extern const std::string kPieces;

}  // namespace nook
