// Each limit of the table has a design just inside it and one just outside.
#include <catch2/catch.hpp>
#include <set>

#include "limit_rows.h"

namespace nook::test {
namespace {

std::vector<LimitRow> every_row() {
  std::vector<LimitRow> rows;
  for (const auto& part :
       {opening_rows(), guard_rows(), bed_rows(), ladder_rows(), load_rows(), room_rows()})
    rows.insert(rows.end(), part.begin(), part.end());
  return rows;
}

bool said(const Loft& loft, const LimitRow& row) {
  for (const Caution& caution : all(loft.answer(), row.id))
    if (words(caution.severity) == row.severity) return true;
  return false;
}

}  // namespace

TEST_CASE("limits: published - a design just outside has the caution, one just inside has not",
          "[reference]") {
  for (const LimitRow& row : every_row()) {
    INFO(limit(row.limit).id << " (" << limit(row.limit).source << "): " << row.inside << " / "
                             << row.outside);
    CHECK_FALSE(said(row.make(row.inside), row));
    CHECK(said(row.make(row.outside), row));
  }
}

TEST_CASE("limits: the two designs lie on both sides of the published figure, and near it") {
  for (const LimitRow& row : every_row()) {
    if (row.limit == Of::one_person) continue;  // two people lift twice as much
    const double value = limit(row.limit).value;
    INFO(limit(row.limit).id);
    CHECK(std::min(row.inside, row.outside) <= value);
    CHECK(std::max(row.inside, row.outside) >= value);
    CHECK(std::abs(row.outside - row.inside) < 0.06 * value + 0.05);
  }
}

TEST_CASE("limits: none of the table is left without a design") {
  std::set<std::string_view> tried{"paint-lead"};  // of the paint: no design states it
  for (const LimitRow& row : every_row()) tried.insert(limit(row.limit).id);
  for (const Limit& l : limits()) {
    INFO(l.id);
    CHECK(tried.count(l.id) == 1);
  }
}

TEST_CASE("limits: ids are kebab-case, each once, each with a source") {
  std::set<std::string_view> ids;
  for (const Limit& l : limits()) {
    INFO(l.id);
    CHECK(ids.insert(l.id).second);
    CHECK(l.id.find_first_not_of("abcdefghijklmnopqrstuvwxyz-") == std::string_view::npos);
    CHECK_FALSE(l.source.empty());
    CHECK((l.source == "chosen") == (l.known == Known::chosen));
  }
}

}  // namespace nook::test
