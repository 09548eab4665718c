"""Answers in units other than the job's own: every number follows, and JSON figures stay what they are."""

import pathlib
import re
import tempfile
import unittest

from program import TOP, answer, nookfit

# An inch mark behind a figure, a fraction of an inch, a figure "in"; 16 CFR 1213/1513 is none.
INCH = re.compile(r'\d"|(?<![\d/])\d{1,2}/(?:2|4|8|16|32|64)(?![\d/])|\d in\b(?! 100)|\d inch')
METRIC = re.compile(r"\d (?:mm|cm|m)\b")
# What stays as it is: the figure of a source beside the job's own, and slips in what was typed.
AS_PUBLISHED = re.compile(r"\([\d.]+ (?:in|mm|lb|kg|lb per square foot)\)")
SLIP = re.compile(r"perhaps [^;.]*")
COMMANDS = [["check"], ["survey", "--sheet"], ["room"], ["fit"], ["drill"], ["cut"], ["verify"], ["carry"],
            ["safety"]]
# Texts of JSON answers that quote a file, and the statistics that go with readings.
QUOTED = {"given", "before", "after", "note", "line", "file", "job"}


def plain(text):
    return SLIP.sub("", AS_PUBLISHED.sub("", re.sub(r"\s+", " ", text)))


def texts(json, key=""):
    """Every text of an answer that is its own, with the key it stands under."""
    if isinstance(json, dict):
        for name, value in json.items():
            if name not in QUOTED:
                yield from texts(value, name)
    elif isinstance(json, list):
        for value in json:
            yield from texts(value, key)
    elif isinstance(json, str):
        yield key, json


def figures(json, path=()):
    """Every number of an answer by its place."""
    if isinstance(json, dict):
        for name, value in json.items():
            yield from figures(value, (*path, name))
    elif isinstance(json, list):
        for at, value in enumerate(json):
            yield from figures(value, (*path, at))
    elif isinstance(json, (int, float)) and not isinstance(json, bool):
        yield path, json


class Units(unittest.TestCase):
    def only(self, foreign, job, unit):
        for command, *options in COMMANDS:
            with self.subTest(job=job, command=command):
                run = nookfit(command, f"rooms/{job}", *options, "--units", unit)
                self.assertEqual(run.stderr, "")
                page = plain(run.stdout)
                self.assertGreater(len(page), 60)
                self.assertEqual(self.found(foreign, page), [])

    def found(self, foreign, page):
        return [page[max(0, hit.start() - 40):hit.end() + 20] for hit in foreign.finditer(page)]

    def test_no_inch_is_left_on_a_metric_page_of_an_inch_job(self):
        for job in ("lookout", "corner-desk"):
            self.only(INCH, job, "mm")
        self.only(INCH, "lookout", "cm")

    def test_no_millimetre_is_left_on_an_inch_page_of_a_metric_job(self):
        self.only(METRIC, "window-bench", "inch")

    def test_what_adapt_says_follows_and_the_file_it_writes_does_not(self):
        for job, unit, foreign in (("lookout", "mm", INCH), ("corner-desk", "mm", INCH), ("window-bench", "inch", METRIC)):
            with self.subTest(job=job), tempfile.TemporaryDirectory() as folder:
                new = [pathlib.Path(folder, name) for name in ("own", "other")]
                nookfit("adapt", f"rooms/{job}", "-o", str(new[0]))
                page = plain(nookfit("adapt", f"rooms/{job}", "-o", str(new[1]), "--units", unit).stdout)
                self.assertEqual(self.found(foreign, page.replace(folder, "")), [])
                self.assertEqual(*[(to / "design.toml").read_text(encoding="utf-8") for to in new])

    def test_texts_in_json_follow_and_figures_do_not(self):
        for job, unit, foreign in (("lookout", "mm", INCH), ("corner-desk", "mm", INCH), ("window-bench", "inch", METRIC)):
            for command, *options in COMMANDS:
                if command in ("safety", "check", "survey"):  # cautions speak millimeters in JSON
                    continue
                with self.subTest(job=job, command=command):
                    own = answer(command, f"rooms/{job}", *options)
                    other = answer(command, f"rooms/{job}", *options, "--units", unit)
                    self.assertEqual(dict(figures(own)), dict(figures(other)))
                    for key, text in texts(other):
                        self.assertEqual(self.found(foreign, plain(text)), [], key)

    def test_the_sheets_follow(self):
        for job, unit, foreign in (("lookout", "mm", INCH), ("window-bench", "inch", METRIC)):
            with self.subTest(job=job), tempfile.TemporaryDirectory() as folder:
                nookfit("sheet", f"rooms/{job}", "-o", folder, "--units", unit)
                for page in ("installing", "cutting"):  # the measuring sheet shows readings as typed
                    html = pathlib.Path(folder, page + ".html").read_text(encoding="utf-8")
                    words = re.sub(r"<(?:style|title).*?</(?:style|title)>|<[^>]*>", " ", html, flags=re.S)
                    words = words.replace("&quot;", '"').replace("&#34;", '"')
                    self.assertEqual(self.found(foreign, plain(words)), [], page)


if __name__ == "__main__":
    unittest.main()
