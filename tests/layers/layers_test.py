"""The layering check finds what it is there to find: each planted violation, and nothing else."""
import pathlib
import tempfile
import unittest

from layers import faults_of

FINE = {
    "base/length.h": "// Lengths.\n",
    "room/survey.h": '// The survey.\n#include "base/length.h"\n',
    "solid/cut.cpp": "// Cuts.\n#include <CGAL/Polygon_2.h>\n",
    "sheet/text.cpp": '// Text; no std::cout here.\n#include <nlohmann/json.hpp>\n'
                      'const char* kSays = "std::cout << 1";\n',
    "main.cpp": '// Runs.\n#include "command/run.h"\n',
}
PLANTED = [
    ("room/survey.h", '#include "fit/fit.h"', "room may not see fit"),
    ("fit/fit.cpp", '#include "fasten/drill.h"', "fit may not see fasten"),
    ("survey/report.h", '#include "job/job.h"', "survey may not see job"),
    ("sheet/room_text.cpp", '#include "job/job.h"', "sheet may not see job"),
    ("base/length.h", '#include "command/run.h"', "base may not see command"),
    ("main.cpp", '#include "fit/fit.h"', "main.cpp may see only command and base"),
    ("fit/fit.cpp", '#include "length.h"', '"length.h" is in no folder of src/'),
    ("fit/fit.cpp", "#include <CGAL/Polygon_2.h>", "CGAL may not be seen here"),
    ("solid/cut.h", "#include <CGAL/Polygon_2.h>", "CGAL may not be seen here"),
    ("survey/adjustment.h", "#include <Eigen/Dense>", "Eigen may not be seen here"),
    ("fasten/beam.cpp", "#include <Eigen/Dense>", "Eigen may not be seen here"),
    ("command/check.cpp", "#include <toml++/toml.h>", "toml++ may not be seen here"),
    ("main.cpp", "#include <CLI/CLI.hpp>", "CLI11 may not be seen here"),
    ("command/check.cpp", "#include <nlohmann/json.hpp>", "json may not be seen here"),
    ("sheet/answer.h", "#include <nlohmann/json.hpp>", "json may not be seen here"),
    ("fit/fit.cpp", "#include <fstream>", "files may not be seen here"),
    ("survey/notes.cpp", 'auto f = fopen("x", "r");', "files may not be seen here"),
    ("fit/fit.cpp", "#include <iostream>", "printing may not be seen here"),
    ("job/room.cpp", 'fmt::print("x");', "printing may not be seen here"),
    ("command/check.cpp", "#include <cairo/cairo.h>", "cairo may not be seen here"),
]


def faults_with(files):
    with tempfile.TemporaryDirectory() as root:
        for name, text in files.items():
            path = pathlib.Path(root, "src", name)
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text)
        return faults_of(root)[0]


class Layers(unittest.TestCase):
    def test_a_tree_in_order_has_no_fault(self):
        self.assertEqual(faults_with(FINE), [])

    def test_each_planted_violation_is_found_and_placed(self):
        for name, line, what in PLANTED:
            with self.subTest(file=name, line=line[:40]):
                self.assertEqual(faults_with({**FINE, name: "// A file.\n" + line}),
                                 [f"src/{name}:2: {what}"])

    def test_a_folder_that_is_no_layer_and_a_file_too_long_are_found(self):
        self.assertEqual(faults_with({"tools/x.cpp": "// X.\n"}), ["src/tools/x.cpp:1: tools is no layer"])
        self.assertEqual(faults_with({"fit/x.cpp": "// X.\n" * 401}), ["src/fit/x.cpp:401: over 400 lines"])

    def test_a_file_that_does_not_say_what_it_is_for_is_found(self):
        self.assertEqual(faults_with({"fit/fit.h": "#pragma once\n"}),
                         ["src/fit/fit.h:1: the first line does not say what the file is for"])

    def test_cairo_may_be_seen_in_one_file_only(self):
        text = "// Draws.\n#include <cairo/cairo.h>\n"
        self.assertEqual(faults_with({"sheet/a.cpp": text}), [])
        self.assertEqual(faults_with({"sheet/a.cpp": text, "sheet/b.cpp": text}),
                         ["src/sheet/b.cpp:1: cairo may be seen in one file only"])

    def test_two_types_of_one_name_are_found(self):
        one = "// One.\nnamespace nook {\nstruct Draft {\n  int a;\n};\n}\n"
        files = {"fit/a.h": one, "shop/b.h": one.replace("struct Draft", "enum class Draft : int")}
        self.assertEqual(faults_with(files),
                         ["src/shop/b.h:3: nook::Draft is also a type in src/fit/a.h:3"])

    def test_types_that_only_seem_to_have_one_name_are_let_be(self):
        for other in ["// In comments struct Draft {\nnamespace nook {\nstruct Draft;\n}\n",
                      "// Unnamed.\nnamespace nook {\nnamespace {\nstruct Draft {};\n}\n}\n",
                      "// Of another space.\nnamespace nook::safe {\nclass Draft final : X {};\n}\n",
                      "// Inside.\nnamespace nook {\nstruct Plan {\n  struct Draft {};\n};\n"
                      "struct Plan::Sketch {};\nvoid f() {\n  struct Draft {};\n}\n}\n"]:
            one = "// One.\nnamespace nook {\nstruct Draft {};\n}\n"
            self.assertEqual(faults_with({"fit/a.h": one, "shop/b.h": other}), [], other)


if __name__ == "__main__":
    unittest.main()
