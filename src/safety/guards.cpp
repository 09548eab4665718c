// Barriers by the age of the children, guards by the drop.
#include "safety/guards.h"

#include <fmt/format.h>

#include <algorithm>

namespace nook::safe {
namespace {

/// What a deck at this drop wants round it.
struct Need {
  Of drop;                   // over this
  std::optional<Of> height;  // at least this; none = something
  Of sphere;                 // and no opening passes this
  Severity severity;
  std::optional<Of> up_to{};  // over this another need takes over
};

std::string ages_of(const Audience& audience) {
  if (!audience.children) return "adults";
  return audience.ages ? fmt::format("ages {:g} to {:g}", audience.youngest, audience.oldest)
                       : std::string("children");
}

// The barrier that the tallest of the age groups wants.
std::optional<Of> barrier_of(const Audience& audience) {
  if (audience.school) return Of::barrier_school;
  if (audience.preschool) return Of::barrier_preschool;
  if (audience.toddlers) return Of::barrier_toddler;
  return {};
}

std::vector<Need> needs_of(const Audience& audience) {
  const auto barrier = barrier_of(audience);
  const Of sphere = audience.children ? Of::head_small : Of::guard_sphere;
  std::vector<Need> needs;
  const bool only_toddlers = barrier == Of::barrier_toddler;
  if (barrier && !only_toddlers)
    needs.push_back({Of::barrier_platform, barrier, sphere, Severity::danger});
  if (audience.toddlers) {
    needs.push_back({Of::barrier_platform_toddler, Of::barrier_toddler, sphere, Severity::danger});
    if (!only_toddlers) needs.back().up_to = Of::barrier_platform;
  }
  if (!barrier || mm(*barrier) < mm(Of::guard_height))
    needs.push_back(
        {Of::guard_drop, Of::guard_height, sphere, barrier ? Severity::caution : Severity::danger});
  return needs;
}

// That the need is met, or the drop does not ask for it.
double well(double met, Measured drop, const Need& need) {
  double asks = 1 - chance_at_most(drop, mm(need.drop));
  if (need.up_to) asks -= 1 - chance_at_most(drop, mm(*need.up_to));
  return 1 - (1 - met) * asks;
}

void judge_bare(const Fence& fence, const Need& need, Cautions& cautions) {
  const Measured drop = drop_of(fence.scene(), fence.deck());
  for (const FenceStretch& bare : fence.bare())
    cautions.judge(
        well(0, drop, need),
        {"guard-missing",
         edge_name(fence),
         {"Nothing guards {} of the edge, {} above the floor. Over {} it wants a guard that "
          "is {} high; only the way up stays open.",
          {Measured{bare.to - bare.from}, drop, need.drop, *need.height}},
         {need.drop, *need.height},
         "",
         drop},
        need.severity);
}

void judge_height(const Fence& fence, const Need& need, Cautions& cautions) {
  const auto low = fence.lowest();
  if (!low) return;
  const Scene& scene = fence.scene();
  const Measured height = height_of(fence, *low), drop = drop_of(scene, fence.deck());
  cautions.judge(
      well(chance_at_least(height, mm(*need.height)), drop, need),
      {"guard-low",
       edge_name(fence),
       {"The {} stands {} above the {} at its lowest; {} wanted for {}, {} above the floor.",
        {name_of(scene, low->owner), height, name_of(scene, fence.deck()), *need.height,
         ages_of(scene.audience), drop}},
       {*need.height},
       "",
       height},
      need.severity);
}

void judge_leaks(const Fence& fence, const Need& need, Cautions& cautions) {
  const Measured drop = drop_of(fence.scene(), fence.deck());
  for (const LeftOpening& leak : fence.leaks(mm(need.sphere) * 0.95)) {
    const Vec3 at = fence.side().sight.room(leak.at);
    const Measured across{leak.across, rim_sd(fence.scene(), fence.side().sight, leak.rim)};
    cautions.judge(
        well(chance_at_most(across, mm(need.sphere)), drop, need),
        {"guard-opening",
         edge_name(fence),
         {"What guards the edge has an opening of {}, {} above the deck; nothing of {} may "
          "pass. Close it.",
          {across, Measured{at.z - fence.deck().top}, need.sphere}},
         {need.sphere},
         "",
         across},
        need.severity);
  }
}

// A low platform wants a rail for the small ones; the smallest want a barrier there.
void judge_guardrail(const Fence& fence, Cautions& cautions) {
  const Audience& audience = fence.scene().audience;
  if (!audience.preschool || audience.toddlers) return;
  const Measured drop = drop_of(fence.scene(), fence.deck());
  const Need low{
      Of::guardrail_platform, {}, Of::head_small, Severity::caution, Of::barrier_platform};
  for (const FenceStretch& bare : fence.bare())
    cautions.judge(
        well(0, drop, low),
        {"guardrail-missing",
         edge_name(fence),
         {"No rail along {} of the edge, {} above the floor; over {} it wants one ({}).",
          {Measured{bare.to - bare.from}, drop, Of::guardrail_platform, ages_of(audience)}},
         {Of::guardrail_platform},
         "",
         drop});
}

// Ages decide between 24 and 38 in: what is lower cannot be told without them.
void want_ages(const std::vector<Fence>& fences, Cautions& cautions) {
  const bool low = std::any_of(fences.begin(), fences.end(), [&](const Fence& fence) {
    const auto at = fence.lowest();
    return !fence.bare().empty() ||
           (at && chance_at_least(height_of(fence, *at), mm(Of::barrier_school)) < cautions.sure());
  });
  if (low)
    cautions.want({"ages-not-stated",
                   name_of(fences.front().scene(), fences.front().deck()),
                   {"How high a guard children want depends on their ages: {} to {}. State `ages` "
                    "in [use].",
                    {Of::barrier_toddler, Of::barrier_school}},
                   {Of::barrier_toddler},
                   "",
                   {}});
}

// The need that the lowest deck has: openings are closed from there up.
Need lowest_of(const std::vector<Need>& needs) {
  Need low = *std::min_element(needs.begin(), needs.end(), [](const Need& a, const Need& b) {
    return mm(a.drop) < mm(b.drop);
  });
  low.up_to.reset();
  return low;
}

void guard(const std::vector<Fence>& fences, const Audience& audience, Cautions& cautions) {
  const std::vector<Need> needs = needs_of(audience);
  for (const Fence& fence : fences) {
    for (const Need& need : needs) {
      judge_bare(fence, need, cautions);
      judge_height(fence, need, cautions);
    }
    judge_leaks(fence, lowest_of(needs), cautions);
    judge_guardrail(fence, cautions);
  }
  if (audience.children && !audience.ages) want_ages(fences, cautions);
}

}  // namespace

std::string edge_name(const Scene& scene, const Deck& deck, const Side& side) {
  std::string text = name_of(scene, deck) + ", edge";
  for (std::size_t k = 0; scene.room_known() && k < scene.in.room.walls.size(); ++k) {
    const WallShape& wall = scene.in.room.walls[k];
    const double away = dot(side.sight.n, {wall.out.x, wall.out.y, 0});
    if (away > 0.9) text += " away from the " + wall.name + " wall";
    if (away < -0.9) text += " at the " + wall.name + " wall";
  }
  return text;
}

std::string edge_name(const Fence& fence) {
  return edge_name(fence.scene(), fence.deck(), fence.side());
}

Measured height_of(const Fence& fence, const FenceStretch& low) {
  const Vec3 at = fence.side().sight.room({low.at, 0});
  const double sd = spread(fence.scene(), {{Owner::Kind::piece, fence.deck().lead()}, at},
                           {low.owner, at + Vec3{0, 0, low.height}}, {0, 0, 1});
  return {low.height, sd};
}

void guards(const Scene& scene, const std::vector<Deck>& decks, Cautions& cautions) {
  for (const Deck& deck : decks) {
    std::vector<Fence> fences;
    for (const Side& side : deck.sides)
      if (has_any(side, Station::Kind::open))
        fences.emplace_back(scene, deck, side, mm(Of::barrier_school));
    guard(fences, scene.audience, cautions);
  }
}

}  // namespace nook::safe
