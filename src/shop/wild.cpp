// Which edges are scribed by hand, and how much is left on them.
#include "shop/wild.h"

#include <algorithm>
#include <cmath>

#include "base/notation.h"

namespace nook {
namespace {

constexpr double kUsual = 12.7, kMore = 19.05;  // 1/2 and 3/4 in: common practice, no source
constexpr double kLeast = 6.35;                 // left to scribe off at the widest gap. Chosen

double allowance(double widest_gap) {
  for (const double left : {kUsual, kMore})
    if (widest_gap <= left - kLeast) return left;
  return widest_gap + kLeast;
}

const ContactFit* found_for(const FitAnswer& fit, int contact, const std::string& piece) {
  for (const ContactFit& found : fit.contacts)
    if (found.contact == contact && found.part == piece && found.meets_anything) return &found;
  return nullptr;
}

// What is open where it is widest, when the piece has come as close as it can.
double still_open(const Piece& piece, const Design& design, const ContactFit* found) {
  return found ? widest_open(*found) - closing(piece, design, *found) : 0;
}

double beyond(const Piece& piece, const Design& design, const ContactFit* found,
              const EdgeChoice& edge) {
  const double mark = usual_rounding(design.units).step.mm;
  // In whole marks of the job's tape, so that the blank and its checks say the same.
  const double wanted = mark * std::ceil(allowance(still_open(piece, design, found)) / mark - 1e-6);
  const auto side = side_meant(piece.drawn->outline, edge);
  return side ? std::min(wanted, wood_beyond(piece, design, *side)) : wanted;
}

}  // namespace

std::vector<WildEdge> wild_edges(const Piece& piece, const Design& design, const FitAnswer& fit) {
  std::vector<WildEdge> wild;
  for (int c = 0; c < static_cast<int>(design.contacts.size()); ++c) {
    const Contact& contact = design.contacts[c];
    if (contact.by != Fitting::scribe || contact.shop || !is_named(piece, contact.part)) continue;
    if (const auto run = run_of(piece.drawn->outline, contact.edge))
      wild.push_back({c, *run, contact.edge_given,
                      beyond(piece, design, found_for(fit, c, piece.name), contact.edge)});
  }
  return wild;
}

Polygon with_wild_edges(const Piece& piece, const std::vector<WildEdge>& wild) {
  Polygon outline = piece.drawn->outline;
  for (const WildEdge& edge : wild)
    outline = moved(outline, edge.run, {edge.beyond_mm, edge.beyond_mm});
  return outline;
}

}  // namespace nook
