#include "daemon/panel/panel.hpp"

#include <fmt/format.h>

#include <random>
#include <stdexcept>

#include "daemon/log/log.hpp"
#include "daemon/panel/assets.hpp"
#include "daemon/panel/page.hpp"

namespace tidewright::panel {
namespace {

std::uint64_t fresh_run() {
  std::random_device chance;
  return (std::uint64_t{chance()} << 32) | chance();
}

std::string in_a_uri(const std::string& address) {
  return address.find(':') == address.npos ? address : "[" + address + "]";
}

}  // namespace

std::unique_ptr<Panel> Panel::open(const config::Household& household,
                                   const std::string& state_directory) {
  if (!household.panel) return nullptr;
  const config::Panel& wanted = *household.panel;
  try {
    std::unique_ptr<Panel> panel(new Panel(household, state_directory));
    log::info(fmt::format("The panel is at http://{}:{}/.", in_a_uri(wanted.address),
                          panel->server_->port()));
    return panel;
  } catch (const std::runtime_error& trouble) {
    log::error(
        fmt::format("The panel cannot listen at {} port {}: {}. Everything else goes on "
                    "without it; give it another `port` in [panel].",
                    wanted.address, wanted.port, trouble.what()));
    return nullptr;
  }
}

Panel::Panel(const config::Household& household, const std::string& state_directory)
    : household_(household),
      style_(*household.panel),
      feed_(fresh_run()),
      history_(household.room, std::filesystem::path(state_directory) / "journal.db") {
  feed_.publish(parts_at_start(style_), "");
  server_ = std::make_unique<Server>(
      Server::Settings{household.panel->address, household.panel->port, household.panel->names, {}},
      feed_, [this](const std::string& path) { return answer(path); });
}

void Panel::show(const State& state, const report::Report& report) {
  const std::vector<Standing> alarms = standing(household_.room, state, report);
  const View view{household_, report, alarms, style_, report::wall_time(report.at, report.wall)};
  feed_.publish(parts(view), as_of(view));
  chronicle_.see(household_.room, state);
  const std::lock_guard guard(lock_);
  now_ = report.at;
  wall_ = report.wall;
}

Reply Panel::answer(const std::string& path) const {
  const auto page = [&](Page which, const std::string& main, bool live) {
    return Reply{
        .body = whole(*household_.panel, household_.room.id, which, main, feed_.as_of(), live)};
  };
  if (path == "/") return page(Page::now, feed_.main(), true);
  if (path == "/why") return page(Page::why, chronicle_.story(style_), false);
  if (path.starts_with("/history")) {
    std::unique_lock guard(lock_);
    const Instant now = now_;
    const WallClock wall = wall_;
    guard.unlock();
    const std::string main = history_.page(path, now, wall, style_);
    if (!main.empty()) return page(Page::history, main, false);
  }
  for (const Asset& asset : assets()) {
    if (asset.path == path) return {200, std::string(asset.type), std::string(asset.body)};
  }
  return {404, "text/plain; charset=utf-8", "There is no such page here.\n"};
}

}  // namespace tidewright::panel
