"""The documents' check, on planted stale pages and a program that says one line."""
from planted import Planted

import documents


class Documents(Planted):
    def found(self):
        return list(documents.stale(self.tree, lambda arguments: f"{arguments[1]}\nend\n"))

    def setUp(self):
        super().setUp()
        for path, arguments in documents.GENERATED.items():
            self.plant(path, f"{arguments[1]}\nend\n")

    def test_fresh_passes(self):
        self.assertFinds(self.found())

    def test_changed_line(self):
        self.plant("docs/alarms.md", "alarms\nEND\n")
        self.assertFinds(self.found(), "docs/alarms.md:2: stale")

    def test_line_too_many_and_too_few(self):
        self.plant("docs/keys.md", "keys\nend\nmore\n")
        self.plant("docs/topics.md", "topics\n")
        self.assertFinds(self.found(), "docs/keys.md:3:", "docs/topics.md:2:")

    def test_missing_page(self):
        (self.tree.source / "docs/quantities.md").unlink()
        self.assertFinds(self.found(), "docs/quantities.md:1:")

    def test_misquoted_household_file(self):
        self.plant("config/minimal.toml", "a = 1\nb = 2\n")
        self.plant("README.md", "x = 0\n```toml\na = 1\nb = 3\n```\nc = 4\n")
        self.assertFinds(documents.misquoted(self.tree), "README.md:4: not in config/minimal.toml")
