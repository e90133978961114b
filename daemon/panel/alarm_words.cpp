#include "daemon/panel/alarm_words.hpp"

#include "core/rules/catalogue.hpp"

namespace tidewright::panel {
namespace {

struct Row {
  std::string_view rule;
  std::string_view title;
  std::string_view action;
};

constexpr Row rows[] = {
    {"actuator_disobeys", "Ein Stecker oder Ventil gehorcht nicht",
     "Den Stecker aus der Wand ziehen und den Zulaufhahn von Hand schließen. Einen heilen Stecker "
     "einsetzen, dann zurücksetzen"},
    {"broker_lost", "Keine Verbindung zum Broker",
     "Den Broker oder seinen Rechner neu starten, das Netz prüfen"},
    {"bypass_active", "Ein Schutz ist überbrückt",
     "In der Nähe bleiben. Sobald die Arbeit getan ist, `end_bypass` sagen"},
    {"command_undelivered", "Ein Befehl erreicht niemanden",
     "Nach dem Stecker sehen: steckt er, und ist er im Netz? Läuft sein Gerät noch, ihn ziehen. "
     "Sein Thema in der Datei und die Rechte beim Broker prüfen"},
    {"draw_unusual", "Es wird ungewöhnlich viel Wasser entnommen",
     "Nach dem Becken sehen: läuft es über, oder steht seine Nachfüllung offen? Den Hahn unter dem "
     "Behälter schließen"},
    {"feed_changed", "Das Zulaufwasser hat sich verändert",
     "Chlor vor und nach der Kohle messen und den Vorfilter ansehen: tauschen, was braun ist oder "
     "Chlor durchlässt. Beim Wasserwerk fragen, was es getan hat"},
    {"fill_not_stopping", "Das Füllen endet nicht",
     "Den Stecker der Pumpe ziehen und den Zulaufhahn von Hand schließen. Herausfinden, warum das "
     "Wasser weiterlief, dann zurücksetzen"},
    {"fill_overlong", "Das Füllen dauert zu lange",
     "Den ganzen Weg vom Zulaufhahn bis zum Behälter ansehen. Vorfilter, Zulaufdruck und "
     "Füllstandsmesser prüfen"},
    {"frost", "Im Wasserraum ist es nahe am Gefrieren",
     "Den Raum heizen. Geht das nicht, den Zulaufhahn schließen und Leitungen, Filtergehäuse und "
     "Membran entleeren"},
    {"leak", "Wasser am Boden",
     "Den Zulaufhahn von Hand schließen. Das Wasser finden, Boden und Fühler trocknen. Erst dann "
     "`leak` zurücksetzen; vorher läuft nichts, und `start` beginnt das Füllen neu"},
    {"leak_sensor_lost", "Ein Leckfühler schweigt",
     "Batterie oder Fühler ersetzen, dann mit einem nassen Tuch prüfen"},
    {"lease_not_kept", "Auf die Selbstabschaltung eines Steckers ist kein Verlass",
     "Die Abschaltzeit des Steckers so einstellen, wie die Datei es sagt, oder in der Datei sagen, "
     "wie es ist. Dann `test_lease` verlangen"},
    {"level_flat_while_filling", "Der Behälter füllt sich nicht",
     "In den Behälter sehen: kommt Wasser, und bewegt sich der Füllstandsmesser von Hand? "
     "Zulaufhahn und Schläuche prüfen"},
    {"level_lost", "Der Füllstand ist nicht mehr bekannt",
     "Nach dem Stand im Behälter sehen. Den Füllstandsmesser, seine Batterie und sein Kabel "
     "prüfen"},
    {"membrane_rejection_low", "Die Membran lässt zu viel durch",
     "Den Zulaufdruck prüfen und die Membran spülen. Ist es einen Tag später nicht besser, die "
     "Kohle auf Chlor prüfen und eine neue Membran einsetzen"},
    {"proof_test_due", "Ein Schutz muss ausprobiert werden",
     "Während die Pumpe läuft, ein nasses Tuch auf den Leckfühler legen oder den Schwimmer "
     "anheben; sehen, dass die Pumpe hält; dann `tested` melden und zurücksetzen. Für eine "
     "Selbstabschaltung `test_lease` verlangen"},
    {"pump_dry", "Die Pumpe arbeitet nicht",
     "Den Zulaufhahn öffnen. Vorfilter und Zulaufdruck prüfen, die Pumpe anhören"},
    {"records_unreadable", "Die Aufzeichnungen waren nicht lesbar",
     "Nach Wasser am Boden und nach dem Behälter sehen. Ist alles gut, den Alarm zurücksetzen und "
     "neu starten. Das Protokoll nennt die beschädigte Datei, die unter neuem Namen aufgehoben "
     "ist. Kommt es wieder, die Platte oder Speicherkarte ersetzen"},
    {"resin_breakthrough", "Das Reinwasser ist über null",
     "Die Harzkartuschen wechseln: die zweite rückt nach vorn, frisches Harz kommt ans Ende. "
     "Spülen, dann `rotated` melden. Weiß niemand, ob die Membran schuld ist, zuerst zwischen "
     "Membran und Harz messen"},
    {"resin_near_end", "Das Harz ist bald verbraucht",
     "Jetzt Mischbettharz bestellen. Ist es da, die Kartuschen wechseln: die zweite rückt nach "
     "vorn, frisches Harz kommt ans Ende; dann `rotated` melden"},
    {"room_hot", "Im Wasserraum ist es heiß",
     "Lüften, Leitungen und Behälter beschatten, nach einer Heizung sehen, die noch an ist"},
    {"short_cycling", "Die Pumpe startet zu oft",
     "Die Pumpe anhören, dann Druckschalter, Rückschlagventil und Schwimmerventil prüfen: eines "
     "davon leckt oder flattert"},
    {"signal_doubtful", "Einem Messwert ist nicht zu trauen",
     "Von Hand oder mit einem anderen Gerät messen, die Sonde reinigen und abgleichen; sie "
     "ersetzen, wenn es falsch bleibt"},
    {"stock_low", "Etwas muss bestellt werden",
     "Bestellen. Ist es gekommen, alles zählen und `stocked` melden"},
    {"store_failed", "Die Platte zeichnet nicht auf",
     "Platz auf der Platte schaffen oder sie ersetzen. Bis dahin den Dienst nicht neu starten"},
    {"unclean_start", "Nach Stromausfall oder Absturz gestartet",
     "Beim Vorbeigehen nach dem Raum sehen: Boden trocken, Behälter, Stecker"},
    {"vat_cleaning_due", "Der Behälter muss gereinigt werden",
     "Den Behälter leeren, auswischen, spülen, Schwimmer und Füllstandsmesser freimachen. Dann "
     "`cleaned` melden"},
    {"vat_high_high", "Der Behälter läuft gleich über",
     "Den Zulaufhahn von Hand schließen. Wasser entnehmen, bis der Schwimmer frei hängt. "
     "Herausfinden, warum das Füllen nicht endete, dann zurücksetzen"},
    {"vat_low", "Es ist nur noch wenig Reinwasser da",
     "Nachsehen, warum keines gemacht wird, und welches machen; Wasser für das Becken "
     "bereithalten"},
    {"water_aged", "Das Wasser im Behälter ist alt",
     "Das Wasser verbrauchen, oder den Behälter halb leeren und neu füllen lassen; künftig früher "
     "aufhören (`stop_at`)"},
    {"water_balance_off", "Die Wassermengen gehen nicht auf",
     "Geht Wasser weg: unter den Behälter, an seine Schläuche und nach der Nachfüllung des Beckens "
     "sehen. Kommt wenig oder keines: den Schwimmer von Hand bewegen, nach Zulaufhahn, Vorfilter "
     "und Druck sehen"},
};

}  // namespace

std::optional<Translated> in_german(std::string_view english) {
  std::string_view text = english;
  if (text.ends_with('.')) text.remove_suffix(1);
  for (const Row& row : rows) {
    const auto id = rules::rule_named(row.rule);
    if (!id) continue;
    const rules::Rule& rule = rules::rule(*id);
    if (text == rule.title) return Translated{{}, row.title};
    if (!text.ends_with(rule.record.action)) continue;
    text.remove_suffix(rule.record.action.size());
    if (text.ends_with(' ')) text.remove_suffix(1);
    return Translated{text, row.action};
  }
  return std::nullopt;
}

}  // namespace tidewright::panel
