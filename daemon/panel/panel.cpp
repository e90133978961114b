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

Reply not_here() { return {404, "text/plain; charset=utf-8", "There is no such page here.\n"}; }

}  // namespace

std::unique_ptr<Panel> Panel::open(const config::Household& household,
                                   const std::string& state_directory) {
  if (!household.panel) return nullptr;
  const config::Panel& wanted = *household.panel;
  const TokenFile token = read_token(wanted.token_file);
  if (!token.trouble.empty()) log::error(token.trouble);
  try {
    std::unique_ptr<Panel> panel(new Panel(household, state_directory, token.token));
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

Panel::Panel(const config::Household& household, const std::string& state_directory,
             const std::string& token)
    : household_(household),
      style_(*household.panel),
      feed_(fresh_run()),
      history_(household.room, std::filesystem::path(state_directory) / "journal.db"),
      asking_(household, style_, token) {
  feed_.publish(parts_at_start(style_), "");
  server_ = std::make_unique<Server>(Server::Settings{household.panel->address,
                                                      household.panel->port,
                                                      household.panel->names,
                                                      {},
                                                      asking_.exists()},
                                     feed_, [this](const Call& call) { return answer(call); });
}

// The server waits for all whom it serves.
Panel::~Panel() { asking_.close(); }

void Panel::show(const State& state, const report::Report& report) {
  const std::vector<Standing> alarms = standing(household_.room, state, report);
  const View view{
      household_,      report, alarms, style_, report::wall_time(report.at, report.wall),
      asking_.exists()};
  asking_.show(alarms);  // first: whoever hears of the news asks for its buttons
  feed_.publish(parts(view), as_of(view));
  chronicle_.see(household_.room, state);
  const std::lock_guard guard(lock_);
  now_ = report.at;
  wall_ = report.wall;
}

std::string Panel::page(Page page, const std::string& main, bool live) const {
  return whole(
      *household_.panel, household_.room.id,
      {.page = page, .as_of = feed_.as_of(), .live = live, .is_answered = asking_.exists()}, main);
}

static Reply file(const Asset& asset) {
  Reply reply{200, std::string(asset.type), std::string(asset.body)};
  if (!asset.encoding.empty()) reply.headers = {{"Content-Encoding", std::string(asset.encoding)}};
  return reply;
}

Reply Panel::answer(const Call& call) {
  const std::string& path = call.path;
  if (path == "/") return front(call);
  if (path == "/why") return {.body = page(Page::why, chronicle_.story(style_))};
  if (path.starts_with("/history")) return history(path);
  if (asking_.exists() && (path == "/tell" || path.starts_with("/tell/"))) return tell(call);
  for (const Asset& asset : assets()) {
    if (asset.path == path) return file(asset);
  }
  return not_here();
}

Reply Panel::front(const Call& call) const {
  const Part own = asking_.beside(call).value_or(Part{});
  return {.body = page(Page::now, feed_.main(own), true)};
}

// What the script asks for is a part, everything else a page.
Reply Panel::tell(const Call& call) {
  Reply reply = asking_.answer(call);
  const bool is_part = call.path.starts_with("/tell/beside") && reply.body.starts_with("<section");
  if (!reply.body.empty() && !is_part) {
    reply.body = page(Page::tell, reply.body, call.path == "/tell");
  }
  return reply;
}

Reply Panel::history(const std::string& path) const {
  std::unique_lock guard(lock_);
  const Instant now = now_;
  const WallClock wall = wall_;
  guard.unlock();
  const std::string main = history_.page(path, now, wall, style_);
  return main.empty() ? not_here() : Reply{.body = page(Page::history, main)};
}

}  // namespace tidewright::panel
