// The manual page, from the table of commands.
#include "command/man_page.h"

#include <fmt/format.h>

#include "command/table.h"

namespace nook {
namespace {

// A hyphen is printed as it is typed, and a control sign at the start of a line as a sign.
std::string plain(std::string_view text) {
  std::string escaped = text.rfind('.', 0) == 0 || text.rfind('\'', 0) == 0 ? "\\&" : "";
  for (const char c : text) {
    if (c == '\\') {
      escaped += "\\e";
    } else if (c == '-') {
      escaped += "\\-";
    } else {
      escaped += c;
    }
  }
  return escaped;
}

std::string rows(const std::vector<Option>& options) {
  std::string text;
  for (const Option& option : options) {
    text += fmt::format(".TP\n\\fB{}\\fR", plain(option.name));
    if (!option.value.empty()) text += fmt::format(" \\fI{}\\fR", plain(option.value));
    text += "\n" + plain(option.help) + "\n";
  }
  return text;
}

std::string section(const Command& command) {
  std::string text = fmt::format(".SS {}\n{}.\n.PP\n{}\n", command.name, plain(command.summary),
                                 plain(command.about)) +
                     rows(command.options) + ".PP\nExamples:\n.PP\n.nf\n";
  for (const std::string_view example : command.examples) {
    text += fmt::format(".RS 4\n{}\n.RE\n", plain(example));
  }
  return text + ".fi\n";
}

std::string statuses() {
  std::string text;
  for (const Status& row : exit_statuses()) {
    text += fmt::format(".TP\n{}\n{}\n", row.number, plain(row.meaning));
  }
  return text;
}

}  // namespace

std::string man_page() {
  std::string text =
      ".TH NOOKFIT 1 \"\" \"nookfit " NOOKFIT_VERSION
      "\" \"User Commands\"\n"
      ".SH NAME\nnookfit \\- checks how shop\\-made pieces fit into a measured room corner\n"
      ".SH SYNOPSIS\n.B nookfit\n.I COMMAND\n[\\fIJOB\\fR] [\\fIOPTIONS\\fR]\n"
      ".SH DESCRIPTION\n" +
      plain(kJobIs) + "\n.SH COMMANDS\n";
  for (const Command& command : commands()) text += section(command);
  text += section(help_command());
  return text + ".SH OPTIONS OF EVERY COMMAND\n" + rows(common_options()) + ".SH EXIT STATUS\n" +
         statuses() +
         ".SH ENVIRONMENT\n.TP\n.B NO_COLOR\nset and not empty: nothing is colored unless "
         "\\-\\-color says so.\n"
         ".SH CAUTIONS\n"
         "Probe before you drill: cables and pipes follow no rule. Strength and safety: your local "
         "code and a licensed person decide.\n";
}

}  // namespace nook
