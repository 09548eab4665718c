// A room's report as JSON.
#include "sheet/room_json.h"

#include <cmath>
#include <nlohmann/json.hpp>

#include "base/length.h"
#include "sheet/reading_name.h"

namespace nook {
namespace {

Json number(double value) {
  return std::isfinite(value) ? Json(value) : Json();
}

Json number(const std::optional<double>& value) {
  return value ? number(*value) : Json();
}

// Adds `name` and `name_sd` with their unit; null where the sd has no bound.
void add(Json& json, const std::string& name, const std::string& unit, const Measured& measured) {
  const bool known = std::isfinite(measured.sd);
  json[name + "_" + unit] = known ? Json(measured.value) : Json();
  json[name + "_sd_" + unit] = number(measured.sd);
}

Json json_of(const CornerReport& corner) {
  Json json{{"walls", {corner.walls[0], corner.walls[1]}}};
  add(json, "angle", "deg", corner.angle_deg);
  return json;
}

const char* word(StudReport::Found found) {
  return found == StudReport::Found::edges    ? "edges"
         : found == StudReport::Found::centre ? "centre"
                                              : "inferred";
}

Json json_of(const StudReport& stud) {
  return {{"centre_mm", number(stud.centre_mm)},
          {"sd_mm", number(stud.sd_mm)},
          {"found", word(stud.found)},
          {"height_mm", number(stud.height_mm)}};
}

Json json_of(const WallReport& wall) {
  Json json{{"name", wall.name}};
  if (wall.length_mm) {
    add(json, "length", "mm", *wall.length_mm);
  } else {
    json["length_mm"] = json["length_sd_mm"] = nullptr;
  }
  json["lean_mm_per_m"] = number(wall.lean_mm_per_m.value);
  json["lean_sd_mm_per_m"] = number(wall.lean_mm_per_m.sd);
  json["hump_mm"] = number(wall.hump_mm);
  json["studs"] = Json::array();
  for (const StudReport& stud : wall.studs) json["studs"].push_back(json_of(stud));
  return json;
}

// An angle reading's figures are also given as angles.
void add_angle(const ReadingReport& reading, Json& json) {
  const auto angle = [&](double mm) { return number(in_degrees({mm / *reading.blade_mm})); };
  json["value_deg"] = angle(reading.value_mm);
  json["sd_deg"] = angle(reading.sd_mm);
  json["adjusted_deg"] = angle(reading.adjusted_mm);
  json["residual_deg"] = angle(reading.residual_mm);
  json["blade_mm"] = *reading.blade_mm;
}

Json json_of(const ReadingReport& reading, const std::string& name) {
  Json json{{"id", reading.id},
            {"given", reading.given},
            {"name", name},
            {"value_mm", number(reading.value_mm)},
            {"sd_mm", number(reading.sd_mm)},
            {"adjusted_mm", number(reading.adjusted_mm)},
            {"adjusted_sd_mm", number(reading.adjusted_sd_mm)},
            {"residual_mm", number(reading.residual_mm)},
            {"w", number(reading.w)},
            {"redundancy", number(reading.redundancy)},
            {"smallest_slip_mm", number(reading.smallest_slip_mm)},
            {"line", reading.line},
            {"struck", reading.struck}};
  if (reading.blade_mm) add_angle(reading, json);
  return json;
}

template <class T, class F>
Json list(const std::vector<T>& entries, F&& of) {
  Json json = Json::array();
  for (const T& entry : entries) json.push_back(of(entry));
  return json;
}

Json suspect_json(const Suspect& suspect) {
  return {{"ids", suspect.ids},
          {"reason", suspect.reason},
          {"likely_mm", number(suspect.likely_mm)},
          {"odds", number(suspect.odds)}};
}

void add_readings(const RoomReport& report, Json& json) {
  json["readings"] =
      list(report.readings, [&](const auto& r) { return json_of(r, reading_name(r.id, report)); });
  json["suspects"] = list(report.suspects, suspect_json);
  json["uncheckable"] = report.uncheckable;
  json["measure_next"] = list(report.measure_next, [](const NextReading& next) {
    return Json{{"reading", next.reading}, {"gain", number(next.gain)}};
  });
  json["missing"] = list(report.missing, [](const Missing& missing) {
    return Json{{"what", missing.what}, {"blocks", missing.blocks}};
  });
  json["facts"] = report.facts;
}

}  // namespace

Json room_json(const RoomReport& report, const std::string& job) {
  Json json = opening("room", job, room_verdict(report));
  json["corners"] = list(report.corners, [](const auto& c) { return json_of(c); });
  json["walls"] = list(report.walls, [](const auto& w) { return json_of(w); });
  json["flatness"] = {{"sd_mm", report.flatness_sd_mm},
                      {"reach_mm", report.flatness_reach_mm},
                      {"chosen_by", report.flatness_from_file ? "file" : "readings"}};
  add_readings(report, json);
  json["chi2"] = {
      {"value", number(report.chi2)}, {"dof", report.dof}, {"limit", number(report.chi2_limit)}};
  return json;
}

}  // namespace nook
