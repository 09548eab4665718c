// Pieces, groups, and each place they pass.
#include "sheet/carry_json.h"

#include <nlohmann/json.hpp>

#include "sheet/carry_text.h"

namespace nook {
namespace {

Json value_of(const std::optional<Measured>& quantity) {
  return quantity ? Json(quantity->value) : Json(nullptr);
}

Json json_of(const Pass& pass, Rounding rounding) {
  Json json{{"name", pass.name},
            {"verdict", words(pass.verdict)},
            {"spare_mm", value_of(pass.spare)},
            {"sd_mm", pass.spare ? Json(pass.spare->sd) : Json(nullptr)},
            {"chance", pass.spare ? Json(pass.chance) : Json(nullptr)},
            {"how", how_held(pass, rounding)}};
  if (pass.leaf_off) json["leaf_off_spare_mm"] = pass.leaf_off->value;
  if (pass.slides) json["slides_spare_mm"] = pass.slides->value;
  if (pass.widest) json["widest_sliding_mm"] = pass.widest->value;
  return json;
}

Json json_of(const std::vector<Pass>& passes, Rounding rounding) {
  Json list = Json::array();
  for (const Pass& pass : passes) list.push_back(json_of(pass, rounding));
  return list;
}

}  // namespace

Json carry_json(const CarryAnswer& carry, const std::string& job) {
  Json json = opening("carry", job, carry.verdict);
  json["way_known"] = carry.way_known;
  json["room_known"] = carry.room_known;
  json["pieces"] = Json::array();
  for (const PieceCarry& piece : carry.pieces)
    json["pieces"].push_back({{"part", piece.part},
                              {"verdict", words(piece.verdict)},
                              {"passes", json_of(piece.passes, carry.said)}});
  json["groups"] = Json::array();
  for (const GroupCarry& group : carry.groups)
    json["groups"].push_back({{"name", group.name},
                              {"whole", words(group.whole)},
                              {"passes", json_of(group.passes, carry.said)},
                              {"order", group.order}});
  return json;
}

std::string carry_json_text(const CarryAnswer& carry, const std::string& job) {
  return dumped(carry_json(carry, job));
}

}  // namespace nook
