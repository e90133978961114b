#include "daemon/panel/page.hpp"

#include <fmt/format.h>

#include <array>

#include "daemon/panel/html.hpp"
#include "daemon/panel/tell_page.hpp"

namespace tidewright::panel {
namespace {

Part section(std::string id, std::string_view kind, const std::string& inner) {
  std::string attributes = fmt::format(" id=\"{}\"", id);
  if (!kind.empty()) attributes += fmt::format(" class=\"{}\"", kind);
  if (inner.empty()) attributes += " hidden";
  if (id == "sentence") attributes += " aria-live=\"polite\"";
  return {std::move(id), element("section", attributes, inner)};
}

std::string link(const Style& style, Page here, Page page, std::string_view to, Word name) {
  return element("a",
                 fmt::format(" href=\"{}\"{}", to, here == page ? " aria-current=\"page\"" : ""),
                 escaped(style.word(name)));
}

struct Name {
  Page page;
  std::string_view path;
  Word word;
};
constexpr std::array names{Name{Page::now, "/", Word::now_page},
                           Name{Page::why, "/why", Word::why_page},
                           Name{Page::history, "/history", Word::history_page},
                           Name{Page::tell, "/tell", Word::tell_page}};

std::string links(const Style& style, const Frame& frame) {
  std::string html;
  for (const Name& name : names) {
    if (name.page == Page::tell && !frame.is_answered) continue;
    html += link(style, frame.page, name.page, name.path, name.word);
  }
  return html;
}

std::string head(const Style& style, const std::string& room, const Frame& frame) {
  std::string html =
      R"(<meta charset="utf-8">)"
      R"(<meta name="viewport" content="width=device-width, initial-scale=1">)"
      R"(<meta name="color-scheme" content="dark light"><link rel="stylesheet" href="/panel.css">)"
      R"(<link rel="icon" href="/icon.svg" type="image/svg+xml">)";
  if (frame.live) html += R"(<script src="/panel.js" defer></script>)";
  if (frame.page == Page::now) {
    html += R"(<noscript><meta http-equiv="refresh" content="60"></noscript>)";
  }
  if (frame.page == Page::history) {
    html +=
        R"(<script src="/dygraph.min.js" defer></script><script src="/chart.js" defer></script>)";
  }
  if (frame.is_answered) html += R"(<script src="/hold.js" defer></script>)";
  const Word word = names[static_cast<std::size_t>(frame.page)].word;
  return html + element("title", "", escaped(room + " – " + std::string(style.word(word))));
}

// The class of <main>.
std::string_view kind_of(Page page) {
  if (page == Page::now) return " class=\"now\"";
  return page == Page::tell ? " class=\"tell\"" : "";
}

}  // namespace

Parts parts(const View& view) {
  return {section("sentence", mood(view), sentence(view)),
          answers(view),
          section("vessel", "", vessel(view)),
          section("path", "", path(view)),
          section("running", "", running(view)),
          section("due", "", due(view))};
}

Parts parts_at_start(const Style& style) {
  return {section("sentence", "", element("h1", "", escaped(style.word(Word::starting)))),
          section("answers", "", ""),
          section("vessel", "", ""),
          section("path", "", ""),
          section("running", "", ""),
          section("due", "", "")};
}

std::string as_of(const View& view) {
  return view.style.said(Word::as_of, view.style.time(view.now, view.now));
}

std::string whole(const config::Panel& panel, const std::string& room, const Frame& frame,
                  const std::string& main) {
  const Style style(panel);
  const std::string offline =
      frame.live
          ? fmt::format(
                R"(<p id="offline" role="alert" data-words="{}" data-hours="{}" hidden></p>)",
                escaped(style.word(Word::offline)), style.twelve_hours() ? 12 : 24)
          : std::string{};
  const std::string body = fmt::format(
      R"(<a class="skip" href="#main">{}</a>{}<main id="main" tabindex="-1"{}>{}</main>)"
      R"(<footer><nav>{}</nav><p>{} · <span id="as-of">{}</span></p></footer>)",
      escaped(style.word(Word::skip)), offline, kind_of(frame.page), main, links(style, frame),
      escaped(room), escaped(frame.as_of));
  return "<!doctype html>" +
         element("html", fmt::format(" lang=\"{}\"", style.word(Word::language_code)),
                 element("head", "", head(style, room, frame)) + element("body", "", body)) +
         "\n";
}

}  // namespace tidewright::panel
