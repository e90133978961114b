#include "daemon/panel/words.hpp"

#include <fmt/format.h>

namespace tidewright::panel {
namespace {

struct Row {
  Word word;
  std::string_view english;
  std::string_view german;
};

constexpr Row rows[] = {
    {Word::language_code, "en", "de"},
    {Word::decimal_sign, ".", ","},
    {Word::skip, "To what is seen now", "Zu dem, was jetzt ist"},
    {Word::now_page, "Now", "Jetzt"},
    {Word::why_page, "Why", "Warum"},
    {Word::history_page, "History", "Verlauf"},
    {Word::offline, "Offline since {time}. What stands here is as it was then.",
     "Keine Verbindung seit {time}. Was hier steht, gilt für diesen Zeitpunkt."},
    {Word::as_of, "As of {a}", "Stand {a}"},
    {Word::tomorrow, "tomorrow {a}", "morgen {a}"},
    {Word::yesterday, "yesterday {a}", "gestern {a}"},
    {Word::days, "{a} days", "{a} Tage"},
    {Word::nothing_known, "—", "—"},
    {Word::unknown, "not known", "nicht bekannt"},

    {Word::alarm_since, "since {a}", "seit {a}"},
    {Word::ready, "Ready: {a} of {b}.", "Bereit: {a} {b}."},
    {Word::ready_by_float, "Ready: the vat of {b} is full.",
     "Bereit: der Behälter ({b}) ist voll."},
    {Word::not_yet_about, "Not yet: {a} to go, about {b}.", "Noch nicht: es fehlen {a}, etwa {b}."},
    {Word::not_yet, "Not yet: {a} to go.", "Noch nicht: es fehlen {a}."},
    {Word::not_yet_float, "Not yet: the vat is not full.",
     "Noch nicht: der Behälter ist nicht voll."},
    {Word::not_pure, "Not to be used: the water is not pure.",
     "Nicht verwenden: das Wasser ist nicht rein."},
    {Word::level_not_known, "Not known: how much water there is.",
     "Nicht bekannt: wie viel Wasser da ist."},
    {Word::starting, "Just started: nothing has been heard yet.",
     "Gerade gestartet: noch ist nichts bekannt."},
    {Word::first_reading, "Waiting for the first readings.", "Es fehlen die ersten Messwerte."},
    {Word::reported_so_far,
     "{a} of {b} instruments have reported. If this lasts, look at the broker and at their topics.",
     "{a} von {b} Messgeräten haben sich gemeldet. Dauert das an, sind Broker und Themen zu "
     "prüfen."},
    {Word::all_dry, "Dry: no water on the floor.", "Trocken: kein Wasser am Boden."},
    {Word::floor_not_known, "Not known: whether the floor is dry.",
     "Nicht bekannt: ob der Boden trocken ist."},
    {Word::nothing_watched, "Nothing is measured here yet.", "Hier wird noch nichts gemessen."},
    {Word::pure, "Pure:", "Rein:"},
    {Word::purity_not_known, "Purity not known:", "Reinheit nicht bekannt:"},
    {Word::filling_until, "Filling; at its mark {a}.", "Füllt; an der Marke {a}."},
    {Word::filling, "Filling.", "Füllt."},
    {Word::paused, "Paused:", "Pause:"},
    {Word::held, "Held:", "Gesperrt:"},
    {Word::at_mark, "At its mark.", "An der Marke."},
    {Word::resting, "Resting until it is under {a}.", "Ruht, bis es unter {a} ist."},
    {Word::did, "Done", "Getan"},
    {Word::do_now, "Do now", "Jetzt tun"},
    {Word::by_when, "When", "Wann"},

    {Word::vessel, "The vat", "Der Behälter"},
    {Word::holds_of, "{a} of {b}", "{a} von {b}"},
    {Word::level_unknown, "The level is not known.", "Der Stand ist nicht bekannt."},
    {Word::mark_start, "fill {a}", "füllen {a}"},
    {Word::mark_enough, "ready {a}", "bereit {a}"},
    {Word::mark_stop, "stop {a}", "halt {a}"},
    {Word::in_an_hour, "in 1 h: {a}", "in 1 h: {a}"},

    {Word::path, "The path of the water", "Der Weg des Wassers"},
    {Word::feed, "feed", "Zulauf"},
    {Word::membrane, "membrane", "Membran"},
    {Word::first_resin, "first resin", "erstes Harz"},
    {Word::second_resin, "second resin", "zweites Harz"},
    {Word::concentrate, "concentrate", "Konzentrat"},
    {Word::vat, "vat", "Behälter"},
    {Word::held_back, "{a} % held back", "{a} % zurückgehalten"},
    {Word::good, "good", "gut"},
    {Word::look_here, "look here", "hier nachsehen"},
    {Word::not_measured, "not measured", "nicht gemessen"},
    {Word::litres_left, "{a} left", "noch {a}"},
    {Word::days_left, "{a} days of top-off", "{a} Tage Nachfüllung"},

    {Word::running, "What runs, and why", "Was läuft, und warum"},
    {Word::runs, "runs", "läuft"},
    {Word::is_off, "off", "aus"},
    {Word::answers_not, "gives no answer", "gibt keine Antwort"},
    {Word::told_on, "told to run, still off", "soll laufen, ist noch aus"},
    {Word::told_off, "told to stop, still on", "soll aus sein, läuft noch"},
    {Word::by_hand, "on by hand", "von Hand eingeschaltet"},
    {Word::nothing_switched, "Nothing is switched from here.", "Von hier wird nichts geschaltet."},

    {Word::due, "What is due", "Was ansteht"},
    {Word::nothing_due, "Nothing is due.", "Nichts steht an."},
    {Word::rotate, "Rotate the canisters", "Kartuschen drehen"},
    {Word::clean, "Clean the {a} vat", "Behälter {a} reinigen"},
    {Word::order, "Order {a}", "{a} bestellen"},
    {Word::test, "Test {a}", "{a} prüfen"},
    {Word::in_days, "in {a} days", "in {a} Tagen"},
    {Word::today, "today", "heute"},
    {Word::since_days, "for {a} days", "seit {a} Tagen"},

    {Word::why_title, "What was decided, and why", "Was entschieden wurde, und warum"},
    {Word::why_empty, "Nothing has been decided since the daemon started.",
     "Seit dem Start wurde noch nichts entschieden."},
    {Word::started, "The daemon started.", "Der Dienst ist gestartet."},
    {Word::goes_on, "switched ON", "EIN geschaltet"},
    {Word::goes_off, "switched OFF", "AUS geschaltet"},
    {Word::alarm_raised, "Alarm", "Alarm"},
    {Word::alarm_over, "over", "vorbei"},

    {Word::history_title, "History: {a}", "Verlauf: {a}"},
    {Word::hours_24, "24 hours", "24 Stunden"},
    {Word::days_7, "7 days", "7 Tage"},
    {Word::days_14, "14 days", "14 Tage"},
    {Word::history_empty, "The journal has no reading of it in this time.",
     "Das Journal hat in dieser Zeit keinen Messwert davon."},
    {Word::history_failed, "The journal cannot be read just now. Try again in a moment.",
     "Das Journal ist gerade nicht lesbar. Bitte gleich noch einmal."},
    {Word::lowest_highest, "Lowest {a}, highest {b}.", "Niedrigster Wert {a}, höchster {b}."},
    {Word::told, "told by {a}", "gemeldet von {a}"},
    {Word::no_curves, "No instrument here shows a number.", "Kein Messgerät zeigt hier eine Zahl."},
};

}  // namespace

std::string_view word(config::Language language, Word word) {
  for (const Row& row : rows) {
    if (row.word == word) return language == config::Language::german ? row.german : row.english;
  }
  return {};
}

std::string said(config::Language language, Word which, const std::string& a,
                 const std::string& b) {
  return fmt::format(fmt::runtime(word(language, which)), fmt::arg("a", a), fmt::arg("b", b));
}

}  // namespace tidewright::panel
