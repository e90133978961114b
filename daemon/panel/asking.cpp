#include "daemon/panel/asking.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "daemon/panel/html.hpp"

namespace tidewright::panel {
namespace {

using namespace std::chrono_literals;
using Steady = Gate::Steady;

constexpr std::string_view cookie_name = "tidewright_panel";
constexpr std::string_view root = "/tell/";
constexpr auto answer_within = 3s;
constexpr auto shown_within = 1s;     // after it was done
constexpr auto answer_stands = 120s;  // on the pages that follow
constexpr auto confirm_within = 30s;  // core's own bound; after it the button is of no use

// By GET, so that loading the page anew asks nothing again.
Reply go_to(std::string_view path) {
  return {303, "text/plain; charset=utf-8", "", {{"Location", std::string(path)}}};
}

// The daemon takes a person's name of so many bytes, without control characters.
bool is_name(const std::string& text) {
  constexpr std::size_t longest = 31;
  return !text.empty() && text.size() <= longest &&
         std::none_of(text.begin(), text.end(),
                      [](char c) { return static_cast<unsigned char>(c) < ' ' || c == '\x7f'; });
}

std::string below(const std::string& path) {
  return path.starts_with(root) ? path.substr(root.size()) : "";
}

bool is_about_alarms(const std::string& path) {
  return path.starts_with("acknowledge/") || path.starts_with("reset/") ||
         path.starts_with("confirm/");
}

}  // namespace

void Asking::show(std::vector<Standing> alarms) {
  {
    const std::lock_guard guard(lock_);
    alarms_ = std::move(alarms);
  }
  shown_.notify_all();
}

void Asking::close() {
  counter_.close();
  {
    const std::lock_guard guard(lock_);
    closed_ = true;
  }
  shown_.notify_all();
}

std::string Asking::mark() const {
  const std::lock_guard guard(lock_);
  return mark_of(alarms_);
}

// What was done is on the page that follows, if that is soon.
void Asking::wait_until_shown(const std::string& mark) {
  std::unique_lock guard(lock_);
  shown_.wait_for(guard, shown_within, [&] { return closed_ || mark_of(alarms_) != mark; });
}

Reply Asking::answer(const Call& call) {
  const std::string session = cookie(call.cookie, cookie_name);
  const auto visitor = gate_.visitor(session, Steady::now());
  if (call.posts && call.path == "/tell/enter") return enter(call);
  const bool is_page = !call.posts && !call.path.starts_with("/tell/beside");
  if (!visitor) return {is_page ? 200 : 401, Reply{}.type, way_in(style_, "")};
  if (call.posts) return post(call, session, *visitor);
  return page(call, *visitor);
}

Reply Asking::enter(const Call& call) {
  const auto again = [&](int status, Word trouble) {
    return Reply{status, Reply{}.type, way_in(style_, style_.word(trouble))};
  };
  const std::string who = field(call.form, "who");
  if (!is_name(who)) return again(400, Word::no_name);
  const auto entry = gate_.enter(field(call.form, "token"), call.from, who, Steady::now());
  if (const auto* refusal = std::get_if<Gate::Refusal>(&entry)) {
    if (*refusal == Gate::Refusal::wrong) return again(401, Word::wrong_token);
    Reply reply = again(429, Word::too_often);
    reply.headers.emplace_back("Retry-After", "60");
    return reply;
  }
  Reply reply = go_to(mark().empty() ? "/tell" : "/");
  // Where the browser's line is encrypted (a proxy does that) the cookie keeps to such lines.
  const std::string_view secure = call.origin.starts_with("https://") ? "; Secure" : "";
  reply.headers.emplace_back(
      "Set-Cookie", fmt::format("{}={}; Path=/; HttpOnly; SameSite=Strict; Max-Age={}{}",
                                cookie_name, std::get<std::string>(entry),
                                std::chrono::seconds{Gate::session_lasts}.count(), secure));
  return reply;
}

std::optional<Question> Asking::find(const std::string& path) const {
  const auto is_it = [&](const Question& question) { return question.path == path; };
  const auto found = std::find_if(questions_.begin(), questions_.end(), is_it);
  if (found != questions_.end()) return *found;
  const std::lock_guard guard(lock_);
  for (const Standing& alarm : alarms_) {
    for (const Question& question : answers_to(alarm.id, alarm.title)) {
      if (is_it(question)) return question;
    }
  }
  if (!is_about_alarms(path)) return std::nullopt;
  // It stands no more; what core says to that is the answer.
  const std::string alarm = path.substr(path.find('/') + 1);
  for (const Question& question : answers_to(alarm, alarm)) {
    if (is_it(question)) return question;
  }
  return std::nullopt;
}

Reply Asking::post(const Call& call, const std::string& session, const Visitor& visitor) {
  if (!same_secret(field(call.form, "form"), visitor.form)) {
    return {403, Reply{}.type,
            element("p", " role=\"alert\"", escaped(style_.word(Word::old_page)))};
  }
  if (call.path == "/tell/leave") {
    gate_.leave(session);
    return go_to("/");
  }
  const auto question = find(below(call.path));
  if (!question) return go_to("/tell");
  const std::string before = mark();
  Answered answered{
      .at = {},
      .path = question->path,
      .about = asked_in_words(*question, call.form, style_),
      .outcome = counter_.ask(letter(*question, call.form, visitor.who, style_), answer_within)};
  answered.at = Steady::now();
  const bool about_alarms = is_about_alarms(question->path);
  const bool done = answered.outcome && answered.outcome->done && !answered.outcome->token;
  gate_.keep(session, std::move(answered));
  if (about_alarms && done) wait_until_shown(before);
  return go_to(about_alarms ? "/" : "/tell");
}

std::string Asking::came(const Visitor& visitor, bool about_alarms) const {
  if (!visitor.last || is_about_alarms(visitor.last->path) != about_alarms) return {};
  const auto ago = Steady::now() - visitor.last->at;
  if (ago > answer_stands) return {};
  return what_came(*visitor.last, visitor, ago < confirm_within, style_);
}

Part Asking::buttons(const Visitor& visitor, bool all, const std::string& answered) const {
  const std::lock_guard guard(lock_);
  std::vector<Standing> alarms = alarms_;
  if (!all) std::erase_if(alarms, [](const Standing& each) { return !is_answered_at_once(each); });
  return {"answers", alarm_buttons(alarms, visitor, answered,
                                   all ? "/tell/beside/all" : "/tell/beside", style_)};
}

std::optional<Part> Asking::beside(const Call& call) const {
  const auto visitor = gate_.visitor(cookie(call.cookie, cookie_name), Steady::now());
  if (!visitor) return std::nullopt;
  return buttons(*visitor, false, came(*visitor, true));
}

Reply Asking::page(const Call& call, const Visitor& visitor) const {
  const auto html = [](std::string main) { return Reply{.body = std::move(main)}; };
  if (call.path == "/tell/beside") {
    return html(buttons(visitor, false, came(visitor, true)).html);
  }
  const std::string all = buttons(visitor, true, "").html;
  if (call.path == "/tell/beside/all") return html(all);
  if (call.path == "/tell") {
    return html(list_of_questions(questions_, visitor, came(visitor, false), all, style_));
  }
  const auto question = find(below(call.path));
  if (!question || is_about_alarms(question->path)) return go_to("/tell");
  return html(question_page(*question, visitor, style_));
}

}  // namespace tidewright::panel
