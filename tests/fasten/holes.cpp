// Where holes stand: in studs, clear of edges and services, on easy numbers, the same when
// mirrored.
#include <catch2/catch.hpp>
#include <cmath>
#include <set>

#include "fasten/bench.h"
#include "fasten/said.h"
#include "solid/boolean.h"

using namespace nook;

namespace {

constexpr double kD = .19 * 25.4;

bool on_grid(double mm, double step) {
  return std::abs(mm / step - std::round(mm / step)) < 1e-6;
}

}  // namespace

TEST_CASE("holes: two to a stud, near its middle, one near the top") {
  const DrillAnswer answer = two_studs().drilled();
  const auto& holes = answer.walls[0].holes;
  REQUIRE(holes.size() == 4);
  CHECK(answer.verdict == Verdict::fits);
  for (const Hole& h : holes) {
    INFO(h.id);
    const double centre = answer.walls[0].studs[*h.stud].centre_mm;
    CHECK(std::abs(h.along_mm - centre) < 4);
    CHECK(h.hit_chance >= .999);
    CHECK(h.edge_distance_mm >= 2.5 * kD);
    CHECK_THAT(h.embedment_mm, Catch::WithinAbs(inches(1.25).mm, 1e-9));
    CHECK_THAT(h.depth_mm, Catch::WithinAbs(inches(3).mm, 1e-9));
    CHECK(on_grid(h.from_end_mm, 25.4 / 16));
    CHECK(on_grid(h.from_edge_mm, 25.4 / 16));
    CHECK_THAT(h.u_mm, Catch::WithinAbs(inches(46).mm - h.from_end_mm, 1e-9));
    CHECK_THAT(h.v_mm, Catch::WithinAbs(inches(3).mm - h.from_edge_mm, 1e-9));
    CHECK_THAT(h.height_mm, Catch::WithinAbs(inches(37).mm + h.v_mm, 1e-9));
    CHECK_THAT(*h.from_line_mm, Catch::WithinAbs(h.height_mm - inches(38).mm, 1e-9));
    CHECK_THAT(h.along_mm, Catch::WithinAbs(inches(46).mm - h.u_mm, 1e-9));
  }
  CHECK(holes[0].from_edge_mm < inches(.6).mm);
  // 10 D apart along the grain of the stud, 2.5 D from the edges of the ledger.
  CHECK(holes[1].from_edge_mm - holes[0].from_edge_mm >= 10 * kD);
  CHECK(holes[1].from_edge_mm <= inches(3).mm - 2.5 * kD);
  CHECK(holes[0].from_end_mm != holes[1].from_end_mm);  // staggered
}

TEST_CASE("holes: common practice - 3 in through 1 1/4 and drywall leave 1 1/4, set 1/8 in 1 3/8") {
  Bench bench = two_studs();
  bench.design.fastenings[0].screw.head_below = inches(1.0 / 8);
  const Hole h = bench.drilled().walls[0].holes.front();
  CHECK_THAT(h.embedment_mm, Catch::WithinAbs(inches(1.375).mm, 1e-9));
  CHECK(warns(h, "may reach a cable"));
  CHECK_FALSE(warns(two_studs().drilled().walls[0].holes.front(), "cable"));
}

TEST_CASE("holes: everything counts from a plumb line on the first proven stud") {
  const DrillAnswer answer = two_studs().drilled();
  const WallDrill& wall = answer.walls[0];
  REQUIRE(wall.datum);
  CHECK(wall.datum->stud == 0);
  CHECK_THAT(wall.datum->along_mm, Catch::WithinAbs(inches(15.3125).mm, 1e-6));
  for (const Hole& h : wall.holes)
    CHECK_THAT(*h.from_datum_mm, Catch::WithinAbs(h.along_mm - wall.datum->along_mm, 1e-6));
}

TEST_CASE("holes: the plumb line is struck on a stud that keeps the spacing, where one does") {
  Bench bench;
  bench.nailed(0, 12.25);  // taped 3 in wrong, or another stud
  for (const double centre : {31.25, 47.25, 63.25, 79.25}) bench.nailed(0, centre);
  bench.ledger(0, "ledger", {8, 60}, 37);
  bench.screws("ledger", "left wall");
  const DrillAnswer answer = bench.drilled();
  const WallDrill& wall = answer.walls[0];
  REQUIRE(wall.datum);
  CHECK_THAT(wall.datum->along_mm, Catch::WithinAbs(inches(31.25).mm, 0.5));
}

TEST_CASE("holes: an inferred stud is probed first, and the probe is asked for") {
  Bench bench;
  bench.nailed(0, 15.25);
  bench.ledger(0, "ledger", {0, 46}, 37);
  bench.screws("ledger", "left wall");
  const DrillAnswer answer = bench.drilled();
  int inferred = 0;
  for (const Hole& h : answer.walls[0].holes) {
    if (answer.walls[0].studs[*h.stud].found != StudReport::Found::inferred) continue;
    ++inferred;
    CHECK(warns(h, "probe first"));
    CHECK(h.probe_first);
    CHECK(h.hit_chance <= .9);
  }
  CHECK(inferred == 2);
  CHECK(answer.verdict == Verdict::cannot_tell);
  REQUIRE_FALSE(answer.probes.empty());
  CHECK(answer.probes[0].reading.find("31 1/4\"") != std::string::npos);
  CHECK_THAT(answer.probes[0].gain, Catch::WithinAbs(1, 1e-9));
}

TEST_CASE("holes: no stud behind a piece, no hole; blocking, a longer piece, a cleat instead") {
  Bench bench;
  bench.nailed(0, 15.25);
  bench.nailed(0, 31.25);
  bench.ledger(0, "short ledger", {17, 12}, 37);
  bench.screws("short ledger", "left wall").load_n = 100;
  const DrillAnswer answer = bench.drilled();
  CHECK(answer.walls[0].holes.empty());
  CHECK(answer.verdict == Verdict::does_not_fit);
  REQUIRE(answer.unreachable.size() == 1);
  const std::string reason = answer.unreachable[0].advice;
  INFO(reason);
  // Between studs 16 in apart and 1 1/2 wide: 14 1/2 clear.
  CHECK(reason.find("blocking 14 1/2\" long") != std::string::npos);
  // 16 in and 10 D at both ends: 19.8, to the next sixteenth.
  CHECK(reason.find("cleat at least 19 13/16\" long") != std::string::npos);
  // From 17 back to 15 1/4 and 10 D more: 3.65, to the next sixteenth.
  CHECK(reason.find("3 11/16\" longer, to the stud 15 1/4\"") != std::string::npos);
  REQUIRE(answer.strength.size() == 1);
  CHECK_FALSE(answer.strength[0].capacity_n);
}

TEST_CASE("holes: blocking takes screws where studs do not") {
  Bench bench;
  bench.nailed(0, 15.25);
  bench.nailed(0, 31.25);
  Blocking blocking;
  blocking.along[0] = inches(16);
  blocking.along[1] = inches(30.5);
  blocking.height[0] = Height{inches(36.75), false, {}};
  blocking.height[1] = Height{inches(40.25), false, {}};
  bench.survey.walls[0].studs->blocking.push_back(blocking);
  bench.ledger(0, "short ledger", {17, 12}, 37);
  bench.screws("short ledger", "left wall").load_n = 100;
  const DrillAnswer answer = bench.drilled();
  REQUIRE(answer.walls[0].holes.size() == 2);
  CHECK(answer.unreachable.empty());
  for (const Hole& h : answer.walls[0].holes) {
    CHECK_FALSE(h.stud);
    CHECK(h.hit_chance >= .999);
    CHECK(h.height_mm > inches(36.75).mm + 2.5 * kD);
    CHECK(h.height_mm < inches(40.25).mm - 2.5 * kD);
  }
  CHECK(answer.strength[0].capacity_n);
}

TEST_CASE("holes: screws too short or too long are refused with the length to use") {
  Bench bench = two_studs();
  bench.design.fastenings[0].screw.length = inches(1.5);
  DrillAnswer answer = bench.drilled();
  CHECK(answer.walls[0].holes.empty());
  REQUIRE(answer.unreachable.size() == 1);
  // 1 1/4 + 1/2 + 6 D: 2.89, to the next sixteenth.
  CHECK(answer.unreachable[0].advice == "use one of 3\"");
  bench.design.fastenings[0].screw.length = inches(6);
  answer = bench.drilled();
  CHECK(answer.walls[0].holes.empty());
  REQUIRE(answer.unreachable.size() == 1);
  CHECK(answer.unreachable[0].reason.find("far side") != std::string::npos);
}

TEST_CASE("holes: too little in the stud is a caution, and no figure") {
  Bench bench = two_studs();
  bench.design.fastenings[0].screw.length = inches(2.75);
  bench.design.fastenings[0].load_n = 100;
  const DrillAnswer answer = bench.drilled();
  REQUIRE(answer.walls[0].holes.size() == 4);
  CHECK(warns(answer.walls[0].holes[0], "only 1\" in the stud, short of the 1 3/16\""));
  REQUIRE(answer.strength.size() == 1);
  CHECK_FALSE(answer.strength[0].capacity_n);
  CHECK(answer.strength[0].mode.find("6 D") != std::string::npos);
  CHECK(answer.verdict == Verdict::cannot_tell);
}

TEST_CASE("holes: cutouts and pieces on the face are kept clear") {
  Bench bench = two_studs();
  Part& ledger = bench.design.parts[0];
  Cutout cutout;
  const double u = inches(46 - 31.375).mm;
  cutout.outline = {{u - 20, 5}, {u + 20, 5}, {u + 20, 70}, {u - 20, 70}};
  ledger.cutouts.push_back(cutout);
  REQUIRE(bench.drilled().walls[0].holes.size() == 2);
  ledger.cutouts.clear();
  // A post standing on the face of the ledger in front of the first stud.
  Part post = ledger;
  post.name = "post";
  post.outline = {{0, 0}, {inches(3).mm, 0}, {inches(3).mm, inches(3).mm}, {0, inches(3).mm}};
  post.place_in_room.at = {inches(17).mm, inches(1.25).mm, inches(37).mm};
  bench.design.parts.push_back(post);
  const DrillAnswer answer = bench.drilled();
  REQUIRE(answer.walls[0].holes.size() == 2);
  CHECK(*answer.walls[0].holes[0].stud == 1);
}

TEST_CASE("holes: a corner that leans moves the numbers, not the studs") {
  Bench bench = two_studs();
  const double before = bench.drilled().walls[0].holes[0].along_mm;
  // The right wall leans in: the corner, and every reading, moves along the left wall going up.
  bench.room.walls[1].lean = .004;
  bench.survey.walls[0].studs->found[0].height = Height{inches(8), false, {}};
  const DrillAnswer answer = bench.drilled();
  const Hole& h = answer.walls[0].holes[0];
  // Found at 8 in, drilled at h: the corner has come closer by .004 of the difference.
  const double moved = .004 * (h.height_mm - inches(8).mm);
  CHECK_THAT(h.along_mm, Catch::WithinAbs(before - moved, 1.2));
  CHECK_THAT(h.along_mm + .004 * h.height_mm,
             Catch::WithinAbs(inches(15.3125).mm + .004 * inches(8).mm, 1.7));
}

TEST_CASE("holes: shims count into the depth and the strength") {
  Bench bench = two_studs();
  bench.design.fastenings[0].load_n = 400;
  const DrillAnswer tight = bench.drilled();
  bench.design.parts[0].place_in_room.at.y = inches(1.0 / 8).mm;
  const DrillAnswer shimmed = bench.drilled();
  const Hole& h = shimmed.walls[0].holes[0];
  CHECK_THAT(h.shim_mm, Catch::WithinAbs(inches(1.0 / 8).mm, 1e-9));
  CHECK_THAT(h.embedment_mm, Catch::WithinAbs(inches(1.125).mm, 1e-9));
  CHECK(warns(h, "shim 1/8\""));
  bench.design.fastenings[0].screw.length = inches(3.125);
  const DrillAnswer longer = bench.drilled();
  CHECK(*longer.strength[0].capacity_n < *tight.strength[0].capacity_n);
}

TEST_CASE("holes: metric jobs stand on whole millimeters") {
  Bench bench = two_studs();
  bench.survey.units = Unit::mm;
  const DrillAnswer drilled = bench.drilled();
  for (const Hole& h : drilled.walls[0].holes) {
    CHECK(on_grid(h.from_end_mm, 1));
    CHECK(on_grid(h.from_edge_mm, 1));
  }
}

TEST_CASE("holes: a mirrored room has the mirrored map", "[property]") {
  const DrillAnswer left = two_studs(0).drilled(), right = two_studs(1).drilled();
  const auto &a = left.walls[0].holes, &b = right.walls[1].holes;
  REQUIRE(a.size() == b.size());
  CHECK(left.walls[0].runs_left);
  CHECK_FALSE(right.walls[1].runs_left);
  for (std::size_t i = 0; i < a.size(); ++i) {
    CHECK_THAT(a[i].along_mm, Catch::WithinAbs(b[i].along_mm, 1e-9));
    CHECK_THAT(a[i].height_mm, Catch::WithinAbs(b[i].height_mm, 1e-9));
    CHECK_THAT(a[i].from_end_mm, Catch::WithinAbs(b[i].from_end_mm, 1e-9));
    CHECK_THAT(a[i].hit_chance, Catch::WithinAbs(b[i].hit_chance, 1e-9));
    CHECK(a[i].drive == b[i].drive);
    CHECK(a[i].end == "right");  // of the left ledger: its corner end, as seen from its front
    CHECK(b[i].end == "left");
  }
}

TEST_CASE("holes: more screws a stud where the load asks for them and the piece has room") {
  Bench bench = two_studs();
  Part& ledger = bench.design.parts[0];
  const double w = inches(5.5).mm, l = inches(46).mm;
  ledger.outline = {{0, 0}, {l, 0}, {l, w}, {0, w}};
  bench.design.fastenings[0].load_n = 220 * kNewtonsPerPound;
  bench.design.fastenings[0].load_at = inches(46 - 23.3);  // between the studs
  CHECK(bench.drilled().walls[0].holes.size() == 4);
  bench.design.fastenings[0].load_n = 300 * kNewtonsPerPound;
  DrillAnswer answer = bench.drilled();
  CHECK(answer.walls[0].holes.size() == 6);
  CHECK(*answer.strength[0].ratio <= 1);
  bench.design.fastenings[0].load_n = 900 * kNewtonsPerPound;
  answer = bench.drilled();  // no number that fits would do: as the design says
  CHECK(answer.walls[0].holes.size() == 4);
  CHECK(answer.verdict == Verdict::does_not_fit);
}

TEST_CASE("holes: BS 7671 522.6.202 - near the corner a cable may run unmarked", "[reference]") {
  Bench bench = two_studs();
  const DrillAnswer drilled = bench.drilled();
  for (const Hole& h : drilled.walls[0].holes) CHECK_FALSE(warns(h, "150 mm"));
  bench.nailed(0, 4.5);
  const auto holes = bench.drilled().walls[0].holes;
  CHECK(warns(holes.front(), "within 5 7/8\" of the corner"));
  CHECK_FALSE(warns(holes.back(), "150 mm"));
}

TEST_CASE("holes: what is not wood gets no holes and no figure") {
  for (StudKind kind : {StudKind::steel, StudKind::masonry}) {
    Bench bench = two_studs();
    bench.survey.walls[0].studs->kind = kind;
    bench.design.fastenings[0].load_n = 100;
    const DrillAnswer answer = bench.drilled();
    CHECK(answer.walls[0].holes.empty());
    CHECK(answer.unreachable.empty());
    REQUIRE(answer.strength.size() == 1);
    CHECK_FALSE(answer.strength[0].capacity_n);
    CHECK(answer.verdict == Verdict::cannot_tell);
  }
  Bench bench = two_studs();
  bench.survey.walls[0].studs->kind = StudKind::unknown;
  CHECK(bench.drilled().walls[0].holes.size() == 4);
  CHECK_FALSE(bench.drilled().strength[0].capacity_n);
}

TEST_CASE("holes: a wall whose studs nobody looked for is asked for, not judged") {
  Bench bench;
  bench.ledger(0, "ledger", {0, 46}, 37);
  bench.screws("ledger", "left wall");
  const DrillAnswer answer = bench.drilled();
  CHECK(answer.verdict == Verdict::cannot_tell);
  REQUIRE(answer.missing.size() == 1);
  CHECK(answer.missing[0].what.find("left wall") != std::string::npos);
}

TEST_CASE("holes: an undetermined room gets none") {
  const Bench bench = two_studs();
  const auto pieces = pieces_of(bench.design);
  const std::vector<Frame> frames = {pieces[0].frame};
  const DrillAnswer answer =
      drill({bench.survey, bench.design, bench.room, {}, pieces, frames, .95, false});
  CHECK(answer.verdict == Verdict::cannot_tell);
  CHECK(answer.walls.size() == 2);
  CHECK(answer.walls[0].holes.empty());
}

TEST_CASE("holes: each lies in the region that exact Booleans allow, and none is left out",
          "[property]") {
  // The slow route: strip of the stud, ledger and pipe as outlines in the wall's plane.
  for (double pipe_at : {12.0, 15.0, 15.5, 16.5, 18.0}) {
    Bench bench = two_studs();
    Obstacle pipe = obstacle(ObstacleKind::pipe, "pipe", pipe_at, pipe_at + 1);
    pipe.out[0] = inches(-3);
    pipe.height[1] = Height{inches(38.5), false, {}};
    bench.survey.walls[0].obstacles.push_back(pipe);
    const DrillAnswer answer = bench.drilled();
    const auto box = [](double l, double r, double b, double t) {
      return Regions{{{{l, b}, {r, b}, {r, t}, {l, t}}, {}}};
    };
    const double edge = 2.5 * kD, end = 10 * kD, low = inches(37).mm, high = inches(40).mm;
    const double centre = inches(15.3125).mm, half = inches(.75).mm - edge;
    Regions region = intersect(box(centre - half, centre + half, 0, 2500),
                               box(end, inches(46).mm - end, low + edge, high - edge));
    region = subtract(region, box(inches(pipe_at).mm - 25, inches(pipe_at + 1).mm + 25,
                                  inches(12).mm - 25, inches(38.5).mm + 25));
    int inside_it = 0;
    for (const Hole& h : answer.walls[0].holes) {
      if (*h.stud != 0) continue;
      bool in = false;
      for (const Region& r : region) in |= contains(r, {h.along_mm, h.height_mm});
      CHECK(in);
      inside_it += in;
    }
    INFO("pipe at " << pipe_at << ", region " << area(region));
    bool middle_free = false;
    for (const Region& r : region)
      for (double z = low; z <= high; z += 25.4 / 16) middle_free |= contains(r, {centre, z});
    CHECK((inside_it > 0) == middle_free);
  }
}

TEST_CASE("holes: driven from the surest at the top to its far end, then the rest") {
  Bench bench = two_studs();
  bench.found_centre(0, 44);  // cannot be sure, and off the spacing
  const auto holes = bench.drilled().walls[0].holes;
  std::vector<int> drives;
  for (const Hole& h : holes) drives.push_back(h.drive);
  std::vector<int> sorted = drives;
  std::sort(sorted.begin(), sorted.end());
  for (std::size_t i = 0; i < sorted.size(); ++i) CHECK(sorted[i] == static_cast<int>(i) + 1);
  for (const Hole& h : holes) {
    if (h.drive == 1) CHECK(h.hit_chance >= .999);
    if (h.drive <= 2) CHECK(h.from_edge_mm < inches(.6).mm);
    if (h.probe_first) CHECK(h.drive > 4);
  }
}

TEST_CASE("holes: the story pole runs from one start and carries every mark") {
  const DrillAnswer answer = two_studs().drilled();
  REQUIRE(answer.poles.size() == 2);
  CHECK(answer.poles[0].of == "left wall");
  CHECK(answer.poles[1].of == "ledger");
  for (const StoryPole& pole : answer.poles) {
    std::string all;
    for (std::size_t i = 0; i < pole.marks.size(); ++i) {
      if (i > 0) CHECK(pole.marks[i].at_mm > pole.marks[i - 1].at_mm);
      all += pole.marks[i].what + ";";
    }
    for (const char* hole : {"hole 1", "hole 2", "hole 3", "hole 4"})
      CHECK(all.find(hole) != std::string::npos);
  }
}

TEST_CASE("holes: one screw alone stands in the middle of the piece, asked for or left over") {
  Bench asked = two_studs();
  asked.design.fastenings[0].per_stud = 1;
  Bench left_over = two_studs();  // a piece too narrow for two
  Part& ledger = left_over.design.parts[0];
  for (Vec2& p : ledger.outline) p.y = std::min(p.y, inches(2).mm);
  for (const auto& [bench, middle] : {std::pair{&asked, 1.5}, {&left_over, 1.0}}) {
    const DrillAnswer answer = bench->drilled();
    REQUIRE(answer.walls[0].holes.size() == 2);
    for (const Hole& h : answer.walls[0].holes)
      CHECK_THAT(h.from_edge_mm, Catch::WithinAbs(inches(middle).mm, inches(1.0 / 16).mm));
  }
}

TEST_CASE("holes: surer than usual is asked for, and what is not is to be probed first") {
  Bench bench = two_studs();
  CHECK(bench.drilled(.95).verdict == Verdict::fits);
  const DrillAnswer answer = bench.drilled(1 - 1e-12);
  CHECK(answer.verdict == Verdict::cannot_tell);
  for (const Hole& h : answer.walls[0].holes) {
    CHECK(h.hit_chance >= .999);
    CHECK_FALSE(h.sure);
  }
  for (StudFound& found : bench.survey.walls[0].studs->found)
    found.height = Height{inches(50), false, {}};
  const DrillAnswer elsewhere = bench.drilled(1 - 1e-12);
  for (const Hole& h : elsewhere.walls[0].holes) {
    CHECK(h.hit_chance >= .999);
    CHECK(h.probe_first);
  }
}

TEST_CASE("holes: a wall called like a joint keeps its own holes on the story pole") {
  Bench bench = two_studs();
  const std::string name = "left to door";
  bench.survey.walls[0].name = bench.room.walls[0].name = name;
  bench.design.fastenings[0].to = name + " wall";
  const DrillAnswer answer = bench.drilled();
  REQUIRE(answer.poles.size() == 2);
  for (const auto& mark : answer.poles[1].marks) CHECK(mark.what.find("hole ") == 0);
}

TEST_CASE("holes: ends of pieces that are told alike are one mark of the story pole") {
  Bench bench = two_studs();
  bench.ledger(0, "upper", {-.04, 46}, 45);  // 1 mm off, which a sixteenth tells as one mark or two
  bench.screws("upper", "left wall");
  const DrillAnswer answer = bench.drilled();
  std::set<std::string> told;
  const Saying say{Unit::inch};
  for (const auto& mark : answer.poles[0].marks) CHECK(told.insert(say.length(mark.at_mm)).second);
}

TEST_CASE("holes: on the story pole a piece's ends are as far from its holes as on the piece") {
  Bench bench = two_studs();
  bench.room.walls[1].lean = 0.01;  // the corner that the left wall counts from leans
  bench.ledger(0, "upper", {2, 44}, 72);
  bench.screws("upper", "left wall");
  const DrillAnswer answer = bench.drilled();
  const auto& marks = answer.poles.at(0).marks;
  for (const Hole& h : answer.walls[0].holes) {
    INFO(h.part << ", " << h.id);
    double off = 1e9;
    for (const auto& mark : marks)
      if (mark.what.find(h.part + " end") != std::string::npos)
        off = std::min(off, std::abs(std::abs(mark.at_mm - *h.from_datum_mm) - h.from_end_mm));
    CHECK(off < 0.5);
  }
}

TEST_CASE("holes: where nails found both edges at its height, no probe is asked for again") {
  Bench bench = two_studs();  // nailed 38 up
  Fastening& f = bench.design.fastenings[0];
  f.screw.gauge = 14, f.per_stud = 1;  // 2.5 D leave 0.15 in on each side of the middle
  const DrillAnswer answer = bench.drilled();
  REQUIRE(answer.walls[0].holes.size() == 2);
  for (const Hole& h : answer.walls[0].holes) {
    CHECK(h.hit_chance < .999);
    CHECK_FALSE(h.sure);
    CHECK(h.proved);
    CHECK_FALSE(h.probe_first);
    CHECK(warns(h, "thinner"));
    CHECK_FALSE(warns(h, "probe first"));
  }
  CHECK(answer.verdict == Verdict::cannot_tell);
  CHECK(answer.probes.empty());
  for (StudFound& found : bench.survey.walls[0].studs->found)
    found.height = Height{inches(50), false, {}};
  const DrillAnswer elsewhere = bench.drilled();
  for (const Hole& h : elsewhere.walls[0].holes) CHECK(h.probe_first);
  CHECK(elsewhere.probes.size() == 2);
}

TEST_CASE("said: a screw that is advised is one that is sold") {
  const Saying inch(Unit::inch), mm(Unit::mm);
  CHECK_THAT(inch.sold_from(inches(2.9375).mm), Catch::WithinAbs(inches(3).mm, 1e-9));
  CHECK_THAT(inch.sold_up_to(inches(3.6875).mm), Catch::WithinAbs(inches(3.5).mm, 1e-9));
  CHECK_THAT(inch.sold_from(inches(2.25).mm), Catch::WithinAbs(inches(2.25).mm, 1e-9));
  CHECK_THAT(mm.sold_from(43), Catch::WithinAbs(45, 1e-9));
  CHECK_THAT(mm.sold_from(62), Catch::WithinAbs(70, 1e-9));
  CHECK_THAT(mm.sold_up_to(62), Catch::WithinAbs(60, 1e-9));
}
