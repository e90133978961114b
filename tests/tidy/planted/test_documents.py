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
        self.plant("docs/ALARMS.md", "alarms\nEND\n")
        self.assertFinds(self.found(), "docs/ALARMS.md:2: stale")

    def test_line_too_many_and_too_few(self):
        self.plant("docs/KEYS.md", "keys\nend\nmore\n")
        self.plant("docs/TOPICS.md", "topics\n")
        self.assertFinds(self.found(), "docs/KEYS.md:3:", "docs/TOPICS.md:2:")

    def test_missing_page(self):
        (self.tree.source / "docs/QUANTITIES.md").unlink()
        self.assertFinds(self.found(), "docs/QUANTITIES.md:1:")

    def test_misquoted_household_file(self):
        self.plant("config/minimal.toml", "a = 1\nb = 2\n")
        self.plant("README.md", "x = 0\n```toml\na = 1\nb = 3\n```\nc = 4\n")
        self.assertFinds(documents.misquoted(self.tree), "README.md:4: not in config/minimal.toml")
