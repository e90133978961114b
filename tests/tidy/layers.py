"""Who may include whom: one ranked list, no arrow upward, no circle."""
import re

# A file includes only what stands before it in this list, or its own row.
RANKED = [
    ("core/base/",),
    ("core/water/",),
    ("core/room/",),
    ("core/event.hpp", "core/effect.hpp"),
    ("core/state/",),
    ("core/signal/",),
    ("core/ledger/",),
    ("core/picture/",),
    ("core/rules/",),
    ("core/procedure/",),
    ("core/interlock/",),
    ("core/alarm/",),
    ("core/step.hpp", "core/step.cpp"),
    ("core/report/",),
    ("core/rehearsal/",),
    ("core/nights/",),
    ("config/",),
    ("daemon/",),
    ("tests/",),
]

# Beyond rank: who may not see what, and why.
BARRED = [
    ("core/interlock/", ("core/state/alarm.hpp",), "an alarm changes no command"),
    ("core/rehearsal/",
     ("core/water/", "core/signal/", "core/ledger/", "core/picture/", "core/rules/",
      "core/procedure/", "core/interlock/", "core/alarm/", "core/step.hpp"),
     "the pretend room has physics of its own"),
]

# Headers that core knows nothing of: input, output, clocks, threads, chance, order by hash.
NOT_IN_CORE = re.compile(
    r"thread|mutex|shared_mutex|condition_variable|future|atomic|semaphore|latch|barrier|"
    r"fstream|filesystem|iostream|cstdio|stdio\.h|ctime|time\.h|random|locale|regex|"
    r"unordered_map|unordered_set|unistd\.h|sys/.*|fmt/(chrono|os|ostream)\.h|spdlog/.*|mqtt/.*|"
    r"nlohmann/.*|SQLiteCpp/.*|toml\+\+/.*")

# Headers that cost seconds: only a .cpp may include them.
HEAVY = re.compile(
    r"nlohmann/json\.hpp|spdlog/.*|mqtt/.*|MQTT\w+\.h|toml\+\+/.*|SQLiteCpp/.*|CLI/.*|sqlite3\.h|"
    r"httplib\.h")

INCLUDE = re.compile(r'\s*#\s*include\s*([<"])([^>"]+)[>"]')


def rank(path):
    for position, row in enumerate(RANKED):
        if path.startswith(row):
            return position
    return None


def includes(tree, path):
    for number, line in tree.lines(path):
        match = INCLUDE.match(line)
        if match:
            yield number, match.group(1) == '"', match.group(2)


def check(tree):
    found = []
    graph = {}
    for path in tree.files("core", "config", "daemon", "tests"):
        if rank(path) is None:
            found.append(f"{path}:1: has no place in the ranked list of layers")
            continue
        graph[path] = {}
        for number, quoted, target in includes(tree, path):
            place = f"{path}:{number}"
            if not quoted:
                found += foreign(path, place, target)
            elif not tree.has(target):
                found.append(f"{place}: \"{target}\" is not a path from the root of the repository")
            else:
                graph[path][target] = number
                found += upward(path, place, target)
    found += circles(graph, "files")
    found += circles(by_folder(graph), "folders")
    return found


def foreign(path, place, target):
    if path.startswith("core/") and NOT_IN_CORE.fullmatch(target):
        yield f"{place}: core must not know <{target}>"
    if path.endswith(".hpp") and not path.startswith("tests/") and HEAVY.fullmatch(target):
        yield f"{place}: <{target}> is heavy; include it in a .cpp only"


def upward(path, place, target):
    if rank(target) is None or rank(target) > rank(path):
        yield f"{place}: \"{target}\" stands above {RANKED[rank(path)][0]}"
    for folder, barred, why in BARRED:
        if path.startswith(folder) and target.startswith(barred):
            yield f"{place}: {folder} may not include \"{target}\": {why}"


def by_folder(graph):
    """The same graph between the folders of the daemon, where no rank is given."""
    folders = {}
    for path, targets in graph.items():
        for target, number in targets.items():
            ours, theirs = path.rpartition("/")[0], target.rpartition("/")[0]
            if ours != theirs and ours.startswith("daemon/") and theirs.startswith("daemon/"):
                folders.setdefault(ours, {}).setdefault(theirs, f"{path}:{number}")
    return folders


def circles(graph, kind):
    """Each circle once, as the chain of places that close it."""
    done, found = set(), []

    def visit(node, chain):
        if node in chain:
            ring = chain[chain.index(node):] + [node]
            steps = " -> ".join(ring)
            at = graph[ring[-2]][node]
            place = at if isinstance(at, str) else f"{ring[-2]}:{at}"
            found.append(f"{place}: closes a circle of {kind}: {steps}")
            return
        if node in done:
            return
        for target in graph.get(node, {}):
            visit(target, chain + [node])
        done.add(node)

    for node in sorted(graph):
        visit(node, [])
    return found
