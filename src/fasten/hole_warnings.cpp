// Cautions; none of them removes a hole.
#include "fasten/hole_warnings.h"

#include <fmt/core.h>

#include <algorithm>

namespace nook {
namespace {

constexpr double kShimTold = 0.8;  // mm, 1/32 in; thinner air is drawn home by the screw. Chosen

class Warner {
 public:
  explicit Warner(const HoleSite& site)
      : site_(site), h_(site.hanging), s_(site.seat), say_(site.hanging.say) {}

  std::vector<std::string> all() {
    probe();
    depth();
    services();
    bore();
    if (s_.shim > kShimTold) add(fmt::format("shim {} behind it", say_.length(s_.shim)));
    return std::move(warnings_);
  }

 private:
  void add(std::string words) { warnings_.push_back(std::move(words)); }

  void probe() {
    if (site_.inferred)
      add("probe first: no stud was found here, it follows from the spacing");
    else if (s_.chance < h_.sure && site_.proved)
      add("a thick screw for this stud: mark its middle between the two edges found by nail, or "
          "use "
          "a thinner one");
    else if (s_.chance < h_.sure)
      add("probe first: find both edges by nail, at this height, behind the piece");
  }

  void depth() {
    if (s_.embedment < h_.distances.least_hold)
      add(fmt::format("only {} in the stud, short of the {} that count", say_.at_most(s_.embedment),
                      say_.at_least(h_.distances.least_hold)));
    if (s_.embedment > kServiceDepth)
      add(fmt::format("goes {} into the stud: past {} it may reach a cable",
                      say_.length(s_.embedment), say_.length(kServiceDepth)));
  }

  void services() {
    if (in_unmarked_zone())
      add("within " + say_.length(kCableZone) +
          " of the corner or ceiling: in the UK a cable may run here unmarked");
    if (!s_.caution.empty()) add(s_.caution + " may run in this stud: no deeper");
  }

  bool in_unmarked_zone() const {
    const WallFrame& frame = h_.face.wall();
    const bool far = frame.has_far_corner() && frame.end(s_.at.y) - s_.at.x < kCableZone;
    return s_.at.x - frame.start(s_.at.y) < kCableZone || far ||
           frame.ceiling_z(s_.at.x).value_or(1e9) - s_.at.y < kCableZone;
  }

  void bore() {
    const int asked = h_.fastening.per_stud, count = static_cast<int>(site_.on_stud.seats.size());
    if (count < asked)
      add(fmt::format("only {} of {} screws fit here {} apart", count, asked,
                      say_.length(h_.distances.apart)));
    if (h_.fastening.prebored) return;
    if (h_.free.end_distance(s_.uv) < h_.distances.bored_from)
      add("pre-bore: it is near the end of the piece");
    else if (nearest() < h_.distances.bored_apart)
      add("pre-bore: the screws stand close");
  }

  // Distance to the next screw in the same stud, mm.
  double nearest() const {
    double least = 1e9;
    for (const Seated& other : site_.on_stud.seats)
      if (&other != &s_) least = std::min(least, norm(other.at - s_.at));
    return least;
  }

  const HoleSite& site_;
  const Hanging& h_;
  const Seated& s_;
  const Saying& say_;
  std::vector<std::string> warnings_;
};

}  // namespace

std::vector<std::string> warnings_at(const HoleSite& site) {
  return Warner(site).all();
}

}  // namespace nook
