// Framing as carpenters leave it, probing as people do it.
#include "fasten/stud_world.h"

#include <cmath>

using namespace nook;

namespace {

constexpr double kWidth = 38.1;
constexpr double kSixteenth = 25.4 / 16;

class WorldMaker {
 public:
  explicit WorldMaker(std::mt19937_64& random) : random_(random) {}

  StudWorld made() {
    lean_walls();
    frame();
    look();
    hang_ledger();
    return std::move(world_);
  }

 private:
  struct Block {
    TrueStud middle;
    int plies = 1;
    bool looked = true;
  };

  double normal(double sd) { return std::normal_distribution<double>(0, sd)(random_); }
  double between(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }
  bool chance(double p) { return between(0, 1) < p; }
  double student4(double scale) {
    double sum = 0;
    for (int i = 0; i < 4; ++i) {
      const double x = normal(1);
      sum += x * x;
    }
    return scale * normal(1) / std::sqrt(sum / 4);
  }

  // The room as adjusted, and the real one a draw beside it.
  void lean_walls() {
    const double believed = normal(.004), sd = .0008;
    world_.corner_lean = believed + normal(sd);
    world_.bench.room.walls[1].lean = believed;
    world_.bench.room.walls[0].lean = normal(.004);
    for (int i = 0; i < 24; ++i) {
      RoomShape draw = world_.bench.room;
      draw.walls[1].lean = believed + normal(sd);
      world_.bench.draws.push_back(draw);
    }
  }

  void frame() {
    spacing_ = chance(.7) ? 406.4 : 609.6;
    world_.bench.survey.walls[0].studs->spacing = millimetres(spacing_);
    for (double x = between(-spacing_, 0) + 60; x < 2600; x += spacing_) {
      if (x < 60) continue;
      const bool looked = chance(.75);
      if (chance(.9))
        add({x + normal(3), normal(.003)}, looked);
      else if (chance(.5))
        add({x + between(-spacing_ / 3, spacing_ / 3), normal(.003)}, looked);
      else if (looked)
        world_.empty_places.push_back(x);
    }
    if (chance(.3)) add_extra();
  }
  void add_extra() {
    const double x = between(100, 2400);
    for (const Block& b : blocks_)
      if (std::abs(b.middle.middle - x) < 110) return;
    add({x, normal(.003)}, chance(.75));
  }
  void add(TrueStud middle, bool looked) {
    const double dice = between(0, 1);
    const int plies = dice < .90 ? 1 : dice < .98 ? 2 : 3;
    for (const Block& b : blocks_)
      if (std::abs(b.middle.middle - middle.middle) < 60 + kWidth * (plies + b.plies) / 2) return;
    // One ply keeps the place, the others stand beside it.
    middle.middle += (chance(.5) ? 1 : -1) * (plies - 1) * kWidth / 2;
    blocks_.push_back({middle, plies, looked});
    for (int k = 0; k < plies; ++k) {
      TrueStud ply = middle;
      ply.middle += (k - (plies - 1) / 2.0) * kWidth;
      world_.studs.push_back(ply);
    }
  }

  // What a tape from the real corner reads at a spot of the wall, to the sixteenth.
  Reading read(double spot, double z, double error, const std::string& id) {
    const double along = spot - world_.corner_lean * z;
    const double metres = std::ceil(along / 1000);
    const double tape = tape_ * (.3 + .2 * metres) / std::sqrt(3.0);
    const double slip = chance(.005) ? normal(100) : 0;
    Reading r;
    r.value = millimetres(std::round((along + error + tape + slip) / kSixteenth) * kSixteenth);
    r.smallest_mark = millimetres(kSixteenth);
    r.id = id;
    return r;
  }

  void look() {
    tape_ = normal(1);
    height_ = between(500, 1400);
    for (const Block& b : blocks_) {
      if (!b.looked) continue;
      const double dice = between(0, 1);
      const double z = chance(.6) ? height_ : height_ + between(-500, 500);
      if (dice < .55)
        edges(b, z, FoundBy::nail);
      else if (dice < .8)
        edges(b, z, FoundBy::finder);
      else
        middle(b, z, dice < .9 ? FoundBy::finder : FoundBy::magnet);
      if (chance(.15)) edges(b, height_ + between(300, 900), FoundBy::nail);  // a second height
    }
  }
  StudFound& found(double z, FoundBy by) {
    auto& list = world_.bench.survey.walls[0].studs->found;
    StudFound f;
    f.by = by;
    f.height = Height{millimetres(z), false, {}};
    f.id = "wall[0].studs.found[" + std::to_string(list.size()) + "]";
    list.push_back(f);
    return list.back();
  }
  void edges(const Block& b, double z, FoundBy by) {
    StudFound& f = found(z, by);
    const double half = b.plies * kWidth / 2;
    const auto error = [&] { return by == FoundBy::nail ? normal(1) : student4(2); };
    f.left_edge = {read(b.middle.at(z) - half, z, error(), f.id + ".edges[0]")};
    f.right_edge = {read(b.middle.at(z) + half, z, error(), f.id + ".edges[1]")};
  }
  void middle(const Block& b, double z, FoundBy by) {
    StudFound& f = found(z, by);
    f.centre = {read(b.middle.at(z), z, student4(3), f.id + ".centre")};
  }

  void hang_ledger() {
    Bench& bench = world_.bench;
    const double start = between(1, 20), length = between(36, 70);
    bench.ledger(0, "ledger", {start, length}, height_ / 25.4 - 1.5);
    bench.screws("ledger", "left wall");
    if (chance(.5)) pipe();
  }
  void pipe() {
    const double x = between(100, 1800);
    Obstacle o;
    o.kind = ObstacleKind::pipe;
    o.name = "pipe";
    const double base = world_.bench.room.walls[1].lean * height_;
    o.along[0] = millimetres(x - base);
    o.along[1] = millimetres(x - base + 30);
    o.height[0] = Height{millimetres(height_ - 800), false, {}};
    o.height[1] = Height{millimetres(height_ + 800), false, {}};
    o.out[0] = millimetres(-90);
    o.out[1] = millimetres(-20);
    world_.bench.survey.walls[0].obstacles.push_back(o);
    world_.pipes.push_back({x, x + 30, height_ - 800, height_ + 800});
  }

  std::mt19937_64& random_;
  StudWorld world_;
  std::vector<Block> blocks_;
  double spacing_ = 0, height_ = 0, tape_ = 0;
};

}  // namespace

bool StudWorld::in_wood(double along, double z, double edge) const {
  const double spot = along + corner_lean * z;
  for (const TrueStud& s : studs)
    if (std::abs(spot - s.at(z)) <= kWidth / 2 - edge) return true;
  return false;
}

StudWorld stud_world(std::mt19937_64& random) {
  return WorldMaker(random).made();
}
