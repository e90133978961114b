"""The repository as the checks see it: its files, their lines, and C++ without its text."""
import pathlib
import re

NOT_OURS = {"build", ".git", ".cache", "__pycache__"}
CODE = (".cpp", ".hpp")


class Tree:
    def __init__(self, source, build=None):
        self.source = pathlib.Path(source).resolve()
        self.build = pathlib.Path(build).resolve() if build else None

    def files(self, *folders, suffixes=CODE):
        """Paths below the folders (none given: everywhere), relative to the root, in order."""
        return sorted(self._walk(self.source, folders, suffixes))

    def _walk(self, folder, folders, suffixes):
        for entry in folder.iterdir():
            if entry.name in NOT_OURS:
                continue
            path = entry.relative_to(self.source).as_posix()
            if entry.is_dir():
                yield from self._walk(entry, folders, suffixes)
            elif path.endswith(suffixes):
                if not folders or path.split("/")[0] in folders:
                    yield path

    def has(self, path):
        return (self.source / path).is_file()

    def text(self, path):
        return (self.source / path).read_text(encoding="utf-8")

    def lines(self, path):
        """(number, line) pairs, numbered from 1."""
        return enumerate(self.text(path).splitlines(), 1)


_TEXT = re.compile(
    r"""//[^\n]*|/\*.*?\*/|R"(?P<mark>\w*)\(.*?\)(?P=mark)"|"""
    r""""(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])+'""",
    re.DOTALL)


def without_text(code):
    """C++ with comments, strings and characters blanked out; lines stay where they are."""

    def blank(match):
        return re.sub(r"[^\n]", " ", match.group())

    # A digit separator (1'000) is no character.
    return _TEXT.sub(blank, re.sub(r"(?<=\d)'(?=\d)", "_", code))
