// The whole files in tests/job/good, which the tests of this folder change one thing of.
#include "job/samples.h"
#include "source_dir.h"

#include <fstream>
#include <sstream>
#include <stdexcept>

namespace nook {

std::string test_file(const std::string& name) {
  std::ifstream file(NOOKFIT_SOURCE_DIR "/tests/job/" + name, std::ios::binary);
  if (!file) throw std::runtime_error("no test file " + name);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

const std::string kRoom = test_file("good/room.toml");
const std::string kAlcove = test_file("good/alcove.toml");
const std::string kDesign = test_file("good/design.toml");
const std::string kPieces = test_file("good/pieces.toml");

}  // namespace nook
