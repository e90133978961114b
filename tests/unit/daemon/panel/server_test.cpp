// Over real HTTP: what comes in, what goes out, and every bound. The rules are those of RFC 9110
// and 9112, and of the Content Security Policy, level 3.
#include "daemon/panel/server.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <system_error>
#include <thread>

#include "tests/support/eventually.hpp"
#include "tests/support/no_threads.hpp"
#include "tests/support/web_client.hpp"

namespace tidewright::panel {
namespace {

using namespace std::chrono_literals;
using support::eventually;
using support::get_page;
using support::WebClient;
using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::StartsWith;

const std::string stream_request = "GET /events HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n";

Limits small() {
  Limits limits;
  limits.connections = 6;
  limits.streams = 3;
  limits.request_time = 300ms;
  limits.write_time = 300ms;
  limits.beat = 20ms;
  return limits;
}

Parts one_part(const std::string& text) {
  return {{"a", "<section id=\"a\">" + text + "</section>"}};
}

class PanelServer : public ::testing::Test {
 protected:
  explicit PanelServer(const Limits& limits = small(), bool takes_forms = false)
      : server(std::make_unique<Server>(
            Server::Settings{"127.0.0.1", 0, {"water.home"}, limits, takes_forms}, feed,
            [](const Call& call) {
              if (call.posts) return echo(call);
              return call.path == "/" ? Reply{.body = "<p>page</p>"}
                                      : Reply{404, "text/plain", "no\n"};
            })) {}

  static Reply echo(const Call& call) {
    std::string body = call.from + " " + call.cookie + " ";
    for (const auto& [name, value] : call.form) body += name + "=" + value + ";";
    return {303, "text/plain", body, {{"Location", "/tell"}, {"Set-Cookie", "a=b; HttpOnly"}}};
  }

  int port() const { return server->port(); }
  static std::size_t count(const char* what) {
    const std::filesystem::directory_iterator all(std::string("/proc/self/") + what);
    return static_cast<std::size_t>(std::distance(begin(all), end(all)));
  }

  Feed feed{7};
  std::unique_ptr<Server> server;
};

TEST_F(PanelServer, SendsEveryAnswerWithItsGuards) {
  for (const std::string& answer :
       {get_page(port(), "/"), get_page(port(), "/nothing"),
        get_page(port(), "/", "Origin: http://evil.example\r\n"),
        support::ask_web(port(), "GET / HTTP/1.1\r\nHost: evil.example\r\n\r\n")}) {
    EXPECT_THAT(answer, HasSubstr("\r\nContent-Security-Policy: default-src 'self'; "));
    EXPECT_THAT(answer, HasSubstr("frame-ancestors 'none'"));
    EXPECT_THAT(answer, HasSubstr("\r\nX-Content-Type-Options: nosniff\r\n"));
    EXPECT_THAT(answer, HasSubstr("\r\nReferrer-Policy: same-origin\r\n"));
    EXPECT_THAT(answer, HasSubstr("\r\nCache-Control: no-store\r\n"));
    EXPECT_THAT(answer, Not(HasSubstr("Set-Cookie")));
    EXPECT_THAT(answer, Not(HasSubstr("Access-Control-Allow")));
  }
}

TEST_F(PanelServer, AnswersPagesAndRefusesTheRest) {
  EXPECT_THAT(get_page(port(), "/"), StartsWith("HTTP/1.1 200 "));
  EXPECT_THAT(get_page(port(), "/?from=x"), HasSubstr("<p>page</p>"));
  EXPECT_THAT(get_page(port(), "/../etc/passwd"), StartsWith("HTTP/1.1 404 "));
  EXPECT_THAT(get_page(port(), "/", "Origin: null\r\n"), StartsWith("HTTP/1.1 403 "));
  EXPECT_THAT(get_page(port(), "/" + std::string(300, 'a')), StartsWith("HTTP/1.1 414 "));
  const std::string post =
      support::ask_web(port(), "POST / HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Length: 2\r\n\r\nhi");
  EXPECT_THAT(post, StartsWith("HTTP/1.1 405 "));
  EXPECT_THAT(post, HasSubstr("Allow: GET, HEAD"));
  EXPECT_THAT(support::ask_web(port(), "GET / HTTP/1.1\r\nHost: evil.example\r\n\r\n"),
              StartsWith("HTTP/1.1 421 "));
  const std::string head = support::ask_web(port(), "HEAD / HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n");
  EXPECT_THAT(head, StartsWith("HTTP/1.1 200 "));
  EXPECT_TRUE(head.ends_with("\r\n\r\n"));
}

// Neither packed nor cut into ranges: a short request must not make long work.
TEST_F(PanelServer, DoesNoMoreWorkThanIsAskedOf) {
  std::string ranges = "Range: bytes=0-0";
  for (int i = 0; i < 500; ++i) ranges += ",0-0";
  const std::string answer = get_page(port(), "/", ranges + "\r\nAccept-Encoding: br, gzip\r\n");
  EXPECT_THAT(answer, StartsWith("HTTP/1.1 200 "));
  EXPECT_THAT(answer, Not(HasSubstr("Content-Encoding")));
  EXPECT_TRUE(answer.ends_with("\r\n\r\n<p>page</p>"));
}

TEST_F(PanelServer, LetsGarbageGo) {
  for (const std::string& garbage :
       {std::string("\r\n\r\n"), std::string("GET\r\n\r\n"),
        std::string("\x16\x03\x01\x02\r\n\r\n"), std::string("GET / HTTP/9.9\r\n\r\n"),
        std::string(100, '\0') + "\r\n\r\n", std::string("GET / HTTP/1.1\r\nHost\r\n\r\n")}) {
    const std::string answer = support::ask_web(port(), garbage);
    EXPECT_THAT(answer, Not(StartsWith("HTTP/1.1 200 "))) << garbage;
  }
  EXPECT_THAT(get_page(port(), "/"), StartsWith("HTTP/1.1 200 "));
}

TEST_F(PanelServer, CutsARequestThatDoesNotEnd) {
  WebClient endless(port());
  ASSERT_TRUE(endless.send("GET / HTTP/1.1\r\nHost: 127.0.0.1\r\n"));
  const std::string line = "X-More: " + std::string(1000, 'x') + "\r\n";
  int lines = 0;
  while (lines < 10'000 && endless.send(line)) ++lines;
  // What it took is bounded by its own limit and what the two sockets hold (some megabytes).
  EXPECT_LT(lines, 10'000);
  EXPECT_TRUE(endless.ended(10s));
}

TEST_F(PanelServer, CutsAClientThatSaysNothing) {
  WebClient silent(port());
  WebClient slow(port());
  ASSERT_TRUE(slow.send("GET / HT"));
  EXPECT_TRUE(silent.ended(5s));
  EXPECT_TRUE(slow.ended(5s));
}

// Where nobody may ask and tell a form finds nothing.
TEST_F(PanelServer, TakesNoFormUnlessItIsTold) {
  EXPECT_THAT(support::post_form(port(), "/tell/cleaned", "a=1"), StartsWith("HTTP/1.1 405 "));
}

class PanelServerOfForms : public PanelServer {
 protected:
  PanelServerOfForms() : PanelServer(small(), true) {}
};

TEST_F(PanelServerOfForms, HandsAFormOnWithWhoSentIt) {
  const std::string answer =
      support::post_form(port(), "/tell/x", "a=1%26&b=%C3%BC+y&a=2", "Cookie: s=1\r\n");
  EXPECT_THAT(answer, StartsWith("HTTP/1.1 303 "));
  EXPECT_THAT(answer, HasSubstr("\r\nLocation: /tell\r\n"));
  EXPECT_THAT(answer, HasSubstr("\r\nSet-Cookie: a=b; HttpOnly\r\n"));
  EXPECT_THAT(answer, HasSubstr("\r\nContent-Security-Policy: default-src 'self'; "));
  EXPECT_THAT(answer, HasSubstr("127.0.0.1 s=1 a=1&;b=ü y;"));
}

TEST_F(PanelServerOfForms, TakesThemFromItsOwnPagesAndBelowTellAlone) {
  const std::string elsewhere = "POST /tell/x HTTP/1.1\r\nHost: 127.0.0.1\r\n";
  const std::string rest = "Content-Length: 3\r\n\r\na=1";
  EXPECT_THAT(support::ask_web(port(), elsewhere + rest), StartsWith("HTTP/1.1 403 "));
  EXPECT_THAT(support::ask_web(port(), elsewhere + "Origin: http://evil.example\r\n" + rest),
              StartsWith("HTTP/1.1 403 "));
  for (const char* path : {"/", "/tell", "/why", "/events", "/tellx/"}) {
    EXPECT_THAT(support::post_form(port(), path, "a=1"), StartsWith("HTTP/1.1 405 ")) << path;
  }
}

TEST_F(PanelServerOfForms, BoundsThem) {
  const std::string much(small().request_bytes, 'x');
  EXPECT_THAT(support::post_form(port(), "/tell/x", "a=" + much), Not(HasSubstr(" 303 ")));
  // Announced, and never sent.
  const auto began = std::chrono::steady_clock::now();
  const std::string answer = support::ask_web(
      port(),
      "POST /tell/x HTTP/1.1\r\nHost: 127.0.0.1\r\nOrigin: http://127.0.0.1\r\n"
      "Content-Type: application/x-www-form-urlencoded\r\nContent-Length: 9\r\n\r\na=1");
  EXPECT_THAT(answer, Not(HasSubstr(" 303 ")));
  EXPECT_LT(std::chrono::steady_clock::now() - began, 10s);
}

TEST_F(PanelServer, StreamsASnapshotThenEachChange) {
  feed.publish(one_part("first"), "");
  WebClient page(port());
  ASSERT_TRUE(page.send(stream_request));
  EXPECT_THAT(page.read_until("first</section>", 5s), HasSubstr("event: snapshot\n"));
  EXPECT_THAT(page.read_until("", 0ms), HasSubstr("Content-Type: text/event-stream"));
  feed.publish(one_part("second"), "");
  EXPECT_THAT(page.read_until("second</section>", 5s), HasSubstr("event: change\n"));
  EXPECT_THAT(page.read_until("event: beat\n", 5s), HasSubstr("event: beat\n"));
}

TEST_F(PanelServer, GoesOnAfterTheLastEventThatWasSeen) {
  for (const char* text : {"1", "2", "3"}) feed.publish(one_part(text), "");
  WebClient page(port());
  ASSERT_TRUE(page.send("GET /events HTTP/1.1\r\nHost: 127.0.0.1\r\nLast-Event-ID: 7-1\r\n\r\n"));
  const std::string came = page.read_until(">3</section>", 5s);
  EXPECT_THAT(came, Not(HasSubstr("snapshot")));
  EXPECT_LT(came.find(">2</section>"), came.find(">3</section>"));
}

TEST_F(PanelServer, TurnsTooManyStreamsAwayAndTakesOthersWhenTheyGo) {
  feed.publish(one_part("x"), "");
  std::vector<std::unique_ptr<WebClient>> pages;
  for (std::size_t i = 0; i < small().streams; ++i) {
    pages.push_back(std::make_unique<WebClient>(port()));
    pages.back()->send(stream_request);
    ASSERT_THAT(pages.back()->read_until("snapshot", 5s), HasSubstr("snapshot"));
  }
  EXPECT_THAT(support::ask_web(port(), stream_request), StartsWith("HTTP/1.1 503 "));
  EXPECT_THAT(get_page(port(), "/"), StartsWith("HTTP/1.1 200 "));
  pages.clear();
  EXPECT_TRUE(eventually(5s, [&] {
    WebClient page(port());
    page.send(stream_request);
    return page.read_until("\r\n", 5s).starts_with("HTTP/1.1 200 ");
  }));
}

// The daemon needs its descriptors for the broker.
TEST_F(PanelServer, HoldsSoManyConnectionsAtMost) {
  const std::size_t threads = count("task");
  std::vector<std::unique_ptr<WebClient>> crowd;
  for (int i = 0; i < 40; ++i) crowd.push_back(std::make_unique<WebClient>(port()));
  EXPECT_LE(count("task"), threads + small().connections);
  EXPECT_LE(count("fd"), 40 + small().connections + 40);  // both ends of those taken are ours here
  EXPECT_THAT(get_page(port(), "/"), StartsWith("HTTP/1.1 200 "));  // once those before are cut
}

// Without reading, whoever listens makes nobody wait: the feed does not know them.
TEST_F(PanelServer, CutsAStreamThatIsNotRead) {
  feed.publish(one_part("x"), "");
  WebClient deaf(port());
  ASSERT_TRUE(deaf.send(stream_request));
  ASSERT_THAT(deaf.read_until("snapshot", 5s), HasSubstr("snapshot"));
  const std::string much(60 * 1024, 'x');
  const std::size_t threads = count("task");
  EXPECT_TRUE(eventually(30s, [&, n = 0]() mutable {
    feed.publish(one_part(much + std::to_string(++n)), "");
    return count("task") < threads;
  }));
}

TEST_F(PanelServer, AnswersOneAfterAnotherWhereThereAreNoThreads) {
  feed.publish(one_part("x"), "");
  const support::NoThreads shortage;
  ASSERT_THROW(std::thread([] {}).join(), std::system_error);
  for (int i = 0; i < 3; ++i) EXPECT_THAT(get_page(port(), "/"), StartsWith("HTTP/1.1 200 "));
  WebClient page(port());
  page.send(stream_request);
  EXPECT_THAT(page.read_until("snapshot", 5s), HasSubstr("snapshot"));
  server.reset();
  EXPECT_TRUE(page.ended(1s));
}

TEST_F(PanelServer, EndsAtOnceWhoeverIsThere) {
  feed.publish(one_part("x"), "");
  WebClient page(port()), silent(port());
  page.send(stream_request);
  page.read_until("snapshot", 5s);
  const auto began = std::chrono::steady_clock::now();
  server.reset();
  EXPECT_LT(std::chrono::steady_clock::now() - began, 250ms);
  EXPECT_TRUE(page.ended(1s));
  EXPECT_TRUE(silent.ended(1s));
}

TEST_F(PanelServer, SharesItsPortWithNobody) {
  Feed other(8);
  const Server::Settings same{"127.0.0.1", static_cast<std::uint16_t>(port()), {}, small()};
  EXPECT_THROW(Server(same, other, [](const Call&) { return Reply{}; }), std::runtime_error);
}

}  // namespace
}  // namespace tidewright::panel
