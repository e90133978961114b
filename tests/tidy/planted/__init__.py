"""Small trees with a fault in each, which the checks must find, and without, which they must let
pass.
"""
import pathlib
import sys
import tempfile
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).parent.parent))

from tree import Tree  # noqa: E402: found by the line above


class Planted(unittest.TestCase):
    """A test that grows files in a tree of its own and asks a check what it finds there."""

    def setUp(self):
        self.folder = tempfile.TemporaryDirectory()
        self.addCleanup(self.folder.cleanup)
        self.tree = Tree(self.folder.name, self.folder.name)

    def plant(self, path, text):
        file = self.tree.source / path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, encoding="utf-8")

    def assertFinds(self, found, *expected):
        """Each of `expected` begins one line that was found, and nothing else was found."""
        found = list(found)
        for beginning in expected:
            self.assertTrue([line for line in found if line.startswith(beginning)],
                            f"{beginning} not in {found}")
        self.assertEqual(len(found), len(expected), found)
