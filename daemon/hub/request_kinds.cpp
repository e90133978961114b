#include "daemon/hub/request_kinds.hpp"

namespace tidewright::hub {
namespace {

const std::vector<RequestKind> asks{
    {"acknowledge", AskKind::acknowledge, {"alarm"}, {"occurrence"}},
    {"shelve", AskKind::shelve, {"alarm", "minutes"}, {"why"}},
    {"unshelve", AskKind::unshelve, {"alarm"}, {}},
    {"reset", AskKind::reset, {"alarm"}, {}},
    {"confirm", AskKind::confirm, {"alarm", "token"}, {}},
    {"start", AskKind::start, {}, {"what", "minutes"}},
    {"stop", AskKind::stop, {}, {"what", "minutes"}},
    {"test", AskKind::test, {}, {}},
    {"bypass", AskKind::bypass, {"cause", "why"}, {"minutes"}},
    {"confirm_bypass", AskKind::confirm_bypass, {"cause", "token"}, {}},
    {"end_bypass", AskKind::end_bypass, {"cause"}, {}},
    {"test_lease", AskKind::test_lease, {"actuator"}, {}},
};

const std::vector<RequestKind> tells{
    {"measured", TellKind::measured, {"instrument", "value"}, {"unit"}},
    {"rotated", TellKind::rotated, {}, {}},
    {"replaced", TellKind::replaced, {}, {}},
    {"tested", TellKind::tested, {"instrument"}, {}},
    {"cleaned", TellKind::cleaned, {}, {}},
    {"stocked", TellKind::stocked, {"supply", "value"}, {}},
};

}  // namespace

std::span<const RequestKind> request_kinds(Verb verb) { return verb == Verb::ask ? asks : tells; }

std::string_view verb_name(Verb verb) { return verb == Verb::ask ? "ask" : "tell"; }

}  // namespace tidewright::hub
