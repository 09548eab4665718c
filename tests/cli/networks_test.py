"""Published networks of distances as marks and spans, through the program (tests/reference/*/source.md)."""

import json
import math
import random
import unittest

from program import TOP, JobFolder, nookfit

SIZES = {"benning-2011": 5, "ghilani-2010": 1, "strang-borre-1997": 20}  # mm a metre: the net brought to room size


def network(folder):
    return json.loads((TOP / "tests/reference" / folder / "network.json").read_text(encoding="utf-8"))


def room_of(net, scale, chance=None):
    """The net as room.toml; `chance` shuffles marks and tapes and turns tapes round."""
    names = [point["name"] for point in net["points"]]
    spans = [(d["from"], d["to"], d["value"] * scale, d["sigma"] * scale) for d in net["distances"]]
    fixed = [point for point in net["points"] if point["fixed"]]
    if len(fixed) == 2:
        a, b = fixed
        spans.append((a["name"], b["name"], math.hypot(a["x"] - b["x"], a["y"] - b["y"]) * scale, 0.00001))
    if chance:
        chance.shuffle(names)
        chance.shuffle(spans)
        spans = [(b, a, d, s) if chance.random() < 0.5 else (a, b, d, s) for a, b, d, s in spans]
    marks = "".join(f'[[mark]]\nname = "{name}"\n' for name in names)
    tapes = "".join(f'[[span]]\nbetween = ["{a}", "{b}"]\nis = {{ is = "{d:.9f} mm", sd = "{s:.9f} mm" }}\n'
                    for a, b, d, s in spans)
    return 'units = "mm"\n' + marks + tapes, [frozenset(span[:2]) for span in spans]


class Networks(unittest.TestCase):
    def check_readings(self, folder, scale, chance):
        net = network(folder)
        text, pairs = room_of(net, scale, chance)
        with JobFolder(room=text) as job:
            done = nookfit("room", job, "--json")
        answer = json.loads(done.stdout)
        found = dict(zip(pairs, answer["readings"]))
        for expected in net["expected"]["residuals"]:
            reading = found[frozenset((expected["from"], expected["to"]))]
            where = (folder, expected["from"], expected["to"])
            self.assertAlmostEqual(reading["residual_mm"] / scale, expected["v"], delta=2e-5 * abs(expected["v"]) + 1e-7, msg=where)
            self.assertAlmostEqual(reading["redundancy"], expected["redundancy_number"], delta=2e-5, msg=where)
            self.assertAlmostEqual(reading["w"], expected["w"], delta=2e-4 * abs(expected["w"]) + 1e-6, msg=where)
            self.assertAlmostEqual(reading["smallest_slip_mm"] / scale / expected["least_slip"], 1, delta=1e-4, msg=where)
        self.assertEqual(answer["chi2"]["dof"], net["expected"]["redundancy"])
        self.assertAlmostEqual(answer["chi2"]["value"] / net["expected"]["chi2"], 1, delta=2e-4)

    def test_residuals_redundancy_w_and_least_slips(self):
        for folder, scale in SIZES.items():
            self.check_readings(folder, scale, None)

    def test_whatever_their_order(self):
        for seed in range(5):
            for folder, scale in SIZES.items():
                self.check_readings(folder, scale, random.Random(seed))

    def test_foretold_distances_between_all_marks(self):
        for folder, scale in SIZES.items():
            net = network(folder)
            at = {p["name"]: (p["x"], p["y"]) for p in net["points"] if p["fixed"]}
            at.update({name: (p["x"], p["y"]) for name, p in net["expected"]["coords"].items()})
            with JobFolder(room=room_of(net, scale)[0]) as job:
                names = sorted(at)
                for a, b in zip(names, names[1:]):
                    said = json.loads(nookfit("room", job, "--json", "--expect", f"mark:{a}", f"mark:{b}").stdout)
                    self.assertAlmostEqual(said["expect"]["value_mm"] / scale, math.dist(at[a], at[b]), delta=2e-5)


if __name__ == "__main__":
    unittest.main()
