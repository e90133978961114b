#include "daemon/panel/page.hpp"

#include <fmt/format.h>

#include "daemon/panel/html.hpp"

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

std::string head(const Style& style, const std::string& room, bool live) {
  std::string html =
      R"(<meta charset="utf-8">)"
      R"(<meta name="viewport" content="width=device-width, initial-scale=1">)"
      R"(<meta name="color-scheme" content="dark light"><link rel="stylesheet" href="/panel.css">)"
      R"(<link rel="icon" href="/icon.svg" type="image/svg+xml">)";
  if (live) {
    html += R"(<script src="/panel.js" defer></script>)"
            R"(<noscript><meta http-equiv="refresh" content="60"></noscript>)";
  }
  return html +
         element("title", "", escaped(room + " – " + std::string(style.word(Word::now_page))));
}

}  // namespace

Parts parts(const View& view) {
  return {section("sentence", mood(view), sentence(view)), section("vessel", "", vessel(view)),
          section("path", "", path(view)), section("running", "", running(view)),
          section("due", "", due(view))};
}

Parts parts_at_start(const Style& style) {
  return {section("sentence", "", element("h1", "", escaped(style.word(Word::starting)))),
          section("vessel", "", ""), section("path", "", ""), section("running", "", ""),
          section("due", "", "")};
}

std::string as_of(const View& view) {
  return view.style.said(Word::as_of, view.style.time(view.now, view.now));
}

std::string whole(const config::Panel& panel, const std::string& room, Page page,
                  const std::string& main, const std::string& as_of, bool live) {
  const Style style(panel);
  const std::string nav = link(style, page, Page::now, "/", Word::now_page) +
                          link(style, page, Page::why, "/why", Word::why_page) +
                          link(style, page, Page::history, "/history", Word::history_page);
  const std::string offline =
      live ? fmt::format(
                 R"(<p id="offline" role="alert" data-words="{}" data-hours="{}" hidden></p>)",
                 escaped(style.word(Word::offline)), style.twelve_hours() ? 12 : 24)
           : std::string{};
  const std::string body = fmt::format(
      R"(<a class="skip" href="#main">{}</a>{}<main id="main" tabindex="-1"{}>{}</main>)"
      R"(<footer><nav>{}</nav><p>{} · <span id="as-of">{}</span></p></footer>)",
      escaped(style.word(Word::skip)), offline, live ? " class=\"now\"" : "", main, nav,
      escaped(room), escaped(as_of));
  return "<!doctype html>" +
         element("html", fmt::format(" lang=\"{}\"", style.word(Word::language_code)),
                 element("head", "", head(style, room, live)) + element("body", "", body)) +
         "\n";
}

}  // namespace tidewright::panel
