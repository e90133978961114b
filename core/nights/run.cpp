#include "core/nights/run.hpp"

#include <algorithm>
#include <stdexcept>

#include "core/rehearsal/chance.hpp"

namespace tidewright::nights {
namespace {

// Midnight of the room's own line of time.
constexpr Instant midnight{std::chrono::hours{24 * 20'000}};
constexpr Duration starts_within{1000};
constexpr std::size_t acts_at_once_most = 100'000;

constexpr Duration reports_apart = std::chrono::minutes{15};
constexpr std::uint64_t one_in_so_many_is_replayed = 8;

Duration of_seconds(double s) { return Duration{static_cast<Duration::rep>(s * 1000)}; }

// Replaying costs as much again: every night in which people or the clock must change nothing, and
// some others.
bool is_replayed(const Night& night) {
  return night.seed % one_in_so_many_is_replayed == 0 ||
         std::any_of(night.faults.begin(), night.faults.end(), [](const Fault& fault) {
           const std::string_view name = fault.kind->name;
           return name == "acknowledges" || name == "shelves" || name == "clock_steps";
         });
}

}  // namespace

Run::Run(const room::Room& household, const Night& night)
    : night_(night),
      room_(room_of(household, night.habits)),
      begin_(midnight + of_seconds(night.habits.begins_at_h * 3600)),
      pretend_(room_, settings_of(night.habits), night.seed, begin_),
      broker_(room_, of_seconds(night.habits.broker_latency_s), night.habits.instruments_retain > 0,
              night.seed + 1),
      disk_(of_seconds(night.habits.disk_takes_s)),
      witness_(room_),
      keeps_journal_(is_replayed(night)),
      report_due_(begin_) {
  witness_.on_since.fill(never);
}

void Run::later(Duration after, std::function<void(Run&)> act) {
  acts_.emplace(now() + after, std::move(act));
}

void Run::plan() {
  for (const Fault& fault : night_.faults) {
    acts_.emplace(begin_ + fault.at, [&fault](Run& run) { fault.kind->begin(run, fault); });
    if (fault.kind->end == nullptr) continue;
    acts_.emplace(begin_ + fault.at + fault.lasting,
                  [&fault](Run& run) { fault.kind->end(run, fault); });
  }
}

Outcome Run::live() {
  plan();
  start(true);
  const Instant end = begin_ + night_.lasting;
  std::vector<Event> said;
  while (now() < end) {
    said.clear();
    pretend_.advance(std::clamp(next_due(), now(), end), said);
    const bool was_wet = witness_.wet;
    witness_.see(pretend_);
    if (witness_.wet && !was_wet) ++outcome_.wet_spells;
    judge_moment();
    for (Event& word : said) {
      auto* reading = std::get_if<Reading>(&word.what);
      if (reading != nullptr && night_.habits.instruments_date > 0) reading->taken = now();
      broker_.hear(word);
    }
    run_due();
    judge_report();
  }
  judge_night();
  outcome_.made = pretend_.works().tally().made;
  outcome_.spilled = pretend_.works().tally().spilled;
  return outcome_;
}

Instant Run::next_due() const {
  const bool listens = alive_ && !paused_;
  Instant due = std::min(listens ? broker_.next() : broker_.next_for_plugs(), disk_.next());
  if (listens) due = std::min(due, wake_);
  return acts_.empty() ? due : std::min(due, acts_.begin()->first);
}

void Run::run_due() {
  std::size_t acts = 0;
  while (deliver_one()) {
    if (++acts > acts_at_once_most) throw std::logic_error("something happens at once, for ever");
  }
  if (!alive_ || paused_ || now() < wake_) return;
  step_once({now(), Tick{}});
  if (alive_ && now() >= wake_) throw std::logic_error("step asks to be woken at once, for ever");
}

bool Run::deliver_one() {
  if (!acts_.empty() && acts_.begin()->first <= now()) {
    const auto act = acts_.begin()->second;
    acts_.erase(acts_.begin());
    act(*this);
    witness_.see(pretend_);
    return true;
  }
  if (const auto command = broker_.for_plug(now())) {
    pretend_.obey(*command);
    return true;
  }
  if (disk_.next() <= now()) {
    if (disk_.write(now())) answer_persist();
    return true;
  }
  if (!alive_ || paused_) return false;
  const auto word = broker_.for_daemon(now());
  if (!word) return false;
  step_once(*word);
  return true;
}

// What a pass announces after Persist waits for the disk, or for the disk's refusal; only what the
// disk took can outlive a crash.
void Run::answer_persist() {
  for (const room::RuleId alarm : held_) {
    if (state_.latches[alarm].set && !disk_.refuses) witness_.told_latched[alarm] = true;
  }
  held_.clear();
  const bool takes = !disk_.refuses;
  if (takes == recording_ || !alive_) return;
  recording_ = takes;
  feed(Recorded{takes});
}

void Run::feed(const decltype(Event::what)& what) {
  if (alive_ && !paused_) step_once({now(), what});
}

void Run::step_once(const Event& event) {
  const Witness before = witness_;
  state_before_ = state_;
  witness_.note(event);
  wake_ = step(room_, state_, event, effects_);
  ++outcome_.steps;
  const bool dies = dies_after_ && effects_.size() > *dies_after_;
  const std::size_t carried_out = dies ? *dies_after_ : effects_.size();
  bool persists = false;
  for (std::size_t i = 0; i < carried_out; ++i) {
    persists = persists || std::holds_alternative<Persist>(effects_[i]);
    carry_out(effects_[i]);
  }
  if (keeps_journal_) journal_.add(event, effects_);
  disk_.record(state_, outcome_.steps, now());
  if (persists) disk_.persist(now());
  if (dies) return die_in_step();
  judge_step(before, event);
}

void Run::carry_out(const Effect& effect) {
  witness_.note(effect);
  if (const auto* command = std::get_if<Command>(&effect)) {
    broker_.take(*command, now());
  } else if (const auto* announcement = std::get_if<Announcement>(&effect)) {
    if (announcement->event == Announced::raised) held_.push_back(announcement->alarm);
  } else if (const auto* said = std::get_if<Answer>(&effect)) {
    answer = *said;
  }
}

bool Run::is_known(const Invariant& invariant) const {
  return std::any_of(outcome_.violations.begin(), outcome_.violations.end(),
                     [&](const Violation& violation) { return violation.name == invariant.name; });
}

void Run::complain(const Invariant& invariant, const Complaint& complaint) {
  if (!complaint) return;
  outcome_.violations.push_back(
      {invariant.number, std::string(invariant.name), now() - begin_, *complaint});
}

void Run::judge_moment() {
  for (const Invariant* invariant : invariants()) {
    if (invariant->at_any_time == nullptr || is_known(*invariant)) continue;
    complain(*invariant, invariant->at_any_time(moment()));
  }
}

void Run::judge_report() {
  if (!alive_ || paused_ || now() < report_due_) return;
  report_due_ = now() + reports_apart;
  const report::Report report = report::describe(room_, state_);
  for (const Invariant* invariant : invariants()) {
    if (invariant->of_report == nullptr || is_known(*invariant)) continue;
    complain(*invariant, invariant->of_report(moment(), report));
  }
}

void Run::judge_night() {
  if (!keeps_journal_) return;
  for (const Invariant* invariant : invariants()) {
    if (invariant->after_night == nullptr || is_known(*invariant)) continue;
    complain(*invariant, invariant->after_night(room_, journal_));
  }
}

void Run::judge_step(const Witness& before, const Event& event) {
  const Scene scene{moment(), before, state_before_, state_, event, effects_};
  for (const Invariant* invariant : invariants()) {
    if (invariant->after_step == nullptr || is_known(*invariant)) continue;
    complain(*invariant, invariant->after_step(scene));
  }
}

void Run::start(bool clean) {
  const Duration away = ran_before_ ? now() - died_ : Duration{0};
  ran_before_ = alive_ = true;
  paused_ = false;
  recording_ = true;
  state_ = disk_.kept();
  if (keeps_journal_) journal_.restarts.push_back({journal_.events.size(), disk_.kept_step()});
  feed(Started{clean, away});
  feed(ClockSet{wall});
  if (broker_is_up_) broker_.connect(now());
}

void Run::stop() {
  feed(Stopping{});
  if (alive_) disk_.close();
  crash();
}

void Run::crash() {
  if (!alive_) return;
  alive_ = false;
  died_ = now();
  wake_ = never;
  held_.clear();
  disk_.crash();
  broker_.disconnect();
  witness_.note_death();
}

void Run::die_in_step() {
  dies_after_.reset();
  crash();
  later(down_for_, [](Run& run) { run.start(false); });
}

void Run::die_after(std::size_t effects, Duration down_for) {
  dies_after_ = effects;
  down_for_ = down_for;
}

void Run::drop_link() {
  broker_is_up_ = false;
  broker_.disconnect();
  feed(Link{false});
}

void Run::restore_link() {
  broker_is_up_ = true;
  if (alive_) broker_.connect(now());
}

}  // namespace tidewright::nights
