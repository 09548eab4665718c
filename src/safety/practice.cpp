// What a careful person does anyway.
#include <algorithm>

#include "safety/checks.h"
#include "safety/source.h"

namespace nook::safe {
namespace {

bool cuts_walls(const Scene& scene) {
  const auto& fastenings = scene.in.design.fastenings;
  return std::any_of(fastenings.begin(), fastenings.end(),
                     [](const Fastening& f) { return !wall_named(f.to).empty(); });
}

bool presses_covering(const Scene& scene) {
  return std::any_of(scene.sink.begin(), scene.sink.end(),
                     [](Measured sink) { return sink.value > 0 || sink.sd > 0; });
}

// Nothing stands on the floor that hangs on walls alone.
bool stands(const Scene& scene) {
  const auto& design = scene.in.design;
  return !design.feet.empty() || (scene.in.fit && !scene.in.fit->floor.empty()) ||
         std::any_of(design.contacts.begin(), design.contacts.end(),
                     [](const Contact& contact) { return contact.meets == "floor"; });
}

}  // namespace

void practice(const Scene& scene, const std::vector<Deck>& decks,
              const std::vector<Ladder>& ladders, Cautions& cautions) {
  const std::string usual(words(Known::no_source));
  if (cuts_walls(scene))
    cautions.say(
        {"lead-paint",
         "walls that are drilled or sanded",
         {"In a house built before 1978 the paint may hold lead: test it first; drill wet, wear "
          "a mask, keep children out until it is wiped up.",
          {}},
         {},
         cited(From::lead_dust),
         {}});
  if (scene.audience.children)
    cautions.say(
        {"paint",
         "all pieces",
         {"Paint and varnish for children's things: at most {} of lead.", {Of::paint_lead}},
         {Of::paint_lead},
         "",
         {}});
  if (presses_covering(scene))
    cautions.say({"press-carpet",
                  "what stands on the covering",
                  {"Stand on it to press the covering down before it is screwed fast.", {}},
                  {},
                  usual,
                  {}});
  if (scene.in.survey.floor.heated)
    cautions.say(
        {"heated-floor",
         stands(scene) ? "what stands on the floor" : "the floor",
         {"The floor is heated: no screws or nails into it, they may hit a pipe or a cable. "
          "Hold what stands on it to the walls.",
          {}},
         {},
         usual,
         {}},
        stands(scene) ? Severity::caution : Severity::note);
  const bool climbed = !decks.empty() || !ladders.empty();
  if (climbed && !scene.in.design.fastenings.empty())
    cautions.say({"tighten-again",
                  "all screws",
                  {"Tighten the screws again after two weeks and then twice a year.", {}},
                  {},
                  usual,
                  {}});
}

}  // namespace nook::safe
