"""The documents that the program writes are those that are kept, and the README quotes truly.

Run as documents.py SOURCE_DIR BUILD_DIR it writes them anew.
"""
import subprocess
import sys

from tree import Tree

GENERATED = {
    "config/schema.json": ["list", "schema"],
    "docs/alarms.md": ["list", "alarms", "--markdown"],
    "docs/interlocks.md": ["list", "interlocks", "--markdown"],
    "docs/keys.md": ["list", "keys", "--markdown"],
    "docs/topics.md": ["list", "topics", "--markdown"],
    "docs/quantities.md": ["list", "quantities", "--markdown"],
}


def check(tree):
    found = list(stale(tree, lambda arguments: printed(tree.build / "tidewright", arguments)))
    return found + list(misquoted(tree))


def printed(program, arguments):
    return subprocess.run([str(program), *arguments], check=True, text=True,
                          capture_output=True).stdout


def stale(tree, say):
    for path, arguments in GENERATED.items():
        ours = tree.text(path).splitlines() if tree.has(path) else []
        theirs = say(arguments).splitlines()
        for number, (kept, said) in enumerate(zip(ours + [None], theirs + [None]), 1):
            if kept != said:
                yield f"{path}:{number}: stale; `tidewright {' '.join(arguments)}` says: {said}"
                break


def misquoted(tree):
    """Lines of the README's household file that config/minimal.toml does not have."""
    real = tree.text("config/minimal.toml").splitlines()
    quoting = False
    for number, line in tree.lines("README.md"):
        if line.startswith("```"):
            quoting = line == "```toml"
        elif quoting and line not in real:
            yield f"README.md:{number}: not in config/minimal.toml: {line}"


def write(tree):
    for path, arguments in GENERATED.items():
        text = printed(tree.build / "tidewright", arguments)
        (tree.source / path).write_text(text, encoding="utf-8")


if __name__ == "__main__":
    write(Tree(*sys.argv[1:]))
