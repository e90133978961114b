"""The layers' check, on planted arrows."""
from planted import Planted

import layers


class Layers(Planted):
    def include(self, path, *targets):
        self.plant(path, "".join(f"#include {target}\n" for target in targets))

    def test_downward_passes(self):
        self.include("core/base/units.hpp", "<cstdint>")
        self.include("core/rules/leak.cpp", '"core/base/units.hpp"')
        self.include("daemon/loop.cpp", '"core/rules/leak.cpp"', "<thread>", "<spdlog/spdlog.h>")
        self.assertFinds(layers.check(self.tree))

    def test_upward(self):
        self.include("core/rules/leak.hpp")
        self.include("core/base/units.hpp", '"core/rules/leak.hpp"')
        self.assertFinds(layers.check(self.tree), "core/base/units.hpp:1: \"core/rules/leak.hpp\"")

    def test_core_to_daemon(self):
        self.include("daemon/loop.hpp")
        self.include("core/step.cpp", "<array>", '"daemon/loop.hpp"')
        self.assertFinds(layers.check(self.tree), "core/step.cpp:2:")

    def test_circle_of_files(self):
        self.include("core/room/a.hpp", '"core/room/b.hpp"')
        self.include("core/room/b.hpp", '"core/room/a.hpp"')
        self.assertFinds(layers.check(self.tree), "core/room/b.hpp:1: closes a circle of files")

    def test_circle_of_folders(self):
        self.include("daemon/mqtt/a.hpp", '"daemon/store/b.hpp"')
        self.include("daemon/mqtt/c.hpp")
        self.include("daemon/store/b.hpp")
        self.include("daemon/store/d.hpp", '"daemon/mqtt/c.hpp"')
        self.assertFinds(layers.check(self.tree),
                         "daemon/store/d.hpp:1: closes a circle of folders")

    def test_clock_in_core(self):
        self.include("core/signal/rate.cpp", "<chrono>", "<thread>")
        self.assertFinds(layers.check(self.tree), "core/signal/rate.cpp:2: core must not know")

    def test_heavy_header_in_header(self):
        self.include("daemon/hub/plain.hpp", "<nlohmann/json.hpp>")
        self.include("daemon/hub/plain.cpp", "<nlohmann/json.hpp>")
        self.assertFinds(layers.check(self.tree), "daemon/hub/plain.hpp:1:")

    def test_interlock_does_not_see_alarms(self):
        self.include("core/state/alarm.hpp")
        self.include("core/interlock/trip.cpp", '"core/state/alarm.hpp"')
        self.assertFinds(layers.check(self.tree), "core/interlock/trip.cpp:1:")

    def test_rehearsal_does_not_see_rules(self):
        self.include("core/rules/leak.hpp")
        self.include("core/rehearsal/pump.cpp", '"core/rules/leak.hpp"')
        self.assertFinds(layers.check(self.tree), "core/rehearsal/pump.cpp:1:")

    def test_path_not_from_the_root(self):
        self.include("core/room/vat.hpp")
        self.include("core/room/room.cpp", '"vat.hpp"')
        self.assertFinds(layers.check(self.tree), "core/room/room.cpp:1: \"vat.hpp\" is not a path")

    def test_folder_without_rank(self):
        self.include("core/magic/wand.cpp")
        self.assertFinds(layers.check(self.tree), "core/magic/wand.cpp:1: has no place")
