"""The sample jobs' answers against rooms/JOB/expected/: text byte for byte, JSON numbers to 1e-6.

`sh tests/cli/golden.sh --accept` writes what the program says now.
"""
import json
import math
import sys
import unittest

import docs_test
from program import JOBS, TOP, nookfit

COMMANDS = ["check", "room", "fit", "drill"]
NEAR = 1e-6  # of 1 or of the number, whichever is more


def said(job, command, ending):
    words = [command, f"rooms/{job}"] + (["--json"] if ending == "json" else [])
    return nookfit(*words).stdout


def kept(job, command, ending):
    return TOP / "rooms" / job / "expected" / f"{command}.{ending}"


def accept():
    for job in JOBS:
        for command in COMMANDS:
            for ending in ["txt", "json"]:
                path = kept(job, command, ending)
                path.parent.mkdir(exist_ok=True)
                path.write_text(said(job, command, ending), encoding="utf-8")
    docs_test.accept()


def difference(expected, got, where=""):
    """The first place where two JSON values differ, or None."""
    if isinstance(expected, dict) and isinstance(got, dict):
        if list(expected) != list(got):
            return f"{where}: keys {list(expected)} became {list(got)}"
        return next(filter(None, (difference(expected[k], got[k], f"{where}.{k}")
                                  for k in expected)), None)
    if isinstance(expected, list) and isinstance(got, list):
        if len(expected) != len(got):
            return f"{where}: {len(expected)} became {len(got)}"
        return next(filter(None, (difference(e, g, f"{where}[{i}]")
                                  for i, (e, g) in enumerate(zip(expected, got)))), None)
    numbers = all(type(x) in (int, float) for x in (expected, got))
    same = math.isclose(expected, got, rel_tol=NEAR, abs_tol=NEAR) if numbers else expected == got
    return None if same else f"{where}: {expected!r} became {got!r}"


class Golden(unittest.TestCase):
    maxDiff = None

    def test_the_text_of_each_sample_answer_is_as_accepted(self):
        for job in JOBS:
            for command in COMMANDS:
                with self.subTest(job=job, command=command):
                    expected = kept(job, command, "txt").read_text(encoding="utf-8")
                    self.assertEqual(said(job, command, "txt"), expected)

    def test_the_numbers_of_each_sample_answer_are_as_accepted(self):
        for job in JOBS:
            for command in COMMANDS:
                with self.subTest(job=job, command=command):
                    expected = json.loads(kept(job, command, "json").read_text(encoding="utf-8"))
                    got = json.loads(said(job, command, "json"))
                    self.assertIsNone(difference(expected, got))

    def test_a_changed_number_word_key_or_count_would_be_seen(self):
        self.assertEqual(difference({"a": [1.0]}, {"a": [1.00001]}), ".a[0]: 1.0 became 1.00001")
        self.assertIsNone(difference({"a": [1.0]}, {"a": [1.0000000001]}))
        self.assertEqual(difference({"a": "x"}, {"a": "y"}), ".a: 'x' became 'y'")
        self.assertEqual(difference({"a": None}, {"a": 0}), ".a: None became 0")
        self.assertIn("keys", difference({"a": 1}, {"b": 1}))
        self.assertEqual(difference([1], [1, 2]), ": 1 became 2")


if __name__ == "__main__":
    accept() if sys.argv[1:] == ["--accept"] else unittest.main()
