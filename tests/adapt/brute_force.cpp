// Designs are changed as values, fitted in the adjusted room, and those that pass there in all
// draws.
#include "brute_force.h"

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <map>
#include <set>
#include <string>

#include "design/piece.h"
#include "fit/fit.h"

namespace nook::test {
namespace {

// A finding: 0 fits, 1 cannot tell, 2 does not fit; by how much it is missed, mm; its chance.
struct Miss {
  int verdict = 0;
  double over = 0, chance = 1;
};
using Wrong = std::map<std::string, Miss>;

double missed(const ContactFit& c) {
  if (!c.meets_anything) return 1000;
  if (c.how->by == Fitting::clear) return c.allow - c.gap.least;
  const bool cut =
      c.how->by == Fitting::taper || c.how->by == Fitting::scribe || c.how->by == Fitting::filler;
  return cut ? c.after.most - c.allow : std::max(c.gap.most - c.allow, -c.gap.least);
}

Wrong wrong_in(const FitAnswer& fit) {
  Wrong wrong;
  const auto add = [&](const std::string& name, const auto& finding, double over) {
    Miss& miss = wrong[name];
    miss = {std::max(miss.verdict, static_cast<int>(finding.verdict)), std::max(miss.over, over),
            std::min(miss.chance, finding.chance)};
  };
  for (const auto& c : fit.contacts)
    add(c.part + "@" + c.meets + std::to_string(c.contact), c, missed(c));
  for (const auto& c : fit.clashes) add(c.part + "#" + c.with, c, c.depth_mm);
  for (const auto& c : fit.clearances) add(c.part + "<" + c.from, c, c.needed_mm - c.least_mm);
  for (const auto& c : fit.covered) add(c.part + "/" + c.behind, c, c.needed_mm - c.margin_mm);
  return wrong;
}

Miss of(const Wrong& wrong, const std::string& name) {
  const auto found = wrong.find(name);
  return found == wrong.end() ? Miss{} : found->second;
}

// Whether the finding is no worse than `wanted` now and every other one as good as before, to 1/64
// in.
bool settled(const std::string& name, Verdict wanted, const Wrong& before, const Wrong& after) {
  if (of(after, name).verdict > static_cast<int>(wanted)) return false;
  return std::all_of(after.begin(), after.end(), [&](const auto& entry) {
    const Miss old = of(before, entry.first);
    return entry.second.verdict <= old.verdict &&
           entry.second.over <= old.over + kMillimetresPerInch / 64;
  });
}

struct Work {
  std::string words;
  std::function<void(Design&)> done;
};

void shift_run(Part& part, const EdgeRun& run, double first, double last) {
  const Polygon old = part.outline;
  const int n = static_cast<int>(old.size());
  const int edges = (run.last - run.first + n) % n + 1;
  const Vec2 a = old[run.first], b = old[(run.first + edges) % n];
  const Vec2 along = (1 / norm(b - a)) * (b - a), out{along.y, -along.x};
  for (int k = 0; k <= edges; ++k) {
    const int i = (run.first + k) % n;
    const double share = dot(old[i] - a, along) / norm(b - a);
    part.outline[i] = old[i] + (first + share * (last - first)) * out;
  }
}

class Works {
 public:
  Works(const Design& design, const std::set<std::string>& parts) : design_(design) {
    const double step = usual_rounding(design.units).step.mm;
    for (const int marks : {1, 2, 3, 4, 6, 8, 12, 16, 24, 48}) sizes_.push_back(marks * step);
    for (int p = 0; p < static_cast<int>(design.parts.size()); ++p)
      if (parts.count(design.parts[p].name)) add_part(p);
    for (int c = 0; c < static_cast<int>(design.contacts.size()); ++c)
      if (parts.count(design.contacts[c].part)) add_contact(c);
  }
  const std::vector<Work>& all() const { return works_; }

 private:
  void add_part(int p) {
    const std::string group = design_.parts[p].group;
    for (const Vec3 way : {Vec3{1, 0, 0}, Vec3{-1, 0, 0}, Vec3{0, 1, 0}, Vec3{0, -1, 0},
                           Vec3{0, 0, 1}, Vec3{0, 0, -1}})
      for (const double mm : sizes_)
        works_.push_back({fmt::format("{} moved {} along {} {} {}", group, mm, way.x, way.y, way.z),
                          [=](Design& d) {
                            for (Part& part : d.parts)
                              if (part.group == group)
                                part.place_in_room.at = part.place_in_room.at + mm * way;
                          }});
    for (const EdgeSide side : {EdgeSide::left, EdgeSide::right, EdgeSide::bottom, EdgeSide::top})
      for (const double mm : sizes_)
        for (const Vec2 ends :
             {Vec2{-mm, -mm}, Vec2{mm, mm}, Vec2{0, -mm}, Vec2{-mm, 0}, Vec2{0, mm}, Vec2{mm, 0}})
          works_.push_back({fmt::format("{} side {} out {} and {}", design_.parts[p].name,
                                        static_cast<int>(side), ends.x, ends.y),
                            [=](Design& d) {
                              Part& part = d.parts[p];
                              shift_run(part, side_of(part.outline, side), ends.x, ends.y);
                            }});
  }

  void add_contact(int c) {
    if (design_.contacts[c].keep || design_.contacts[c].by == Fitting::clear) return;
    for (const Fitting by : {Fitting::butt, Fitting::shim, Fitting::caulk, Fitting::filler,
                             Fitting::trim, Fitting::taper, Fitting::scribe})
      for (const bool notch : {false, true})
        if (notch || !design_.contacts[c].notch)
          works_.push_back(
              {fmt::format("contact {} by {}, notch {}", c, static_cast<int>(by), notch),
               [=](Design& d) {
                 Contact& contact = d.contacts[c];
                 contact.by = by, contact.notch = notch;
                 if (by == Fitting::trim && !contact.trim) contact.trim = inches(0.75);
               }});
  }

  const Design& design_;
  std::vector<double> sizes_;
  std::vector<Work> works_;
};

std::set<std::string> pieces_in(const FitAnswer& fit, const std::string& finding) {
  std::set<std::string> parts;
  for (const Piece& piece : fit.pieces)
    if (finding.find(piece.name) != std::string::npos) parts.insert(piece.drawn->name);
  return parts;
}

}  // namespace

std::string settled_by_brute_force(const MeasuredRoom& room, const Design& design,
                                   const FitAnswer& fitted) {
  const Wrong before = wrong_in(fitted);
  const std::vector<RoomShape> none;
  const Wrong rough_before = wrong_in(fit({room.survey, design, room.room, none, 0.95, true}));
  for (const auto& [name, miss] : before) {
    if (miss.verdict < static_cast<int>(Verdict::does_not_fit)) continue;
    const Works works(design, pieces_in(fitted, name));
    for (const Work& work : works.all()) {
      Design changed = design;
      work.done(changed);
      const Wrong rough = wrong_in(fit({room.survey, changed, room.room, none, 0.95, true}));
      if (!settled(name, Verdict::fits, rough_before, rough)) continue;
      if (settled(name, Verdict::cannot_tell, before,
                  wrong_in(fit({room.survey, changed, room.room, room.draws, 0.95, true}))))
        return name + ": " + work.words;
    }
  }
  return "";
}

bool as_well(const FitAnswer& less, const FitAnswer& fitted) {
  const Wrong before = wrong_in(fitted), after = wrong_in(less);
  return less.verdict <= fitted.verdict &&
         std::all_of(after.begin(), after.end(), [&](const auto& entry) {
           const Miss& miss = entry.second;
           const Miss old = of(before, entry.first);
           return miss.verdict <= old.verdict &&
                  (miss.verdict == 0 || miss.chance >= old.chance - 0.02);
         });
}

}  // namespace nook::test
