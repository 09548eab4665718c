"""adapt: what it leaves alone: cleats are no rungs, and work in the new folder is not written over."""

import json
import pathlib
import unittest

from corner import LEVEL_FLOOR, Job, room
from program import nookfit

# Two shelves 16 in apart, each on a cleat of 10 in along the right wall.
SHELVES = """
units = "inch"
corner = ["left", "right"]
[stock.ply]
kind = "plywood"
thickness = "3/4"
[stock.cleat]
kind = "lumber"
section = ["3/4", "1 1/2"]
[[part]]
name = "shelf"
stock = "ply"
shape = { size = ["30", "11"] }
place = { at = ["0", "0", "48"], u = "+x", v = "+y" }
repeat = { count = 2, step = ["0", "0", "16"] }
[[part]]
name = "cleat"
stock = "cleat"
shape = { length = "10" }
place = { at = ["0", "1/2", "46 1/2"], u = "+y", v = "+z" }
repeat = { count = 2, step = ["0", "0", "16"] }
"""
FACE = '[[contact]]\npart = "cleat"\nface = "back"\nmeets = "right wall"\n'
SCREWED = '[[fasten]]\npart = "cleat"\nto = "right wall"\nscrew = { gauge = 8, length = "2 1/2" }\n'
COPY = '[[contact]]\npart = "cleat 1"\nface = "back"\nmeets = "right wall"\n'


class Kept(unittest.TestCase):
    def job(self, design):
        job = Job(room(90, extra=LEVEL_FLOOR), design)
        self.addCleanup(job.dir.cleanup)
        return job.folder, pathlib.Path(job.dir.name, "new")

    def adapt(self, folder, new):
        return nookfit("adapt", str(folder), "-o", str(new), "--json")

    def test_cleats_that_hold_shelves_are_no_rungs(self):
        for how in (FACE, SCREWED, COPY):
            with self.subTest(how=how):
                answer = json.loads(self.adapt(*self.job(SHELVES + how)).stdout)
                self.assertEqual((answer["changes"], answer["contradictions"]), ([], []))

    def test_sticks_that_no_wall_holds_are_still_taken_for_rungs(self):
        answer = self.adapt(*self.job(SHELVES)).stdout
        self.assertIn("the last step, from the top cleat to the shelf 2", answer)

    def test_a_design_changed_in_the_new_folder_is_not_written_over(self):
        folder, new = self.job(SHELVES + FACE)
        self.adapt(folder, new)
        self.assertEqual(self.adapt(folder, new).returncode, 0)  # the same again loses nothing
        mine = (new / "design.toml").read_text() + "# mine\n"
        (new / "design.toml").write_text(mine)
        refused = self.adapt(folder, new)
        self.assertEqual(refused.returncode, 2)
        self.assertIn("design.toml is not what would be written over it", refused.stdout)
        self.assertEqual((new / "design.toml").read_text(), mine)

    def test_pieces_measured_in_the_new_folder_are_not_written_over(self):
        folder, new = self.job(SHELVES + FACE)
        (folder / "pieces.toml").write_text('units = "inch"\n')
        self.adapt(folder, new)
        mine = 'units = "inch"\n[[piece]]\npart = "shelf 1"\nwidths = [["1", "30"]]\n'
        (new / "pieces.toml").write_text(mine)
        self.assertEqual(self.adapt(folder, new).returncode, 2)
        self.assertEqual((new / "pieces.toml").read_text(), mine)


if __name__ == "__main__":
    unittest.main()
