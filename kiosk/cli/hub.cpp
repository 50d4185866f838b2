// SPDX-License-Identifier: GPL-3.0-or-later
// `floorwheel hub`: runs the hub until Ctrl-C. An option wins over the hub file.
#include "kiosk/hub/hub.h"

#include "kiosk/cli/class_input.h"
#include "kiosk/cli/command.h"
#include "kiosk/cli/folders.h"
#include "kiosk/files/hub_file.h"

namespace floorwheel::cli {
namespace {

int run(const Args& args) {
  files::HubFile file;
  if (args.has("--config")) file = value_or_throw(files::read_hub_file(args.value("--config")));
  hub::HubOptions options;
  options.data = args.has("--data") ? args.value("--data") : file.data.value_or("");
  if (options.data.empty()) options.data = default_data_folder();
  options.listen = args.value("--listen", file.listen.value_or(options.listen));
  options.speed = args.positive("--speed").value_or(file.speed.value_or(options.speed));
  return hub::run_hub(options);
}

}  // namespace

Command hub_command() {
  return {{"hub",
           "Runs the hub: it keeps the data and the class clock, and the screens ask it.",
           {},
           {{"--data", "DIR", "the folder of the data (default $XDG_DATA_HOME/floorwheel)"},
            {"--listen", "ADDRESS:PORT", "127.0.0.1 and a port, 0 for any free one (default 127.0.0.1:7413)"},
            {"--speed", "F", "factor of the class clock, for a class played fast (default 1)"},
            {"--config", "FILE", "a hub file (TOML) with [hub] and the keys data, listen, speed"}},
           {"floorwheel hub", "floorwheel hub --data /srv/floorwheel --listen 127.0.0.1:0"}},
          run};
}

}  // namespace floorwheel::cli
