"""How long a file, a function and a line may be, and how a header begins."""
import re

from tree import without_text

FILE_LINES = {"core": 300, "config": 300, "daemon": 300, "tests": 500}
FUNCTION_LINES = 60
COLUMNS = 100

NO_FUNCTION = re.compile(r"\b(namespace|class|struct|union|enum|extern)\b|[=,{(]\s*$")


def check(tree):
    found = []
    for path in tree.files("core", "config", "daemon", "tests"):
        found += file_too_long(tree, path)
        found += functions_too_long(tree, path)
        found += header_begins(tree, path)
    for path in tree.files(suffixes=(".cpp", ".hpp", ".py", ".sh", "CMakeLists.txt", ".toml")):
        # What a broken household file looks like is its own affair.
        if not path.startswith("tests/broken/"):
            found += lines_too_long(tree, path)
    return found


def file_too_long(tree, path):
    count = sum(1 for _ in tree.lines(path))
    limit = FILE_LINES[path.split("/")[0]]
    if count > limit:
        yield f"{path}:{limit + 1}: the file has {count} lines, at most {limit} are allowed"


def lines_too_long(tree, path):
    for number, line in tree.lines(path):
        if len(line) > COLUMNS:
            yield f"{path}:{number}: {len(line)} columns, at most {COLUMNS} are allowed"


def functions_too_long(tree, path):
    """A braced block that is no namespace, type or list of values, from its brace to its end."""
    code = without_text(tree.text(path))
    code = re.sub(r"^#[^\n]*", "", code, flags=re.MULTILINE)
    opened, line, since = [], 1, 0
    for position, character in enumerate(code):
        if character == "\n":
            line += 1
        elif character == "{":
            before = code[since:position]
            opened.append((line, ")" in before and not NO_FUNCTION.search(before)))
        elif character == "}" and opened:
            begin, function = opened.pop()
            length = line - begin + 1
            if function and length > FUNCTION_LINES:
                yield (f"{path}:{begin}: {length} lines in one function, "
                       f"at most {FUNCTION_LINES} are allowed")
        if character in "{};":
            since = position + 1


def header_begins(tree, path):
    if not path.endswith(".hpp"):
        return
    text = tree.text(path)
    if not text.startswith("//"):
        yield f"{path}:1: a header begins with what it is and who calls it"
    if "#pragma once" not in text:
        yield f"{path}:1: #pragma once is missing"
