#include "daemon/commands/list.hpp"

#include <sysexits.h>

#include <CLI/CLI.hpp>
#include <iostream>
#include <memory>

#include "daemon/commands/alarm_record.hpp"
#include "daemon/commands/listing.hpp"
#include "daemon/commands/schema.hpp"

namespace tidewright::commands {
namespace {

struct Row {
  const char* name;
  Listing (*make)();
};
constexpr Row lists[] = {{"alarms", list_alarms},
                         {"interlocks", list_interlocks},
                         {"keys", list_keys},
                         {"quantities", list_quantities},
                         {"topics", list_topics}};

std::string in_form(const Listing& listing, Form form) {
  switch (form) {
    case Form::text:
      return as_text(listing);
    case Form::json:
      return as_json(listing);
    case Form::markdown:
      return as_markdown(listing);
  }
  return "";
}

}  // namespace

int list(const std::string& what, Form form, std::ostream& out, std::ostream& err) {
  if (what == "alarms" && form == Form::markdown) {
    out << alarms_document();
    return EX_OK;
  }
  if (what == "schema") {
    out << household_schema();
    return EX_OK;
  }
  for (const Row& row : lists) {
    if (what != row.name) continue;
    out << in_form(row.make(), form);
    return EX_OK;
  }
  err << "There is no list `" << what
      << "`. There are: alarms interlocks keys quantities schema "
         "topics\n";
  return EX_USAGE;
}

std::function<int()> prepare_list(CLI::App& app) {
  struct Options {
    std::string what;
    bool json = false;
    bool markdown = false;
  };
  const auto options = std::make_shared<Options>();
  app.add_option("WHAT", options->what,
                 "alarms, interlocks, keys, quantities, topics; or schema, for editors")
      ->required();
  auto* json = app.add_flag("--json", options->json, "for programs");
  app.add_flag("--markdown", options->markdown, "for the docs")->excludes(json);
  return [options] {
    const Form form = options->json ? Form::json : options->markdown ? Form::markdown : Form::text;
    return list(options->what, form, std::cout, std::cerr);
  };
}

}  // namespace tidewright::commands
