"""Two walls of a room are no gap of anybody's making."""

import unittest

from program import JobFolder, answer

ROOM = """units = "mm"
[[wall]]
name = "left"
[[wall]]
name = "back"
[[wall]]
name = "right"
[[corner]]
walls = ["left", "back"]
diagonals = [["300", "400", "494.57"]]
[[across]]
walls = ["left", "right"]
out = "440"
is = ["1193.51"]
[[across]]
walls = ["left", "right"]
out = "60"
is = ["1201.27"]
"""
# Fewer pieces than walls, and one edge that is cut to a wall.
DESIGN = """units = "mm"
corner = ["left", "back"]
[stock.ply]
kind = "plywood"
thickness = "18"
[[part]]
name = "seat"
stock = "ply"
shape = { size = ["1194", "400"] }
place = { at = ["0", "1197", "425"], u = "-y", v = "+x" }
[[contact]]
part = "seat"
edge = "right"
meets = "left wall"
by = "scribe"
"""


class WallsAlone(unittest.TestCase):
    def test_where_two_walls_meet_no_finger_is_caught(self):
        with JobFolder(room=ROOM, design=DESIGN) as job:
            said = answer("safety", job)
            for caution in said["cautions"]:
                self.assertFalse(caution["where"].startswith("between ")
                                 and caution["where"].count("wall") > 1, caution)


if __name__ == "__main__":
    unittest.main()
