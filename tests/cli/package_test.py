"""What is installed, and that help, man page, completions and manual say the same."""
import pathlib
import re
import shutil
import subprocess
import tempfile
import unittest

from program import NOOKFIT, TOP, nookfit

NAMES = "CGAL Eigen toml++ nlohmann-json CLI11 fmt cairo".split()


def commands_listed():
    return re.findall(r"^  (\w+) +\S", nookfit().stdout.split("Commands:\n")[1].split("\n\n")[0], re.M)


def options_of(command):
    """option -> the name of its value, by the help of the command."""
    text = nookfit("help", command).stdout.split("Options:\n")[1].split("\n\n")[0]
    return dict(re.findall(r"^  (--?\w+) ?([A-Z]*)", text, re.M))


def shared_options():
    text = nookfit("help").stdout.split("Options of every command:\n")[1].split("\n\n")[0]
    return dict(re.findall(r"^  (--?\w+) ?([A-Z]*)", text, re.M))


def man_sections():
    """The man page as groff prints it: command -> its text, and the options of every command."""
    source = nookfit("help", "--as", "man").stdout
    page = subprocess.run(["groff", "-man", "-Tascii", "-P-bcou", "-rLL=100n"], input=source,
                          capture_output=True, text=True, check=True)
    body = page.stdout.split("\nCOMMANDS\n")[1]
    commands, rest = body.split("\nOPTIONS OF EVERY COMMAND\n")
    parts = re.split(r"^   (\w+)\n", commands, flags=re.M)[1:]
    return dict(zip(parts[::2], parts[1::2])), "\n" + rest.split("\nEXIT STATUS\n")[0], page.stderr


def options_in(text):
    return dict(re.findall(r"^ {7}(--?\w+)(?: ([A-Z]+)\b)?(?: |$)", text, re.M))


def bash_offers(*words):
    script = nookfit("help", "--as", "bash").stdout + (
        'COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _nookfit; printf "%s\\n" "${COMPREPLY[@]}"\n')
    run = subprocess.run(["bash", "-c", script, "bash", "nookfit", *words], cwd=TOP,
                         capture_output=True, text=True, check=True)
    return set(run.stdout.split())


def fish_offers(line):
    with tempfile.TemporaryDirectory() as home:
        script = nookfit("help", "--as", "fish").stdout + f"complete -C '{line}'\n"
        run = subprocess.run(["fish", "--no-config", "-c", script], cwd=TOP, capture_output=True,
                             text=True, check=True, env={"HOME": home, "PATH": "/usr/bin:/bin"})
    return {row.split("\t")[0] for row in run.stdout.splitlines()}


def zsh_specs(command):
    """What the function hands to zsh's own _arguments for a command."""
    script = ("_arguments() { print -rl -- \"$@\" }\n_describe() { print -rl -- ${(P)2} }\n"
              "words=(nookfit %s '')\nCURRENT=3\n" % command) + nookfit("help", "--as", "zsh").stdout
    run = subprocess.run(["zsh", "-f", "-c", script], capture_output=True, text=True, check=True)
    return run.stdout.splitlines()


class OneTable(unittest.TestCase):
    maxDiff = None

    def test_the_man_page_lists_each_command_with_the_options_its_help_lists(self):
        sections, shared, complaints = man_sections()
        self.assertEqual(complaints, "")
        self.assertEqual(list(sections), commands_listed())
        self.assertEqual(options_in(shared), shared_options())
        for command in commands_listed():
            own = {name: value for name, value in options_of(command).items()
                   if command == "help" or name not in shared_options()}
            self.assertEqual(options_in(sections[command]), own, command)

    def test_the_man_page_says_of_each_option_what_the_help_says(self):
        page = " ".join(nookfit("help", "--as", "man").stdout.replace("\\-", "-").split())
        for command in commands_listed():
            text = nookfit("help", command).stdout.split("Options:\n")[1].split("\n\n")[0]
            for said in re.split(r"^  --?\w+(?: [A-Z]+)? +", text, flags=re.M)[1:]:
                self.assertIn(" ".join(said.split()), page, command)

    def test_bash_offers_the_commands_and_each_commands_options(self):
        self.assertEqual(bash_offers(""), set(commands_listed()))
        for command in commands_listed():
            self.assertEqual(bash_offers(command, "-"), set(options_of(command)), command)
        self.assertEqual(bash_offers("sheet", "-o", "ro"), {"rooms"})

    @unittest.skipUnless(shutil.which("fish"), "fish is not installed")
    def test_fish_offers_the_commands_and_each_commands_options(self):
        self.assertEqual(fish_offers("nookfit "), set(commands_listed()))
        for command in commands_listed():
            offered = fish_offers(f"nookfit {command} -") | fish_offers(f"nookfit {command} --")
            self.assertEqual(offered, set(options_of(command)), command)

    @unittest.skipUnless(shutil.which("zsh"), "zsh is not installed")
    def test_zsh_is_told_each_commands_options(self):
        for command in commands_listed():
            specs = [re.match(r"(?:\(.*?\))?(--?\w+)\[(.*)\](?::([A-Z]+):)?", spec)
                     for spec in zsh_specs(command)]
            told = {spec[1]: spec[3] or "" for spec in specs if spec}
            self.assertEqual(told, options_of(command), command)

    def test_each_value_that_a_shell_offers_is_taken(self):
        for option in ["--units", "--color"]:
            offered = bash_offers("room", option, "")
            self.assertGreater(len(offered), 2)
            for value in offered:
                run = nookfit("room", "rooms/lookout", "--quiet", option, value)
                self.assertLess(run.returncode, 2, run.stderr)
        for page in bash_offers("help", "--as", ""):
            self.assertEqual(nookfit("help", "--as", page).returncode, 0)

    def test_each_option_the_manual_names_is_in_the_help(self):
        known = {name for command in commands_listed() for name in options_of(command)}
        manual = (TOP / "docs" / "manual.md").read_text(encoding="utf-8")
        named = set(re.findall(r"`(--\w+|-o)\b", manual)) - {"--version", "--help"}
        self.assertEqual(named - known, set())
        self.assertEqual({name for name in known if name not in manual}, set())

    def test_the_version_names_each_library_with_a_number(self):
        lines = nookfit("--version").stdout.splitlines()
        self.assertRegex(lines[0], r"\Anookfit \d+\.\d+\.\d+\Z")
        self.assertEqual([line.split()[0] for line in lines[1:]], NAMES)
        for line in lines[1:]:
            self.assertRegex(line, r"\A\S+ \d+\.\d+(\.\d+)?( \(.*\))?\Z")


class Installed(unittest.TestCase):
    """`cmake --install` of the build that is tested, into a folder of its own."""

    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory()
        cls.prefix = pathlib.Path(cls.folder.name)
        build = (TOP / NOOKFIT).parent.parent
        subprocess.run(["cmake", "--build", str(build), "--target", "nookfit_pages"],
                       check=True, capture_output=True)
        subprocess.run(["cmake", "--install", str(build), "--prefix", str(cls.prefix)],
                       check=True, capture_output=True)

    @classmethod
    def tearDownClass(cls):
        cls.folder.cleanup()

    def test_the_program_answers_for_an_installed_sample(self):
        rooms = self.prefix / "share/doc/nookfit/rooms"
        self.assertEqual(sorted(path.name for path in rooms.iterdir()),
                         ["corner-desk", "lookout", "window-bench"])
        run = subprocess.run([str(self.prefix / "bin/nookfit"), "room", str(rooms / "lookout")],
                             capture_output=True, text=True, cwd="/")
        self.assertLess(run.returncode, 2, run.stderr)
        self.assertIn("left", run.stdout)

    def test_man_page_completions_and_docs_are_there_and_no_tests(self):
        share = self.prefix / "share"
        for page, file in [("man", "man/man1/nookfit.1"),
                           ("bash", "bash-completion/completions/nookfit"),
                           ("zsh", "zsh/vendor-completions/_nookfit"),
                           ("fish", "fish/vendor_completions.d/nookfit.fish")]:
            self.assertEqual((share / file).read_text(encoding="utf-8"),
                             nookfit("help", "--as", page).stdout)
        docs = {path.name for path in (share / "doc/nookfit").iterdir()}
        self.assertLessEqual({"README.md", "copyright", "manual.md", "formats.md", "method.md"}, docs)
        self.assertEqual(list(self.prefix.rglob("expected")) + list(self.prefix.rglob("test_*")), [])


if __name__ == "__main__":
    unittest.main()
