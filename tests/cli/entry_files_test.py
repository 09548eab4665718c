"""Guided entry into files that somebody else wrote, or writes meanwhile: every answer goes where it belongs."""

import os
import pathlib
import select
import subprocess
import tempfile
import tomllib
import unittest

from entry_test import PROGRAM, enter, room_of
from program import TOP

TWO_WALLS = '[[wall]]\nname = "left"\nlength = "118"\n[[wall]]\nname = "right"\nlength = "96"\n'
HEAD = 'units = "inch"\n[tape]\ncorner = "block"\n'
FLOOR = ('[floor]\ndown = [["left", "6", "4", "40"], ["left", "60", "4", "40"], ["left", "110", "4", "40"],\n'
         '  ["right", "6", "4", "40"], ["right", "60", "4", "40"], ["right", "90", "4", "40"]]\n')


class Meanwhile:
    """An entry whose prompts are waited for, so that the file can be changed while one waits."""

    def __init__(self, folder):
        self.process = subprocess.Popen([PROGRAM, "survey", str(folder)], stdin=subprocess.PIPE,
                                        stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, bufsize=1)
        self.said = self.prompt()

    def prompt(self):
        text = ""
        while not text.endswith("\n> ") and select.select([self.process.stdout], [], [], 30)[0]:
            got = os.read(self.process.stdout.fileno(), 65536).decode()
            if not got:
                break
            text += got
        return text

    def type(self, line):
        self.process.stdin.write(line + "\n")
        self.process.stdin.flush()
        self.said = self.prompt()

    def end(self):
        out, _ = self.process.communicate("done\n")
        return self.process.returncode, out


class Files(unittest.TestCase):
    def setUp(self):
        self.holder = tempfile.TemporaryDirectory()
        self.folder = pathlib.Path(self.holder.name, "job")

    def tearDown(self):
        self.holder.cleanup()

    def write(self, text):
        self.folder.mkdir(exist_ok=True)
        (self.folder / "room.toml").write_text(text)

    def asked(self):
        """Which question comes after how many are skipped."""
        return enter(self.folder, ["skip"] * 80).stdout.split("\n> ")

    def answer(self, question, *lines):
        before = next(k for k, text in enumerate(self.asked()) if question in " ".join(text.split()))
        return enter(self.folder, ["skip"] * before + [*lines, "done"])

    def test_what_an_editor_saved_while_a_question_waited_stays(self):
        self.write(HEAD + TWO_WALLS)
        entry = Meanwhile(self.folder)
        self.assertIn("Baseboard on the left wall", entry.said)
        file = self.folder / "room.toml"
        file.write_text("# remarked in an editor\n" + file.read_text().replace('"118"', '"118 3/8"'))
        entry.type("5 1/4, 9/16")
        entry.end()
        text = file.read_text()
        self.assertIn("# remarked in an editor", text)
        room = room_of(self.folder)
        self.assertEqual((room["wall"][0]["length"], room["wall"][0]["baseboard"]["height"]), ("118 3/8", "5 1/4"))

    def test_an_answer_that_the_file_has_meanwhile_is_left_out_aloud(self):
        self.write(HEAD + TWO_WALLS)
        entry = Meanwhile(self.folder)
        file = self.folder / "room.toml"
        board = "baseboard = { height = '4', thickness = '1/2' }"
        file.write_text(file.read_text().replace('"118"', '"118"\n' + board))
        entry.type("5 1/4, 9/16")
        self.assertIn("left out, the file has been changed: 5 1/4, 9/16", " ".join(entry.said.split()))
        entry.end()
        self.assertEqual(room_of(self.folder)["wall"][0]["baseboard"]["height"], "4")

    def test_again_after_the_file_was_changed_asks_the_next_question(self):
        entry = Meanwhile(self.folder)
        entry.type("inch")
        entry.type("again")
        file = self.folder / "room.toml"
        file.write_text(file.read_text() + "# more\n")
        entry.type("?")
        self.assertEqual(entry.end()[0], 1)
        self.assertEqual(room_of(self.folder)["units"], "inch")

    def test_a_doubted_answer_is_named_where_the_entry_ends(self):
        done = enter(self.folder, ["inch", "block", "left, right", "3000", "done"])
        self.assertIn("left out: 3000", done.stdout)
        self.assertNotIn("length", room_of(self.folder)["wall"][0])

    def test_a_diagonal_goes_to_the_corner_it_was_asked_for(self):
        # The file names the second corner first, and one entry names its right wall first.
        walls = "".join(f'[[wall]]\nname = "{name}"\nlength = "{length}"\n'
                        for name, length in (("left", 60), ("back", 72), ("right", 60)))
        self.write(HEAD + walls + '[[corner]]\nwalls = ["back", "right"]\n[[corner]]\nwalls = ["back", "left"]\n')
        self.answer("36 along the left wall to one 48 along the back wall", "60")
        self.answer("36 along the back wall to one 48 along the right wall", "60 1/8")
        found = {tuple(corner["walls"]): corner["diagonals"]
                 for corner in room_of(self.folder)["corner"] if "diagonals" in corner}
        self.assertEqual(found, {("left", "back"): [["36", "48", "60"]], ("back", "right"): [["36", "48", "60 1/8"]]})

    def test_a_room_without_a_corner_gets_one_with_its_first_diagonal(self):
        self.write(HEAD + TWO_WALLS)
        said = self.answer("36 along the left wall to one 48 along the right wall", "60", "60 1/8")
        self.assertNotIn("not taken", said.stdout)
        corner, = room_of(self.folder)["corner"]
        self.assertEqual((corner["walls"], [d[2] for d in corner["diagonals"]]), (["left", "right"], ["60", "60 1/8"]))

    def test_a_corner_whose_marks_count_from_the_level_line_keeps_them(self):
        self.write(HEAD + TWO_WALLS + '[[corner]]\nwalls = ["left", "right"]\nfrom_line = "-30"\n'
                   'diagonals = [["36", "48", "60"]]\n' + FLOOR)
        self.answer("48 along the left wall to one 36 along the right wall", "60")
        first, second = room_of(self.folder)["corner"]
        self.assertEqual((first["from_line"], len(first["diagonals"]), second["diagonals"]),
                         ("-30", 1, [["48", "36", "60"]]))
    def test_studs_go_into_whatever_the_file_has_of_them(self):
        for studs, known in (("[wall.studs]\nkind = 'wood'\nspacing = '16'\n", 0),
                             ("studs = { kind = 'wood' }\n", 0),
                             ("[wall.studs]\nfound = []\n", 0),
                             ("[[wall.studs.found]]\ncentre = '15 1/4'\nheight = '48'\nby = 'nail'\n", 1)):
            with self.subTest(studs=studs):
                walls = TWO_WALLS.split("[[wall]]")
                self.write(HEAD + "[[wall]]" + walls[1] + studs + "[[wall]]" + walls[2])
                said = self.answer("Studs of the left wall", "30 5/8, 32 1/8 nail")
                self.assertNotIn("not taken", said.stdout)
                found = room_of(self.folder)["wall"][0]["studs"]["found"]
                self.assertEqual((len(found), found[-1]["edges"], found[-1]["by"]),
                                 (known + 1, ["30 5/8", "32 1/8"], "nail"))

    def test_words_in_a_remark_answer_no_first_question(self):
        self.write("# units of the [tape] are said below each [[wall]]\n")
        said = enter(self.folder, ["mm", "block", "left, right", "done"])
        self.assertEqual((room_of(self.folder)["units"], len(room_of(self.folder)["wall"])), ("mm", 2), said.stdout)

    def test_a_tape_in_one_line_is_not_asked_for_again(self):
        self.write('units = "inch"\ntape = { corner = "bent" }\n' + TWO_WALLS)
        self.assertNotIn("tape's end", self.asked()[0])

    def test_a_skipped_first_question_does_not_end_the_entry(self):
        done = enter(self.folder, ["inch", "skip", "left, right", "118", "done"])
        self.assertEqual(room_of(self.folder)["wall"][0]["length"], "118", done.stdout)

    def test_a_design_alone_says_its_walls_and_where_readings_matter(self):
        self.folder.mkdir()
        design = (TOP / "rooms/corner-desk/design.toml").read_text()
        corner = tomllib.loads(design)["corner"]
        (self.folder / "design.toml").write_text(design)
        said = enter(self.folder, ["inch", "block", ", ".join(corner), "done"])
        self.assertIn("like " + ", ".join(corner), said.stdout)
        with_design = " ".join("".join(self.asked()).split())
        (self.folder / "design.toml").unlink()
        self.assertNotEqual(with_design, " ".join("".join(self.asked()).split()))

    def test_examples_are_in_the_unit_of_the_file(self):
        self.write('units = "cm"\n[tape]\ncorner = "bent"\n[[wall]]\nname = "left"\n[[wall]]\nname = "right"\n')
        asked = "".join(self.asked())
        self.assertIn("like 300.7", asked)
        self.assertIn("like 37.0, 40.8 nail", asked)
        self.assertNotIn("like 3007", asked)

    def test_no_level_is_asked_for_beyond_a_wall_of_an_alcove(self):
        # The third wall runs along x as the first does: 607 long, it was asked for a level at 1200.
        said = " ".join("".join(enter(TOP / "rooms/window-bench", ["skip"] * 80).stdout).split())
        room = tomllib.loads((TOP / "rooms/window-bench/room.toml").read_text())
        for wall in room["wall"]:
            longest = wall["length"][0] if isinstance(wall["length"], list) else wall["length"]
            for part in said.split(f"plumb on the {wall['name']} wall ")[1:]:
                self.assertLess(float(part.split()[0]), float(longest.split()[0]), wall["name"])


if __name__ == "__main__":
    unittest.main()
