// Keys of the drilling map.
#include "sheet/drill_json.h"

#include <nlohmann/json.hpp>

namespace nook {
namespace {

template <class T>
Json or_null(const std::optional<T>& value) {
  return value ? Json(*value) : Json(nullptr);
}

Json json_of(const Hole& h) {
  return {{"id", h.id},
          {"part", h.part},
          {"stud", or_null(h.stud)},
          {"along_mm", h.along_mm},
          {"height_mm", h.height_mm},
          {"from_line_mm", or_null(h.from_line_mm)},
          {"from_plumb_line_mm", or_null(h.from_datum_mm)},
          {"u_mm", h.u_mm},
          {"v_mm", h.v_mm},
          {"end", h.end},
          {"from_end_mm", h.from_end_mm},
          {"edge", h.edge},
          {"from_edge_mm", h.from_edge_mm},
          {"edge_distance_mm", h.edge_distance_mm},
          {"embedment_mm", h.embedment_mm},
          {"hit_chance", h.hit_chance},
          {"pilot_mm", h.pilot_mm},
          {"shank_pilot_mm", h.shank_pilot_mm},
          {"clearance_mm", h.clearance_mm},
          {"depth_mm", h.depth_mm},
          {"shim_mm", h.shim_mm},
          {"drive", h.drive},
          {"load_n", h.load_n},
          {"warnings", h.warnings}};
}

Json json_of(const std::vector<Hole>& holes) {
  Json list = Json::array();
  for (const Hole& h : holes) list.push_back(json_of(h));
  return list;
}

std::string_view words(StudReport::Found found) {
  return found == StudReport::Found::edges    ? "edges"
         : found == StudReport::Found::centre ? "centre"
                                              : "inferred";
}

Json json_of(const WallDrill& wall) {
  Json studs = Json::array();
  for (const StudReport& s : wall.studs)
    studs.push_back({{"centre_mm", s.centre_mm},
                     {"sd_mm", s.sd_mm},
                     {"found", words(s.found)},
                     {"height_mm", s.height_mm}});
  Json line = nullptr;
  if (wall.datum)
    line = {{"stud", wall.datum->stud},
            {"along_mm", wall.datum->along_mm},
            {"height_mm", wall.datum->height_mm}};
  return {{"name", wall.name},
          {"plumb_line", line},
          {"studs", studs},
          {"notes", wall.stud_notes},
          {"holes", json_of(wall.holes)}};
}

Json json_of(const Strength& s) {
  return {{"part", s.part},
          {"to", s.to},
          {"load_n", or_null(s.load_n)},
          {"capacity_n", or_null(s.capacity_n)},
          {"ratio", or_null(s.ratio)},
          {"mode", s.mode},
          {"source", s.source},
          {"worst_hole", s.worst_hole},
          {"screw_load_n", s.worst_load_n},
          {"screw_capacity_n", s.screw_n},
          {"lift_n", s.lift_n},
          {"notes", s.notes},
          {"advice", s.advice}};
}

Json json_of(const StoryPole& pole) {
  Json marks = Json::array();
  for (const auto& m : pole.marks) marks.push_back({{"at_mm", m.at_mm}, {"what", m.what}});
  return {{"of", pole.of}, {"start", pole.start}, {"marks", marks}};
}

Json json_of(const JointDrill& joint) {
  return {{"part", joint.part}, {"to", joint.to}, {"holes", json_of(joint.holes)}};
}

Json json_of(const Unreachable& u) {
  const std::string reason = u.advice.empty() ? u.reason : u.reason + ": " + u.advice;
  return {{"part", u.part}, {"reason", reason}};
}

Json json_of(const NextReading& next) {
  return {{"reading", next.reading}, {"gain", next.gain}};
}

template <class T>
Json listed(const std::vector<T>& items) {
  Json list = Json::array();
  for (const T& item : items) list.push_back(json_of(item));
  return list;
}

}  // namespace

Json drill_json(const DrillAnswer& answer, const std::string& job) {
  Json json = opening("drill", job, answer.verdict);
  json["walls"] = listed(answer.walls);
  json["parts"] = listed(answer.parts);
  json["strength"] = listed(answer.strength);
  json["unreachable"] = listed(answer.unreachable);
  json["story_poles"] = listed(answer.poles);
  json["measure_next"] = listed(answer.probes);
  json["missing"] = Json::array();
  for (const Untold& m : answer.missing) json["missing"].push_back(m.what + ": " + m.advice);
  return json;
}

}  // namespace nook
