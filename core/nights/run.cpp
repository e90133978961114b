#include "core/nights/run.hpp"

#include <algorithm>
#include <stdexcept>
#include <utility>

namespace tidewright::nights {
namespace {

// Midnight of the room's own line of time.
constexpr Instant midnight{std::chrono::hours{24 * 20'000}};
// When the broker's memory can no longer be meant.
constexpr Duration tried_after = std::chrono::seconds{4};
constexpr std::size_t acts_at_once_most = 100'000;

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

Run::Run(const room::Room& household, const Night& night, Keeper keeper)
    : night_(night),
      keeper_(keeper),
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
    acts_.emplace(begin_ + fault.at, [&fault](Run& run) {
      run.began_.emplace_back(&fault, run.phase());
      fault.kind->begin(run, fault);
    });
    if (fault.kind->end == nullptr) continue;
    acts_.emplace(begin_ + fault.at + fault.lasting,
                  [&fault](Run& run) { fault.kind->end(run, fault); });
  }
}

Outcome Run::live() {
  plan();
  start(true);
  later(tried_after, [](Run& run) { run.try_instruments(); });
  const Instant end = begin_ + night_.lasting;
  std::vector<Event> said;
  while (now() < end) {
    said.clear();
    const Instant before = now();
    pretend_.advance(std::clamp(next_due(), now(), end), said);
    account(now() - before);
    witness_.see(pretend_);
    judge_moment();
    for (Event& word : said) {
      auto* reading = std::get_if<Reading>(&word.what);
      if (reading != nullptr && night_.habits.instruments_date > 0) reading->taken = now();
      broker_.hear(word);
    }
    run_due();
    judge_report();
  }
  if (keeper_ == Keeper::daemon) judge_night();
  count_cells();
  outcome_.wet_to_off = witness_.wet_to_off;
  outcome_.filled_when_calm = witness_.full_at >= begin_ + night_.calm_from;
  outcome_.wet_spells = witness_.wet_spells;
  outcome_.made = pretend_.works().tally().made - pretend_.works().tally().diverted;
  outcome_.spilled = pretend_.works().tally().spilled;
  return outcome_;
}

// Each instrument that speaks on change only is made to speak, as with a wet cloth at the
// installation: else nothing live would be heard of it for hours.
void Run::try_instruments() {
  for (std::size_t n = 0; n < room_.instruments.size(); ++n) {
    const room::Instrument& instrument = room_.instruments[n];
    if (!instrument.on_change || instrument.quantity == room::Quantity::feedback) continue;
    const auto i = static_cast<room::InstrumentIndex>(n);
    if (pretend_.voice(i).faults.silent) continue;
    Reading word{i, pretend_.truth(instrument), Arrival::live, long_ago};
    if (night_.habits.instruments_date > 0) word.taken = now();
    broker_.hear({now(), word});
  }
}

// What the perfect keeper does, every few seconds.
void Run::tend() {
  const rehearsal::Vat& vat = pretend_.works().vat();
  const bool marked = room_.vat && room_.vat->start_below && room_.vat->stop_at;
  const double start = marked ? room_.vat->start_below->value : 0.75 * vat.capacity().value;
  if (vat.holding().value < start) fills_ = true;
  if (vat.holding().value >= witness_.full_mark(pretend_)) fills_ = false;
  const bool on = fills_ && !pretend_.floor_is_wet();
  for (std::size_t n = 0; n < room_.actuators.size(); ++n) {
    const auto i = static_cast<room::ActuatorIndex>(n);
    if (!room::facts(room_.actuators[n].role).makes_water) continue;
    if (on || pretend_.plug(i).on()) pretend_.obey({i, on, Duration{0}});
  }
  later(std::chrono::seconds{10}, [](Run& run) { run.tend(); });
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
  if (now() >= wake_) wake_ = never;  // step_rests has seen it
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
    if (!disk_.refuses) witness_.note_kept();
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
  if (listener != nullptr && alive_) listener->tells(state_, takes);
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
  count_news();
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
    if (announcement->event == Announced::raised) ++outcome_.announced;
    if (announcement->event == Announced::raised) held_.push_back(announcement->alarm);
    if (listener != nullptr) listener->announces(*announcement);
  } else if (const auto* said = std::get_if<Answer>(&effect)) {
    answer = *said;
  }
}

void Run::start(bool clean) {
  if (keeper_ == Keeper::perfect) {
    if (!std::exchange(ran_before_, true)) tend();
    return;
  }
  const Duration away = ran_before_ ? now() - died_ : Duration{0};
  ran_before_ = alive_ = true;
  paused_ = false;
  recording_ = true;
  state_ = disk_.kept();
  if (listener != nullptr) listener->begins(state_);
  if (keeps_journal_) journal_.restarts.push_back({journal_.events.size(), disk_.kept_step()});
  feed(Started{clean && ended_clean_, away});
  feed(ClockSet{wall});
  if (broker_is_up_) broker_.connect(now());
}

void Run::stop() {
  feed(Stopping{});
  ended_clean_ = alive_ && disk_.close();
  if (ended_clean_) witness_.note_kept();
  crash();
}

void Run::crash() {
  if (!alive_) return;
  alive_ = false;
  died_ = now();
  wake_ = never;
  held_.clear();
  if (listener != nullptr) listener->dies();
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
