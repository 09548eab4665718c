// What the program and the libraries in it are, as the build found them.
#include "command/version.h"

namespace nook {

std::string version_text() {
  return "nookfit " NOOKFIT_VERSION
         "\n"
         "CGAL " NOOKFIT_CGAL_VERSION
         "\n"
         "Eigen " NOOKFIT_EIGEN_VERSION
         "\n"
         "toml++ " NOOKFIT_TOML_VERSION
         "\n"
         "nlohmann-json " NOOKFIT_JSON_VERSION
         "\n"
         "CLI11 " NOOKFIT_CLI11_VERSION
         "\n"
         "fmt " NOOKFIT_FMT_VERSION
         "\n"
         "cairo " NOOKFIT_CAIRO_VERSION " (loaded when something is drawn)\n";
}

}  // namespace nook
