"""adapt through the command: what changes in the text, what it says, what fits afterwards."""

import difflib
import json
import os
import pathlib
import pty
import subprocess
import tempfile
import unittest

from corner import LEVEL_FLOOR, Job, room
from program import JOBS, NOOKFIT, TOP, read_terminal

PROGRAM = str(TOP / NOOKFIT)

CARPET = """
covering = { kind = "carpet", thickness = "5/8" }
squash = [{ load = "180 lb", on = ["3", "1 1/4"], by = "3/8" }]
"""
LADDER = """
units = "inch"
corner = ["left", "right"]
[stock.ply]
kind = "plywood"
thickness = "3/4"
sheet = ["48", "96"]
[stock.rail]
kind = "lumber"
section = ["1 1/4", "3"]
lengths = ["96"]
[stock.rung]
kind = "lumber"
section = ["1 1/4", "1 1/4"]
lengths = ["96"]
[[part]]
name = "deck"
stock = "ply"
shape = { size = ["40", "30"] }
place = { at = ["0", "0", "54 1/4"], u = "+x", v = "+y" }
[[part]]
name = "rail"
stock = "rail"
shape = { length = "80" }
place = { at = ["0", "34", "0"], u = "+z", v = "-y" }
repeat = { count = 2, step = ["15 1/4", "0", "0"] }
group = "ladder"
[[group]]
name = "deck"
height_from = "level line"
[[group]]
name = "ladder"
height_from = "floor"
[[feet]]
part = "rail"
load = "200 lb"
"""
RUNG = """
[[part]]
name = "rung"
stock = "rung"
shape = { length = "14" }
place = { at = ["1 1/4", "32", "9 3/4"], u = "+x", v = "+y" }
repeat = { count = 4, step = ["0", "0", "11"] }
group = "ladder"
"""


def run(*words):
    return subprocess.run([PROGRAM, *map(str, words)], capture_output=True, text=True, timeout=300)


def said_on_a_terminal(folder, *options):
    """Standard error of adapting the lookout, where standard error is a terminal."""
    terminal, program = pty.openpty()
    run = subprocess.Popen([PROGRAM, "adapt", str(TOP / "rooms" / "lookout"), "-o", folder, *options],
                           stdout=subprocess.PIPE, stderr=program)
    os.close(program)
    said = read_terminal(terminal)
    run.communicate()
    return said.decode()


class Waiting(unittest.TestCase):
    def test_a_long_search_shows_how_far_it_is_and_wipes_it_away(self):
        with tempfile.TemporaryDirectory() as folder:
            said = said_on_a_terminal(folder + "/new")
        self.assertRegex(said, r"\d+ designs tried \.\.\.")
        self.assertTrue(said.endswith("\r\x1b[K"), said[-40:])

    def test_quiet_shows_nothing(self):
        with tempfile.TemporaryDirectory() as folder:
            self.assertEqual(said_on_a_terminal(folder + "/new", "--quiet"), "")


class Adapt(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.holder = tempfile.TemporaryDirectory()
        cls.new, cls.said = {}, {}
        for job in JOBS:
            cls.new[job] = pathlib.Path(cls.holder.name, job)
            cls.said[job] = run("adapt", TOP / "rooms" / job, "-o", cls.new[job], "--json")

    @classmethod
    def tearDownClass(cls):
        cls.holder.cleanup()

    def lines(self, job):
        """Lines of the old and the new design that the other has not."""
        old, new = [(folder / "design.toml").read_text().splitlines()
                    for folder in (TOP / "rooms" / job, self.new[job])]
        diff = list(difflib.ndiff(old, new))
        return [d[2:] for d in diff if d[0] == "-"], [d[2:] for d in diff if d[0] == "+"]

    def test_fit_of_the_new_job_is_what_adapt_says(self):
        for job in JOBS:
            with self.subTest(job=job):
                answer = json.loads(self.said[job].stdout)
                fit = json.loads(run("fit", self.new[job], "--json").stdout)
                self.assertEqual(fit["verdict"], answer["verdict"])
                self.assertEqual(self.said[job].returncode, 0 if fit["verdict"] == "fits" else 1)
                if fit["verdict"] == "cannot tell":
                    self.assertTrue(answer["reading"])
                if fit["verdict"] == "does not fit":
                    self.assertTrue(answer["contradictions"])

    def test_each_change_has_its_reason(self):
        for job in JOBS:
            for change in json.loads(self.said[job].stdout)["changes"]:
                with self.subTest(job=job, change=change):
                    self.assertNotEqual(change["before"], change["after"])
                    self.assertGreater(len(change["why"]), 20)

    def test_only_lines_of_what_changed_differ(self):
        keys = ("shape", "place", "cutouts", "by", "trim", "repeat", "[", "{")
        for job in JOBS:
            gone, come = self.lines(job)
            with self.subTest(job=job):
                for line in gone + come:
                    self.assertTrue(line.strip().startswith(keys), line)
                self.assertEqual([line[line.index("#"):] for line in gone if "#" in line],
                                 [line[line.index("#"):] for line in come if "#" in line])

    def test_the_room_is_carried_along_byte_for_byte(self):
        for job in JOBS:
            self.assertEqual((self.new[job] / "room.toml").read_bytes(),
                             (TOP / "rooms" / job / "room.toml").read_bytes())

    def test_its_own_answer_is_left_as_it_is(self):
        for job in JOBS:
            with self.subTest(job=job):
                again = pathlib.Path(self.holder.name, job + " again")
                said = json.loads(run("adapt", self.new[job], "-o", again, "--json").stdout)
                self.assertEqual(said["changes"], [])
                self.assertEqual((again / "design.toml").read_bytes(),
                                 (self.new[job] / "design.toml").read_bytes())

    def ladder(self, carpet=CARPET, rung=RUNG):
        """The changes to a ladder of four rungs up to a deck whose top is at 55."""
        job = Job(room(90, extra=LEVEL_FLOOR + carpet), LADDER + rung)
        self.addCleanup(job.dir.cleanup)
        new = pathlib.Path(job.dir.name, "new")
        answer = json.loads(run("adapt", job.folder, "-o", new, "--json").stdout)
        return answer["changes"], (new / "design.toml").read_text()

    def test_a_ladder_on_carpet_is_made_longer_below_its_first_rung(self):
        # Rung tops at 11, 22, 33, 44, the deck 55: pressed 3/8 by a person the last step is 11 3/8.
        changes, text = self.ladder()
        self.assertEqual([(c["part"], c["kind"], c["before"], c["after"]) for c in changes],
                         [("rail", "lengthen", '80" long', '80 3/8" long')])
        self.assertIn("the last step, from the top rung to the deck, is 11 3/8", changes[0]["why"])
        self.assertIn("length = '80 3/8'", text)
        self.assertIn("at = [\"1 1/4\", \"32\", '10 1/8']", text)  # 9 3/4 and 3/8

    def test_a_carpet_of_which_only_the_thickness_is_known_asks_for_a_stand_on_test(self):
        # Pressed by nothing to 5/8 the last step is 11 to 11 5/8: 11 1/4 at most is as the others.
        job = Job(room(90, extra=LEVEL_FLOOR + "\n" + CARPET.splitlines()[1] + "\n"), LADDER + RUNG)
        self.addCleanup(job.dir.cleanup)
        new = pathlib.Path(job.dir.name, "new")
        answer = json.loads(run("adapt", job.folder, "-o", new, "--json").stdout)
        self.assertEqual((answer["changes"], len(answer["open"])), ([], 1), answer)
        self.assertRegex(answer["reading"], r"stand on a block .*\[floor\] squash")
        page = " ".join(run("adapt", job.folder, "-o", new).stdout.split())
        self.assertIn("Take this reading: stand on a block", page)

    def test_a_ladder_on_a_bare_floor_is_left_as_it_is(self):
        self.assertEqual(self.ladder(carpet="")[0], [])

    def test_rungs_whose_last_step_is_shorter_are_spaced_anew(self):
        # Tops at 12, 24, 36, 48: the last step is 7. Five even steps of 11 from the floor.
        rung = RUNG.replace('"9 3/4"', '"10 3/4"').replace('step = ["0", "0", "11"]',
                                                           'step = ["0", "0", "12"]')
        changes, text = self.ladder(carpet="", rung=rung)
        self.assertEqual([(c["part"], c["kind"], c["after"]) for c in changes],
                         [("rung", "space anew", '11" apart')])
        self.assertIn("step = [\"0\", \"0\", '11']", text)
        self.assertIn("'9 3/4'", text)

    def test_pages_keep_80_columns(self):
        with tempfile.TemporaryDirectory() as folder:
            for job in JOBS:
                page = run("adapt", TOP / "rooms" / job, "-o", pathlib.Path(folder, job)).stdout
                name = str(pathlib.Path(folder, job))
                wide = [line for line in page.splitlines() if len(line) > 80 and name not in line]
                self.assertEqual(wide, [])


if __name__ == "__main__":
    unittest.main()
