// Guided entry of the pieces as cut, measured on the bench.
#pragma once

#include "command/dialogue.h"
#include "job/piece_walk.h"
#include "shop/needed.h"

namespace nook {

/// What is to be measured on the pieces that the room needs: what the cutting list checks, wild
/// wood on.
std::vector<PieceToMeasure> to_measure(const Design& design, const FitAnswer& fit,
                                       const std::vector<NeededPiece>& needed);

/// A walk through one job's pieces.toml.
class BenchEntry : public Dialogue {
 public:
  /// `units` of a file that has none yet.
  BenchEntry(const std::string& folder, std::vector<PieceToMeasure> pieces, Unit units, bool aside)
      : Dialogue(folder, "pieces.toml", aside), pieces_(std::move(pieces)), units_(units) {}

 private:
  std::vector<Question> open(const std::string& text) override;
  Diagnostics faults(const std::string& text) const override;
  std::string doubt(const std::string& before, const std::string& after,
                    const Question& question) const override;

  std::vector<PieceToMeasure> pieces_;
  Unit units_;
};

}  // namespace nook
