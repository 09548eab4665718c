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

TEST_CASE("limits: said in the job's own unit, the published figure behind it where it differs") {
  const Rounding inch = usual_rounding(Unit::inch), mm = usual_rounding(Unit::mm);
  const auto said = [](Of which, Rounding rounding) { return published(limit(which), rounding); };
  CHECK(said(Of::head_small, inch) == "3 1/2\"");
  CHECK(said(Of::barrier_school, inch) == "38\"");
  CHECK(said(Of::rung_even, inch) == "1/4\"");
  CHECK(said(Of::neck_width, inch) == "1 7/8\"");
  CHECK(said(Of::bed_wall_gap, inch) == "7/32\" (0.22 in)");
  CHECK(said(Of::bed_wall_small, inch) == "2 15/16\" (75 mm)");
  CHECK(said(Of::head_small, mm) == "89 mm (3.5 in)");
  CHECK(said(Of::bed_wall_small, mm) == "75 mm");
  CHECK(said(Of::guard_load, inch) == "200 lb");
  CHECK(said(Of::man, inch) == "196 lb (195.7 lb)");
  CHECK(said(Of::guard_load, mm) == "91 kg (200 lb)");
  CHECK(said(Of::room_load, inch) == "40 lb per square foot");
  CHECK(said(Of::room_load, mm) == "195 kg per square meter (40 lb per square foot)");
  CHECK(said(Of::neck_angle, mm) == "55 degrees");
}

}  // namespace nook::test
