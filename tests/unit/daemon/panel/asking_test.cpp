// The pages to ask and tell, over a desk and a room that are real: only the line to the broker and
// the daemon's own threads are not there.
#include "daemon/panel/asking.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <regex>
#include <thread>

#include "core/report/report.hpp"
#include "daemon/base/bell.hpp"
#include "tests/support/stage.hpp"

namespace tidewright::panel {
namespace {

using namespace std::chrono_literals;
using support::Stage;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using ::testing::StartsWith;

const std::string token = "an invented token of the basement";

std::string header(const Reply& reply, const std::string& name) {
  for (const auto& [each, value] : reply.headers) {
    if (each == name) return value;
  }
  return {};
}

// The value of a form's hidden field of that name, in the first form for `path`.
std::string hidden(const std::string& html, const std::string& path, const std::string& name) {
  const std::size_t form = html.find("action=\"/tell/" + path + "\"");
  if (form == html.npos) return {};
  std::smatch found;
  const std::string rest = html.substr(form, html.find("</form>", form) - form);
  const std::regex input("name=\"" + name + "\" value=\"([^\"]*)\"");
  return std::regex_search(rest, found, input) ? found[1].str() : "";
}

class PanelAsking : public ::testing::Test {
 protected:
  PanelAsking() {
    stage.begin();
    show();
    asking.counter().open([this] { bell.ring(); });
    clerk = std::thread([this] { serve(); });
  }
  ~PanelAsking() override {
    asking.close();
    over = true;
    bell.ring();
    clerk.join();
  }

  // As the reporter does it.
  void serve() {
    while (!over) {
      bell.wait_until(std::chrono::steady_clock::now() + 10s);
      while (const auto letter = asking.counter().next()) {
        const std::lock_guard guard(lock);
        answer(*letter);
      }
    }
  }
  void answer(const hub::Letter& letter) {
    heard.push_back(letter.payload);
    const auto taken = desk.take(letter, stage.now, {});
    if (const auto* reply = std::get_if<hub::Reply>(&taken)) {
      return asking.counter().answer(reply->question, reply->outcome);
    }
    std::visit(
        [this](const auto& what) {
          if constexpr (!std::is_same_v<std::decay_t<decltype(what)>, hub::Reply>)
            stage.happen(what);
        },
        taken);
    for (const Answer& each : stage.answers) {
      const auto reply = desk.reply(each, report::words(stage.room, each.why), stage.now, {});
      if (reply) asking.counter().answer(reply->question, reply->outcome);
    }
    show();
  }
  void show() {
    asking.show(standing(stage.room, stage.state, report::describe(stage.room, stage.state)));
  }
  void happens(room::InstrumentIndex instrument, double value) {
    const std::lock_guard guard(lock);
    stage.says(instrument, value);
    show();
  }

  Call call(const std::string& path, bool posts = false, Form form = {}) const {
    return {path,
            session.empty() ? "" : "other=1; tidewright_panel=" + session,
            "http://127.0.0.1:8321",
            "192.0.2.7",
            posts,
            std::move(form)};
  }
  std::string page(const std::string& path) { return asking.answer(call(path)).body; }
  std::string front() const { return asking.beside(call("/")).value_or(Part{}).html; }
  Reply post(const std::string& path, Form form = {}) {
    form.emplace("form", form_token);
    return asking.answer(call("/tell/" + path, true, std::move(form)));
  }
  Reply enter(const std::string& with = token, const std::string& who = "ann") {
    return asking.answer(call("/tell/enter", true, {{"who", who}, {"token", with}}));
  }
  void come_in() {
    const std::string cookie_line = header(enter(), "Set-Cookie");
    session = cookie(cookie_line, "tidewright_panel");
    form_token = hidden(page("/tell"), "leave", "form");
    ASSERT_EQ(form_token.size(), 32U);
  }

  static config::Household household_of(const room::Room& room) {
    config::Household made;
    made.room = room;
    return made;
  }

  Stage stage;
  const config::Household household = household_of(stage.room);
  const Style style{config::Panel{}};
  hub::Desk desk{household, [] { return 434'343U; }};
  Asking asking{household, style, token};
  std::string session, form_token;
  std::mutex lock;  // of the stage and what was heard
  std::vector<std::string> heard;
  Bell bell;
  std::atomic<bool> over = false;
  std::thread clerk;
};

TEST_F(PanelAsking, WithoutTheTokenNothingIsAskedOrShown) {
  for (const char* path : {"/tell", "/tell/rotated", "/tell/nothing"}) {
    EXPECT_THAT(page(path), HasSubstr("name=\"token\" required type=\"password\""));
    EXPECT_THAT(page(path), Not(HasSubstr("name=\"form\"")));
  }
  EXPECT_EQ(asking.answer(call("/tell/beside")).status, 401);
  EXPECT_FALSE(asking.beside(call("/")));
  EXPECT_EQ(post("cleaned").status, 401);
  session = "0123456789abcdef0123456789abcdef";
  EXPECT_EQ(post("cleaned").status, 401);
  EXPECT_THAT(heard, IsEmpty());
}

TEST_F(PanelAsking, TheTokenGivesASessionThatScriptsAndOtherPagesDoNotSee) {
  const Reply reply = enter();
  EXPECT_EQ(reply.status, 303);
  EXPECT_EQ(header(reply, "Location"), "/tell");
  const std::string made = header(reply, "Set-Cookie");
  EXPECT_THAT(made, HasSubstr("; Path=/; HttpOnly; SameSite=Strict; Max-Age=604800"));
  EXPECT_THAT(made, Not(HasSubstr("Secure")));
  EXPECT_THAT(made, Not(HasSubstr(token)));
  Call over_tls = call("/tell/enter", true, {{"who", "ann"}, {"token", token}});
  over_tls.origin = "https://water.home";
  EXPECT_THAT(header(asking.answer(over_tls), "Set-Cookie"), HasSubstr("; Secure"));
}

TEST_F(PanelAsking, AWrongTokenIsSaidAndNeverRepeated) {
  const Reply reply = enter("a token that is wrong");
  EXPECT_EQ(reply.status, 401);
  EXPECT_THAT(reply.body, HasSubstr("This is not the token."));
  EXPECT_THAT(reply.body, Not(HasSubstr("a token that is wrong")));
  EXPECT_THAT(header(reply, "Set-Cookie"), IsEmpty());
  for (std::size_t i = 1; i < Gate::wrong_most; ++i) enter("guess");
  EXPECT_EQ(enter().status, 429);
  EXPECT_EQ(header(enter(), "Retry-After"), "60");
}

TEST_F(PanelAsking, ANameMustBeOneThatTheDeskTakes) {
  for (const std::string& who : {std::string(), std::string(32, 'x'), std::string("a\nb")}) {
    EXPECT_EQ(enter(token, who).status, 400) << who;
  }
  EXPECT_EQ(enter(token, std::string(31, 'x')).status, 303);
}

TEST_F(PanelAsking, AFormOfAnotherSessionIsRefused) {
  come_in();
  for (const std::string& wrong : {std::string(), std::string(32, '0'), form_token.substr(1)}) {
    EXPECT_EQ(post("cleaned", {{"form", wrong}}).status, 403) << wrong;
  }
  EXPECT_THAT(heard, IsEmpty());
}

TEST_F(PanelAsking, WhatIsToldGoesTheWayOfMqttAndItsAnswerIsOnTheNextPage) {
  come_in();
  const std::string asked = page("/tell/measured/product");
  EXPECT_THAT(asked, HasSubstr(">What did you measure at the product water meter"));
  const Reply reply = post("measured/product", {{"value", "0,4"}});
  EXPECT_EQ(reply.status, 303);
  EXPECT_EQ(header(reply, "Location"), "/tell");
  ASSERT_EQ(heard.size(), 1U);
  EXPECT_EQ(heard[0],
            R"({"tell":"measured","who":"ann","instrument":"product","value":0.4,"unit":"ppm"})");
  EXPECT_THAT(page("/tell"),
              HasSubstr("<strong>Done.</strong> I have measured at the product water meter"));
  EXPECT_THAT(front(), Not(HasSubstr("Done."))) << "it is of the other page";
}

TEST_F(PanelAsking, WhatIsRefusedSaysWhyInTheDesksOwnWords) {
  come_in();
  post("measured/product", {{"value", "<b>much</b>"}});
  const std::string html = page("/tell");
  EXPECT_THAT(html, HasSubstr("id=\"came\" class=\"refused\""));
  EXPECT_THAT(html, HasSubstr("&quot;value&quot; is &quot;&lt;b&gt;much"));
  EXPECT_THAT(html, HasSubstr("Expected a number"));
  EXPECT_THAT(html, Not(HasSubstr("<b>")));
}

TEST_F(PanelAsking, AnAlarmIsAcknowledgedAndItsOldButtonDoesNothingMore) {
  come_in();
  happens(support::floor, 1);
  const std::string first = front();
  EXPECT_THAT(first, HasSubstr("I have seen it"));
  const std::string occurrence = hidden(first, "acknowledge/leak", "occurrence");
  EXPECT_EQ(occurrence, "1");
  EXPECT_EQ(header(post("acknowledge/leak", {{"occurrence", occurrence}}), "Location"), "/");
  EXPECT_THAT(front(), HasSubstr("<strong>Done.</strong> Water on the floor: I have seen it."));
  EXPECT_THAT(front(), Not(HasSubstr("action=\"/tell/acknowledge/leak\"")));
  EXPECT_EQ(post("acknowledge/leak", {{"occurrence", "0"}}).status, 303);
  EXPECT_THAT(front(), HasSubstr("Refused."));
}

TEST_F(PanelAsking, AnOldPageDoesNotAcknowledgeWhatCameSince) {
  come_in();
  happens(support::floor, 1);
  const std::string old = hidden(front(), "acknowledge/leak", "occurrence");
  {
    const std::lock_guard guard(lock);
    stage.says(support::floor, 0);
    stage.wait(15min);
    stage.says(support::floor, 1);
    ASSERT_EQ(stage.state.alarms[room::RuleId::leak].occurrence, 2U);
    show();
  }
  post("acknowledge/leak", {{"occurrence", old}});
  EXPECT_THAT(front(), HasSubstr("That was an older occurrence; the present one is 2."));
  const std::lock_guard guard(lock);
  EXPECT_FALSE(stage.state.alarms[room::RuleId::leak].acknowledged);
}

TEST_F(PanelAsking, AResetIsArmedThenConfirmedWithItsToken) {
  come_in();
  happens(support::floor, 1);
  post("reset/leak");
  EXPECT_THAT(front(), HasSubstr("must report dry twice")) << "as over MQTT";
  EXPECT_THAT(front(), Not(HasSubstr("/tell/confirm/leak")));
  happens(support::floor, 0);
  happens(support::floor, 0);
  {
    const std::lock_guard guard(lock);
    stage.wait(15min);
    show();
  }
  post("reset/leak");
  const std::string armed = front();
  EXPECT_THAT(armed, HasSubstr("▷</span><strong>One more step.</strong>"));
  EXPECT_EQ(hidden(armed, "confirm/leak", "token"), "434343");
  {
    const std::lock_guard guard(lock);
    EXPECT_TRUE(stage.state.latches[room::RuleId::leak].set) << "arming changes nothing";
  }
  post("confirm/leak", {{"token", "434344"}});
  EXPECT_THAT(front(), HasSubstr("Refused."));
  post("confirm/leak", {{"token", "434343"}});
  EXPECT_THAT(front(), HasSubstr("<strong>Done.</strong>"));
  EXPECT_THAT(front(), HasSubstr("nothing starts by itself"));
  const std::lock_guard guard(lock);
  EXPECT_FALSE(stage.state.latches[room::RuleId::leak].set);
  EXPECT_FALSE(stage.is_on());
}

TEST_F(PanelAsking, WhatIsNotAQuestionHereIsNotAsked) {
  come_in();
  for (const char* path :
       {"bypass", "test_lease", "shelve/leak", "measured/nothing", "stocked/salt", ""}) {
    EXPECT_EQ(header(post(path, {{"minutes", "5"}}), "Location"), "/tell") << path;
  }
  EXPECT_THAT(heard, IsEmpty());
  EXPECT_EQ(header(asking.answer(call("/tell/confirm/leak")), "Location"), "/tell");
}

TEST_F(PanelAsking, WhoLeavesIsOut) {
  come_in();
  EXPECT_EQ(header(post("leave"), "Location"), "/");
  EXPECT_EQ(post("cleaned").status, 401);
}

TEST_F(PanelAsking, NobodyWhoAnswersIsSaid) {
  come_in();
  asking.close();
  post("cleaned");
  EXPECT_THAT(page("/tell"), HasSubstr("<strong>No answer.</strong> I have cleaned the vat."));
}

// The stream tells all pages alike; the mark tells a page with buttons when it wants others.
TEST_F(PanelAsking, AMarkOfTheButtonsChangesWithThem) {
  come_in();
  const auto marked = [&] {
    std::smatch found;
    const std::string html = front();
    return std::regex_search(html, found, std::regex("data-mark=\"([^\"]*)\"")) ? found[1].str()
                                                                                : "?";
  };
  EXPECT_EQ(marked(), "");
  happens(support::floor, 1);
  EXPECT_EQ(marked(), "leak-1ar");
  post("acknowledge/leak", {{"occurrence", "1"}});
  EXPECT_EQ(marked(), "leak-1r");
  const report::Report report = report::describe(stage.room, stage.state);
  const auto alarms = standing(stage.room, stage.state, report);
  const View view{household, report, alarms, style, "", true};
  EXPECT_THAT(answers(view).html, StartsWith("<section id=\"answers\" data-mark=\"leak-1r\">"));
  const View read_only{household, report, alarms, style, "", false};
  EXPECT_EQ(answers(read_only).html, "<section id=\"answers\" data-mark=\"\" hidden></section>");
}

}  // namespace
}  // namespace tidewright::panel
