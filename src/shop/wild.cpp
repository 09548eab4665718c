// Which edges are scribed by hand, and how much is left on them.
#include "shop/wild.h"

#include <algorithm>

#include "base/length.h"

namespace nook {
namespace {

constexpr double kUsual = 12.7, kMore = 19.05;  // 1/2 and 3/4 in: common practice, no source
constexpr double kLeast = 6.35;                 // left to scribe off at the widest gap. Chosen

double allowance(double widest_gap) {
  for (const double left : {kUsual, kMore})
    if (widest_gap <= left - kLeast) return left;
  return widest_gap + kLeast;
}

// What is open where it is widest, when the piece has used the wood it stands off its drawn place.
double widest_gap(const FitAnswer& fit, int contact, const std::string& piece) {
  for (const ContactFit& found : fit.contacts)
    if (found.contact == contact && found.part == piece && found.meets_anything)
      return std::max(found.gap.most - found.how->gap.mm - found.wood_mm, 0.0);
  return 0;
}

}  // namespace

bool means(const std::string& part, const Piece& piece) {
  return part == piece.name || part == piece.drawn->name;
}

std::vector<WildEdge> wild_edges(const Piece& piece, const Design& design, const FitAnswer& fit) {
  std::vector<WildEdge> wild;
  for (int c = 0; c < static_cast<int>(design.contacts.size()); ++c) {
    const Contact& contact = design.contacts[c];
    if (contact.by != Fitting::scribe || contact.shop || !means(contact.part, piece)) continue;
    if (const auto run = run_of(piece.drawn->outline, contact.edge))
      wild.push_back({c, *run, contact.edge_given, allowance(widest_gap(fit, c, piece.name))});
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
