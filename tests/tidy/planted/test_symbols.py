"""The symbols' check, on planted sources that are really compiled."""
import json
import subprocess

from planted import Planted

import symbols


class Symbols(Planted):
    def compiled(self, *paths, optimised="-O2"):
        commands = []
        for path in paths:
            output = path.replace("/", "_") + ".o"
            command = f"g++ -std=c++20 {optimised} -I{self.tree.source} -c "
            command += f"{self.tree.source}/{path} -o {output}"
            subprocess.run(command.split(), check=True, cwd=self.tree.build)
            commands.append({"file": f"{self.tree.source}/{path}", "command": command})
        self.plant("compile_commands.json", json.dumps(commands))
        return symbols.check(self.tree)

    def test_arithmetic_passes(self):
        self.plant("core/water/sum.cpp", "constexpr int table[2] = {1, 2};\n"
                   "const int* at(int i) { return table + i; }\n")
        self.assertFinds(self.compiled("core/water/sum.cpp"))

    def test_clock(self):
        self.plant("core/signal/now.cpp", "#include <chrono>\n"
                   "auto now() { return std::chrono::steady_clock::now(); }\n")
        self.assertFinds(self.compiled("core/signal/now.cpp"),
                         "core/signal/now.cpp:1: core must not ask for std::chrono")

    def test_file_and_socket(self):
        self.plant("core/report/file.cpp", "#include <fcntl.h>\n#include <sys/socket.h>\n"
                   "int file() { return open(\"x\", 0) + socket(1, 1, 0); }\n")
        self.assertFinds(self.compiled("core/report/file.cpp"),
                         "core/report/file.cpp:1: core must not ask for open",
                         "core/report/file.cpp:1: core must not ask for socket")

    def test_chance_and_thread(self):
        self.plant("core/rules/dice.cpp", "#include <cstdlib>\n#include <pthread.h>\n"
                   "int dice(pthread_t t) { return rand() + pthread_join(t, nullptr); }\n")
        self.assertFinds(self.compiled("core/rules/dice.cpp"),
                         "core/rules/dice.cpp:1: core must not ask for rand",
                         "core/rules/dice.cpp:1: core must not ask for pthread_join")

    def test_heap_in_step_only(self):
        grow = "int* grow(int n) { return new int[n + 1]; }\n"
        self.plant("core/ledger/grow.cpp", grow)
        self.plant("core/room/grow.cpp", grow)
        found = self.compiled("core/ledger/grow.cpp", "core/room/grow.cpp")
        self.assertTrue(found)
        for line in found:
            self.assertTrue(line.startswith("core/ledger/grow.cpp:1: step() must not ask for"),
                            line)

    def test_throw_in_step(self):
        self.plant("core/alarm/throw.cpp", "void fail() { throw 1; }\n")
        self.assertFinds(self.compiled("core/alarm/throw.cpp"),
                         "core/alarm/throw.cpp:1: step() must not ask for __cxa_allocate_exception",
                         "core/alarm/throw.cpp:1: step() must not ask for __cxa_throw")

    def test_mutable_static(self):
        self.plant("core/ledger/count.cpp", "int count() { static int n = 7; return ++n; }\n")
        found = list(self.compiled("core/ledger/count.cpp"))
        self.assertEqual(len(found), 1, found)
        self.assertIn("can change", found[0])

    def test_static_made_at_first_use(self):
        self.plant("core/ledger/once.cpp", "int make();\n"
                   "const int& once() { static const int n = make(); return n; }\n")
        found = list(self.compiled("core/ledger/once.cpp"))
        self.assertTrue([line for line in found if "made at first use" in line], found)

    def test_table_of_pointers_passes(self):
        self.plant("core/rules/table.cpp", "int one(); int two();\n"
                   "extern int (*const table[2])(); int (*const table[2])() = {one, two};\n")
        self.assertFinds(self.compiled("core/rules/table.cpp"))

    def test_constexpr_among_the_data_passes(self):
        self.plant("core/rules/rows.cpp", "#include <optional>\n"
                   "struct Row { int (*of)(); std::optional<int> at; };\nint one();\n"
                   "constexpr Row rows{one, {}};\nconst Row* at() { return &rows; }\n")
        self.assertFinds(self.compiled("core/rules/rows.cpp"))

    def test_constexpr_in_a_function_and_in_a_header_passes_without_optimisation(self):
        self.plant("core/rules/rows.hpp", "#include <array>\n"
                   "inline constexpr std::array shared{1};\n")
        self.plant("core/rules/rows.cpp", "#include \"core/rules/rows.hpp\"\n"
                   "const void* one() { return &shared; }\nconst void* other() {\n"
                   "  static constexpr std::array own{2};\n  return &own;\n}\n")
        self.assertFinds(self.compiled("core/rules/rows.cpp", optimised="-O0"))

    def test_what_can_change_is_not_excused_by_a_header(self):
        self.plant("core/rules/rows.hpp", "constexpr int count = 1;\n")
        self.plant("core/rules/rows.cpp", "#include \"core/rules/rows.hpp\"\n"
                   "int next() {\n  static int count = 7;\n  return ++count;\n}\n")
        self.assertEqual(len(list(self.compiled("core/rules/rows.cpp"))), 1)
