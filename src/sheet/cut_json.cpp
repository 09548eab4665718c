// Pieces, layout and shopping.
#include "sheet/cut_json.h"

#include <nlohmann/json.hpp>

#include "design/side.h"

namespace nook {
namespace {

const char* name_of(Purchase::Kind kind) {
  switch (kind) {
    case Purchase::Kind::screw:
      return "screw";
    case Purchase::Kind::shim:
      return "shim";
    case Purchase::Kind::trim:
      return "trim";
    case Purchase::Kind::filler:
      return "filler";
    case Purchase::Kind::caulk:
      return "caulk";
    case Purchase::Kind::scribe_blade:
      return "blade";
  }
  return "";
}

template <typename List, typename Each>
Json listed(const List& list, const Each& each) {
  Json json = Json::array();
  for (const auto& one : list) json.push_back(each(one));
  return json;
}

Json json_of(const Polygon& polygon) {
  return listed(polygon, [](Vec2 p) { return Json{p.x, p.y}; });
}

Json json_of(const std::vector<CutCheck>& checks) {
  return listed(checks, [](const CutCheck& c) { return Json{c.at, c.value}; });
}

Json json_of(const CutScribe& scribe) {
  return {{"edge", scribe.edge},
          {"meets", scribe.meets},
          {"shop", scribe.shop},
          {"touches_at_mm", scribe.touches_at},
          {"setting_mm", scribe.setting_mm},
          {"bevel_mm", scribe.bevel_mm},
          {"off_mm", listed(scribe.spots, [](const CutScribe::Spot& s) {
             return Json{s.at, s.off};
           })}};
}

Json json_of(const CutNotch& notch) {
  return {{"corner", notch.corner},
          {"for", notch.around},
          {"width_mm", notch.width_mm},
          {"height_mm", notch.height_mm},
          {"wild_across_mm", notch.wild_across_mm},
          {"wild_up_mm", notch.wild_up_mm},
          {"profile", notch.follows_profile},
          {"polygon_mm", json_of(notch.polygon)}};
}

Json json_of(const CutHole& hole) {
  return {{"name", hole.name},
          {"from", {name_of(hole.across), name_of(hole.up)}},
          {"at_mm", {hole.from_across_mm, hole.from_up_mm}},
          {"diameter_mm", hole.diameter_mm ? Json(*hole.diameter_mm) : Json(nullptr)},
          {"size_mm", {hole.width_mm, hole.height_mm}}};
}

Json json_of(const CutPilot& pilot) {
  const auto twin = [](const CutPilot::Twin& one) {
    return Json{{"id", one.id}, {"probe_first", one.probe_first}};
  };
  return {{"id", pilot.id},
          {"end", pilot.end},
          {"from_end_mm", pilot.from_end_mm},
          {"edge", pilot.edge},
          {"from_edge_mm", pilot.from_edge_mm},
          {"bore_mm", pilot.bore_mm},
          {"probe_first", pilot.probe_first},
          {"twins", listed(pilot.twins, twin)}};
}

Json json_of(const CutSlant& slant) {
  const char* end =
      upright(slant.edge) ? (slant.last ? "top" : "bottom") : (slant.last ? "right" : "left");
  return {{"edge", name_of(slant.edge)},
          {"off_mm", slant.off_mm},
          {"in_at", end},
          {"angle_deg", slant.angle_deg}};
}

Json json_of(const CutPiece& piece) {
  const auto each = [](const auto& one) { return json_of(one); };
  return {{"part", piece.part},
          {"count", piece.names.size()},
          {"pieces", piece.names},
          {"stock", piece.stock},
          {"thickness_mm", piece.thickness_mm},
          {"outline_mm", json_of(piece.outline)},
          {"blank_outline_mm", json_of(piece.contour)},
          {"slants", listed(piece.slants, each)},
          {"blank_mm", {piece.blank.width, piece.blank.height}},
          {"finished_mm", {piece.finished.width, piece.finished.height}},
          {"wild", listed(piece.wild,
                          [](const LeftWild& w) {
                            return Json{{"edge", w.edge}, {"beyond_mm", w.beyond_mm}};
                          })},
          {"tapers", listed(piece.tapers,
                            [](const CutTaper& t) {
                              return Json{
                                  {"edge", t.edge},
                                  {t.widths ? "widths_mm" : "heights_mm", {t.first_mm, t.last_mm}},
                                  {"off_mm", {t.off_first_mm, t.off_last_mm}}};
                            })},
          {"scribes", listed(piece.scribes, each)},
          {"notches", listed(piece.notches, each)},
          {"cutouts", listed(piece.holes, each)},
          {"pilots", listed(piece.pilots, each)},
          {"checks",
           {{"widths", json_of(piece.checks.widths)},
            {"heights", json_of(piece.checks.heights)},
            {"diagonals", piece.checks.diagonals},
            {"diagonal_corners_mm", listed(piece.checks.diagonal_ends, [](const auto& ends) {
               return json_of(Polygon{ends[0], ends[1]});
             })}}}};
}

Json json_of(const BoardPlan& plan) {
  return {{"boards", listed(plan.boards,
                            [](const BoardCut& board) {
                              return Json{{"length_mm", board.length},
                                          {"pieces", listed(board.sticks, [](const Stick& s) {
                                             return s.part;
                                           })}};
                            })},
          {"too_long", listed(plan.too_long, [](const Stick& s) { return s.part; })},
          {"waste", plan.waste()}};
}

Json json_of(const LaidPanel& panel) {
  return {{"part", panel.part},
          {"at_mm", {panel.x, panel.y}},
          {"size_mm", {panel.width, panel.length}},
          {"turned", panel.turned}};
}

Json json_of(const SheetPlan& plan) {
  return {{"size_mm", {plan.width, plan.length}},
          {"sheets", listed(plan.sheets,
                            [](const auto& sheet) {
                              return listed(sheet, [](const LaidPanel& p) { return json_of(p); });
                            })},
          {"too_large", listed(plan.too_large, [](const Panel& p) { return p.part; })},
          {"waste", plan.waste()}};
}

Json json_of(const StockCut& stock) {
  Json json{{"name", stock.name}, {"kind", stock.kind}, {"thickness_mm", stock.thickness_mm}};
  if (stock.boards) json["layout"] = json_of(*stock.boards);
  if (stock.sheets) json["layout"] = json_of(*stock.sheets);
  return json;
}

Json json_of(const Purchase& item) {
  return {{"kind", name_of(item.kind)},
          {"name", item.name},
          {"count", item.count},
          {"length_mm", item.length_mm},
          {"width_mm", item.width_mm}};
}

}  // namespace

Json cut_json(const CutAnswer& cut, const std::string& job) {
  const auto each = [](const auto& one) { return json_of(one); };
  Json json = opening("cut", job, cut.verdict);
  json["room_known"] = cut.known;
  json["kerf_mm"] = kKerf;
  json["pieces"] = listed(cut.pieces, each);
  json["stock"] = listed(cut.stock, each);
  json["shopping"] = listed(cut.shopping, each);
  return json;
}

std::string cut_json_text(const CutAnswer& cut, const std::string& job) {
  return dumped(cut_json(cut, job));
}

}  // namespace nook
