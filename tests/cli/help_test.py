"""Every complaint of the program says what to do, in files and on the command line."""

import pathlib
import re
import tempfile
import unittest

from program import TOP, answer, nookfit

BAD = TOP / "tests" / "job" / "bad"
LOOKOUT = TOP / "rooms" / "lookout"


class Help(unittest.TestCase):
    def each_has_help(self, run):
        self.assertEqual(run.returncode, 2, run.stderr[-500:])
        blocks = re.split(r"(?m)^(?=.*: error: )", run.stderr)
        blocks = [block for block in blocks if block.strip()]
        self.assertGreater(len(blocks), 0)
        for block in blocks:
            self.assertRegex(block, r"(?m)^help: \S.{4,}$")

    def test_each_fault_of_the_bad_files(self):
        tried = 0
        for kind, command in (("room", "room"), ("design", "fit"), ("pieces", "verify")):
            for bad in sorted(BAD.glob(f"{kind}-*.toml")):
                with self.subTest(bad=bad.name), tempfile.TemporaryDirectory() as folder:
                    for name in ("room", "design") if kind != "room" else ():
                        pathlib.Path(folder, name + ".toml").write_bytes((LOOKOUT / (name + ".toml")).read_bytes())
                    pathlib.Path(folder, kind + ".toml").write_bytes(bad.read_bytes())
                    self.each_has_help(nookfit(command, folder))
                    tried += 1
        self.assertGreater(tried, 200)

    def test_faults_between_files_and_of_folders(self):
        with tempfile.TemporaryDirectory() as folder:
            self.each_has_help(nookfit("check", folder))
            self.each_has_help(nookfit("check", folder + "/nowhere"))
            room = pathlib.Path(folder, "room.toml")
            room.write_text('[[wall]]\nname = "north"\n[[wall]]\nname = "east"\n')
            self.each_has_help(nookfit("fit", folder))
            pathlib.Path(folder, "design.toml").write_bytes((LOOKOUT / "design.toml").read_bytes())
            self.each_has_help(nookfit("fit", folder))
            room.write_bytes((LOOKOUT / "room.toml").read_bytes())
            pathlib.Path(folder, "pieces.toml").write_text('[[piece]]\npart = "no such piece"\n')
            self.each_has_help(nookfit("verify", folder))
            said = answer("verify", folder)
            self.assertEqual(said["verdict"], "bad input")
            self.assertTrue(all(fault["help"] for fault in said["diagnostics"]))

    def test_command_lines(self):
        for words in (["chekc"], ["check", "--units", "yard"], ["check", "--round", "1/3"], ["check", "--sure", "2"],
                      ["check", "--colour", "never"], ["check", "--color", "red"], ["adapt", "rooms/lookout"],
                      ["sheet", "rooms/lookout"], ["room", "rooms/lookout", "--expect", "left:50"],
                      ["room", "rooms/lookout", "--expect", "left:fifty", "right:70"], ["check", "a", "b"],
                      ["adapt", "rooms/lookout", "-o", "rooms/lookout"], ["help", "nothing"], ["help", "--as", "pdf"]):
            with self.subTest(words=words):
                self.each_has_help(nookfit(*words))


if __name__ == "__main__":
    unittest.main()
