"""Runs one check over the repository: tidy.py CHECK SOURCE_DIR BUILD_DIR.

Prints what it finds as FILE:LINE: WHAT and exits 1 if it found anything. A check is a module of
this folder with a function check(tree) that returns such lines.
"""
import importlib
import sys

from tree import Tree


def main():
    name, source, build = sys.argv[1:]
    found = importlib.import_module(name).check(Tree(source, build))
    for line in found:
        print(line)
    print(f"{name}: {len(found)} found")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
