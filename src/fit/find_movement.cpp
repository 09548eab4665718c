// Contacts sorted by the side they hold; each side by the contact that leaves least open.
#include "fit/find_movement.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "design/grain.h"
#include "fit/joint.h"

namespace nook {
namespace {

constexpr double kYearly = 1.0 / 96;                   // of the width: common practice, no source
constexpr double kNotable = kMillimetresPerInch / 32;  // chosen
constexpr double kFaces = 0.7;                         // cosine; an edge this square to the grain

// What a contact leaves open for the wood to swell into; nothing where it gives or hides a gap.
std::optional<double> left_open(const ContactFit& contact) {
  if (!contact.meets_anything) return std::nullopt;
  switch (contact.how->by) {
    case Fitting::butt:
      return std::max(0.0, contact.gap.least);
    case Fitting::taper:
    case Fitting::scribe:
      return contact.how->gap.mm;
    case Fitting::filler:
      return 0;
    case Fitting::clear:
    case Fitting::shim:
    case Fitting::caulk:
    case Fitting::trim:
      break;
  }
  return std::nullopt;
}

// The outward direction of the edge a contact speaks of, in u, v; nothing for a face.
Vec2 outward(const ContactFit& contact, const Polygon& outline) {
  if (std::holds_alternative<PieceFace>(contact.how->edge)) return {};
  const EdgeRun run = run_of(contact.how->edge, outline);
  const Vec2 d = outline[(run.last + 1) % outline.size()] - outline[run.first];
  return norm(d) > 0 ? (-1 / norm(d)) * left_of(d) : Vec2{};
}

struct Held {
  const ContactFit* contact = nullptr;
  double open = 1e300;
};

// The contact that holds a side most tightly.
Held held_at(const FitAnswer& answer, int piece, Vec2 way) {
  Held held;
  for (const ContactFit& contact : answer.contacts) {
    if (contact.piece != piece) continue;
    const auto open = left_open(contact);
    if (!open || *open >= held.open) continue;
    if (dot(outward(contact, answer.pieces[piece].drawn->outline), way) > kFaces)
      held = {&contact, *open};
  }
  return held;
}

double width_along(const Polygon& outline, Vec2 way) {
  const auto by_way = [&](Vec2 a, Vec2 b) { return dot(a, way) < dot(b, way); };
  const auto [low, high] = std::minmax_element(outline.begin(), outline.end(), by_way);
  return dot(*high - *low, way);
}

}  // namespace

std::vector<MovementFit> find_movement(const Design& design, const FitAnswer& answer) {
  std::vector<MovementFit> all;
  for (int p = 0; p < static_cast<int>(answer.pieces.size()); ++p) {
    const Part& part = *answer.pieces[p].drawn;
    const Stock& stock = design.stock[part.stock];
    if (!solid_wood(stock)) continue;
    const Vec2 across = grain_along_v(part, stock) ? Vec2{1, 0} : Vec2{0, 1};
    const double width = width_along(part.outline, across), moves = kYearly * width;
    if (moves < kNotable) continue;
    const Held low = held_at(answer, p, -across), high = held_at(answer, p, across);
    if (!low.contact || !high.contact || low.open + high.open >= moves) continue;
    all.push_back({p,
                   answer.pieces[p].name,
                   {low.contact->edge, high.contact->edge},
                   {low.contact->meets, high.contact->meets},
                   width,
                   moves,
                   low.open + high.open});
  }
  return all;
}

}  // namespace nook
