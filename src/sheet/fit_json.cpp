// Every key of the answer `fit`; a figure that is not known is null.
#include "sheet/fit_json.h"

#include <nlohmann/json.hpp>

#include "sheet/fit_words.h"

namespace nook {
namespace {

Json points(const std::vector<GapPoint>& line) {
  Json json = Json::array();
  for (const GapPoint& p : line) json.push_back({p.at, p.gap, p.sd});
  return json;
}

Json points(const std::vector<FieldPoint>& field) {
  Json json = Json::array();
  for (const FieldPoint& p : field) json.push_back({p.u, p.v, p.gap, p.sd});
  return json;
}

Json points(const Polygon& polygon) {
  Json json = Json::array();
  for (Vec2 p : polygon) json.push_back({p.x, p.y});
  return json;
}

Json range(const GapRange& r) {
  return {{"gap_least_mm", r.least}, {"gap_most_mm", r.most}};
}

Json json_of(const GroupFit& g) {
  return {{"name", g.name},
          {"x_mm", g.move.x},
          {"y_mm", g.move.y},
          {"z_mm", g.move.z},
          {"turn_deg", g.turn_deg},
          {"touches", g.touches},
          {"still_moves_mm", g.still_moves_mm}};
}

Json json_of(const ClashFit& c) {
  return {{"part", c.part},
          {"with", c.with},
          {"depth_mm", c.depth_mm},
          {"sd_mm", c.sd_mm},
          {"at_mm", {c.at.x, c.at.y, c.at.z}},
          {"chance", c.chance},
          {"verdict", words(c.verdict)}};
}

// The names first; the figures are null where nothing is met or nothing is known.
Json opened_contact(const ContactFit& c) {
  Json json = {{"part", c.part},
               {"edge", c.edge},
               {"meets", c.meets},
               {"by", by_word(c.how->by)},
               {"notch", c.how->notch}};
  for (const char* key : {"gap_least_mm", "gap_most_mm", "sd_mm", "chance", "taper_deg",
                          "scribe_mm", "wood_mm", "square_mm", "past_mm"})
    json[key] = nullptr;
  json["line_mm"] = json["field_mm"] = Json::array();
  json["lines"] = {{"front", Json::array()}, {"back", Json::array()}};
  json["after"] = {{"gap_least_mm", nullptr}, {"gap_most_mm", nullptr}};
  return json;
}

Json json_of(const ContactFit& c, bool known) {
  Json json = opened_contact(c);
  if (known && c.meets_anything) {
    json.update(range(c.gap));
    json["sd_mm"] = c.gap_sd;
    json["chance"] = c.chance;
    json["allow_mm"] = c.allow;
    json["taper_deg"] = c.taper_deg;
    json["scribe_mm"] = c.scribe_mm;
    json["wood_mm"] = c.wood_mm;
    json["bevel_mm"] = c.bevel_mm;
    json["touches_at_mm"] = c.touches_at;
    json["line_mm"] = points(c.line);
    json["lines"] = {{"front", points(c.front)}, {"back", points(c.back)}};
    json["field_mm"] = points(c.field);
    json["square_mm"] = c.square_mm;
    json["past_mm"] = c.past_mm;
    json["after"] = range(c.after);
    json["spoils"] = c.spoils;
  }
  json["cannot_meet"] = !c.meets_anything;
  json["verdict"] = words(c.verdict);
  return json;
}

Json json_of(const NotchFit& n) {
  Json steps = Json::array();
  for (const NotchFit::Step& step : n.steps) steps.push_back({step.at, step.deep});
  return {{"part", n.part},
          {"for", n.around},
          {"polygon_mm", points(n.polygon)},
          {"depth_mm", n.depth_mm},
          {"sd_mm", n.depth_sd_mm},
          {"warnings", n.warnings},
          {"profile", n.follows_profile},
          {"steps_mm", steps}};
}

Json json_of(const ClearanceFit& c) {
  return {{"part", c.part},
          {"from", c.from},
          {"least_mm", c.least_mm},
          {"sd_mm", c.sd_mm},
          {"needed_mm", c.needed_mm},
          {"chance", c.chance},
          {"verdict", words(c.verdict)}};
}

Json json_of(const CoveredFit& c) {
  return {{"part", c.part},
          {"behind", c.behind},
          {"margin_mm", c.margin_mm},
          {"sd_mm", c.sd_mm},
          {"needed_mm", c.needed_mm},
          {"chance", c.chance},
          {"verdict", words(c.verdict)}};
}

Json json_of(const ShowFit& s) {
  return {{"part", s.part}, {"where", s.where}, {"what", s.what}, {"by_mm", s.by_mm}};
}

Json json_of(const FloorFit& f) {
  return {{"part", f.part},
          {"shim_mm", f.shim_mm},
          {"shim_sd_mm", f.shim_sd_mm},
          {"squash_mm", f.squash_mm},
          {"squash_least_mm", f.squash_least_mm},
          {"squash_most_mm", f.squash_most_mm},
          {"settles_mm", f.settles_mm},
          {"tack_strip", f.on_tack_strip},
          {"foot_deg", f.foot_deg},
          {"foot_bevel_deg", f.foot_bevel_deg},
          {"foot_mm", f.foot_mm},
          {"note", f.note}};
}

Json json_of(const EarlyFit& e) {
  return {{"part", e.part}, {"on", e.on}};
}

Json json_of(const MovementFit& m) {
  return {{"part", m.part},
          {"edges", {m.edges[0], m.edges[1]}},
          {"meets", {m.meets[0], m.meets[1]}},
          {"across_mm", m.across_mm},
          {"moves_mm", m.moves_mm},
          {"open_mm", m.open_mm}};
}

Json json_of(const NextReading& next) {
  return {{"reading", next.reading}, {"gain", next.gain}};
}

template <class List>
Json list(const List& all) {
  Json json = Json::array();
  for (const auto& one : all) json.push_back(json_of(one));
  return json;
}

// Contacts that cannot be are told with their place, as a fault would be.
Json diagnostics(const FitAnswer& fit, const std::string& job) {
  Json all = Json::array();
  for (const ContactFit& c : fit.contacts) {
    if (!fit.known || c.meets_anything || c.verdict != Verdict::does_not_fit) continue;
    all.push_back({{"file", job + "/design.toml"},
                   {"line", c.how->place.line},
                   {"column", c.how->place.column},
                   {"what", contact_place(c) + (c.faces_away ? ": it faces away from it"
                                                             : ": this edge cannot meet it")},
                   {"code", "edge-cannot-meet"},
                   {"help", c.faces_away ? "name the opposite edge or face"
                                         : "name another edge, or the face that lies against it"}});
  }
  return all;
}

}  // namespace

Json fit_json(const FitAnswer& fit, const std::string& job) {
  Json json = opening("fit", job, fit.verdict);
  json["diagnostics"] = diagnostics(fit, job);
  json["chance"] = fit.known ? Json(fit.chance) : Json(nullptr);
  json["groups"] = list(fit.groups);
  json["clashes"] = list(fit.clashes);
  json["contacts"] = Json::array();
  for (const ContactFit& c : fit.contacts) json["contacts"].push_back(json_of(c, fit.known));
  json["notches"] = list(fit.notches);
  json["clearances"] = list(fit.clearances);
  json["covered"] = list(fit.covered);
  json["shows"] = list(fit.shows);
  json["floor"] = list(fit.floor);
  json["movement"] = list(fit.movement);
  json["early"] = list(fit.early);
  json["measure_next"] = list(fit.measure_next);
  return json;
}

}  // namespace nook
