// Guided entry of the room.
#pragma once

#include "command/dialogue.h"
#include "room/survey.h"
#include "sheet/answer.h"

namespace nook {

/// A walk through one job's room.toml.
class RoomEntry : public Dialogue {
 public:
  /// As Dialogue; `design` (null: none) says where readings matter.
  RoomEntry(const std::string& folder, const Design* design, bool aside)
      : Dialogue(folder, "room.toml", aside), design_(design) {}

  /// `rounding` of what is said; null: the usual one of the file's units.
  void walk(const Rounding* rounding) {
    rounding_ = rounding;
    Dialogue::walk();
  }

 private:
  std::vector<Question> open(const std::string& text) override;
  Diagnostics faults(const std::string& text) const override;
  std::string doubt(const std::string& before, const std::string& after,
                    const Question& question) const override;
  std::optional<Question> any_time(const std::string& text, const std::string& line) const override;

  const Design* design_;
  const Rounding* rounding_ = nullptr;
};

}  // namespace nook
