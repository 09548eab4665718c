// Stands for the commands where only the command line is read: nothing is carried out.
#include "command/table.h"

namespace nook {

ExitStatus run_check(const Request&) {
  return ExitStatus::well;
}
ExitStatus run_survey(const Request&) {
  return ExitStatus::well;
}
ExitStatus run_room(const Request&) {
  return ExitStatus::well;
}
ExitStatus run_fit(const Request&) {
  return ExitStatus::well;
}
ExitStatus run_drill(const Request&) {
  return ExitStatus::well;
}
ExitStatus run_adapt(const Request&) {
  return ExitStatus::well;
}
ExitStatus run_cut(const Request&) {
  return ExitStatus::well;
}
ExitStatus run_verify(const Request&) {
  return ExitStatus::well;
}
ExitStatus run_carry(const Request&) {
  return ExitStatus::well;
}
ExitStatus run_safety(const Request&) {
  return ExitStatus::well;
}
ExitStatus run_sheet(const Request&) {
  return ExitStatus::well;
}

}  // namespace nook
