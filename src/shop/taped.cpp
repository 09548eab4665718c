// A bare length as a reading of the job's tape.
#include "shop/taped.h"

#include <cmath>

#include "survey/worth.h"

namespace nook {
namespace {

Worth worth_of(const Survey& survey, Length length, Ends ends) {
  Reading reading;
  reading.value = length;
  reading.smallest_mark = survey.tape.read_to;
  return worth(survey, reading, ends);
}

}  // namespace

double sd_between_faces(const Survey& survey, Length length) {
  const Worth of = worth_of(survey, length, Ends::inside_corner);
  return std::hypot(of.sd, of.tape);
}

double sd_between_edges(const Survey& survey) {
  return worth_of(survey, {}, Ends::marks).sd;
}

}  // namespace nook
