// Keys of the cautions.
#include "sheet/safety_json.h"

#include <nlohmann/json.hpp>

namespace nook {
namespace {

/// Texts in JSON: tenths of a millimeter, which tell limits like 88.9 mm apart.
Rounding rounding() {
  return {Unit::mm, millimetres(0.1)};
}

Json json_of(const Caution& caution) {
  Json json = {{"id", caution.id},
               {"severity", words(caution.severity)},
               {"text", spoken(caution.text, rounding())},
               {"source", caution.source},
               {"where", caution.where},
               {"decided", caution.decided},
               {"value_mm", nullptr},
               {"sd_mm", nullptr}};
  if (caution.value) json["value_mm"] = caution.value->value, json["sd_mm"] = caution.value->sd;
  return json;
}

}  // namespace

Json safety_json(const SafetyAnswer& answer, const std::string& job) {
  Json json = opening("safety", job, answer.verdict);
  json["cautions"] = Json::array();
  for (const Caution& caution : answer.cautions) json["cautions"].push_back(json_of(caution));
  json["decides"] = kWhoDecides;
  return json;
}

std::string safety_json_text(const SafetyAnswer& answer, const std::string& job) {
  return dumped(safety_json(answer, job));
}

}  // namespace nook
