// Pieces with their faults and remedies.
#include "sheet/verify_json.h"

#include <nlohmann/json.hpp>

#include "sheet/verify_text.h"

namespace nook {
namespace {

const char* name_of(CutFault::Kind kind) {
  switch (kind) {
    case CutFault::Kind::still_square:
      return "outline not cut";
    case CutFault::Kind::still_stock:
      return "forgotten cut";
    case CutFault::Kind::off_by_kerf:
      return "off by a kerf";
    case CutFault::Kind::too_large:
      return "too large";
    case CutFault::Kind::too_small:
      return "too small";
    case CutFault::Kind::taper_reversed:
      return "taper reversed";
    case CutFault::Kind::out_of_square:
      return "out of square";
    case CutFault::Kind::mirrored:
      return "mirrored";
    case CutFault::Kind::end_for_end:
      return "end for end";
    case CutFault::Kind::notch_without_clearance:
      return "notch without clearance";
    case CutFault::Kind::notch_too_small:
      return "notch too small";
    case CutFault::Kind::notch_too_large:
      return "notch too large";
    case CutFault::Kind::notch_not_wanted:
      return "notch not wanted";
    case CutFault::Kind::swapped:
      return "swapped";
    case CutFault::Kind::not_measured:
      return "not measured";
    case CutFault::Kind::disagree:
      return "readings disagree";
    case CutFault::Kind::figures_swapped:
      return "figures swapped";
    case CutFault::Kind::taken_beyond:
      return "taken beyond the piece";
  }
  return "";
}

const char* name_of(const Remedy& remedy) {
  switch (remedy.what) {
    case Remedy::Do::trim:
      return "trim";
    case Remedy::Do::recut_notch:
      return "cut the notch larger";
    case Remedy::Do::turn:
      return turns_over(remedy.turn) ? "turn over" : "turn end for end";
    case Remedy::Do::change_marks:
      return "change marks";
    case Remedy::Do::fill:
      return "fill";
    case Remedy::Do::cut_again:
      return "cut again";
    case Remedy::Do::cut_outline:
      return "cut the outline";
    case Remedy::Do::measure:
      return "measure";
    case Remedy::Do::measure_again:
      return "measure again";
    case Remedy::Do::take_again:
      return "take again";
    case Remedy::Do::mend_file:
      return "mend pieces.toml";
  }
  return "";
}

Json json_of(const CutFault& fault, Rounding rounding) {
  const Json accepted =
      fault.accepted ? Json{fault.accepted->least, fault.accepted->most} : Json(nullptr);
  return {{"kind", name_of(fault.kind)},
          {"where", fault.where},
          {"accepted_mm", accepted},
          {"perhaps", fault.perhaps},
          {"measured_mm", fault.measured_mm},
          {"wanted_mm", fault.wanted_mm},
          {"wild_mm", fault.wild_mm},
          {"off_mm", fault.off.value},
          {"sd_mm", fault.off.sd},
          {"verdict", words(fault.verdict)},
          {"text", told(fault, rounding)}};
}

// `trim_edge` is null for what is no trim.
Json json_of(const Remedy& remedy, Rounding rounding) {
  const bool trim = remedy.what == Remedy::Do::trim;
  Json json{{"do", name_of(remedy)},
            {"fault", remedy.fault},
            {"trim_edge", trim ? Json(remedy.edge) : Json(nullptr)},
            {"by_mm", remedy.by_mm}};
  if (trim) json["by_ends_mm"] = {remedy.by_first_mm, remedy.by_last_mm};
  for (const SideTrim& also : remedy.also)
    json["also"].push_back({{"trim_edge", also.edge},
                            {"by_mm", also.by_mm},
                            {"by_ends_mm", {also.by_first_mm, also.by_last_mm}}});
  if (!trim && !remedy.edge.empty()) json["where"] = remedy.edge;
  json["spoils"] = Json::array();
  for (const Spoil& spoil : remedy.spoils) json["spoils"].push_back(told(spoil, rounding));
  return json;
}

Json json_of(const PieceVerify& piece, Rounding rounding) {
  Json json{{"part", piece.part},      {"verdict", words(piece.verdict)},
            {"chance", piece.chance},  {"off_mm", piece.off.value},
            {"sd_mm", piece.off.sd},   {"wild_mm", piece.wild_mm},
            {"faults", Json::array()}, {"remedy", Json::array()}};
  for (const CutFault& fault : piece.faults) json["faults"].push_back(json_of(fault, rounding));
  for (const Remedy& remedy : piece.remedies) json["remedy"].push_back(json_of(remedy, rounding));
  return json;
}

}  // namespace

Json verify_json(const VerifyAnswer& verify, const std::string& job) {
  Json json = opening("verify", job, verify.verdict);
  json["pieces"] = Json::array();
  for (const PieceVerify& piece : verify.pieces)
    json["pieces"].push_back(json_of(piece, verify.said));
  json["not_measured"] = verify.not_measured;
  json["room_known"] = verify.known;
  return json;
}

std::string verify_json_text(const VerifyAnswer& verify, const std::string& job) {
  return dumped(verify_json(verify, job));
}

}  // namespace nook
