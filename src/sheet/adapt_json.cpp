// Changes, what stands against a fit, and what the readings leave open.
#include "sheet/adapt_json.h"

#include <nlohmann/json.hpp>

namespace nook {

std::string adapt_json_text(const AdaptAnswer& adapted, const std::string& job,
                            const std::string& reading) {
  Json json = opening("adapt", job, adapted.fit.verdict);
  json["changes"] = Json::array();
  for (const Change& change : adapted.changes)
    json["changes"].push_back({{"part", change.part},
                               {"kind", change.kind},
                               {"why", change.why},
                               {"before", change.before},
                               {"after", change.after}});
  json["contradictions"] = Json::array();
  for (const Contradiction& c : adapted.contradictions)
    json["contradictions"].push_back(
        {{"wish", c.wish},
         {"against", c.against.empty() ? Json(nullptr) : Json(c.against)},
         {"by_mm", c.by_mm},
         {"settled_by", c.kind.empty() ? Json(nullptr) : Json(c.part + ", " + c.kind)}});
  json["open"] = adapted.open;
  const std::string& next = reading.empty() ? adapted.reading : reading;
  json["reading"] = next.empty() ? Json(nullptr) : Json(next);
  return dumped(json);
}

}  // namespace nook
