// Steps as edits of the text, and made smaller.
#include "adapt/step.h"

#include <algorithm>
#include <cmath>

#include "adapt/reshape.h"

namespace nook {
namespace {

struct Editor {
  const Design& design;

  std::vector<Edit> operator()(const GroupMoved& s) const {
    return move_group(design, s.group, s.mm * s.way);
  }
  std::vector<Edit> operator()(const PartMoved& s) const { return move_part(design, s.part, s.by); }
  std::vector<Edit> operator()(const RunSetOut& s) const {
    return reshape(design, s.part, set_out(design.parts[s.part], s.run, s.ends));
  }
  std::vector<Edit> operator()(const ContactRefitted& s) const {
    return refit(design, s.contact, s.by, s.notch);
  }
  std::vector<Edit> operator()(const FootLengthened& s) const {
    return longer_below(design, s.part, s.mm);
  }
  std::vector<Edit> operator()(const CopiesRespaced& s) const {
    return respace(design, s.part, s.mm);
  }
};

double nearer_nothing(double size, double mm) {
  return std::copysign(std::max(0.0, std::abs(size) - mm), size);
}

}  // namespace

std::vector<Edit> edits_of(const Design& design, const std::vector<Step>& steps) {
  std::vector<Edit> edits;
  for (const Step& step : steps)
    for (Edit& edit : std::visit(Editor{design}, step)) edits.push_back(std::move(edit));
  return edits;
}

namespace {

// Each edge runs the way it ran: what is cut off past the other side turns edges round.
bool leaves_wood(const Polygon& before, const Polygon& after) {
  for (std::size_t i = 0; i < before.size(); ++i) {
    const std::size_t next = (i + 1) % before.size();
    if (dot(before[next] - before[i], after[next] - after[i]) <= 0) return false;
  }
  return true;
}

}  // namespace

tl::expected<Revision, std::string> redrawn(const Revision& draft, const std::vector<Step>& steps) {
  const Design& design = *draft.design;
  for (const Step& step : steps)
    if (const auto* cut = std::get_if<RunSetOut>(&step)) {
      const Part& part = design.parts[cut->part];
      if (!leaves_wood(part.outline, set_out(part, cut->run, cut->ends)))
        return tl::unexpected("nothing would be left of " + part.name);
    }
  return redrawn(draft, edits_of(design, steps));
}

double size_of(const Step& step) {
  if (const auto* moved = std::get_if<GroupMoved>(&step)) return std::abs(moved->mm);
  const auto* cut = std::get_if<RunSetOut>(&step);
  return cut && cut->ends.x == cut->ends.y ? std::abs(cut->ends.x) : 0;
}

Step lessened(const Step& step, double mm) {
  Step less = step;
  if (auto* moved = std::get_if<GroupMoved>(&less)) moved->mm = nearer_nothing(moved->mm, mm);
  if (auto* cut = std::get_if<RunSetOut>(&less); cut && size_of(step) > 0)
    cut->ends = {nearer_nothing(cut->ends.x, mm), nearer_nothing(cut->ends.y, mm)};
  return less;
}

}  // namespace nook
