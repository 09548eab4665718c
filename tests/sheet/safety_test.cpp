// The cautions as page, findings and JSON.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <sstream>

#include "sheet/safety_json.h"
#include "sheet/safety_text.h"

namespace nook {
namespace {

Caution trap() {
  return {"head-trap",
          Severity::danger,
          {"An opening of {}: over {} a body goes through, under {} a head does not follow.",
           {Measured{149.225, 0.8}, Of::head_small, Of::head_large}},
          "porthole of front panel, as crossed by deck",
          "CPSC 325, B.2.5.1",
          Measured{149.225, 0.8},
          true};
}
Caution rung() {
  Caution caution{"rungs-uneven",
                  Severity::caution,
                  {"They differ by {}.", {Measured{6.5, 0.5}}},
                  "rung 1 to rung 3",
                  "CPSC 325, 5.2.2 (from memory)",
                  Measured{6.5, 0.5},
                  false};
  return caution;
}
Caution note() {
  return {"lifting",
          Severity::note,
          {"The heaviest piece, {}.", {Load{200}}},
          "front panel",
          "common practice, no source",
          {},
          true};
}

SafetyAnswer answer() {
  return {Verdict::does_not_fit, {trap(), rung(), note()}};
}

Style inches() {
  Style style;
  style.rounding = usual_rounding(Unit::inch);
  return style;
}

}  // namespace

TEST_CASE("safety page: verdict and counts, each caution with its source, who decides") {
  CHECK(safety_text(answer(), inches()) ==
        "Safety: DOES NOT FIT - 1 danger, 1 caution, 1 note\n"
        "\n"
        "danger   porthole of front panel, as crossed by deck: An opening of 5 7/8\" (give\n"
        "         or take 1/16\"): over 3 1/2\" a body goes through, under 9\" a head does\n"
        "         not follow.\n"
        "         [head-trap] CPSC 325, B.2.5.1\n"
        "caution  rung 1 to rung 3: They differ by 1/4\" (give or take 1/16\").\n"
        "         [rungs-uneven] CPSC 325, 5.2.2 (from memory)\n"
        "note     front panel: The heaviest piece, 45 lb.\n"
        "         [lifting] common practice, no source\n"
        "\n"
        "These are the usual cautions, not a certificate: your local code and a licensed\n"
        "person decide.\n");
}

TEST_CASE("safety page: in millimeters limits keep their published figure") {
  Style style;
  style.rounding = usual_rounding(Unit::mm);
  const std::string text = safety_text({Verdict::does_not_fit, {trap()}}, style);
  CHECK(text.find("An opening of 149 mm (") != std::string::npos);
  CHECK(text.find("89 mm (3.5 in)") != std::string::npos);
}

TEST_CASE("safety findings: dangers and what cannot be told") {
  const auto findings = safety_findings(answer(), inches());
  REQUIRE(findings.size() == 2);
  CHECK(findings[0].verdict == Verdict::does_not_fit);
  CHECK(findings[0].where == "porthole of front panel, as crossed by deck");
  CHECK(findings[0].what.find("[CPSC 325, B.2.5.1]") != std::string::npos);
  CHECK(findings[1].verdict == Verdict::cannot_tell);
}

TEST_CASE("safety in short: sure cautions, one paragraph a kind, notes and dangers left out") {
  const auto caution = [](const std::string& id, const std::string& where, bool decided = true) {
    return Caution{id,     Severity::caution, {"Its edge is 6.9 cm off. Move it.", {}},
                   where,  "chosen",          {},
                   decided};
  };
  SafetyAnswer answer;
  CHECK(sure_cautions(answer, inches()).empty());
  answer.cautions = {trap(),
                     caution("finger-gap", "lid"),
                     caution("window-near", "deck"),
                     caution("finger-gap", "seat"),
                     caution("finger-gap", "front panel"),
                     caution("finger-gap", "doubtful", false)};
  answer.cautions.push_back(caution("lifting", "heavy"));
  answer.cautions.back().severity = Severity::note;
  CHECK(sure_cautions(answer, inches()) ==
        "  lid: Its edge is 6.9 cm off. So too: seat; front panel.\n"
        "  deck: Its edge is 6.9 cm off.\n");
}

TEST_CASE("safety in short: what is said in other words is not said of these too") {
  const auto caution = [](const std::string& where, Words text) {
    return Caution{"guard-not-held", Severity::caution, std::move(text), where, "chosen", {}, true};
  };
  SafetyAnswer answer;
  answer.cautions = {caution("rail", {"It turns.", {}}), caution("post", {"Nothing holds it.", {}}),
                     caution("slat 1", {"Nothing holds it.", {}}),
                     caution("beam", {"It is {} off.", {Measured{25.4}}}),
                     caution("strut", {"It is {} off.", {Measured{50.8}}})};
  CHECK(sure_cautions(answer, inches()) ==
        "  rail: It turns.\n"
        "  post: Nothing holds it. So too: slat 1.\n"
        "  beam: It is 1\" off. With other figures: strut.\n");
}

TEST_CASE("safety page: the same of several pieces is said once") {
  const auto gap = [](const std::string& where, double wide, double up) {
    return Caution{
        "limb-gap", Severity::caution, {"A gap of {}, {} up.", {Measured{wide}, Measured{up}}},
        where,      "chosen",          Measured{wide},
        true};
  };
  SafetyAnswer answer;
  for (int k = 1; k <= 5; ++k)
    answer.cautions.push_back(gap("between deck and slat " + std::to_string(k), 25.4, 100 * k));
  answer.cautions.push_back(gap("between deck and post", 50.8, 100));
  const std::string text = safety_text(answer, inches());
  const std::size_t others = text.find("As much:");
  REQUIRE(others != std::string::npos);
  CHECK(text.find("between deck and slat 1: A gap of 1\", 3 15/16\" up.") < others);
  CHECK(text.find("slat 2 to 5.") > others);
  CHECK(text.find("slat 2 to 5.") != std::string::npos);
  CHECK(text.find("between deck and post: A gap of 2\"") != std::string::npos);
  CHECK(text.find("6 cautions") != std::string::npos);
}

TEST_CASE("safety JSON: the opening, the keys of each caution, millimeters not rounded") {
  const Json json = safety_json(answer(), "rooms/lookout");
  CHECK(json["answer"] == "safety");
  CHECK(json["job"] == "rooms/lookout");
  CHECK(json["verdict"] == "does not fit");
  REQUIRE(json["cautions"].size() == 3);
  const Json& first = json["cautions"][0];
  CHECK(first["id"] == "head-trap");
  CHECK(first["severity"] == "danger");
  CHECK(first["source"] == "CPSC 325, B.2.5.1");
  CHECK(first["where"] == "porthole of front panel, as crossed by deck");
  CHECK(first["text"] ==
        "An opening of 149.2 mm (give or take 1.6 mm): over 88.9 mm (3.5 in) a body goes through, "
        "under 228.6 mm (9 in) a head does not follow.");
  CHECK(first["value_mm"] == 149.225);
  CHECK(first["sd_mm"] == 0.8);
  CHECK(json["cautions"][1]["decided"] == false);
  CHECK(json["cautions"][2]["value_mm"].is_null());
  CHECK(json["decides"].get<std::string>().find("local code") != std::string::npos);
}

}  // namespace nook
