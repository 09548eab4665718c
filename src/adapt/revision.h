// The design under change: its text and what the text says.
#pragma once

#include <memory>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "design/design.h"
#include "job/edit.h"

namespace nook {

struct Revision {
  std::string text;
  std::shared_ptr<const Design> design;  // what `text` says
};

/// A new value in the text. `if_there`: nothing happens where the key is not there. `gone`: the key
/// is taken out.
struct Edit {
  KeyPath path;
  std::string value;
  bool if_there = false, gone = false;
};

/// The draft with edits made, in their order; or why the new design is no sound one ("larger than
/// its stock 'ply'").
tl::expected<Revision, std::string> redrawn(const Revision& draft, const std::vector<Edit>& edits);

/// A length as typed in a file of that unit, not rounded: the coarsest mark that says it exactly.
std::string typed(double mm, Unit unit);

}  // namespace nook
