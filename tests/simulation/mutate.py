"""Random mistakes in the source, to see whether the tests notice: mutate.py [COUNT] [SEED].

Draws COUNT (30) small changes over core/signal, core/procedure and core/interlock: a comparison
turned, a condition denied, a constant moved, a statement left out. Each is made alone in a copy of
the tree below build/mutate, built, and the unit tests of core, the scenarios and the nights
are run.
A change that does not compile is drawn again.
Prints each and who noticed it; survivors last.
Exit 1 if more than one in ten survives.
"""
import random
import re
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
COPY = ROOT / "build/mutate/source"
BUILD = ROOT / "build/mutate/build"
FOLDERS = ("core/signal", "core/procedure", "core/interlock")
BINARIES = {
    "unit_tests": [],
    "scenario_tests": [],
    "simulation_tests": ["--gtest_filter=-*QuietMonth*:*FullMonth*:*QuietYear*:*Determinism*"],
}
COMPARISONS = {"<=": "<", ">=": ">", "<": "<=", ">": ">=", "==": "!=", "!=": "=="}


def changes(line):
    """(what, the line changed) for each small change that this line allows."""
    code = line.split("//")[0]
    if not code.strip() or code.lstrip().startswith(
            ("#", "using", "namespace", "template", "static_assert")):
        return
    for match in re.finditer(r" (<=|>=|==|!=|<|>) ", code):
        other = COMPARISONS[match.group(1)]
        yield f"{match.group(1)} becomes {other}", replaced(line, match.span(1), other)
    for match in re.finditer(r" (&&|\|\|) ", code):
        other = {"&&": "||", "||": "&&"}[match.group(1)]
        yield f"{match.group(1)} becomes {other}", replaced(line, match.span(1), other)
    match = re.match(r"(\s*(?:\} else )?if \()(.*)(\) .*)$", line.rstrip("\n"))
    if match and match.group(2).count("(") == match.group(2).count(")") and ";" not in match[2] \
            and "auto" not in match.group(2):
        yield "the condition is denied", f"{match[1]}!({match[2]}){match[3]}\n"
    for match in re.finditer(r"(?<![\w.])(\d+)(?=(s|min|h|ms)?\b)(?!\.\d)", code):
        yield "a number grows", replaced(line, match.span(1), str(int(match.group(1)) * 2 + 1))
    statement = r"\s*[\w.>\-\[\]:]+ = [^;]*;$|\s*[\w:]+\([^;]*\);$|\s*\+\+[\w.>\-]+;$"
    if re.match(statement, code.rstrip()):
        yield "the statement is left out", re.match(r"\s*", line).group() + ";\n"


def replaced(line, span, text):
    return line[:span[0]] + text + line[span[1]:]


def all_changes():
    found = []
    for folder in FOLDERS:
        for path in sorted((ROOT / folder).glob("*.cpp")):
            end = ""  # of the function or the block that is one of the deliberate mistakes
            for number, line in enumerate(path.read_text().splitlines(keepends=True)):
                if line.startswith("// A deliberate mistake"):
                    end = "}\n"
                elif "if (mutant(" in line and not line.rstrip().endswith(";"):
                    end = re.match(r"\s*", line).group() + "}\n"
                if line == end:
                    end = ""
                if end or "mutant(" in line:
                    continue
                for what, changed in changes(line):
                    found.append((path.relative_to(ROOT), number, what, changed))
    return found


def run(*words, **options):
    return subprocess.run(words, capture_output=True, text=True, **options)


def copy_tree():
    """What differs is written anew, so that a change which a killed run left is built away."""
    files = run("git", "-C", str(ROOT), "ls-files", "-co", "--exclude-standard").stdout.split()
    for name in files:
        was, copy = ROOT / name, COPY / name
        if not was.is_file() or (copy.is_file() and copy.read_bytes() == was.read_bytes()):
            continue
        copy.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(was, copy)


def build():
    done = run("cmake", "--build", str(BUILD), "--target", *BINARIES)
    return done.returncode == 0, done.stdout


def noticed_by():
    for binary, words in BINARIES.items():
        try:
            done = run(str(BUILD / "tests" / binary), "--gtest_fail_fast", "--gtest_brief=1",
                       *words,
                       timeout=900)
        except subprocess.TimeoutExpired:
            return f"{binary} (without end)"
        if done.returncode != 0:
            first = re.search(r"\[  FAILED  \] (\S+)", done.stdout)
            return f"{binary} {first.group(1) if first else ''}".strip()
    return None


def main():
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 30
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else 1
    copy_tree()
    run("cmake", "-S", str(COPY), "-B", str(BUILD), "-G", "Ninja", "-DCMAKE_BUILD_TYPE=Release",
        "-DCMAKE_CXX_FLAGS_RELEASE=-O1", check=True)
    built, said = build()
    if not built or noticed_by():
        print(said, "the unchanged source does not pass")
        return 1
    drawn = all_changes()
    random.Random(seed).shuffle(drawn)
    print(f"{count} of {len(drawn)} changes, seed {seed}", flush=True)
    survivors, tried = [], 0
    for path, number, what, changed in drawn:
        if tried == count:
            break
        lines = (ROOT / path).read_text().splitlines(keepends=True)
        was, lines[number] = lines[number], changed
        (COPY / path).write_text("".join(lines))
        built, _ = build()
        who = noticed_by() if built else None
        (COPY / path).write_text((ROOT / path).read_text())
        if not built:
            continue
        tried += 1
        print(f"{path}:{number + 1}: {what}: {was.strip()}\n    {who or 'NOBODY NOTICED'}",
              flush=True)
        if not who:
            survivors.append(f"{path}:{number + 1}: {what}: {was.strip()}")
    print(f"\n{tried - len(survivors)} of {tried} noticed")
    print("\n".join(survivors))
    return 1 if 10 * len(survivors) > tried else 0


if __name__ == "__main__":
    sys.exit(main())
