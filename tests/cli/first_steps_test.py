"""The first minutes with the program: an empty folder, an empty file, a mark where there is no wall."""

import pathlib
import re
import unittest

from corner import room
from program import TOP, JobFolder, nookfit

DESIGN = """
corner = ["left", "back"]
[stock.ply]
kind = "plywood"
thickness = "3/4"
[[part]]
name = "shelf"
stock = "ply"
shape = { size = ["50", "11"] }
place = { at = ["11", "0", "48"], u = "+y", v = "-x" }
[[contact]]
part = "shelf"
edge = "left"
meets = "left wall"
[[contact]]
part = "shelf"
edge = "top"
meets = "back wall"
"""
THIRD = '[[contact]]\npart = "shelf"\nedge = "right"\nmeets = "right wall"\nby = "scribe"\n'


class FirstSteps(unittest.TestCase):
    def test_a_folder_without_a_room_is_told_how_to_begin(self):
        with JobFolder() as folder:
            said = nookfit("check", folder)
            self.assertEqual(said.returncode, 2)
            self.assertIn(f"help: 'nookfit survey {folder}' makes it", said.stderr)

    def test_an_empty_room_is_one_fault_not_one_for_each_mention_of_a_wall(self):
        with JobFolder(room="", design=DESIGN) as folder:
            said = nookfit("fit", folder).stderr
        self.assertEqual(said.count("error:"), 1, said)
        self.assertIn("[no-walls]", said)

    def test_the_measuring_sheet_takes_an_empty_room_as_none(self):
        with JobFolder(room="", design=DESIGN) as empty, JobFolder(design=DESIGN) as none:
            self.assertEqual(nookfit("survey", empty, "--sheet").stdout, nookfit("survey", none, "--sheet").stdout)
            self.assertIn("take a diagonal", nookfit("survey", none, "--sheet").stdout)

    def test_a_third_wall_that_no_room_names_is_not_left_out_of_the_sheet(self):
        # Without it the sheet asked for one drop to the floor and no diagonal at all.
        with JobFolder(design=DESIGN + THIRD) as folder:
            said = nookfit("survey", folder, "--sheet")
            self.assertEqual((said.returncode, said.stdout), (2, ""))
            self.assertIn("name all walls in room.toml, from left to right", said.stderr)
            walls = "".join(f'[[wall]]\nname = "{name}"\n' for name in ("left", "back", "right"))
            pathlib.Path(folder, "room.toml").write_text(
                walls + '[[corner]]\nwalls = ["left", "back"]\n[[corner]]\nwalls = ["back", "right"]\n')
            self.assertIn("take a diagonal", nookfit("survey", folder, "--sheet").stdout)

    def test_a_room_without_its_floor_is_told_so_once_and_first(self):
        # Each of the sample's 30 contacts had a line of its own, below three guards that no wall stood for.
        lookout, design = ((TOP / "rooms/lookout" / name).read_text() for name in ("room.toml", "design.toml"))
        before, rest = lookout.split("[floor]\n")
        with JobFolder(room=before + rest[rest.index("[ceiling]"):], design=design) as folder:
            said = nookfit("check", folder)
        self.assertEqual(said.returncode, 1)
        lines = said.stdout.splitlines()
        self.assertTrue(lines[0].endswith(": CANNOT TELL"), lines[0])
        self.assertTrue(lines[2].startswith("Missing; measure it first"), lines[2])
        self.assertIn("nothing says how high the level line is", lines[4])
        self.assertEqual(said.stdout.count("readings are missing"), 1)

    def test_a_job_behind_expect_is_told_to_stand_before_it(self):
        said = nookfit("room", "--expect", "left:50", "right:70", "rooms/lookout")
        self.assertEqual(said.returncode, 2)
        self.assertIn("'rooms/lookout' is no mark", said.stderr)
        self.assertIn("the job stands before --expect", said.stderr)

    def test_no_tape_is_foretold_to_a_mark_beyond_a_wall(self):
        with JobFolder(room=room()) as folder:
            said = nookfit("room", folder, "--expect", "left:50", "right:97", "height:30")
            self.assertEqual(said.returncode, 2)
            self.assertIn('the right wall is 96" long: it has no mark 97" along', said.stderr)
            self.assertEqual(nookfit("room", folder, "--expect", "left:50", "right:95", "height:30").returncode, 0)

    def test_the_last_tape_before_cutting_stays_off_the_other_corner(self):
        # The back wall is 1202 mm long, and its ledger reaches to both corners.
        said = " ".join(nookfit("check", "rooms/window-bench").stdout.split())
        along = re.search(r"a straight tape from \d+ mm along the left wall to (\d+) mm along the back wall", said)
        self.assertLessEqual(int(along.group(1)), 1152)


if __name__ == "__main__":
    unittest.main()
