// The only place that prints.
#include "command/output.h"

#include <fmt/format.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <system_error>

#include "sheet/answer.h"

namespace nook {
namespace {

std::string_view text_of(const Faults& faults, const std::string& file) {
  const auto found = std::find_if(faults.texts.begin(), faults.texts.end(),
                                  [&](const Faults::Text& text) { return text.file == file; });
  return found == faults.texts.end() ? std::string_view() : found->text;
}

}  // namespace

void print(const std::string& text) {
  errno = 0;
  const bool whole = std::fwrite(text.data(), 1, text.size(), stdout) == text.size();
  if (!whole || std::fflush(stdout) != 0) {
    throw std::system_error(errno, std::generic_category(), "standard output");
  }
}

void complain(const std::string& text) {
  std::fwrite(text.data(), 1, text.size(), stderr);
}

ExitStatus told(const Request& request, Verdict verdict, const std::string& page) {
  const bool verdict_alone = request.has("--quiet") && !request.has("--json");
  print(verdict_alone ? fmt::format("{}\n", words(verdict)) : page);
  return verdict == Verdict::fits ? ExitStatus::well : ExitStatus::not_well;
}

ExitStatus told(const Request& request, const Faults& faults) {
  for (const Diagnostic& fault : faults.faults) {
    complain(message(fault, text_of(faults, fault.file)));
  }
  if (request.has("--json")) {
    print(bad_input(std::string(request.command->name), request.job, faults.faults));
  }
  return ExitStatus::bad_input;
}

}  // namespace nook
