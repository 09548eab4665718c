"""Each example in README.md and docs/ is run: what the page shows is what the program says; each picture
in docs/pictures is what it draws.

An example is a fenced block 'console' whose first line is '$ nookfit ...'. A line '...' stands for
any lines left out. `sh tests/cli/golden.sh --accept` renews the examples without such a line.
"""
import pathlib
import re
import shlex
import tempfile
import unittest

from program import TOP, JobFolder, answer, nookfit

PAGES = [TOP / "README.md"] + [TOP / "docs" / page for page in
                              ["manual.md", "measuring.md", "publishing.md"]]
PICTURES = TOP / "docs" / "pictures"
PICTURED = "rooms/lookout"
BLOCK = re.compile(r"```console\n\$ nookfit ?([^\n]*)\n(.*?)```", re.S)


def matches(shown, said):
    """True where `shown`, with '...' for lines left out, is what was said."""
    pieces = [re.escape(piece) for piece in re.split(r"^\.\.\.\n", shown, flags=re.M)]
    return re.fullmatch("(?:.*\n)*?".join(pieces), said) is not None


def drawn(folder):
    """name -> text of each picture that docs/pictures has, as the program draws it now."""
    nookfit("sheet", PICTURED, "-o", folder, "--quiet")
    return {kept.name: (pathlib.Path(folder) / kept.name).read_text(encoding="utf-8")
            for kept in sorted(PICTURES.glob("*.svg"))}


def accept():
    with tempfile.TemporaryDirectory() as folder:
        for name, text in drawn(folder).items():
            (PICTURES / name).write_text(text, encoding="utf-8")
    for page in PAGES:
        def renewed(block):
            words, shown = block.groups()
            said = shown if re.search(r"^\.\.\.$", shown, re.M) else nookfit(*shlex.split(words)).stdout
            return f"```console\n$ nookfit{' ' if words else ''}{words}\n{said}```"
        page.write_text(BLOCK.sub(renewed, page.read_text(encoding="utf-8")), encoding="utf-8")


class Docs(unittest.TestCase):
    maxDiff = None

    def test_each_example_shows_what_the_program_says(self):
        for page in PAGES:
            blocks = BLOCK.findall(page.read_text(encoding="utf-8"))
            self.assertGreater(len(blocks), 0, page.name)
            for words, shown in blocks:
                with self.subTest(page=page.name, words=words):
                    run = nookfit(*shlex.split(words))
                    said = run.stdout + run.stderr
                    if not matches(shown, said):
                        self.assertEqual(shown, said)

    def test_the_manual_has_an_example_of_each_command_and_names_each_option(self):
        manual = (TOP / "docs" / "manual.md").read_text(encoding="utf-8")
        listed = nookfit().stdout.split("Commands:\n")[1].split("\n\n")[0]
        for command in re.findall(r"^  (\w+) ", listed, re.M):
            with self.subTest(command=command):
                self.assertIn(f"$ nookfit {command}", manual)
                options = re.findall(r"^  (--\w+)", nookfit("help", command).stdout, re.M)
                self.assertEqual([o for o in options if f"`{o}" not in manual], [])

    def test_the_smallest_room_for_plans_is_square_and_known(self):
        page = (TOP / "docs" / "publishing.md").read_text(encoding="utf-8")
        text = re.search(r"```toml\n(.*?)```", page, re.S).group(1)
        for straight, degrees in ((60, 90), (59, 88), (61, 92)):
            with JobFolder(room=text.replace("'60'", f"'{straight}'")) as folder:
                said = answer("room", folder)
            self.assertEqual(said["verdict"], "fits", said["missing"])
            self.assertAlmostEqual(said["corners"][0]["angle_deg"], degrees, delta=0.05)

    def test_each_picture_is_what_the_program_draws(self):
        with tempfile.TemporaryDirectory() as folder:
            now = drawn(folder)
        self.assertGreater(len(now), 2)
        for name, text in now.items():
            with self.subTest(picture=name):
                self.assertTrue((PICTURES / name).read_text(encoding="utf-8") == text,
                                "sh tests/cli/golden.sh --accept draws it anew")

    def test_each_test_that_the_proof_names_is_there_and_tagged(self):
        page = (TOP / "docs" / "proof.md").read_text(encoding="utf-8")
        published, routes = page.split("## Without a publication")
        for part, tag in [(published, r"\[reference\]"),
                          (routes, r"\[(property|fuzz-regression|reference)\]")]:
            files = set(re.findall(r"`(\w+/\w+\.cpp)`", part)) - {"survey/slip_test.cpp",
                                                                    "fasten/simulated_walls.cpp"}
            self.assertGreater(len(files), 4)
            for file in files:
                self.assertRegex((TOP / "tests" / file).read_text(encoding="utf-8"), tag, file)

    def test_each_link_of_a_page_leads_somewhere(self):
        for page in [TOP / "README.md", *(TOP / "docs").glob("*.md")]:
            for link in re.findall(r"\]\(([^)#]+)\)", page.read_text(encoding="utf-8")):
                if "://" not in link:
                    self.assertTrue((page.parent / link).exists(), f"{page.name}: {link}")

    def test_lines_left_out_are_any_lines_and_no_others(self):
        self.assertTrue(matches("a\n...\nd\n", "a\nb\nc\nd\n"))
        self.assertTrue(matches("a\n...\n", "a\nb\n"))
        self.assertFalse(matches("a\n...\nd\n", "a\nb\nc\n"))
        self.assertFalse(matches("a\n", "a\nb\n"))


if __name__ == "__main__":
    unittest.main()
