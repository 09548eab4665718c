// What every answer shares: its style, its findings, how its JSON opens.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "base/notation.h"
#include "base/verdict.h"

namespace nook {

using Json = nlohmann::ordered_json;

/// How an answer is to be written; from the command line.
struct Style {
  Rounding rounding;
  double sure = 0.95;
  bool color = false;  // never carries meaning alone
  bool quiet = false;
  bool verbose = false;
};

/// One thing found, in the words of the trade, and what to do next.
struct Finding {
  Verdict verdict = Verdict::fits;
  double weight = 0;  // within one verdict the heavier stands first (mm, or odds)
  std::string where;  // "front panel, left edge at the left wall"
  std::string what;   // "gap 0 to 3/8", give or take 1/16", widest at the top"
  std::string next;   // "scribe 3/8" off ..."; may be empty when all is well
  bool told = false;  // in full on the page of everything too, though all is well
};

/// Worst first; equal ones stay in their order.
void sort(std::vector<Finding>& findings);

/// Findings as text, 80 columns, each with its verdict word in front.
std::string listed(const std::vector<Finding>& findings, const Style& style);

/// The verdict in capitals, as a page opens with it.
std::string headline(Verdict verdict, const Style& style);

/// {"nookfit": version, "answer": command, "job": ..., "verdict": ..., "diagnostics": []}.
Json opening(const std::string& command, const std::string& job, Verdict verdict);

/// The whole JSON text of an answer that could not be given: the same opening, "bad input", faults.
std::string bad_input(const std::string& command, const std::string& job,
                      const Diagnostics& faults);

/// Indented text of a JSON answer with a newline at its end; numbers as shortest round-trip.
std::string dumped(const Json& json);

}  // namespace nook
