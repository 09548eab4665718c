// Reads a published table: one line a case, words between blanks, # for a remark.
#pragma once

#include <string>
#include <vector>

using TableRow = std::vector<std::string>;

/// The rows of tests/reference/<file>; never empty, or the test program stops.
std::vector<TableRow> reference_table(const std::string& file);
