// The check as a JSON answer, and answers as JSON text for those who do not see the library.
#include "sheet/check_json.h"

#include <nlohmann/json.hpp>

#include "sheet/carry_json.h"
#include "sheet/drill_json.h"
#include "sheet/fit_json.h"
#include "sheet/room_json.h"
#include "sheet/safety_json.h"
#include "sheet/verify_json.h"

namespace nook {

std::string check_json(const CheckAnswer& check, const std::string& job) {
  Json json = opening("check", job, check_verdict(check));
  json["proof"] = foretold_json(check.proof);
  json["room"] = room_json(check.room, job);
  json["fit"] = fit_json(check.fit, job);
  json["drill"] = drill_json(check.drill, job);
  json["carry"] = carry_json(check.carry, job);
  json["safety"] = safety_json(check.safety, job);
  if (check.verify) json["verify"] = verify_json(*check.verify, job);
  return dumped(json);
}

std::string room_json_text(const RoomReport& room, const std::optional<Foretold>& expect,
                           const std::string& job) {
  Json json = room_json(room, job);
  if (expect) json["expect"] = foretold_json(*expect);
  return dumped(json);
}

std::string fit_json_text(const FitAnswer& fit, const std::string& job) {
  return dumped(fit_json(fit, job));
}

std::string drill_json_text(const DrillAnswer& drill, const std::string& job) {
  return dumped(drill_json(drill, job));
}

}  // namespace nook
