// High beds: 16 CFR 1213 (adults') and 1513 (children's bunk beds), and EN 747-1.
#include <fmt/format.h>

#include <algorithm>

#include "safety/guards.h"
#include "safety/source.h"

namespace nook::safe {
namespace {

constexpr double kRail = 25;  // mm above the mattress: what rises less is no rail; chosen

struct Bed {
  const Scene& scene;
  const Deck& deck;
  Measured base;    // its underside above the floor
  double mattress;  // mm
};

bool at_wall(const Side& side) {
  const auto walls = std::count_if(side.stations.begin(), side.stations.end(),
                                   [](const Station& s) { return s.kind == Station::Kind::wall; });
  return 2 * walls > static_cast<long>(side.stations.size());
}

double length(const Side& side) {
  return side.to - side.from;
}

// The two long sides of a bed; all of a square one.
bool is_long(const Deck& deck, const Side& side) {
  double most = 0;
  for (const Side& s : deck.sides) most = std::max(most, length(s));
  return length(side) > 0.99 * most;
}

// Nothing is wanted of a low bed.
double well(double met, const Bed& bed) {
  return met + (1 - met) * chance_at_most(bed.base, mm(Of::bed_base));
}

void judge_missing(const Bed& bed, const Fence& fence, Cautions& cautions) {
  const Side& side = fence.side();
  const bool wall = at_wall(side);
  cautions.judge(
      well(0, bed),
      {"bed-rail-missing",
       edge_name(bed.scene, bed.deck, side),
       {"No rail along this side of the bed, whose base is {} above the floor; over {} each "
        "long side wants one{}.",
        {bed.base, Of::bed_base, std::string(wall ? ", for the wall is no rail" : "")}},
       {Of::bed_base},
       "",
       bed.base},
      is_long(bed.deck, side) ? Severity::danger : Severity::caution);
}

void judge_height(const Bed& bed, const Fence& fence, const FenceStretch& low, Cautions& cautions) {
  Measured height = height_of(fence, low);
  height.value -= bed.mattress;
  const std::string where = edge_name(fence);
  const std::string by = name_of(bed.scene, low.owner);
  for (const auto& [id, least] :
       {std::pair{"bed-rail-low", Of::bed_rail}, std::pair{"bed-barrier-low", Of::bed_barrier_mm}})
    cautions.judge(well(chance_at_least(height, mm(least)), bed),
                   {id,
                    where,
                    {"The {} stands {} above the mattress at its lowest; at least {} wanted.",
                     {by, height, least}},
                    {least},
                    "",
                    height});
}

void judge_wall_rail(const Bed& bed, const Fence& fence, Stretch gap, Cautions& cautions) {
  const Measured wide{gap.to - gap.from, 0};
  cautions.judge(
      well(chance_at_most(wide, mm(Of::bed_wall_gap)), bed),
      {"bed-wall-rail-gap",
       edge_name(fence),
       {"The rail on the wall side leaves {} open; at most {}.", {wide, Of::bed_wall_gap}},
       {Of::bed_wall_gap},
       "",
       wide});
}

void judge_end_gap(const Bed& bed, const Fence& fence, Stretch gap, Cautions& cautions) {
  const Measured wide{gap.to - gap.from, 0};
  cautions.judge(well(chance_at_most(wide, mm(Of::bed_end_gap)), bed),
                 {"bed-end-gap",
                  edge_name(fence),
                  {"{} of this side is open beside the rail; at most {}.", {wide, Of::bed_end_gap}},
                  {Of::bed_end_gap},
                  "",
                  wide});
}

void judge_entry(const Bed& bed, const Fence& fence, Stretch gap, Cautions& cautions) {
  const Measured wide{gap.to - gap.from, 0};
  const double met = chance_at_least(wide, mm(Of::bed_entry_small)) +
                     chance_at_most(wide, mm(Of::bed_entry_large)) - 1;
  cautions.judge(well(met, bed), {"bed-entry",
                                  edge_name(fence),
                                  {"The way in is {} wide; {} to {} wanted.",
                                   {wide, Of::bed_entry_small, Of::bed_entry_large}},
                                  {Of::bed_entry_small},
                                  "",
                                  wide});
}

void judge_gaps(const Bed& bed, const Fence& fence, double height, Cautions& cautions) {
  const std::vector<Stretch>& ways = fence.side().ways_up;
  for (const Stretch& gap : fence.open_at(height)) {
    const bool entry = std::any_of(ways.begin(), ways.end(), [&](const Stretch& way) {
      return way.from < gap.to && way.to > gap.from;
    });
    if (at_wall(fence.side()) && !entry)
      judge_wall_rail(bed, fence, gap, cautions);
    else
      judge_end_gap(bed, fence, gap, cautions);
    if (entry) judge_entry(bed, fence, gap, cautions);
  }
}

void judge_side(const Bed& bed, const Side& side, Cautions& cautions) {
  const double need = bed.mattress + std::max(mm(Of::bed_rail), mm(Of::bed_barrier_mm));
  const Fence fence(bed.scene, bed.deck, side, need);
  const auto low = fence.lowest_over(bed.mattress + kRail);
  if (!low) return judge_missing(bed, fence, cautions);
  judge_height(bed, fence, *low, cautions);
  const double rail = std::min(low->height, bed.mattress + mm(Of::bed_rail));
  judge_gaps(bed, fence, rail - 1, cautions);
  for (const LeftOpening& leak : fence.leaks(mm(Of::head_small) * 0.95)) {
    if (leak.at.y + leak.across / 2 <= bed.mattress) continue;  // behind the mattress
    const Measured across{leak.across, rim_sd(bed.scene, side.sight, leak.rim)};
    cautions.judge(
        well(chance_at_most(across, mm(Of::head_small)), bed),
        {"guard-opening",
         edge_name(bed.scene, bed.deck, side),
         {"The rail has an opening of {}; nothing of {} may pass.", {across, Of::head_small}},
         {Of::head_small},
         cited(From::wedge_block),
         across});
  }
}

// The widest and narrowest gap to the wall beside the bed.
void judge_wall_gap(const Bed& bed, const Side& side, Cautions& cautions) {
  const Station* worst = nullptr;
  const double middle = (mm(Of::bed_wall_small) + mm(Of::bed_wall_large)) / 2;
  for (const Station& s : side.stations)
    if (s.wall >= 0 && (!worst || std::abs(s.gap - middle) < std::abs(worst->gap - middle)))
      worst = &s;
  if (!worst) return;
  const Vec3 edge = side.sight.room({worst->s, 0});
  const Measured gap{worst->gap, spread(bed.scene, {{Owner::Kind::piece, bed.deck.lead()}, edge},
                                        {{Owner::Kind::wall, worst->wall}, edge}, side.sight.n)};
  const double caught = 1 - chance_at_most(gap, mm(Of::bed_wall_small)) -
                        chance_at_least(gap, mm(Of::bed_wall_large));
  cautions.judge(well(1 - caught, bed), {"bed-wall-gap",
                                         edge_name(bed.scene, bed.deck, side),
                                         {"The gap to the wall is {}; up to {} or over {}.",
                                          {gap, Of::bed_wall_small, Of::bed_wall_large}},
                                         {Of::bed_wall_small},
                                         "",
                                         gap});
}

void judge_age(const Bed& bed, Cautions& cautions) {
  const Audience& audience = bed.scene.audience;
  const std::string where = name_of(bed.scene, bed.deck);
  if (audience.children && !audience.ages)
    return cautions.want(
        {"ages-not-stated",
         where,
         {"Nobody under {} sleeps this high. State `ages` in [use].", {Of::bunk_age}},
         {Of::bunk_age},
         "",
         {}});
  if (!audience.ages || audience.youngest >= limit(Of::bunk_age).value) return;
  cautions.judge(well(0, bed), {"bunk-too-young",
                                where,
                                {"For ages from {} and {} up: nobody under {} sleeps this high.",
                                 {fmt::format("{:g}", audience.youngest), bed.base, Of::bunk_age}},
                                {Of::bunk_age},
                                "",
                                bed.base});
}

}  // namespace

void bed_rails(const Scene& scene, const std::vector<Deck>& decks, Cautions& cautions) {
  for (const Deck& deck : decks) {
    const Vec3 under{deck.middle.x, deck.middle.y, deck.underside};
    const Bed bed{scene, deck, height_of(scene, {Owner::Kind::piece, deck.lead()}, under),
                  scene.audience.mattress};
    if (chance_at_most(bed.base, mm(Of::bed_base)) >= cautions.sure()) continue;
    if (!scene.audience.mattress_stated)
      cautions.want({"not-checked",
                     name_of(scene, deck),
                     {"Rails count from the mattress: state `mattress` in [use]. Taken as 0.", {}},
                     {Of::bed_rail},
                     "",
                     {}});
    judge_age(bed, cautions);
    for (const Side& side : deck.sides) {
      if (!has_any(side, Station::Kind::open) && !has_any(side, Station::Kind::wall)) continue;
      judge_side(bed, side, cautions);
      judge_wall_gap(bed, side, cautions);
    }
  }
}

}  // namespace nook::safe
