// Published tables from disk.
#include "fasten/reference_table.h"
#include "source_dir.h"

#include <fstream>
#include <sstream>
#include <stdexcept>

std::vector<TableRow> reference_table(const std::string& file) {
  std::ifstream in(std::string(NOOKFIT_SOURCE_DIR "/tests/reference/") + file);
  std::vector<TableRow> rows;
  for (std::string line; std::getline(in, line);) {
    if (line.empty() || line[0] == '#') continue;
    std::istringstream words(line);
    TableRow row;
    for (std::string word; words >> word;) row.push_back(word);
    rows.push_back(row);
  }
  if (rows.empty()) throw std::runtime_error("no table " + file);
  return rows;
}
