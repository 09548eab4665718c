// The page of the cautions says what the tables say.
#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <fstream>
#include <set>

#include "safety/caution.h"
#include "safety/limit.h"
#include "source_dir.h"

namespace nook::test {
namespace {

std::set<std::string> rows_of_page() {
  std::ifstream page(std::string(NOOKFIT_SOURCE_DIR) + "/docs/cautions.md");
  REQUIRE(page.good());
  std::set<std::string> rows;
  for (std::string line; std::getline(page, line);)
    if (line.starts_with("| `")) CHECK(rows.insert(line).second);
  return rows;
}

std::set<std::string> rows_of_tables() {
  std::set<std::string> rows;
  for (const Limit& l : limits())
    rows.insert(fmt::format("| `{}` | {} | {} | {} | {} |", l.id, published(l), l.says, l.source,
                            words(l.known)));
  for (const CautionKind& kind : caution_kinds())
    rows.insert(fmt::format("| `{}` | {} | {} |", kind.id, words(kind.worst), kind.checks));
  return rows;
}

}  // namespace

TEST_CASE("cautions page: every limit and every caution as in the tables, and nothing else") {
  const auto page = rows_of_page(), tables = rows_of_tables();
  for (const std::string& row : tables) {
    INFO(row);
    CHECK(page.count(row) == 1);
  }
  for (const std::string& row : page) {
    INFO(row);
    CHECK(tables.count(row) == 1);
  }
}

}  // namespace nook::test
