#include "tests/support/garbage.hpp"

namespace tidewright::support {

using intake::Refused;
using namespace std::string_literals;

namespace {

const std::string nine_deep = R"({"t":20,"x":[[[[[[[[1]]]]]]]]})";

const std::vector<Garbage> table{
    {Listens::for_a_number, "", Refused::empty},
    {Listens::for_a_number, " \r\n", Refused::empty},
    {Listens::for_a_number, "NaN", Refused::not_finite},
    {Listens::for_a_number, "-nan", Refused::not_finite},
    {Listens::for_a_number, "Infinity", Refused::not_finite},
    {Listens::for_a_number, "-inf", Refused::not_finite},
    {Listens::for_a_number, "1e999", Refused::not_finite},
    {Listens::for_a_number, "0x1F", Refused::hexadecimal},
    {Listens::for_a_number, "-0X10", Refused::hexadecimal},
    {Listens::for_a_number, "1,5", Refused::decimal_comma},
    {Listens::for_a_number, "1,234,567", Refused::decimal_comma},
    {Listens::for_a_number, "true", Refused::boolean_for_number},
    {Listens::for_a_number, "False", Refused::boolean_for_number},
    {Listens::for_a_number, "null", Refused::null},
    {Listens::for_a_number, "unavailable", Refused::says_unknown},
    {Listens::for_a_number, "unknown", Refused::says_unknown},
    {Listens::for_a_number, "None", Refused::says_unknown},
    {Listens::for_a_number, "-127", Refused::failure_value},
    {Listens::for_a_number, "-127.00", Refused::failure_value},
    {Listens::for_a_number, "21.5 C", Refused::not_a_number},
    {Listens::for_a_number, "2 1", Refused::not_a_number},
    {Listens::for_a_number, "--3", Refused::not_a_number},
    {Listens::for_a_number, "+-3", Refused::not_a_number},
    {Listens::for_a_number, ".", Refused::not_a_number},
    {Listens::for_a_number, "1.2.3", Refused::not_a_number},
    {Listens::for_a_number, "1e", Refused::not_a_number},
    {Listens::for_a_number, R"({"t":20})", Refused::not_a_number},
    {Listens::for_a_number, "20\0"s, Refused::not_a_number},
    {Listens::for_a_number, "\xff\xfe\x32\x30"s, Refused::not_utf8},
    {Listens::for_a_number, "\xc0\xb2"s, Refused::not_utf8},
    {Listens::for_a_number, "\xed\xa0\x80"s, Refused::not_utf8},
    {Listens::for_a_number, "2\xe2\x82"s, Refused::not_utf8},
    {Listens::for_a_number, std::string(64 * 1024 + 1, '1'), Refused::too_long},

    {Listens::for_a_word, "", Refused::empty},
    {Listens::for_a_word, "WET?", Refused::unknown_word},
    {Listens::for_a_word, "dryish", Refused::unknown_word},
    {Listens::for_a_word, "wet dry", Refused::unknown_word},
    {Listens::for_a_word, "2", Refused::unknown_word},
    {Listens::for_a_word, "unavailable", Refused::says_unknown},
    {Listens::for_a_word, "null", Refused::null},
    {Listens::for_a_word, "dry\xff"s, Refused::not_utf8},

    {Listens::for_json, "20", Refused::nothing_there},
    {Listens::for_json, "{}", Refused::nothing_there},
    {Listens::for_json, R"({"T":20})", Refused::nothing_there},
    {Listens::for_json, R"([{"t":20}])", Refused::nothing_there},
    {Listens::for_json, R"({"t":null})", Refused::null},
    {Listens::for_json, R"({"t":true})", Refused::boolean_for_number},
    {Listens::for_json, R"({"t":[20]})", Refused::not_a_single_value},
    {Listens::for_json, R"({"t":{}})", Refused::not_a_single_value},
    {Listens::for_json, R"({"t":20,"t":21})", Refused::duplicate_key},
    {Listens::for_json, R"({"t":20,"a":{"b":1,"b":1}})", Refused::duplicate_key},
    {Listens::for_json, R"({"t":20,"\u0074":21})", Refused::duplicate_key},
    {Listens::for_json, nine_deep, Refused::too_deep},
    {Listens::for_json, std::string(60'000, '['), Refused::too_deep},
    {Listens::for_json, R"({"t":20)", Refused::not_json},
    {Listens::for_json, R"({"t":20}})", Refused::not_json},
    {Listens::for_json, R"({"t":20} {"t":21})", Refused::not_json},
    {Listens::for_json, "{'t':20}", Refused::not_json},
    {Listens::for_json, R"({"t":NaN})", Refused::not_json},
    {Listens::for_json, R"({"t":0x14})", Refused::not_json},
    {Listens::for_json, R"({"t":020})", Refused::not_json},
    {Listens::for_json, R"({"t":1e999})", Refused::not_finite},
    {Listens::for_json, R"({"t":"1,5"})", Refused::decimal_comma},
    {Listens::for_json, R"({"t":"unavailable"})", Refused::says_unknown},
    {Listens::for_json, R"({"t":""})", Refused::empty},
    {Listens::for_json, R"({"t":-127})", Refused::failure_value},
    {Listens::for_json, R"({"t":"\ud800"})", Refused::not_json},
    {Listens::for_json, "{\"t\":\"\x01\"}", Refused::not_json},

    {Listens::for_json_word, R"({"leak":null})", Refused::null},
    {Listens::for_json_word, R"({"leak":1})", Refused::unknown_word},
    {Listens::for_json_word, R"({"leak":"maybe"})", Refused::unknown_word},
    {Listens::for_json_word, R"({"battery":90})", Refused::nothing_there},
    {Listens::for_json_word, R"({"leak":["wet"]})", Refused::not_a_single_value},

    {Listens::for_senml, "", Refused::empty},
    {Listens::for_senml, "0", Refused::not_senml},
    {Listens::for_senml, "{}", Refused::not_senml},
    {Listens::for_senml, R"({"n":"tds","v":0})", Refused::not_senml},
    {Listens::for_senml, "[0]", Refused::not_senml},
    {Listens::for_senml, R"([{"n":"tds","v":"0"}])", Refused::not_senml},
    {Listens::for_senml, R"([{"n":"tds","v":0,"vb":false}])", Refused::not_senml},
    {Listens::for_senml, R"([{"v":0}])", Refused::not_senml},
    {Listens::for_senml, R"([{"n":"the meter","v":0}])", Refused::not_senml},
    {Listens::for_senml, "[]", Refused::nothing_there},
    {Listens::for_senml, R"([{"n":"tds","vd":"aGkgCg"}])", Refused::nothing_there},
    {Listens::for_senml, R"([{"n":"tds","v":null}])", Refused::null},
    {Listens::for_senml, R"([{"n":"tds","vb":false}])", Refused::boolean_for_number},
    {Listens::for_senml, R"([{"n":"tds","vs":"unavailable"}])", Refused::says_unknown},
    {Listens::for_senml, R"([{"n":"tds","u":"ppm","vs":"0"}])", Refused::not_a_number},
    {Listens::for_senml, R"([{"n":"tds","u":"S/m","v":0}])", Refused::wrong_unit},
    {Listens::for_senml, R"([{"n":"tds","bver":11,"v":0}])", Refused::senml_version},
    {Listens::for_senml, R"([{"n":"tds","unheard_":0,"v":0}])", Refused::must_be_understood},
    {Listens::for_senml, R"([{"n":"tds","v":0},{"n":"ph","v":7}])", Refused::several_names},
    {Listens::for_senml, R"([{"n":"tds","v":0,"v":0}])", Refused::duplicate_key},
    {Listens::for_senml, R"([{"n":"tds","v":1e999}])", Refused::not_finite},
    {Listens::for_senml, R"([{"n":"tds","x":[[[[[[[0]]]]]]]}])", Refused::too_deep},
    {Listens::for_senml, R"([{"n":"tds","v":0})", Refused::not_json},
};

}  // namespace

const std::vector<Garbage>& garbage() { return table; }

}  // namespace tidewright::support
