// How wide a gap is still closed with a strip of wood.
#include <algorithm>
#include <catch2/catch.hpp>

#include "adapt/candidate.h"

using namespace nook;

namespace {

bool offers_filler(double gap) {
  Contact how;
  ContactFit contact;
  contact.how = &how;
  contact.gap = {0, gap};
  const auto all = refittings({}, contact);
  return std::any_of(all.begin(), all.end(), [](const Ladder& ladder) {
    const auto* refitted = std::get_if<ContactRefitted>(&ladder.steps.at(0).steps.at(0));
    return refitted && refitted->by == Fitting::filler;
  });
}

}  // namespace

TEST_CASE("adapt: a filler strip closes up to 3 in, no hole that wants a wider piece") {
  CHECK(offers_filler(2 * kMillimetresPerInch));
  CHECK_FALSE(offers_filler(9 * kMillimetresPerInch));
}
