// One run of the browser over all pages, each in a frame of each width.
#include "sheet/browser.h"

#include <catch2/catch.hpp>
#include <fstream>
#include <iterator>
#include <map>
#include <sstream>

#include "sheet/svg.h"
#include "sheet/tool.h"
#include "source_dir.h"

namespace nook {
namespace {

const std::string kQuiet =
    "chromium --headless --no-sandbox --disable-gpu --disable-quic --no-first-run "
    "--disable-background-networking --disable-component-update --disable-sync "
    "--enable-logging=stderr --user-data-dir=";

std::string text_of(const std::string& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

// What it prints, and all it writes beside that.
struct Ran {
  std::string out, errors;
};
Ran ran(const TestFolder& folder, const std::string& arguments) {
  const std::string errors = folder / "errors.txt";
  const std::string out =
      output_of(kQuiet + (folder / "profile") + " " + arguments + " 2>" + errors);
  return {out, text_of(errors)};
}

// Lines of the page's console among them.
std::string console(const std::string& errors) {
  std::string lines, line;
  for (std::istringstream in(errors); std::getline(in, line);)
    if (line.find("CONSOLE") != std::string::npos) lines += line + "\n";
  return lines;
}

// Runs it, checks that its console stayed silent, and gives what it printed.
std::string run(const TestFolder& folder, const std::string& arguments) {
  const Ran all = ran(folder, arguments);
  CHECK(console(all.errors) == "");
  return all.out;
}

std::string unescaped(std::string text) {
  for (const auto& [from, to] : {std::pair{"&lt;", "<"}, std::pair{"&gt;", ">"},
                                 std::pair{"&nbsp;", " "}, std::pair{"&amp;", "&"}})
    for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos; at += 1)
      text.replace(at, std::string(from).size(), to);
  return text;
}

}  // namespace

nlohmann::json laid_out(const std::vector<std::string>& pages, const std::vector<int>& widths) {
  std::string frames;
  for (const std::string& page : pages)
    for (int width : widths)
      frames += "<iframe style=\"border:0\" height=\"900\" width=\"" + std::to_string(width) +
                "\" srcdoc=\"" + escaped(page) + "\"></iframe>\n";
  const TestFolder folder;
  const std::string file =
      folder.write("pages.html", "<!doctype html><meta charset=\"utf-8\"><script>" +
                                     text_of(NOOKFIT_SOURCE_DIR "/tests/sheet/measure_page.js") +
                                     "</script>\n" + frames);
  const std::string dom = run(folder, "--dump-dom file://" + file);
  const std::size_t from = dom.find("FOUND["), to = dom.rfind("DNUOF");
  REQUIRE(from != std::string::npos);
  return nlohmann::json::parse(unescaped(dom.substr(from + 5, to - from - 5)));
}

std::string heard(const std::string& page) {
  const TestFolder folder;
  return console(ran(folder, "--dump-dom file://" + folder.write("page.html", page)).errors);
}

std::string printed(const std::string& html_file, const std::string& pdf_file) {
  const TestFolder folder;
  run(folder, "--no-pdf-header-footer --print-to-pdf=" + pdf_file + " file://" + html_file);
  return pdf_file;
}

}  // namespace nook
