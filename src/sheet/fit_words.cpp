// One spelling for each thing.
#include "sheet/fit_words.h"

namespace nook {

std::string_view by_word(Fitting by) {
  switch (by) {
    case Fitting::butt:
      return "butt";
    case Fitting::clear:
      return "clear";
    case Fitting::shim:
      return "shim";
    case Fitting::caulk:
      return "caulk";
    case Fitting::filler:
      return "filler";
    case Fitting::trim:
      return "trim";
    case Fitting::taper:
      return "taper";
    case Fitting::scribe:
      return "scribe";
  }
  return "";
}

std::string the(const std::string& name) {
  return "the " + name;
}

std::string contact_place(const ContactFit& contact) {
  const bool side = std::holds_alternative<EdgeSide>(contact.how->edge);
  return contact.part + ", " + contact.edge + (side ? " edge" : "") + " at " + the(contact.meets);
}

}  // namespace nook
