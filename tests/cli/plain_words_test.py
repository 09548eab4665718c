"""Words that a newcomer stumbled over: what nobody put together is said with the way to say it."""

import unittest

from corner import LEVEL_FLOOR, room
from program import JobFolder, nookfit

STUD = '[wall.studs]\nkind = "wood"\nfound = [{ edges = ["14 1/4", "15 3/4"], height = "40", by = "nail" }]'
# A cleat drawn 1/8 in into the left wall, with nothing that says what it is to meet.
CLEAT = """
units = "inch"
corner = ["left", "right"]
[stock.cleat]
kind = "lumber"
section = ["3/4", "1 1/2"]
[[part]]
name = "cleat"
stock = "cleat"
shape = { length = "20" }
place = { at = ["21", "-1/8", "46 1/2"], u = "-x", v = "+z" }
"""
SCREWED = """
[[contact]]
part = "cleat"
face = "back"
meets = "left wall"
[[fasten]]
part = "cleat"
to = "left wall"
screw = { gauge = 8, length = "2 1/2" }
load = "30 lb"
"""


def page(command, design, **files):
    with JobFolder(room=room(left=STUD, extra=LEVEL_FLOOR), design=design, **files) as folder:
        return " ".join(nookfit(*command.split(), folder).stdout.split())


class PlainWords(unittest.TestCase):
    def test_an_overlap_that_no_contact_speaks_of_says_how_to_speak_of_it(self):
        said = page("fit", CLEAT)
        self.assertIn("cleat and the left wall: they overlap by 1/8", said)
        self.assertIn("where they are to meet, say so by a [[contact]]", said)

    def test_one_screw_beside_its_load_is_to_be_two(self):
        said = page("drill", CLEAT + SCREWED)
        self.assertIn("one screw and a load beside it: the piece turns about it -> give it two", said)

    def test_lumber_of_unsaid_lengths_is_not_too_long_for_any_board(self):
        said = page("cut", CLEAT)
        self.assertIn("the design does not say what lengths it is sold in", said)
        self.assertNotIn("no board is long enough", said)

    def test_a_mark_on_the_plumb_line_is_not_set_back_by_a_hair(self):
        said = page("drill", CLEAT + SCREWED)
        self.assertNotRegex(said, r"[ ;:] 0: ")

    def test_a_room_of_which_nothing_is_known_has_one_empty_line_before_that(self):
        with JobFolder(room="") as folder:
            self.assertIn("CANNOT TELL\n\ncannot tell", nookfit("room", folder).stdout)


if __name__ == "__main__":
    unittest.main()
