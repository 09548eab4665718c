// Surveys built in code, so that tests of the adjustment need no file.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "room/survey.h"

namespace nook::test {

/// Millimeters throughout. Ids are those that a file would give.
class SurveyBuilder {
 public:
  explicit SurveyBuilder(std::vector<std::string> walls = {"left", "right"});

  Survey survey;
  /// Stated by each reading added from here on; none: as the tape says.
  std::optional<Length> sd;
  /// Smallest mark of each reading added from here on.
  Length mark = millimetres(1);

  Reading reading(double mm, std::string id);
  SurveyBuilder& diagonal(int corner, double first, double second, std::vector<double> straight,
                          double height = 1000);
  SurveyBuilder& level(int wall, double at, double from, double to, double gap, bool top = true);
  SurveyBuilder& plumb(int wall, double at, std::vector<std::pair<double, double>> line);
  SurveyBuilder& string(int wall, double height, std::vector<std::pair<double, double>> line);
  SurveyBuilder& straightedge(int wall, double height, std::vector<std::pair<double, double>> gaps);
  SurveyBuilder& length(int wall, std::vector<double> mm, double height = 1000);
  SurveyBuilder& square(int corner, double blade, double gap, bool tip = true);
  SurveyBuilder& angle(int corner, double degrees, double blade);
  SurveyBuilder& across(double out, double mm, double height = 1000);
  SurveyBuilder& drop(int wall, double along, double out, double mm);
  SurveyBuilder& rise(int wall, double along, double out, double mm);
  SurveyBuilder& mark_named(const std::string& name);
  SurveyBuilder& span(const std::string& a, const std::string& b, std::vector<double> mm);

 private:
  Corner& corner(int k) { return survey.corners[static_cast<std::size_t>(k)]; }
  Readings readings(const std::vector<double>& mm, const std::string& id);
};

}  // namespace nook::test
