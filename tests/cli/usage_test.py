"""The command line: help, misspelt words, options out of range; whole texts and exit statuses."""
import re
import tempfile
import unittest

from program import answer, nookfit

# command line -> what stands on standard error, whole
REFUSED = {
    ("chekc",): "nookfit: error: no command is called 'chekc' [unknown-command]\n"
                "help: did you mean 'check'?\n",
    ("qwertyuiop",): "nookfit: error: no command is called 'qwertyuiop' [unknown-command]\n"
                     "help: 'nookfit' alone lists the commands\n",
    ("help", "drlil"): "nookfit: error: no command is called 'drlil' [unknown-command]\n"
                       "help: did you mean 'drill'?\n",
    ("--jsom", "check"): "nookfit: error: '--jsom' stands where a command is wanted "
                         "[option-before-command]\n"
                         "help: options stand after the command: nookfit check JOB --json\n",
    ("check", "--jsom"): "nookfit: error: check takes no option '--jsom' [unknown-option]\n"
                         "help: did you mean --json?\n",
    ("fit", "--verbose"): "nookfit: error: fit takes no option '--verbose' [unknown-option]\n"
                          "help: 'nookfit help fit' lists what it takes\n",
    ("check", "a", "b"): "nookfit: error: 'b' is one job too many [extra-argument]\n"
                         "help: give one folder; a name with spaces wants quotes\n",
    ("check", ".", "--round"): "nookfit: error: --round wants LENGTH, once [option-value]\n"
                               "help: 'nookfit help check' lists what it takes\n",
    ("check", "--json=yes"): "nookfit: error: --json takes no value [option-takes-no-value]\n"
                             "help: 'nookfit help check' lists what it takes\n",
    ("room", "rooms/lookout", "--expect", "left:50"):
        "nookfit: error: --expect wants 2 to 3 of MARKS, once [option-value]\n"
        "help: 'nookfit help room' lists what it takes\n",
    ("room", "rooms/lookout", "--units", "furlong"):
        "nookfit: error: 'furlong' is no unit [units]\n"
        "help: one of inch, mm, cm\n",
    ("room", "rooms/lookout", "--round", "5 m"):
        "nookfit: error: --round is out of range [round]\n"
        "help: from 0.01 mm to 100 mm\n",
    ("room", "rooms/lookout", "--round", "1/6"):
        "nookfit: error: --round: '1/6' is no step of a page in inches [round]\n"
        "help: one of 1, 1/2, 1/4, 1/8, 1/16, 1/32, 1/64 in\n",
    ("room", "rooms/lookout", "--round", "1 mm"):
        "nookfit: error: --round: '1 mm' is no step of a page in inches [round]\n"
        "help: one of 1, 1/2, 1/4, 1/8, 1/16, 1/32, 1/64 in\n",
    ("room", "rooms/lookout", "--units", "mm", "--round", "1/16 in"):
        "nookfit: error: --round: '1/16 in' is no step of a page in mm [round]\n"
        "help: like 1 mm or 0.5 cm\n",
    ("room", "rooms/lookout", "--sure", "95"):
        "nookfit: error: '95' is no chance to be sure with [sure]\n"
        "help: a number over 0.5 and under 1, like 0.95\n",
    ("room", "rooms/lookout", "--color", "often"):
        "nookfit: error: 'often' is no way to color [color]\n"
        "help: one of auto, always, never\n",
    ("room", "rooms/lookout", "--expect", "left:50", "rihgt:70"):
        "nookfit: error: room.toml has no wall 'rihgt', did you mean 'right'? [expect]\n"
        "help: like --expect left:50 right:70 height:30, or --expect mark:A mark:B\n",
    ("room", "rooms/lookout", "--expect", "left:50", "left:70"):
        "nookfit: error: the two walls share no corner [expect]\n"
        "help: like --expect left:50 right:70 height:30, or --expect mark:A mark:B\n",
    ("room", "rooms/lookout", "--expect", "mark:left/rihgt", "mark:nail"):
        "nookfit: error: room.toml has no mark 'left/rihgt', did you mean 'left/right'? [expect]\n"
        "help: like --expect left:50 right:70 height:30, or --expect mark:A mark:B\n",
}


def commands_listed():
    text = nookfit().stdout
    return re.findall(r"^  (\w+) +\S", text.split("Commands:\n")[1].split("\n\n")[0], re.M)


def options_listed(command):
    text = nookfit("help", command).stdout.split("Options:\n")[1].split("\n\n")[0]
    return re.findall(r"^  (--\w+) ?([A-Z]*)", text, re.M)


class Usage(unittest.TestCase):
    maxDiff = None

    def test_each_refused_command_line_says_why_and_exits_2(self):
        for words, said in REFUSED.items():
            with self.subTest(words=words):
                run = nookfit(*words)
                self.assertEqual((run.stderr, run.stdout, run.returncode), (said, "", 2))

    def test_a_refused_command_line_is_json_too_where_json_was_asked(self):
        said = answer("check", "--untis", "mm")
        self.assertEqual(said["verdict"], "bad input")
        self.assertEqual(said["answer"], "check")
        self.assertEqual(said["diagnostics"], [
            {"file": "nookfit", "line": 0, "column": 0,
             "what": "check takes no option '--untis'", "code": "unknown-option",
             "help": "did you mean --units?"}])

    def test_without_words_the_short_help_opens_with_its_purpose_and_an_example(self):
        run = nookfit()
        self.assertEqual(run.returncode, 0)
        self.assertTrue(run.stdout.startswith(
            "nookfit checks how shop-made pieces fit into a measured room corner.\n\n"
            "  nookfit check rooms/lookout\n"))
        self.assertLessEqual(max(len(line) for line in run.stdout.splitlines()), 80)

    def test_each_listed_command_has_help_with_examples_first(self):
        for command in commands_listed():
            if command == "help":
                continue
            with self.subTest(command=command):
                texts = {nookfit("help", command).stdout, nookfit(command, "-h").stdout,
                         nookfit(command, "--help").stdout}
                self.assertEqual(len(texts), 1)
                text = texts.pop()
                self.assertLess(text.index("Examples:\n  nookfit " + command),
                                text.index("Usage: nookfit " + command))

    def test_each_listed_option_is_taken_and_no_line_is_wider_than_80(self):
        for command in commands_listed():
            for line in nookfit("help", command).stdout.splitlines() if command != "help" else []:
                self.assertLessEqual(len(line), 80, line)
            for option, value in options_listed(command) if command != "help" else []:
                with self.subTest(command=command, option=option), tempfile.TemporaryDirectory() as here:
                    words = [option] + (["x:1", "y:2"] if value == "MARKS" else ["1"] if value else [])
                    said = nookfit(command, "no such folder", *words, cwd=here).stderr
                    self.assertNotIn("unknown-option", said)
                    self.assertNotIn("option-value", said)

    def test_help_alone_lists_the_common_options_and_the_exit_statuses(self):
        run = nookfit("help")
        self.assertEqual(run.returncode, 0)
        self.assertEqual(run.stdout, nookfit("--help").stdout)
        self.assertEqual(run.stdout, nookfit("-h").stdout)
        for word in ["--json", "--units UNIT", "--round LENGTH", "--sure CHANCE", "--color WHEN",
                     "--quiet", "Exit status:\n  0  all is well and sure\n"]:
            self.assertIn(word, run.stdout)

    def test_the_version_opens_with_the_programs_own(self):
        run = nookfit("--version")
        self.assertEqual(run.returncode, 0)
        self.assertRegex(run.stdout, r"\Anookfit \d+\.\d+\.\d+\n")


if __name__ == "__main__":
    unittest.main()
