"""adapt through the command: what changes in the text, what it says, what fits afterwards."""

import difflib
import json
import pathlib
import shutil
import subprocess
import tempfile
import unittest

from program import JOBS, NOOKFIT, TOP

PROGRAM = str(TOP / NOOKFIT)


def run(*words):
    return subprocess.run([PROGRAM, *map(str, words)], capture_output=True, text=True, timeout=300)


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

    def test_the_ladder_on_carpet_is_made_longer_below_its_first_rung(self):
        # Rung tops at 11, 22, 33, 44, the deck 55: pressed 3/8 by a person the last step is 11 3/8.
        folder = pathlib.Path(self.holder.name, "ladder")
        shutil.copytree(TOP / "rooms" / "lookout", folder)
        rungs = [c for c in json.loads(self.said["lookout"].stdout)["changes"]
                 if "last step" in c["why"]]
        self.assertEqual([c["kind"] for c in rungs], ["lengthen"])
        gone, come = self.lines("lookout")
        self.assertTrue(any("length = '80'" in line for line in gone), gone)
        self.assertTrue(any("length = '80 " in line for line in come), come)

    def test_pages_keep_80_columns(self):
        with tempfile.TemporaryDirectory() as folder:
            for job in JOBS:
                page = run("adapt", TOP / "rooms" / job, "-o", pathlib.Path(folder, job)).stdout
                name = str(pathlib.Path(folder, job))
                wide = [line for line in page.splitlines() if len(line) > 80 and name not in line]
                self.assertEqual(wide, [])


if __name__ == "__main__":
    unittest.main()
