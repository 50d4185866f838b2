// SPDX-License-Identifier: GPL-3.0-or-later
// `floorwheel tell` and `floorwheel ask`: one command to the hub, one question. Everything a screen can do
// can be done here.
#include <boost/json.hpp>
#include <cstdio>

#include "kiosk/cli/command.h"
#include "kiosk/cli/hub_client.h"
#include "kiosk/cli/message_body.h"
#include "kiosk/cli/text.h"
#include "kiosk/files/nearest.h"
#include "kiosk/store/uuid.h"
#include "kiosk/wire/kinds.h"

namespace floorwheel::cli {
namespace {

constexpr Option list_option{"--list", "", "prints every kind with its fields; ? marks what may be left out"};

template <class Kinds>
std::string list_of(const Kinds& kinds) {
  std::string out;
  for (const auto& k : kinds) {
    out += std::string(k.kind) + "\n    " + std::string(k.what) + "\n";
    if (!k.fields.empty()) out += "    fields: " + std::string(k.fields) + "\n";
  }
  return out;
}

template <class Kinds>
const auto& kind_of(const Args& args, const Kinds& kinds) {
  const auto given = args.operand(0);
  if (!given) throw UsageError{"KIND is missing", "--list prints every kind"};
  std::vector<std::string> names;
  for (const auto& k : kinds) {
    if (k.kind == *given) return k;
    names.emplace_back(k.kind);
  }
  throw UsageError{"there is no kind " + *given, files::did_you_mean(*given, names)};
}

/// Prints why not on both outputs, for people and for programs. Not what it should be: 2; refused: 1.
int refused(const char* command, const wire::Trouble& t) {
  std::fprintf(stderr, "floorwheel %s: %s; %s\n", command, t.text.c_str(), t.hint.c_str());
  boost::json::error_code error;
  const boost::json::value details = boost::json::parse(t.body.empty() ? "{}" : t.body, error);
  print(boost::json::serialize(
            boost::json::object{{"code", t.code}, {"text", t.text}, {"hint", t.hint}, {"body", details}}) +
        "\n");
  const bool holds_not = t.code == "refused" || t.code == "stale";
  return holds_not ? exit_holds_not : exit_unreadable;
}

int run_tell(const Args& args) {
  if (args.has("--list")) {
    print(list_of(wire::command_kinds()));
    return exit_done;
  }
  const wire::CommandKind& kind = kind_of(args, wire::command_kinds());
  const std::string body = body_of(args, kind.fields);
  const std::string id = args.value("--id", store::text_of(store::make_uuid()));
  if (!store::uuid_from(id))
    throw UsageError{"--id is no UUID", "leave it out, or write 32 hexadecimal figures"};
  HubClient hub(args.value("--hub", default_hub));
  const auto result = hub.tell(id, std::string(kind.kind), body);
  if (const auto* trouble = std::get_if<wire::Trouble>(&result)) return refused("tell", *trouble);
  const auto& receipt = std::get<wire::Receipt>(result);
  print(R"({"id":")" + receipt.id + R"(","seq":)" + std::to_string(receipt.seq) +
        ",\"body\":" + (receipt.body.empty() ? "{}" : receipt.body) + "}\n");
  return exit_done;
}

int run_ask(const Args& args) {
  if (args.has("--list")) {
    print(list_of(wire::question_kinds()));
    return exit_done;
  }
  const wire::QuestionKind& kind = kind_of(args, wire::question_kinds());
  const std::string body = body_of(args, kind.fields);
  HubClient hub(args.value("--hub", default_hub));
  const auto result = hub.ask(std::string(kind.kind), body);
  if (const auto* trouble = std::get_if<wire::Trouble>(&result)) return refused("ask", *trouble);
  print(std::get<wire::Answer>(result).body + "\n");
  return exit_done;
}

}  // namespace

Command tell_command() {
  return {
      {"tell",
       "Sends one command to the hub and prints the receipt; JSON may be - (standard input) or @FILE.",
       {"[KIND]", "[JSON]"},
       {hub_option,
        list_option,
        {"--id", "UUID", "the command's own id: the same one again changes nothing and is answered alike"}},
       {"floorwheel tell class.add @hall.class.toml",
        "floorwheel tell check_in '{\"class\": \"...\", \"member\": \"m01\"}'", "floorwheel tell --list"}},
      run_tell};
}

Command ask_command() {
  return {{"ask",
           "Asks the hub one question and prints the answer as JSON.",
           {"[KIND]", "[JSON]"},
           {hub_option, list_option},
           {"floorwheel ask classes", "floorwheel ask attendance '{\"from\": \"2026-03-01\"}'",
            "floorwheel ask --list"}},
          run_ask};
}

}  // namespace floorwheel::cli
