"""The sizes' check, on planted lengths."""
from planted import Planted

import sizes


def function(lines):
    return "void f() {\n" + "  g();\n" * (lines - 2) + "}\n"


class Sizes(Planted):
    def test_at_the_limit_passes(self):
        self.plant("core/a.cpp", function(60) * 5)
        self.plant("tests/a.cpp", function(50) * 10)
        self.plant("core/a.hpp", "// What it is.\n#pragma once\n")
        self.assertFinds(sizes.check(self.tree))

    def test_file(self):
        self.plant("core/a.cpp", "\n" * 301)
        self.plant("tests/a.cpp", "\n" * 501)
        self.assertFinds(sizes.check(self.tree), "core/a.cpp:301:", "tests/a.cpp:501:")

    def test_function(self):
        self.plant("daemon/a.cpp", "namespace x {\n" + function(61) + "}\n")
        self.assertFinds(sizes.check(self.tree), "daemon/a.cpp:2: 61 lines in one function")

    def test_function_with_braces_in_its_text(self):
        self.plant("daemon/a.cpp", function(61).replace("g()", "g('{', \"{\", R\"({)\") /* { */"))
        self.assertFinds(sizes.check(self.tree), "daemon/a.cpp:1: 61 lines in one function")

    def test_long_table_and_type_pass(self):
        self.plant("core/a.cpp", "const int t[] = {\n" + "  1,\n" * 90 + "};\n"
                   "const std::vector<T> u{\n" + "  {1, 2},\n" * 90 + "};\n"
                   "struct S {\n" + "  int a;\n" * 90 + "};\n")
        self.assertFinds(sizes.check(self.tree))

    def test_line(self):
        self.plant("core/a.cpp", "\n" + "x" * 101 + "\n")
        self.plant("tests/run.sh", "x" * 101 + "\n")
        self.assertFinds(sizes.check(self.tree), "core/a.cpp:2: 101 columns", "tests/run.sh:1:")

    def test_header_without_a_word(self):
        self.plant("core/a.hpp", "#include <array>\n")
        self.assertFinds(sizes.check(self.tree), "core/a.hpp:1: a header begins",
                         "core/a.hpp:1: #pragma once")
