"""`nookfit sheet`: the same bytes wherever the job and the folder lie, nothing half-written."""

import pathlib
import re
import shutil
import tempfile
import unittest

from program import JOBS, TOP, nookfit


def files_in(folder):
    return {path.name: path.read_bytes() for path in pathlib.Path(folder).iterdir()}


class Sheets(unittest.TestCase):
    def test_the_same_job_in_two_places_gives_the_same_bytes(self):
        for job in JOBS:
            with self.subTest(job=job), tempfile.TemporaryDirectory() as there:
                moved = pathlib.Path(there, "elsewhere", "copy of it")
                shutil.copytree(TOP / "rooms" / job, moved)
                here, away = pathlib.Path(there, "a"), pathlib.Path(there, "b", "c")
                away.parent.mkdir()
                first = nookfit("sheet", f"rooms/{job}", "-o", str(here))
                second = nookfit("sheet", ".", "-o", str(away), cwd=moved)
                self.assertIn(first.returncode, (0, 1), first.stderr)
                self.assertEqual(first.returncode, second.returncode, second.stderr)
                one, other = files_in(here), files_in(away)
                self.assertEqual(sorted(one), sorted(other))
                self.assertGreater(len(one), 20)
                for name in one:
                    self.assertEqual(one[name], other[name], f"{job}: {name}")

    def test_each_sheet_ends_with_cautions_and_who_decides(self):
        for job in JOBS:
            with self.subTest(job=job), tempfile.TemporaryDirectory() as there:
                nookfit("sheet", f"rooms/{job}", "-o", there)
                for sheet in ("measuring", "cutting", "installing"):
                    page = pathlib.Path(there, sheet + ".html").read_text(encoding="utf-8")
                    last = page.rsplit("<section", 1)[1]
                    self.assertIn(">Cautions</h2>", last)
                    self.assertIn("your local code and a licensed person decide", last)
                    self.assertNotIn("<script", page)
                    self.assertNotRegex(page, r'(src|href)="(?!data:,)')

    def test_no_two_steps_of_the_order_have_the_same_name(self):
        for job in JOBS:
            with self.subTest(job=job), tempfile.TemporaryDirectory() as there:
                nookfit("sheet", f"rooms/{job}", "-o", there)
                page = pathlib.Path(there, "installing.html").read_text(encoding="utf-8")
                order = page.split("<ol", 1)[1].split("</ol>", 1)[0]
                names = [re.sub("<[^>]*>", "", item).split(".")[0] for item in order.split("<li>")[1:]]
                self.assertGreater(len(names), 5)
                self.assertEqual(len(names), len(set(names)), names)

    def test_each_sheet_and_each_drawing_with_bare_numbers_says_its_unit(self):
        for job, unit in (("lookout", "inches"), ("window-bench", "mm")):
            with self.subTest(job=job), tempfile.TemporaryDirectory() as there:
                nookfit("sheet", f"rooms/{job}", "-o", there)
                for sheet in ("measuring", "cutting", "installing"):
                    page = pathlib.Path(there, sheet + ".html").read_text(encoding="utf-8")
                    self.assertRegex(page, f"<h1>[^<]*, in {unit}</h1>")
                drawings = [*pathlib.Path(there).glob("piece-*.svg"), *pathlib.Path(there).glob("wall-*.svg")]
                self.assertGreater(len(drawings), 5)
                for path in drawings:
                    title = re.search("<title[^>]*>([^<]*)</title>", path.read_text(encoding="utf-8"))[1]
                    self.assertTrue(title.endswith(f", in {unit}"), title)


if __name__ == "__main__":
    unittest.main()
