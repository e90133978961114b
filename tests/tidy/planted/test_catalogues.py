"""The catalogues' check, on planted things forgotten."""
from planted import Planted

import catalogues


class Catalogues(Planted):
    def setUp(self):
        super().setUp()
        self.plant("core/room/rule.hpp", "namespace tidewright::room {\n"
                   "enum class RuleId : int {\n  leak,\n};\n}\n")
        self.plant("core/rules/leak.cpp", "namespace tidewright::rules {\n}\n")
        self.plant("core/rules/catalogue.cpp", "namespace tidewright::rules {\nleak\n}\n")
        self.plant("tests/scenarios/leak_test.cpp", "expect(RuleId::leak);\n")
        self.plant("tests/broken/word.toml", "")
        self.plant("tests/broken/word.expected", "")

    def test_complete_passes(self):
        self.assertFinds(catalogues.check(self.tree))

    def test_rule_without_file_row_and_scenario(self):
        self.plant("core/room/rule.hpp", "namespace tidewright::room {\n"
                   "enum class RuleId : int {\n  leak,\n  frost,\n};\n}\n")
        self.assertFinds(catalogues.check(self.tree),
                         "core/room/rule.hpp:4: core/rules/frost.cpp is missing",
                         "core/room/rule.hpp:4: frost has no row",
                         "core/room/rule.hpp:4: no scenario")

    def test_reason_that_nobody_gives(self):
        self.plant("core/base/reason.hpp", "namespace tidewright {\nenum class Why : int {\n"
                   "  wet,  // the floor\n  dry,\n};\n}\n")
        self.plant("core/rules/leak.cpp", "namespace tidewright::rules {\nWhy::wet\n}\n")
        self.plant("core/report/words.cpp", "namespace tidewright::report {\nWhy::dry\n}\n")
        self.plant("daemon/store/names.cpp", "Why::dry\n")
        self.assertFinds(catalogues.check(self.tree),
                         "core/base/reason.hpp:4: nobody gives the reason dry")

    def test_broken_without_its_other_half(self):
        self.plant("tests/broken/unit.toml", "")
        self.plant("tests/broken/key.expected", "")
        self.assertFinds(catalogues.check(self.tree), "tests/broken/unit.toml:1:",
                         "tests/broken/key.expected:1:")

    def test_convention_without_golden_files(self):
        self.plant("daemon/hub/plain.hpp", "// The plain convention: JSON.\n#pragma once\n")
        self.plant("daemon/hub/message.hpp", "// What a convention makes.\n#pragma once\n")
        self.assertFinds(catalogues.check(self.tree), "daemon/hub/plain.hpp:1:")

    def test_foreign_namespace(self):
        self.plant("core/signal/rate.cpp", "namespace tidewright::rules {\n}\n")
        self.plant("core/base/units.cpp", "int x;\n")
        self.assertFinds(catalogues.check(self.tree),
                         "core/signal/rate.cpp:1: its namespace must be tidewright::signal",
                         "core/base/units.cpp:1: its namespace must be tidewright")
