"""The lookout, once adjusted to its room, passes its own cautions."""

import pathlib
import tempfile
import unittest

from program import answer, nookfit

# Guard height from the deck as installed, openings as left, rung spacing, the gap at the ladder.
OWN = {"guard-missing", "guard-low", "guard-opening", "head-trap", "neck-trap", "hole-in-deck",
       "rungs-uneven", "rungs-far-apart", "rung-grip", "finger-gap", "limb-gap",
       "handhold-missing", "ladder-can-slide", "pocket-screwed-rungs", "tip-over"}


def told(job):
    return [c["id"] + ": " + c["where"] for c in answer("safety", job)["cautions"]
            if c["id"] in OWN]


class OwnCautions(unittest.TestCase):
    def test_the_lookout_as_adjusted_has_none_of_them(self):
        with tempfile.TemporaryDirectory() as there:
            new = pathlib.Path(there, "adjusted")
            self.assertIn(nookfit("adapt", "rooms/lookout", "-o", str(new)).returncode, (0, 1))
            self.assertEqual(told(str(new)), [])
            self.assertEqual(answer("safety", str(new))["verdict"], "fits")
            # As a bed it would not pass: it has no rail at the walls.
            design = new / "design.toml"
            text = design.read_text(encoding="utf-8")
            self.assertIn('purpose = "play"', text)
            design.write_text(text.replace('purpose = "play"', 'purpose = "sleep"'),
                              encoding="utf-8")
            self.assertEqual(answer("safety", str(new))["verdict"], "does not fit")


if __name__ == "__main__":
    unittest.main()
