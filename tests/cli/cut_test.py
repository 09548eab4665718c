"""The cutting list: order, sizes, rounding to the safe side, boards and sheets, what to buy."""

import math
import re
import unittest
from collections import Counter
from fractions import Fraction

from program import JOBS, TOP, JobFolder, answer, nookfit

KERF = 25.4 / 8
HAIR = 1e-3


def flat(text):
    return re.sub(r"\s+", " ", text)


def mm(text, unit):
    """`41 3/8` or `1042` in millimeters."""
    return float(sum(Fraction(part) for part in text.split())) * {"inch": 25.4, "mm": 1, "cm": 10}[unit]


def bounds(polygon):
    across, up = zip(*polygon)
    return max(across) - min(across), max(up) - min(up)


def own_unit(job):
    return "mm" if job == "window-bench" else "inch"


class Cut(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.cuts = {job: answer("cut", f"rooms/{job}") for job in JOBS}
        cls.fits = {job: answer("fit", f"rooms/{job}") for job in JOBS}
        cls.drills = {job: answer("drill", f"rooms/{job}") for job in JOBS}

    def pieces(self):
        return [(job, piece) for job, cut in self.cuts.items() for piece in cut["pieces"]]

    def is_lumber(self, job, piece):
        return next(s for s in self.cuts[job]["stock"] if s["name"] == piece["stock"])["kind"] == "lumber"

    def test_pieces_stand_by_stock_longest_first_and_none_is_left_out(self):
        for job, cut in self.cuts.items():
            order = [s["name"] for s in cut["stock"]]
            ranks = [order.index(piece["stock"]) for piece in cut["pieces"]]
            self.assertEqual(ranks, sorted(ranks))
            for stock in order:
                long = [max(p["blank_mm"]) for p in cut["pieces"] if p["stock"] == stock]
                self.assertEqual(long, sorted(long, reverse=True), (job, stock))
            self.assertTrue(all(p["count"] == len(p["pieces"]) for p in cut["pieces"]))
            cut_out = Counter(name for p in cut["pieces"] for name in p["pieces"])
            wanted = Counter(c["part"] for c in self.fits[job]["contacts"])
            self.assertEqual(max(cut_out.values()), 1)
            self.assertEqual(set(wanted) - set(cut_out), set())

    def test_the_finished_size_is_the_outlines_and_the_blank_has_the_wild_edges_on_top(self):
        for job, piece in self.pieces():
            for sides, blank, finished in zip((("left", "right"), ("bottom", "top")), piece["blank_mm"], piece["finished_mm"]):
                beyond = sum(edge["beyond_mm"] for edge in piece["wild"] if edge["edge"] in sides)
                off = sum(max(o for _, o in scribe["off_mm"]) for scribe in piece["scribes"] if scribe["edge"] in sides)
                self.assertGreaterEqual(blank - finished, beyond - HAIR)
                self.assertLessEqual(blank - finished, off + HAIR)
            # What is finished lies in the blank; scribes and notches only take wood away.
            for got, finished in zip(bounds(piece["outline_mm"]), piece["finished_mm"]):
                self.assertLessEqual(got, finished + HAIR)

    def test_check_measures_are_those_of_the_blank(self):
        for job, piece in self.pieces():
            if self.is_lumber(job, piece):
                continue
            width, height = piece["blank_mm"]
            for at, size in piece["checks"]["widths"]:
                self.assertTrue(0 < at < height and size <= width + HAIR, (at, size))
            for at, size in piece["checks"]["heights"]:
                self.assertTrue(0 < at < width and size <= height + HAIR, (at, size))
            self.assertEqual(len(piece["checks"]["diagonals"]), 2)
            square = all(abs(s - width) < HAIR for _, s in piece["checks"]["widths"]) and all(
                abs(s - height) < HAIR for _, s in piece["checks"]["heights"])
            if square:
                for diagonal in piece["checks"]["diagonals"]:
                    self.assertAlmostEqual(diagonal, math.hypot(width, height), delta=0.01)

    def test_rounding_never_eats_a_clearance(self):
        steps = {"inch": (("1/16", 25.4 / 16), ("1/32", 25.4 / 32), ("1/8", 25.4 / 8)), "mm": (("1", 1), ("5", 5))}
        for job in JOBS:
            unit = own_unit(job)
            for option, step in steps[unit]:
                page = flat(nookfit("cut", f"rooms/{job}", "--round", option).stdout)
                for piece in self.cuts[job]["pieces"]:
                    for notch in piece["notches"]:
                        if not notch["corner"]:
                            continue
                        size = r'([\d /]+?)(?:"| mm)'
                        wild = rf'(?: from the finished line, {size} from the wild edge)?'
                        said = re.search(rf'notch {notch["corner"]}: {size} wide{wild}, {size} high{wild}, '
                                         f'around {notch["for"]}', page)
                        self.assertIsNotNone(said, (job, option, notch["for"]))
                        beyond = {edge["edge"]: edge["beyond_mm"] for edge in piece["wild"]}
                        sides = notch["corner"].split()[1], {"lower": "bottom", "upper": "top"}[notch["corner"].split()[0]]
                        wild = notch["wild_across_mm"], notch["wild_up_mm"]
                        for side, left in zip(sides, wild):
                            # `beyond_mm` is where the finished line lies furthest out: the least of all.
                            self.assertGreaterEqual(left, beyond.get(side, 0) - 0.02)
                        wanted = [notch["width_mm"], wild[0] and notch["width_mm"] + wild[0],
                                  notch["height_mm"], wild[1] and notch["height_mm"] + wild[1]]
                        wanted = [size or None for size in wanted]
                        for text, needed in zip(said.groups(), wanted):
                            self.assertEqual(text is None, needed is None, (job, option, notch))
                            if text:
                                self.assertGreaterEqual(mm(text, unit), needed - 0.02, (job, option, notch))
                                self.assertLess(mm(text, unit), needed + step)
                    for edge in piece["wild"]:
                        said = re.search(rf'leave wild: {edge["edge"]} edge, ([\d /]+?)(?:"| mm) beyond', page)
                        self.assertIsNotNone(said)

    def test_rounding_never_makes_a_piece_between_two_others_too_long(self):
        # What is pushed home on both sides is printed short of its size, never over it.
        for job, option, step in (("lookout", "1/8", 25.4 / 8), ("lookout", "1/2", 12.7), ("corner-desk", "1/2", 12.7),
                                  ("window-bench", "10", 10)):
            unit = own_unit(job)
            page = nookfit("cut", f"rooms/{job}", "--round", option).stdout
            trapped = {c["part"] for c in self.fits[job]["contacts"] if c["edge"] == "left"} & {
                c["part"] for c in self.fits[job]["contacts"] if c["edge"] == "right"}
            for piece in self.cuts[job]["pieces"]:
                if piece["wild"] or piece["part"] not in trapped:
                    continue
                said = re.search(rf'^ +\d+  {re.escape(piece["part"])}: ([\d /]+?)(?:"| mm)( x|$)', page, re.M)
                self.assertIsNotNone(said, piece["part"])
                self.assertLessEqual(mm(said[1], unit), piece["blank_mm"][0] + 0.02, (job, piece["part"]))
                self.assertGreater(mm(said[1], unit), piece["blank_mm"][0] - step - 0.02)

    def test_boards_are_laid_first_fit_longest_first_with_a_kerf_between(self):
        for job, cut in self.cuts.items():
            self.assertAlmostEqual(cut["kerf_mm"], KERF, places=6)
            length = {name: p["blank_mm"][0] for p in cut["pieces"] for name in p["pieces"]}
            for stock in cut["stock"]:
                if stock["kind"] != "lumber":
                    continue
                with self.subTest(job=job, stock=stock["name"]):
                    self.check_boards(stock["layout"], length, [n for p in cut["pieces"] if p["stock"] == stock["name"]
                                                                for n in p["pieces"]])

    def check_boards(self, layout, length, wanted):
        boards = layout["boards"]
        laid = [name for board in boards for name in board["pieces"]]
        self.assertEqual(Counter(laid + layout["too_long"]), Counter(wanted))
        for board in boards:
            sticks = [length[name] for name in board["pieces"]]
            self.assertLessEqual(sum(sticks) + KERF * (len(sticks) - 1), board["length_mm"] + HAIR)
        # The same by hand: longest first, each on the first board that still holds it.
        whole = max([board["length_mm"] for board in boards], default=0)
        own = []
        for stick in sorted((length[name] for name in laid), reverse=True):
            for board in own:
                if sum(board) + KERF * len(board) + stick <= whole + HAIR:
                    board.append(stick)
                    break
            else:
                own.append([stick])
        key = lambda sticks: sorted(round(stick, 3) for stick in sticks)
        self.assertEqual(sorted(map(key, own)), sorted(key(length[n] for n in board["pieces"]) for board in boards))
        if boards:
            bought = sum(board["length_mm"] for board in boards)
            self.assertAlmostEqual(layout["waste"], 1 - sum(map(sum, own)) / bought, places=9)

    def test_panels_lie_on_their_sheets_a_kerf_apart_and_the_waste_is_what_is_left(self):
        for job, cut in self.cuts.items():
            size = {name: p["blank_mm"] for p in cut["pieces"] for name in p["pieces"]}
            for stock in cut["stock"]:
                if "sheets" not in stock.get("layout", {}):
                    continue
                width, long = stock["layout"]["size_mm"]
                used = 0
                for sheet in stock["layout"]["sheets"]:
                    boxes = []
                    for panel in sheet:
                        (x, y), (w, h) = panel["at_mm"], panel["size_mm"]
                        self.assertEqual(sorted(round(s, 3) for s in (w, h)), sorted(round(s, 3) for s in size[panel["part"]]))
                        self.assertTrue(-HAIR <= x and x + w <= width + HAIR and -HAIR <= y and y + h <= long + HAIR)
                        for bx, by, bw, bh in boxes:
                            apart = max(bx - x - w, x - bx - bw, by - y - h, y - by - bh)
                            self.assertGreaterEqual(apart, KERF - HAIR, (job, panel["part"]))
                        boxes.append((x, y, w, h))
                        used += w * h
                count = len(stock["layout"]["sheets"])
                if count:
                    self.assertAlmostEqual(stock["layout"]["waste"], 1 - used / (count * width * long), places=9)
                laid = [p["part"] for sheet in stock["layout"]["sheets"] for p in sheet] + stock["layout"]["too_large"]
                self.assertEqual(Counter(laid), Counter(n for p in cut["pieces"] if p["stock"] == stock["name"]
                                                        for n in p["pieces"]))

    def test_what_is_fastened_twice_would_get_the_same_holes_twice_and_is_refused(self):
        job = TOP / "rooms" / "lookout"
        more = """
[[fasten]]
part  = "deck"
face  = "back"
to    = "left ledger"
screw = { gauge = 12, length = '1 3/4', kind = "wood" }
"""
        design = (job / "design.toml").read_text(encoding="utf-8") + more
        room = (job / "room.toml").read_text(encoding="utf-8")
        with JobFolder(room=room, design=design) as folder:
            drill = answer("drill", folder)
        self.assertEqual([fault["code"] for fault in drill["diagnostics"]], ["fastened-twice"])

    def test_the_screws_to_buy_are_the_holes_that_are_drilled(self):
        for job in JOBS:
            drill = self.drills[job]
            holes = sum(len(wall["holes"]) for wall in drill["walls"]) + sum(len(j["holes"]) for j in drill["parts"])
            screws = sum(i["count"] for i in self.cuts[job]["shopping"] if i["kind"] == "screw")
            self.assertGreater(screws, 0)
            self.assertEqual(screws, holes, job)

    def test_what_closes_gaps_is_bought_where_a_contact_asks_for_it_and_a_gap_is_left(self):
        for job in JOBS:
            for by in ("shim", "trim", "filler", "caulk"):
                asked = [c for c in self.fits[job]["contacts"] if c["by"] == by or c["by"] == [by] or by in c["by"]]
                if by in ("shim", "filler"):
                    asked = [c for c in asked if c["gap_most_mm"] >= 0.5]
                names = sorted(f'{c["part"]} at the {c["meets"]}' for c in asked)
                bought = [i for i in self.cuts[job]["shopping"] if i["kind"] == by]
                self.assertEqual(sorted(i["name"] for i in bought), names, (job, by))
                for item in bought:
                    if by in ("shim", "filler"):
                        gap = max(c["gap_most_mm"] for c in asked if f'{c["part"]} at the {c["meets"]}' == item["name"])
                        self.assertAlmostEqual(item["width_mm"], gap, places=6)
            blades = sum(i["count"] for i in self.cuts[job]["shopping"] if i["kind"] == "blade")
            scribed = sum("scribe" in c["by"] for c in self.fits[job]["contacts"])
            self.assertEqual(blades, scribed + len(self.fits[job]["notches"]), job)

    def test_no_shim_is_bought_for_nothing(self):
        for job in JOBS:
            page = nookfit("cut", f"rooms/{job}").stdout
            self.assertNotRegex(page, r'(?:shims|strip, to) (?:to )?0(?:"| mm)')
            bought = [i for i in self.cuts[job]["shopping"] if i["kind"] == "shim"]
            for item in bought:
                said = re.search(rf'shims to ([\d /]+?)(?:"| mm) for {re.escape(item["name"])}', flat(page))
                self.assertGreaterEqual(mm(said[1], own_unit(job)), item["width_mm"] - 0.02)


if __name__ == "__main__":
    unittest.main()
