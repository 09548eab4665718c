// Command lines of any words: a request with its style, or a fault that says what to do.
#include <cmath>

#include "base/invariant.h"
#include "command/command_line.h"
#include "command/help.h"
#include "command/style.h"
#include "command/table.h"
#include "fuzz/targets.h"

namespace nook {
namespace {

std::vector<std::string> words_of(std::string_view bytes) {
  std::vector<std::string> words(1);
  for (const char byte : bytes) {
    if (byte == '\n') {
      words.emplace_back();
    } else if (byte != '\0') {  // no shell passes one on
      words.back() += byte;
    }
  }
  return words;
}

void ask(const std::vector<std::string>& words) {
  const Command* command = command_named(words.front());
  if (!command) throw unknown_command(words.front());
  const Request request = asked(*command, {words.begin() + 1, words.end()});
  if (request.has("--help")) require(!help_of(*command).empty(), "each command has help");
  Survey survey;
  const Style style = style_of(request, survey);
  require(style.sure > 0.5 && style.sure < 1, "--sure is a chance");
  require(style.rounding.step > millimetres(0), "--round is a length");
}

}  // namespace

void feed_command_line(std::string_view bytes) {
  try {
    ask(words_of(bytes));
  } catch (const UsageFault& fault) {
    require(!std::string_view(fault.what()).empty() && !fault.code.empty() && !fault.help.empty(),
            "what is refused says why and what to do");
  }
}

}  // namespace nook
