"""Pieces as cut, by what goes wrong in a shop, and their guided entry; each through the command."""

import json
import math
import os
import pathlib
import random
import re
import select
import shutil
import signal
import subprocess
import tempfile
import time
import tomllib
import unittest

from corner import INCH, LEVEL_FLOOR, Job, room
from program import JOBS, NOOKFIT, TOP

PROGRAM = str(TOP / NOOKFIT)
BOARD = "baseboard = { height = '5 1/4', thickness = '9/16', starts = '0' }"

# A panel with a notch for the board, one twice as narrow beside it, and a tapered deck above.
DESIGN = """
units = "inch"
corner = ["left", "right"]
[stock.ply]
kind = "plywood"
thickness = "3/4"
sheet = ["48", "96"]
[[part]]
name = "panel"
stock = "ply"
shape = { size = ["36", "70"] }
place = { at = ["60", "0", "0"], u = "+y", v = "+z" }
[[part]]
name = "low panel"
stock = "ply"
shape = { size = ["20", "30"] }
place = { at = ["80", "0", "0"], u = "+y", v = "+z" }
[[part]]
name = "high panel"
stock = "ply"
shape = { size = ["24", "34"] }
place = { at = ["100", "0", "0"], u = "+y", v = "+z" }
[[part]]
name = "deck"
stock = "ply"
shape = { size = ["46", "36"] }
place = { at = ["0", "0", "80"], u = "+x", v = "+y" }
[[group]]
name = "deck"
tight_to = ["left wall"]
[[contact]]
part = "panel"
edge = "left"
meets = "left wall"
by = "notch"
[[contact]]
part = "low panel"
edge = "bottom"
meets = "floor"
[[contact]]
part = "high panel"
edge = "bottom"
meets = "floor"
[[contact]]
part = "deck"
edge = "bottom"
meets = "left wall"
[[contact]]
part = "deck"
edge = "left"
meets = "right wall"
by = "taper"
"""

# As needed: the notch is 9/16 + 1/8 wide and 5 1/4 + 1/8 high; the deck opens 36 tan 1.4 = 7/8.
RIGHT = {
    "panel": ("36", "36", "70", "70", "78 3/4", "78 3/4", [("lower left", "11/16", "5 3/8")]),
    "low panel": ("20", "20", "30", "30", "36 1/16", "36 1/16", []),
    "high panel": ("24", "24", "34", "34", "41 5/8", "41 5/8", []),
}


def piece(part, *sizes, up="up", spots=None):
    low, high, left, right, first, second, notches = sizes
    tall = spots or int(left.split()[0]) - 1
    text = (f'[[piece]]\npart = "{part}"\nshow_face = "{up}"\nwidths = [["1", "{low}"], '
            f'["{tall}", "{high}"]]\nheights = [["1", "{left}"], ["18", "{right}"]]\n'
            f'diagonals = ["{first}", "{second}"]\n')
    if notches:
        text += "notches = [" + ", ".join(
            f'{{ corner = "{corner}", width = "{width}", height = "{height}" }}'
            for corner, width, height in notches) + "]\n"
    return text


def cut(**changed):
    """pieces.toml of all pieces as needed, but for those given."""
    pieces = {**RIGHT, **{name.replace("_", " "): sizes for name, sizes in changed.items()}}
    return 'units = "inch"\n' + "".join(piece(name, *sizes) for name, sizes in pieces.items())


class Verify(unittest.TestCase):
    ROOM = room(91.4, extra=LEVEL_FLOOR, board=BOARD)

    def verified(self, pieces, part):
        job = Job(self.ROOM, DESIGN, pieces)
        self.addCleanup(job.dir.cleanup)
        self.answer = job.json(PROGRAM, "verify")
        return next(p for p in self.answer["pieces"] if p["part"] == part)

    def fault(self, pieces, part, kind):
        found = self.verified(pieces, part)
        self.assertEqual(found["verdict"], "does not fit", found)
        self.assertEqual(self.answer["verdict"], "does not fit")
        self.assertIn(kind, [f["kind"] for f in found["faults"]], found)
        return found, next(f for f in found["faults"] if f["kind"] == kind)

    def test_pieces_inside_tolerance_pass(self):
        self.verified(cut(), "panel")
        self.assertEqual([p["verdict"] for p in self.answer["pieces"]], ["fits"] * 3, self.answer)
        near = cut(panel=("36 1/16", "36", "70", "70 1/16", "78 3/4", "78 3/4",
                          [("lower left", "3/4", "5 3/8")]))
        self.assertEqual(self.verified(near, "panel")["verdict"], "fits")

    def test_a_forgotten_rip_is_still_as_wide_as_the_sheet(self):
        found, fault = self.fault(
            cut(panel=("48", "48", "70", "70", "84 7/8", "84 7/8", RIGHT["panel"][6])),
            "panel", "forgotten cut")
        self.assertRegex(fault["text"], r'still as wide as the sheet: 48", wanted 36"')
        trim = next(r for r in found["remedy"] if r["do"] == "trim")
        self.assertAlmostEqual(trim["by_mm"], 12 * INCH, delta=1.5)

    def test_a_notch_on_the_wrong_side_is_a_mirrored_piece(self):
        found, _ = self.fault(cut(panel=(*RIGHT["panel"][:6], [("lower right", "11/16", "5 3/8")])),
                              "panel", "mirrored")
        self.assertIn("cut again", [r["do"] for r in found["remedy"]])

    def test_a_notch_without_its_clearance(self):
        found, _ = self.fault(cut(panel=(*RIGHT["panel"][:6], [("lower left", "9/16", "5 1/4")])),
                              "panel", "notch without clearance")
        self.assertEqual(found["remedy"][0]["do"], "cut the notch larger")
        self.assertAlmostEqual(found["remedy"][0]["by_mm"], INCH / 8, delta=0.6)

    def test_diagonals_3_16_apart_on_36_by_70_are_205_out_of_square_in_70(self):
        found, fault = self.fault(
            cut(panel=("36", "36", "70", "70", "78 13/16", "78 5/8", RIGHT["panel"][6])),
            "panel", "out of square")
        # A parallelogram of 36 x 70 whose diagonals differ by 3/16: d1^2 - d2^2 = 4 x 36 x lean.
        d1, d2 = 78 + 13 / 16, 78 + 5 / 8
        lean = (d1 * d1 - d2 * d2) / (4 * 36)
        self.assertAlmostEqual(lean, 0.205, delta=0.0005)
        self.assertAlmostEqual(abs(fault["off_mm"]), lean * INCH, delta=0.02)
        self.assertNotAlmostEqual(abs(fault["off_mm"]), 3 / 32 * INCH, delta=1)

    def test_a_taper_the_wrong_way(self):
        # The room wants 46 at the left wall (its bottom edge) and 46 7/8 in front (its top).
        lines = 'units = "inch"\n' + piece("deck", "46 7/8", "46", "36", "36", "58 3/4", "58 3/4", [],
                                            spots=35)
        found, _ = self.fault(lines, "deck", "taper reversed")
        self.assertEqual(found["remedy"][-1]["do"], "cut again")

    def test_a_taper_the_right_way_passes(self):
        wide = 36 * math.tan(math.radians(1.4))
        one = math.hypot(46, 36)  # from its corner at the right wall in front to the other end
        sizes = [46 + wide * k / 36 for k in (1, 35)]
        exact = [f"{s:.4f}" for s in sizes]
        # Lower left (the corner) to upper right; upper left is `wide` beyond it.
        lines = 'units = "inch"\n' + piece("deck", *exact, "36", "36", f"{one:.4f}",
                                            f"{math.hypot(46 + wide, 36):.4f}", [], spots=35)
        self.assertEqual(self.verified(lines, "deck")["verdict"], "fits", self.answer)

    def test_two_pieces_swapped(self):
        found, fault = self.fault(cut(low_panel=RIGHT["high panel"], high_panel=RIGHT["low panel"]),
                                  "low panel", "swapped")
        self.assertIn("high panel", fault["text"])
        self.assertEqual([r["do"] for r in found["remedy"]], ["change marks"])

    def test_the_blade_on_the_wrong_side_of_the_line(self):
        kerf = "35 7/8"
        self.fault(cut(panel=(kerf, kerf, "70", "70", "78 11/16", "78 11/16", RIGHT["panel"][6])),
                   "panel", "off by a kerf")

    def test_a_trim_spoils_a_notch_by_what_comes_off_at_its_own_end(self):
        # Its right side is upright, its left one leans out by 3/8: hypot(36, 70) = 78.71 and
        # hypot(36 3/8, 70) = 78.89. Off the right the other side would still lean: out of square.
        for low, high, spoiled in (("36", "36 3/8", 0), ("36 3/8", "36", 1)):
            diagonals = ("78 3/4", "78 7/8") if high > low else ("78 7/8", "78 3/4")
            found, _ = self.fault(cut(panel=(low, high, "70", "70", *diagonals, RIGHT["panel"][6])), "panel", "too large")
            self.assertEqual([r["trim_edge"] for r in found["remedy"]], ["left"], found)
            self.assertEqual(sum("notch" in s for s in found["remedy"][0]["spoils"]), spoiled, found)

    def deck(self, *sizes):
        """The deck alone, measured at 2 and 34 up and 2 and 44 from the left."""
        low, high, first, second = sizes
        return self.verified(f'''units = "inch"
[[piece]]
part = "deck"
widths = [["2", "{low}"], ["34", "{high}"]]
heights = [["2", "36"], ["44", "36"]]
diagonals = ["{first}", "{second}"]
''', "deck")

    def test_what_the_cutting_list_says_fits_when_it_is_cut_so(self):
        # Sizes before notching, notches from the wild edges: of every panel of the samples, as drawn.
        for job in JOBS:
            cut = json.loads(subprocess.run([PROGRAM, "cut", str(TOP / "rooms" / job), "--json"],
                                            capture_output=True, text=True, timeout=60).stdout)
            pieces = 'units = "mm"\n'
            for piece in cut["pieces"]:
                checks = piece["checks"]
                if not checks["heights"] or any(notch["profile"] for notch in piece["notches"]):
                    continue  # a stick; a notch that only its template tells
                notches = [f'{{ corner = "{n["corner"]}", width = {n["width_mm"] + n["wild_across_mm"]:.3f}, '
                           f'height = {n["height_mm"] + n["wild_up_mm"]:.3f} }}' for n in piece["notches"] if n["corner"]]
                pieces += (f'[[piece]]\npart = "{piece["part"]}"\nwidths = {checks["widths"]}\n'
                           f'heights = {checks["heights"]}\ndiagonals = {checks["diagonals"]}\n'
                           f'notches = [{", ".join(notches)}]\n')
            with self.subTest(job=job), tempfile.TemporaryDirectory() as folder:
                for name in ("room.toml", "design.toml"):
                    shutil.copy(TOP / "rooms" / job / name, folder)
                pathlib.Path(folder, "pieces.toml").write_text(pieces)
                said = json.loads(subprocess.run([PROGRAM, "verify", folder, "--json"],
                                                 capture_output=True, text=True, timeout=60).stdout)
                self.assertGreater(len(said["pieces"]), 1)
                self.assertEqual([(p["part"], p["faults"]) for p in said["pieces"] if p["verdict"] != "fits"], [])

    def test_a_deck_left_square_is_trimmed_along_the_wall_that_opens_and_nowhere_else(self):
        # The corner opens 1.4 degrees: 36 tan 1.4 = 0.880 in over the deck, 46 + 2 tan 1.4 = 46.05
        # at 2 up. Square at 46 13/16 it is 0.76 too wide there and right at 34 up; off its right
        # edge, which meets nothing, the wedge would leave both sides leaning.
        found = self.deck("46 13/16", "46 13/16", "59 1/16", "59 1/16")
        self.assertEqual([r["trim_edge"] for r in found["remedy"]], ["left"], found)
        self.assertEqual(found["remedy"][0]["spoils"], [])
        wedge = [mm / INCH for mm in found["remedy"][0]["by_ends_mm"]]
        self.assertAlmostEqual(wedge[0], 46 + 13 / 16 - 46.05, delta=0.07)
        self.assertAlmostEqual(wedge[1], 0, delta=0.04)
        # Off its left edge, as told, it is as needed; off its right edge it would not have been.
        done = self.deck("46 1/16", "46 13/16", "58 7/16", "59 1/16")
        self.assertEqual(done["verdict"], "fits", done)
        off_right = self.deck("46 1/16", "46 13/16", "59 1/16", "58 7/16")
        self.assertEqual(off_right["verdict"], "does not fit", off_right)

    def test_a_deck_cut_on_the_other_face_is_told_and_turned_over(self):
        # As needed, seen from its front: 58 7/16 = hypot(46, 36), 59 1/8 = hypot(46 7/8, 36).
        # Left for right the diagonals change places; top for bottom the widths do too.
        over = self.deck("46 1/16", "46 13/16", "59 1/8", "58 7/16")
        end = self.deck("46 13/16", "46 1/16", "59 1/8", "58 7/16")
        for found, way in ((over, "left for right"), (end, "top for bottom")):
            self.assertEqual(found["verdict"], "does not fit")
            self.assertEqual([f["kind"] for f in found["faults"]], ["mirrored"], found)
            self.assertIn(way, found["faults"][0]["text"])
            self.assertEqual([r["do"] for r in found["remedy"]], ["turn over", "cut again"])
            self.assertEqual(found["remedy"][0]["spoils"], ["its other face shows"])

    def test_a_deck_measured_end_for_end_is_turned_round_and_keeps_its_front(self):
        found = self.deck("46 13/16", "46 1/16", "58 7/16", "59 1/8")
        self.assertEqual([f["kind"] for f in found["faults"]], ["end for end"], found)
        self.assertEqual([(r["do"], r["spoils"]) for r in found["remedy"]],
                         [("turn end for end", [])])

    def written(self, part, widths, heights):
        """The entry of a piece with sizes as given: [where, size] pairs."""
        pairs = lambda sizes: "[" + ", ".join(f'["{at}", "{size}"]' for at, size in sizes) + "]"
        return f'units = "inch"\n[[piece]]\npart = "{part}"\nwidths = {pairs(widths)}\nheights = {pairs(heights)}\n'

    def mended(self, lines, part, kind):
        found = self.verified(lines, part)
        self.assertEqual(found["verdict"], "cannot tell", found)
        self.assertEqual([f["kind"] for f in found["faults"]], [kind], found)
        self.assertEqual([r["do"] for r in found["remedy"]], ["mend pieces.toml"])
        return found["faults"][0]["text"]

    def test_widths_and_heights_in_each_others_place_are_told_and_no_saw_is_set(self):
        swapped = self.written("panel", [("1", "70"), ("34", "70")], [("1", "36"), ("69", "36")])
        self.assertIn("its widths fit as heights", self.mended(swapped, "panel", "figures swapped"))
        turned = self.written("panel", [("36", "1"), ("36", "69")], [("70", "1"), ("70", "34")])
        self.assertIn("before the place", self.mended(turned, "panel", "figures swapped"))
        notch = cut(panel=(*RIGHT["panel"][:6], [("lower left", "5 3/8", "11/16")]))
        self.assertIn("width and height changed", self.mended(notch, "panel", "figures swapped"))
        # A sheet that is still whole fits no better the other way round.
        whole = self.written("panel", [("1", "48"), ("95", "48")], [("1", "96"), ("47", "96")])
        self.assertIn("forgotten cut", [f["kind"] for f in self.verified(whole, "panel")["faults"]])
        one = self.written("panel", [("1", "48")], [])
        self.assertEqual(self.verified(one, "panel")["faults"][0]["kind"], "forgotten cut")

    def test_a_size_taken_where_there_is_no_piece_is_told(self):
        off = self.written("panel", [("1", "36"), ("96", "36")], [("1", "70"), ("34", "70")])
        text = self.mended(off, "panel", "taken beyond the piece")
        self.assertEqual(text, 'the second width is said to be taken at 96", and the piece ends at 70"')
        # Not ripped yet it is as wide as its sheet: a height at 46 from the left can be taken.
        wide = self.written("panel", [("1", "48"), ("68", "48")], [("1", "70"), ("46", "70")])
        self.assertNotIn("taken beyond the piece", [f["kind"] for f in self.verified(wide, "panel")["faults"]])

    def test_the_page_says_what_to_do_in_80_columns(self):
        job = Job(self.ROOM, DESIGN, cut(
            panel=("48", "48", "70", "70", "84 7/8", "84 7/8", RIGHT["panel"][6])))
        self.addCleanup(job.dir.cleanup)
        status, page, _ = job.run(PROGRAM, "verify")
        self.assertEqual(status, 1)
        self.assertLessEqual(max(map(len, page.splitlines())), 80)
        self.assertRegex(page, r"->")


# What the walk asks of these pieces, in its order: three panels (width twice, height twice,
# diagonals), the first with a notch, then the deck.
ANSWERS = ["36", "36 1/16", "70", "70", "78 3/4, 78 3/4", "11/16, 5 3/8",
           "20", "20", "30", "30", "36 1/16, 36 1/16",
           "24", "24", "34", "34", "41 5/8, 41 5/8"]


class Entry(unittest.TestCase):
    def setUp(self):
        self.job = Job(Verify.ROOM, DESIGN)
        self.addCleanup(self.job.dir.cleanup)
        self.file = pathlib.Path(self.job.folder, "pieces.toml")

    def enter(self, lines, *options):
        return subprocess.run([PROGRAM, "verify", str(self.job.folder), "--enter", *options],
                              input="\n".join(lines) + "\n", capture_output=True, text=True,
                              timeout=300)

    def pieces(self):
        return tomllib.loads(self.file.read_text(encoding="utf-8"))["piece"]

    def test_answers_stand_in_the_file_as_typed_and_are_judged(self):
        done = self.enter(ANSWERS + ["done"])
        self.assertEqual(done.returncode, 0, done.stdout + done.stderr)
        panel, low, high = self.pieces()
        self.assertEqual([w[1] for w in panel["widths"]], ["36", "36 1/16"])
        self.assertEqual(panel["notches"][0],
                         {"corner": "lower left", "width": "11/16", "height": "5 3/8"})
        self.assertEqual((low["part"], high["diagonals"]), ("low panel", ["41 5/8", "41 5/8"]))
        self.assertIn("Pieces as cut: FITS", done.stdout)
        self.assertLessEqual(max(map(len, done.stdout.splitlines())), 80)

    def test_an_entry_goes_on_where_it_was_broken_off(self):
        self.enter(ANSWERS[:4])
        before = self.file.read_text()
        done = self.enter(ANSWERS[4:] + ["done"])
        self.assertIn("diagonals of the panel", " ".join(done.stdout.split("\n> ")[0].split()))
        self.assertTrue(self.file.read_text().startswith(before))
        self.assertEqual(done.returncode, 0, done.stdout)

    def test_comments_and_spaces_of_a_file_by_hand_survive_byte_for_byte(self):
        text = ('# on the bench\r\nunits = "inch"   # tape\r\n[[piece]]\r\npart="panel"\r\n'
                'widths =  [["1",  "36"]]  # one so far\r\n\r\n# the end\r\n')
        self.file.write_bytes(text.encode())
        self.enter(["36", "skip", "70", "done"])
        after = self.file.read_bytes().decode()
        old, new = text.split("\r\n"), after.split("\r\n")
        self.assertEqual([line for line in new if line not in old],
                         ['widths =  [["1",  "36"], [\'68\', \'36\']]  # one so far',
                          "heights = [['34', '70']]"])
        self.assertEqual([line for line in old if line not in new],
                         ['widths =  [["1",  "36"]]  # one so far'])

    def test_the_entry_asks_where_the_cutting_list_checks(self):
        self.enter(ANSWERS + ["done"])
        cut = json.loads(subprocess.run([PROGRAM, "cut", str(self.job.folder), "--json"],
                                        capture_output=True, text=True).stdout)
        for piece in self.pieces():
            checks = next(p for p in cut["pieces"] if p["part"] == piece["part"])["checks"]
            for key in ("widths", "heights"):
                spots = [float(w[0]) * INCH for w in piece[key]]
                for spot, check in zip(spots, checks[key], strict=True):
                    self.assertAlmostEqual(spot, check[0], delta=INCH / 32)

    def test_a_size_far_from_what_the_room_needs_is_asked_again_and_kept_struck(self):
        done = self.enter(["63", "36", "39", "keep", "done"])
        self.assertRegex(done.stdout, r'63"; the room needs 36": read again\?')
        widths = self.pieces()[0]["widths"]
        self.assertEqual(widths[0][1][0]["struck"], True)
        self.assertEqual((widths[0][1][1], widths[1][1]), ("36", "39"))

    def test_back_again_and_a_refused_answer(self):
        done = self.enter(["36", "back", "36,1", "36 1/8", "again", "36 1/16", "done"])
        self.assertIn("it was 36", done.stdout)
        self.assertIn("not taken", done.stdout)
        self.assertEqual(self.pieces()[0]["widths"][0][1], ["36 1/8", "36 1/16"])

    def test_two_entries_refuse_each_other(self):
        first = subprocess.Popen([PROGRAM, "verify", str(self.job.folder), "--enter"],
                                 stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
        self.addCleanup(first.stdout.close)
        text = ""
        while "Width" not in text and select.select([first.stdout], [], [], 60)[0]:
            text += os.read(first.stdout.fileno(), 4096).decode()
        second = self.enter(["36"])
        self.assertEqual(second.returncode, 2)
        self.assertIn("[entry-open]", second.stderr)
        first.communicate("36\ndone\n")
        self.assertEqual(self.pieces()[0]["widths"][0][1], "36")

    def test_json_comes_alone_on_standard_output(self):
        done = self.enter(["36", "done"], "--json")
        self.assertTrue(done.stdout.startswith("{"), done.stdout[:80])
        self.assertIn("Width of the panel", done.stderr)

    def test_kill_at_a_score_of_random_moments_loses_no_accepted_size(self):
        chance = random.Random(20262)
        for _ in range(20):
            self.file.unlink(missing_ok=True)
            process = subprocess.Popen([PROGRAM, "verify", str(self.job.folder), "--enter"],
                                       stdin=subprocess.PIPE, stdout=subprocess.PIPE)
            process.stdin.write(("\n".join(ANSWERS) + "\n").encode())
            process.stdin.flush()
            said = os.read(process.stdout.fileno(), 65536)  # it has begun to ask
            time.sleep(chance.uniform(0, 0.05))
            process.send_signal(signal.SIGKILL)
            said = (said + process.communicate()[0]).decode()
            accepted = max(said.count("\n> ") - 1, 0)
            text = self.file.read_text() if self.file.exists() else ""
            tomllib.loads(text)
            for answer in ANSWERS[:accepted]:
                for part in answer.split(", "):
                    self.assertRegex(text, re.escape(part))


if __name__ == "__main__":
    unittest.main()
