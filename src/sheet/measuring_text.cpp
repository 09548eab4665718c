// Blanks to write in, numbered through.
#include "sheet/measuring_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "sheet/wrap.h"

namespace nook {
namespace {

constexpr const char *kBlank = "_________", *kShort = "_______";

std::string title_of(const MeasuringJob& job) {
  if (job.design && !job.design->title.empty()) return job.design->title;
  return job.survey.title.empty() ? "Room" : job.survey.title;
}

std::string ends_of(const Tape& tape) {
  switch (tape.corner) {
    case TapeEnd::bent:
      return "bent into the corner";
    case TapeEnd::case_length:
      return "with its case's length added";
    case TapeEnd::block:
      return "with a block in the corner";
    case TapeEnd::burned:
      return "held at a burned mark";
  }
  return "";
}

std::string minutes(double count) {
  return fmt::format("{:.0f} min", std::max(1.0, std::ceil(count - 0.01)));
}

// A blank for each number.
std::string blanks(const std::string& word, int numbers) {
  std::string text = "     " + word;
  for (int i = 0; i < numbers; ++i) text += std::string(" ") + (numbers > 1 ? kShort : kBlank);
  return text;
}

std::string step_text(const MeasuringStep& step, int number) {
  const std::string first = fmt::format("{:3}. ", number);
  if (!step.reading)
    return wrapped(step.what + " (" + minutes(step.minutes) + ")", kPageWidth, first);
  std::string text = wrapped(step.what, kPageWidth, first) + blanks("read ", step.numbers);
  if (step.twice) text += (step.numbers > 1 ? "\n" : "") + blanks("again", step.numbers);
  return text + "\n";
}

std::string opening_lines(const MeasuringJob& job, const std::vector<MeasuringStop>& stops,
                          const Style& style) {
  const std::size_t readings = job.plan.readings.size() + job.plan.ceiling.size();
  const double minutes = std::ceil(minutes_of(stops));
  if (readings == 0)
    return wrapped(
        fmt::format("About {:.0f} minutes. No reading is missing; look and list what follows. If "
                    "something stays open, 'nookfit check' says which reading would settle it.",
                    minutes),
        kPageWidth, "");
  std::string text = wrapped(
      fmt::format("About {:.0f} minutes, {:.0f} of them for {} {}. The tape is read to {}, "
                  "its end set {}.",
                  minutes, std::ceil(job.plan.minutes), readings,
                  readings == 1 ? "reading" : "readings",
                  with_unit(job.survey.tape.read_to, style.rounding), ends_of(job.survey.tape)),
      kPageWidth, "");
  text += wrapped(
      "Two blanks: nothing else checks that reading, so take it twice, its marks laid off anew.",
      kPageWidth, "");
  if (!job.plan.enough)
    text += wrapped(
        "These are as many readings as one takes in one go; they do not bring everything within "
        "its tolerance yet. Take them, then ask again.",
        kPageWidth, "");
  return text;
}

}  // namespace

Verdict measuring_verdict(const std::vector<MeasuringStop>& stops, Verdict room) {
  const auto waits = [](const MeasuringStep& step) { return step.needed; };
  const bool open = std::any_of(stops.begin(), stops.end(), [&](const MeasuringStop& stop) {
    return std::any_of(stop.steps.begin(), stop.steps.end(), waits);
  });
  return open ? worse(room, Verdict::cannot_tell) : room;
}

std::string measuring_text(const MeasuringJob& job, Verdict room, const Style& style) {
  const auto stops = measuring_stops(job, style.rounding);
  const Verdict verdict = measuring_verdict(stops, room);
  std::string text =
      fmt::format("Measuring sheet, {}: {}\n", title_of(job), headline(verdict, style));
  if (stops.empty()) return text + "\nNothing is left to measure for this design.\n";
  text += "\n" + opening_lines(job, stops, style);
  int number = 0;
  for (const MeasuringStop& stop : stops) {
    text += "\n" + stop.name + "\n";
    if (!stop.how.empty()) text += wrapped(stop.how, kPageWidth, "  ");
    for (const MeasuringStep& step : stop.steps) text += step_text(step, ++number);
  }
  return text;
}

std::string measuring_json(const MeasuringJob& job, Verdict room, const std::string& folder) {
  const auto stops = measuring_stops(job, job.survey.said());
  Json list = Json::array();
  for (const MeasuringStop& stop : stops) {
    Json steps = Json::array();
    for (const MeasuringStep& step : stop.steps) {
      Json one{{"what", step.what}, {"minutes", step.minutes}, {"reading", step.reading}};
      if (step.reading) one["twice"] = step.twice, one["gain"] = step.gain;
      steps.push_back(std::move(one));
    }
    list.push_back({{"name", stop.name}, {"how", stop.how}, {"steps", std::move(steps)}});
  }
  Json json = opening("survey", folder, measuring_verdict(stops, room));
  json["sheet"] = {{"minutes", minutes_of(stops)},
                   {"readings", job.plan.readings.size() + job.plan.ceiling.size()},
                   {"reading_minutes", job.plan.minutes},
                   {"enough", job.plan.enough},
                   {"stops", std::move(list)}};
  return dumped(json);
}

}  // namespace nook
