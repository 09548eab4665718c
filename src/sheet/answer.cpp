// What every answer shares: findings in order and as text, how JSON opens and is dumped.
#include "sheet/answer.h"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "sheet/wrap.h"

namespace nook {
namespace {

/// ANSI colors: the verdict's word is always there too.
std::string_view color_of(Verdict verdict) {
  return verdict == Verdict::fits          ? "\033[32m"
         : verdict == Verdict::cannot_tell ? "\033[33m"
                                           : "\033[31m";
}

std::string listed(const Finding& finding, const Style& style) {
  std::string text = wrapped(fmt::format("{}: {}", finding.where, finding.what), kPageWidth,
                             fmt::format("{:<13} ", words(finding.verdict)));
  if (style.color) {
    const auto word = words(finding.verdict).size();
    text = fmt::format("{}{}\033[0m{}", color_of(finding.verdict), text.substr(0, word),
                       text.substr(word));
  }
  if (!finding.next.empty())
    text += wrapped(finding.next, kPageWidth, fmt::format("{:<13} -> ", ""));
  return text;
}

Json json_of(const Diagnostic& fault) {
  return {{"file", fault.file}, {"line", fault.place.line}, {"column", fault.place.column},
          {"what", fault.what}, {"code", fault.code},       {"help", fault.help}};
}

Json opened(const std::string& command, const std::string& job, std::string_view verdict) {
  return {{"nookfit", NOOKFIT_VERSION},
          {"answer", command},
          {"job", job},
          {"verdict", verdict},
          {"diagnostics", Json::array()}};
}

}  // namespace

void sort(std::vector<Finding>& findings) {
  std::stable_sort(findings.begin(), findings.end(), [](const Finding& a, const Finding& b) {
    return a.verdict != b.verdict ? a.verdict > b.verdict : a.weight > b.weight;
  });
}

std::string listed(const std::vector<Finding>& findings, const Style& style) {
  std::string text;
  for (const Finding& finding : findings) text += listed(finding, style);
  return text;
}

std::string headline(Verdict verdict, const Style& style) {
  std::string word(words(verdict));
  std::transform(word.begin(), word.end(), word.begin(), [](char c) { return std::toupper(c); });
  return style.color ? fmt::format("{}{}\033[0m", color_of(verdict), word) : word;
}

Json opening(const std::string& command, const std::string& job, Verdict verdict) {
  return opened(command, job, words(verdict));
}

std::string bad_input(const std::string& command, const std::string& job,
                      const Diagnostics& faults) {
  Json json = opened(command, job, "bad input");
  for (const Diagnostic& fault : faults) json["diagnostics"].push_back(json_of(fault));
  return dumped(json);
}

std::string dumped(const Json& json) {
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace nook
