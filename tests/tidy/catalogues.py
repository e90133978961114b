"""What was added in one place and forgotten in another: rules, scenarios, config's pairs, words."""
import re

SCENARIO = (".cpp", ".txt", ".scenario")


def check(tree):
    return (rules(tree) + reasons(tree) + broken_pairs(tree) + golden(tree) + namespaces(tree))


def enumerators(tree, path, name):
    """(line number, enumerator) of one enum class."""
    inside = False
    for number, line in tree.lines(path):
        if re.match(rf"enum class {name}\b", line):
            inside = True
        elif inside and line.startswith("}"):
            return
        elif inside:
            match = re.match(r"\s*([a-z_0-9]+),", line)
            if match:
                yield number, match.group(1)


def rules(tree):
    """Each RuleId has its file, its row in the catalogue, and a scenario that names it."""
    found = []
    names = "core/room/rule.hpp"
    catalogue = tree.text("core/rules/catalogue.cpp")
    scenarios = "".join(tree.text(path) for path in tree.files("tests", suffixes=SCENARIO)
                        if path.startswith("tests/scenarios/"))
    known = set()
    for number, rule in enumerators(tree, names, "RuleId"):
        known.add(rule)
        if not tree.has(f"core/rules/{rule}.cpp"):
            found.append(f"{names}:{number}: core/rules/{rule}.cpp is missing")
        if not re.search(rf"\b{rule}\b", catalogue):
            found.append(f"{names}:{number}: {rule} has no row in core/rules/catalogue.cpp")
        if not re.search(rf"RuleId::{rule}\b|expect announced {rule} raised", scenarios):
            found.append(f"{names}:{number}: no scenario in tests/scenarios names {rule}")
    return found


# They name every reason and give none.
NAMES_OF_REASONS = ("core/report/", "daemon/store/names.cpp")


def reasons(tree):
    """Each Why is given by somebody: else its sentence is never read."""
    path = "core/base/reason.hpp"
    if not tree.has(path):
        return []
    givers = "".join(tree.text(file) for file in tree.files("core", "config", "daemon")
                     if file != path and not file.startswith(NAMES_OF_REASONS))
    given = set(re.findall(r"\bWhy::(\w+)", givers))
    return [f"{path}:{number}: nobody gives the reason {why}"
            for number, why in enumerators(tree, path, "Why") if why not in given]


def broken_pairs(tree):
    """Each tests/broken/X.toml has the messages it must give in X.expected, and the reverse."""
    files = tree.files("tests", suffixes=(".toml", ".expected"))
    files = [path for path in files if path.startswith("tests/broken/")]
    found = []
    for path in files:
        stem, dot, suffix = path.rpartition(".")
        other = stem + dot + {"toml": "expected", "expected": "toml"}[suffix]
        if other not in files:
            found.append(f"{path}:1: {other} is missing")
    return found


def golden(tree):
    """Each convention of daemon/hub (its header begins so) has golden files under its name."""
    found = []
    for path in tree.files("daemon", suffixes=(".hpp",)):
        first = tree.text(path).partition("\n")[0]
        if path.startswith("daemon/hub/") and "convention:" in first:
            name = path.split("/")[2].removesuffix(".hpp")
            kept = tree.source / "tests/golden" / name
            if not kept.is_dir() or not any(kept.iterdir()):
                found.append(f"{path}:1: tests/golden/{name}/ is missing")
    return found


def namespaces(tree):
    """Folder = namespace in core; core/base, state.hpp (all of it) and the files directly in core
    are tidewright.
    """
    found = []
    for path in tree.files("core"):
        parts = path.split("/")
        whole = len(parts) == 2 or parts[1] == "base" or path == "core/state/state.hpp"
        ours = "tidewright" if whole else f"tidewright::{parts[1]}"
        match = re.search(r"^namespace ([\w:]+) \{", tree.text(path), flags=re.MULTILINE)
        if not match or match.group(1) != ours:
            found.append(f"{path}:1: its namespace must be {ours}")
    return found
