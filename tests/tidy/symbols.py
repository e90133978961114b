"""What the core's library asks of the machine, by nm: no clock, file, thread, chance or heap."""
import json
import re
import subprocess

# Asked of anybody outside: never, in all of core.
NEVER = re.compile(
    r"(clock_gettime|gettimeofday|time|localtime(_r)?|gmtime(_r)?|mktime|strftime|nanosleep|usleep|"
    r"sleep|f?open(64)?|f?read|f?write|printf|fprintf|puts|socket|connect|send|recv|poll|epoll_\w+|"
    r"pthread_\w+|s?rand|rand_r|random|getenv|setlocale|strtod|atof|abort_handler)(@.*)?$"
    r"|std::chrono::_V2::(steady|system)_clock::now"
    r"|std::(thread|random_device|basic_[io]?fstream|basic_ostream|ios_base|locale|this_thread)\b"
    r"|std::_Hash_bytes")

# Asked in the folders that step() runs through: no heap, no throw.
NOT_IN_STEP = re.compile(
    r"operator new|malloc|calloc|realloc|__cxa_throw$|__cxa_allocate_exception|std::__throw_")
# Everything else in core is called outside step(): the room is built once, the report at leisure.
OUTSIDE_STEP = ("core/room/", "core/report/", "core/rehearsal/", "core/nights/")

# Sections in which a program keeps what it changes; .data.rel.ro is only written by the loader.
CHANGING = re.compile(r"\.(data|bss|tdata|tbss)(\.(?!rel\.ro).*)?$")
# The letters of what a header defines for all that include it.
SHARED = "uV"
# What the compiler itself puts there.
COMPILERS = ("guard variable", "DW.ref.")


def check(tree):
    found = []
    objects = core_objects(tree)
    if not objects:
        return ["core:1: no object of the core's library was found in the build"]
    for path, built in objects:
        found += judge(path, symbols(built), tree.text(path), headers(tree, path))
    return found


def fixed(name, source):
    """Put there by the compiler itself, or constexpr (g++ puts some of those among the data)."""
    own = re.escape(name.rpartition("::")[2])
    return name.startswith(COMPILERS) or re.search(
        rf"^ *(static |inline )*constexpr [^;=]*\b{own}\b", source, re.M)


def headers(tree, path):
    """The text of the headers of core that the source includes itself."""
    included = re.findall(r'^#include "(core/[^"]+)"', tree.text(path), re.M)
    return "\n".join(map(tree.text, included))


def core_objects(tree):
    """(source path, object file) of every source of core, as the build says."""
    pairs = []
    for entry in json.loads((tree.build / "compile_commands.json").read_text()):
        path = entry["file"]
        prefix = f"{tree.source}/core/"
        if path.startswith(prefix):
            output = re.search(r" -o (\S+)", entry["command"]).group(1)
            pairs.append(("core/" + path[len(prefix):], tree.build / output))
    return sorted(pairs)


def symbols(built):
    """(name, class letter, section) of each symbol; System V columns."""
    text = subprocess.run(["nm", "-C", "-f", "sysv", str(built)], check=True, text=True,
                          capture_output=True).stdout
    for line in text.splitlines():
        columns = [column.strip() for column in line.rsplit("|", 6)]
        if len(columns) == 7 and columns[0] != "Name":
            yield columns[0], columns[2], columns[6]


def judge(path, rows, source, included):
    for name, kind, section in rows:
        if kind == "U" and NEVER.match(name):
            yield f"{path}:1: core must not ask for {name}"
        if kind == "U" and NOT_IN_STEP.match(name) and not path.startswith(OUTSIDE_STEP):
            yield f"{path}:1: step() must not ask for {name}"
        if kind in "bBdDuV" and CHANGING.match(section) \
                and not fixed(name, included if kind in SHARED else source):
            yield f"{path}:1: {name} can change: core keeps nothing outside State"
        if name.startswith("guard variable"):
            yield f"{path}:1: {name}: made at first use; core has no such static"
