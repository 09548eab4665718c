// The words of a change, from its steps and the design that they are done to.
#include "adapt/wording.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "adapt/reshape.h"

namespace nook {
namespace {

struct Writer {
  const Design& design;
  Rounding rounding;

  std::string length(double mm) const { return with_unit(millimetres(mm), rounding); }
  // As the file has it, or rounded where the page speaks another unit.
  std::string exactly(double mm) const {
    return rounding.unit == design.units ? typed(mm, design.units)
                                         : written(millimetres(mm), rounding);
  }
  std::string place(Vec3 at) const {
    return fmt::format("at {}, {}, {}", exactly(at.x), exactly(at.y), exactly(at.z));
  }
};

// How wide the piece is square to the run, from each of the run's ends to the far side.
struct Widths {
  double first = 0, last = 0;
};

// From a point of the outline to the far side, by way of the edge that runs there (`next`: its
// other end), where it runs square to the run within 25 degrees (chosen); else to the furthest
// point.
double width_from(const Polygon& outline, Vec2 point, Vec2 next, Vec2 inward) {
  constexpr double kSquare = 0.9;  // cosine of 25 degrees
  const Vec2 beside = next - point;
  if (dot(beside, inward) > kSquare * norm(beside)) return dot(beside, inward);
  double far = 0;
  for (const Vec2 p : outline) far = std::max(far, dot(p - point, inward));
  return far;
}

// Square to the edge as it was drawn (`before`); after a taper the old direction still counts.
Widths widths_of(const Polygon& outline, const EdgeRun& run, const Polygon& before) {
  const int n = static_cast<int>(outline.size());
  const int last = (run.last + 1) % n;
  const Vec2 d = before[last] - before[run.first];
  const Vec2 inward = (1 / norm(d)) * left_of(d);
  return {width_from(outline, outline[run.first], outline[(run.first + n - 1) % n], inward),
          width_from(outline, outline[last], outline[(last + 1) % n], inward)};
}

// An outline of a piece with a run of edges that is set out.
struct CutSide {
  const Part& part;
  const Polygon& outline;
  const EdgeRun& run;
};

std::string width_words(const Writer& writer, Widths w, const CutSide& side) {
  const Vec2 d =
      side.outline[(side.run.last + 1) % side.outline.size()] - side.outline[side.run.first];
  const bool upright = std::abs(d.y) > std::abs(d.x);
  const bool lumber = writer.design.stock[side.part.stock].kind == StockKind::lumber;
  const Frame frame = frame_of(side.part.place_in_room);
  const bool high = std::abs(upright ? frame.u.z : frame.v.z) > 0.7;  // chosen
  const char* across = lumber && upright ? "long" : high ? "high" : "across";
  const std::string first = writer.length(w.first), last = writer.length(w.last);
  if (first == last) return fmt::format("{} {}", first, across);
  const bool rising = (upright ? d.y : d.x) > 0;
  return fmt::format("{} {} at its {}, {} at its {}", rising ? first : last, across,
                     upright ? "bottom" : "left", rising ? last : first, upright ? "top" : "right");
}

// What is done, and what is there before and after it.
struct Words {
  std::string how, before, after;
};

struct Teller {
  const Writer& writer;

  Words operator()(const GroupMoved& s) const {
    const auto part = std::find_if(writer.design.parts.begin(), writer.design.parts.end(),
                                   [&](const Part& p) { return p.group == s.group; });
    const Vec3 at = part->place_in_room.at;
    return {"move it " + writer.length(s.mm), writer.place(at), writer.place(at + s.mm * s.way)};
  }
  Words operator()(const PartMoved& s) const {
    const Vec3 at = writer.design.parts[s.part].place_in_room.at;
    return {"", writer.place(at), writer.place(at + s.by)};
  }
  Words operator()(const RunSetOut& s) const {
    const Part& part = writer.design.parts[s.part];
    const Polygon outline = set_out(part, s.run, s.ends);
    const CutSide side{part, part.outline, s.run};
    return {how(s) + (part.symmetric ? ", and the other side alike" : ""),
            width_words(writer, widths_of(part.outline, s.run, part.outline), side),
            width_words(writer, widths_of(outline, s.run, part.outline), side)};
  }
  Words operator()(const ContactRefitted& s) const {
    const Contact& contact = writer.design.contacts[s.contact];
    return {"", fitting_words(contact.by, contact.notch), fitting_words(s.by, s.notch)};
  }
  Words operator()(const FootLengthened& s) const {
    const double height = height_of(writer.design.parts[s.part]);
    return {"", writer.length(height) + " long", writer.length(height + s.mm) + " long"};
  }
  Words operator()(const CopiesRespaced& s) const {
    const double step = writer.design.parts[s.part].repeat->step.z;
    return {"", writer.length(step) + " apart", writer.length(s.mm) + " apart"};
  }

 private:
  std::string how(const RunSetOut& s) const {
    const double x = s.ends.x, y = s.ends.y;
    if (x == y)
      return fmt::format(fmt::runtime(x < 0 ? "take {} off {}" : "leave {} more on {}"),
                         writer.length(std::abs(x)), s.side);
    const std::string taper =
        fmt::format("taper that {} by {}", s.end ? "end" : "side", writer.length(std::abs(x - y)));
    const double grows = std::max(x, y);
    if (grows <= 0) return taper;
    return fmt::format("{}, the blank {} {}", taper, writer.length(grows),
                       s.end ? "longer" : "wider");
  }
};

}  // namespace

Change told(const Candidate& candidate, const Design& design, Rounding rounding) {
  const Writer writer{design, rounding};
  const Words words = std::visit(Teller{writer}, candidate.steps.front());
  return {candidate.part, candidate.kind, candidate.finding + ": " + words.how + candidate.said,
          words.before, words.after};
}

}  // namespace nook
