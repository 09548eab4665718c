// The answer `survey`.
#include "sheet/survey_json.h"

#include <nlohmann/json.hpp>

#include "sheet/room_json.h"

namespace nook {

std::string survey_json_text(const RoomReport& report, const std::string& job) {
  Json json = room_json(report, job);
  json["answer"] = "survey";
  return dumped(json);
}

}  // namespace nook
