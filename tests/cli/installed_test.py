"""Measured again mid-job: an opening between parts that are up joins the room at once."""

import json
import pathlib
import shutil
import subprocess
import tempfile
import unittest

from program import NOOKFIT, TOP

PROGRAM = str(TOP / NOOKFIT)


class Installed(unittest.TestCase):
    def setUp(self):
        self.holder = tempfile.TemporaryDirectory()
        self.addCleanup(self.holder.cleanup)

    def answer(self, command, opening=None):
        folder = pathlib.Path(self.holder.name, "job")
        shutil.rmtree(folder, ignore_errors=True)
        shutil.copytree(TOP / "rooms" / "lookout", folder)
        if opening:
            with open(folder / "room.toml", "a", encoding="utf-8") as file:
                file.write('\n[[installed]]\nparts = ["right ledger", "front panel"]\n'
                           f'openings = [{{ between = ["right ledger", "front panel"], {opening} }}]\n')
        done = subprocess.run([PROGRAM, command, str(folder), "--json"], capture_output=True,
                              text=True, timeout=300)
        return json.loads(done.stdout)

    def wedge(self, answer):
        return next(c for c in answer["contacts"]
                    if (c["part"], c["edge"], c["meets"]) == ("deck", "left", "right wall"))

    def foretold(self):
        """The opening in front as the readings so far foretell it, mm: said where one cannot be right."""
        suspects = self.answer("check", "out = '34', is = '60'")["room"]["suspects"]
        opening = [s for s in suspects if s["ids"] == ["installed[0].openings[0]"]]
        self.assertEqual(len(opening), 1, suspects)
        return opening[0]["likely_mm"]

    def test_an_opening_that_cannot_be_right_is_named_in_words(self):
        self.answer("check", "out = '34', is = '60'")  # writes the job
        said = subprocess.run([PROGRAM, "check", pathlib.Path(self.holder.name, "job")],
                              capture_output=True, text=True, timeout=300).stdout
        words = " ".join(said.split())
        self.assertIn("opening between right ledger and front panel (line", words)
        self.assertNotIn("openings[0]", words)

    def test_an_opening_moves_the_room_and_makes_it_surer(self):
        before = self.wedge(self.answer("fit"))
        mm = self.foretold()
        as_foretold = self.wedge(self.answer("fit", f"out = '34', is = '{mm:.3f} mm'"))
        self.assertAlmostEqual(as_foretold["gap_most_mm"], before["gap_most_mm"], delta=0.15)
        self.assertLess(as_foretold["sd_mm"], 0.8 * before["sd_mm"])
        wider = self.wedge(self.answer("fit", f"out = '34', is = '{mm + 2:.3f} mm'"))
        self.assertGreater(wider["gap_most_mm"], before["gap_most_mm"] + 0.7)
        self.assertLess(wider["gap_most_mm"], before["gap_most_mm"] + 2.2)

    def test_a_struck_opening_and_one_of_another_design_change_nothing(self):
        plain = self.answer("fit")
        for opening in ("out = '34', is = { is = '60', struck = true }",):
            self.assertEqual(self.wedge(self.answer("fit", opening)), self.wedge(plain))

    def test_adapt_leaves_what_is_up_as_it_is(self):
        job, new = (pathlib.Path(self.holder.name, name) for name in ("up", "new"))
        shutil.copytree(TOP / "rooms" / "lookout", job)
        plain = self.adapted(job, new)
        self.assertIn("front panel", plain)
        with open(job / "room.toml", "a", encoding="utf-8") as file:
            file.write('\n[[installed]]\nparts = ["front panel"]\n')
        self.assertNotIn("front panel", self.adapted(job, pathlib.Path(self.holder.name, "newer")))

    def adapted(self, job, new):
        """The parts that adapt moves or cuts."""
        done = subprocess.run([PROGRAM, "adapt", str(job), "-o", str(new), "--json"],
                              capture_output=True, text=True, timeout=300)
        return [c["part"] for c in json.loads(done.stdout)["changes"]]


if __name__ == "__main__":
    unittest.main()
