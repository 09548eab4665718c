// The three numbers to stop at, on the sample jobs.
#include "sheet/stop_numbers.h"

#include <catch2/catch.hpp>
#include <regex>

#include "base/measured.h"
#include "sheet/fit_words.h"
#include "sheet/sample_job.h"

using namespace nook;

TEST_CASE("stop numbers: a gap is larger than its give or take and says its height") {
  int gaps = 0;
  for (const char* name : {"lookout", "window-bench", "corner-desk"}) {
    const SheetJob& job = sample_of(name).job();
    for (int wall = 0; wall < static_cast<int>(job.scene.room.walls.size()); ++wall)
      for (const std::string& number : stop_numbers(job, wall)) {
        if (number.rfind("GAP", 0) != 0) continue;
        ++gaps;
        INFO(name << ": " << number);
        CHECK(std::regex_search(number, std::regex(R"( up[,.])")));
        const ContactFit* told = nullptr;
        for (const ContactFit& contact : job.fit().contacts)
          if (number.find(contact_place(contact)) != std::string::npos &&
              (!told || contact.gap.most > told->gap.most))
            told = &contact;
        REQUIRE(told);
        CHECK(told->gap.most > kTwoSided95 * told->gap_sd);
      }
  }
  CHECK(gaps > 0);
}
