"""Each example in README.md and docs/ is run: what the page shows is what the program says.

An example is a fenced block 'console' whose first line is '$ nookfit ...'. A line '...' stands for
any lines left out. `sh tests/cli/golden.sh --accept` renews the examples without such a line.
"""
import re
import shlex
import unittest

from program import TOP, nookfit

PAGES = [TOP / "README.md", TOP / "docs" / "manual.md"]
BLOCK = re.compile(r"```console\n\$ nookfit ?([^\n]*)\n(.*?)```", re.S)


def matches(shown, said):
    """True where `shown`, with '...' for lines left out, is what was said."""
    pieces = [re.escape(piece) for piece in re.split(r"^\.\.\.\n", shown, flags=re.M)]
    return re.fullmatch("(?:.*\n)*?".join(pieces), said) is not None


def accept():
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

    def test_lines_left_out_are_any_lines_and_no_others(self):
        self.assertTrue(matches("a\n...\nd\n", "a\nb\nc\nd\n"))
        self.assertTrue(matches("a\n...\n", "a\nb\n"))
        self.assertFalse(matches("a\n...\nd\n", "a\nb\nc\n"))
        self.assertFalse(matches("a\n", "a\nb\n"))


if __name__ == "__main__":
    unittest.main()
