"""Guided entry: what a tired person types is taken back, asked again or refused, never misplaced."""

import math
import pathlib
import re
import tempfile
import unittest

from entry_test import FLOOR, OPENING, enter, room_of

# Past the diagonals, to the levels held plumb.
TO_LEVELS = OPENING + FLOOR + ["skip"] * 3


class Slips(unittest.TestCase):
    def setUp(self):
        self.holder = tempfile.TemporaryDirectory()
        self.folder = pathlib.Path(self.holder.name, "job")

    def tearDown(self):
        self.holder.cleanup()

    def levels(self, *lines):
        done = enter(self.folder, TO_LEVELS + list(lines) + ["done"])
        return done.stdout, room_of(self.folder)["wall"][0].get("level", [])

    def test_a_gap_without_its_end_is_not_taken(self):
        said, levels = self.levels("3/16", "3/16 bottom")
        self.assertIn("at which end it gaps, top or bottom", said)
        self.assertEqual([(level["gap"], level["gap_at"]) for level in levels], [("3/16", "bottom")])

    def test_no_gap_needs_no_end(self):
        _, levels = self.levels("0")
        self.assertEqual(levels[0]["gap"], "0")

    def test_a_doubted_level_can_be_typed_anew(self):
        said, levels = self.levels("6 top", "1/8 bottom")
        self.assertIn("read again?", said)
        self.assertEqual(levels[0]["gap_at"], "bottom")
        self.assertEqual(levels[0]["gap"][0], {"is": "6", "struck": True, "note": "read again"})
        self.assertEqual(levels[0]["gap"][1], "1/8")

    def test_a_level_again_at_its_other_end_does_not_turn_the_first(self):
        said, levels = self.levels("1/8 bottom", "again", "1/8 top", "1/8 bottom")
        self.assertIn("it gapped at the bottom before", said)
        self.assertEqual((levels[0]["gap"], levels[0]["gap_at"]), (["1/8", "1/8"], "bottom"))

    def test_a_square_without_its_end_is_not_taken(self):
        done = enter(self.folder, OPENING + ["square left/right, 8, 24, 9/16", "done"])
        self.assertIn("at which end it gaps, tip or heel", done.stdout)
        self.assertNotIn("square", room_of(self.folder)["corner"][0])

    def test_a_doubted_reading_is_not_written_at_another_place(self):
        done = enter(self.folder, OPENING + FLOOR + ["60 5/8", "59 5/8", "again", "60 9/16", "done"])
        self.assertIn("left out: 59 5/8", done.stdout)
        self.assertEqual(room_of(self.folder)["corner"][0]["diagonals"], [["36", "48", ["60 5/8", "60 9/16"]]])

    def test_back_after_skip_asks_what_was_skipped(self):
        done = enter(self.folder, OPENING[:4] + ["skip", "back", "5 1/4, 9/16", "done"])
        self.assertIn("it was skipped", done.stdout)
        left = room_of(self.folder)["wall"][0]
        self.assertEqual((left["length"], left["baseboard"]["height"]), ("118 3/8", "5 1/4"))

    def test_a_board_as_high_as_it_should_be_thick_is_not_taken(self):
        done = enter(self.folder, OPENING[:4] + ["9/16, 5 1/4", "done"])
        self.assertIn("thicker than it is high", done.stdout)
        self.assertNotIn("baseboard", room_of(self.folder)["wall"][0])

    def test_a_reading_at_the_board_says_so_in_a_word(self):
        enter(self.folder, OPENING + FLOOR)
        done = enter(self.folder, ["plumb left, 24, 2, 1 1/2, 48, 2 1/16",
                                   "plumb left, 24, 2, 1 1/2 board, 48, 2 1/16",
                                   "plumb left, 60, 3, 2 1/16 wall, 48, 2 1/16", "done"])
        said = " ".join(done.stdout.split())
        self.assertIn("say 'board' behind the reading where it reached the baseboard", said)
        lines = [plumb["line"][0][1] for plumb in room_of(self.folder)["wall"][0]["plumb"]]
        self.assertEqual(lines, [{"is": "1 1/2", "on": "baseboard"}, {"is": "2 1/16", "on": "wall"}])

    def test_a_size_that_rooms_hardly_have_is_asked_again(self):
        done = enter(self.folder, OPENING[:3] + ["1183 3/8", "118 3/8", "52, 9/16", "5 1/4, 9/16", "96 9/16", "done"])
        said = " ".join(done.stdout.split())
        self.assertIn('a wall of 1183 3/8" is unusual: read again? Type the reading, or keep.', said)
        self.assertIn('a baseboard\'s height of 52" is unusual', said)
        self.assertEqual(said.count("is unusual"), 2)
        left = room_of(self.folder)["wall"][0]
        self.assertEqual(left["length"], [{"is": "1183 3/8", "struck": True, "note": "read again"}, "118 3/8"])
        self.assertEqual(left["baseboard"]["height"], "5 1/4")

    def test_an_unusual_size_can_be_kept(self):
        enter(self.folder, OPENING[:3] + ["1183 3/8", "keep", "done"])
        self.assertEqual(room_of(self.folder)["wall"][0]["length"], "1183 3/8")

    def test_no_line_is_asked_for_beyond_a_wall_or_in_its_far_corner(self):
        short = ["inch", "block", "left, right", "49", "skip", "50 1/4", "skip"]
        asked = " ".join(enter(self.folder, short + ["skip"] * 30).stdout.split())
        for wall, end in (("left", 49), ("right", 50.25)):
            places = [int(part.split()[0]) for part in asked.split(f"laser along the {wall} wall, 39 up: line to wall ")[1:]]
            self.assertGreaterEqual(len(places), 3)
            self.assertLess(max(places), end - 1)

    def test_the_example_of_a_diagonal_is_what_a_square_corner_gives(self):
        alcove = ["inch", "block", "left, back, right", "24", "skip", "50", "skip", "24", "skip"]
        asked = " ".join(enter(self.folder, alcove + FLOOR + ["done"]).stdout.split())
        self.assertRegex(asked, r"12 along the left wall to one 16 along the back wall[^?]*\? like 20 >")

    def test_a_gross_diagonal_is_foretold_by_the_law_of_cosines(self):
        for first, wrong in ((60, "10"), (60, "1"), (60, "119"), (57, "10"), (64, "83")):
            self.folder = pathlib.Path(self.holder.name, f"{first} {wrong}")
            said = enter(self.folder, OPENING + FLOOR + [str(first)] * 2 + [wrong, "done"]).stdout
            cosine = (36**2 + 48**2 - first**2) / (2 * 36 * 48)
            by_hand = math.sqrt(2 * 60**2 * (1 - cosine))
            whole, top, bottom = re.search(rf'{wrong}"; expected (\d+) (\d+)/(\d+)"', said).groups()
            self.assertAlmostEqual(int(whole) + int(top) / int(bottom), by_hand, delta=1 / 16, msg=said)

    def test_each_way_to_set_the_tape_is_explained(self):
        said = enter(self.folder, ["inch", "?", "done"]).stdout
        for way in ("bent:", "case:", "block:", "burned:"):
            self.assertIn("  " + way if way != "burned:" else way, said)

    def test_a_diagonal_is_sketched_with_the_first_wall_on_the_left_hand(self):
        # From above, the room below: who faces the corner at the upper left has the wall that runs
        # down on the left hand.
        sketch = enter(self.folder, OPENING + FLOOR + ["?", "done"]).stdout.split("seen from above")[1].splitlines()
        corner = next(k for k, line in enumerate(sketch) if line.startswith("      o"))
        self.assertIn("second wall", sketch[corner])
        self.assertTrue(any(line.startswith("      v  the first wall") for line in sketch[corner + 1:]))


if __name__ == "__main__":
    unittest.main()
