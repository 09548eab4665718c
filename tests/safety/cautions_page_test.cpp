// The page of the cautions says what the tables say.
#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <fstream>
#include <set>

#include "safety/caution.h"
#include "safety/limit.h"
#include "safety/source.h"
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
  for (const NamedSource& source : named_sources())
    rows.insert(
        fmt::format("| `{}` | {} | {} |", source.caution, source.document, words(source.known)));
  return rows;
}

}  // namespace

TEST_CASE("cautions page: a document from memory says so wherever it is cited") {
  for (std::size_t k = 0; k < named_sources().size(); ++k) {
    const NamedSource& source = named_sources()[k];
    const std::string said = cited(static_cast<From>(k));
    INFO(said);
    CHECK(said.starts_with(source.document));
    CHECK((said.find("(from memory)") != std::string::npos) ==
          (source.known == Known::from_memory));
  }
  CHECK(cited(From::toy_chests) == "ASTM F963, 4.27, toy chests (from memory)");
}

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
