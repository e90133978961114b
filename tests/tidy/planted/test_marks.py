"""The marks' check, on planted marks (each written in two halves here, too)."""
from planted import Planted

import marks


class Marks(Planted):
    def test_plain_text_passes(self):
        self.plant("README.md", "topic `home/waterroom/leak`, see docs/ARCHITECTURE.md\n")
        self.plant("daemon/loop.cpp", "std::this_thread::sleep" "_for(1s);\n")
        self.assertFinds(marks.check(self.tree))

    def test_unfinished(self):
        self.plant("core/a.cpp", "\n// TO" "DO: think\n")
        self.plant("docs/a.md", "FIX" "ME\n")
        self.assertFinds(marks.check(self.tree), "core/a.cpp:2: unfinished", "docs/a.md:1:")

    def test_skipped(self):
        self.plant("tests/a.cpp", "GTEST_" "SKIP();\nTEST(A, DISABLED" "_B) {}\n")
        self.assertFinds(marks.check(self.tree), "tests/a.cpp:1:", "tests/a.cpp:2:")

    def test_sleeping(self):
        self.plant("tests/a.cpp", "std::this_thread::sleep" "_for(1s);\nusle" "ep(5);\n")
        self.assertFinds(marks.check(self.tree), "tests/a.cpp:1:", "tests/a.cpp:2:")

    def test_machine(self):
        self.plant("README.md", "see ../sha" "red/X.md\n")
        self.plant("config/a.toml", "state = '/ho" "me/ann/x'\n")
        self.plant(".ci/run", "cd /wor" "k/main\n")
        self.assertFinds(marks.check(self.tree), "README.md:1:", "config/a.toml:1:", ".ci/run:1:")

    def test_registry(self):
        self.plant("tests/run.sh", "curl http://deb" ".debian.org/\n")
        self.assertFinds(marks.check(self.tree), "tests/run.sh:1: the address")
