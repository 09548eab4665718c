// Age groups of the playground handbook.
#include "safety/audience.h"

#include "safety/limit.h"

namespace nook::safe {
namespace {

// Whether ages from..to take in any of low..high: a stretch of them, or an only age on the border.
bool takes_in(double from, double to, double low, double high) {
  return from == to ? from >= low && from <= high : from < high && to > low;
}

}  // namespace

Audience audience_of(const Use& use) {
  Audience a;
  a.stated = use.by.has_value();
  a.children = use.by != User::adult;
  a.ages = a.children && use.ages[0] && use.ages[1];
  a.purpose = use.purpose;
  a.mattress_stated = use.mattress.has_value();
  a.mattress = a.mattress_stated ? use.mattress->mm : 0;
  if (!a.ages) return a;
  a.youngest = *use.ages[0], a.oldest = *use.ages[1];
  const double two = limit(Of::toddler_end).value, five = limit(Of::preschool_end).value;
  a.toddlers = a.youngest < two;
  a.preschool = takes_in(a.youngest, a.oldest, two, five);
  a.school = takes_in(a.youngest, a.oldest, five, limit(Of::school_end).value);
  return a;
}

}  // namespace nook::safe
