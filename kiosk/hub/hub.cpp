// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/hub/hub.h"

#include <spdlog/sinks/stdout_sinks.h>
#include <spdlog/spdlog.h>

#include <cmath>
#include <cstdio>
#include <memory>

#include "kiosk/hub/server.h"

namespace floorwheel::hub {
namespace {

constexpr int cannot_start = 2;

int complain(const std::string& what, const std::string& right) {
  std::fprintf(stderr, "floorwheel hub: %s %s\n", what.c_str(), right.c_str());
  return cannot_start;
}

}  // namespace

int run_hub(const HubOptions& options) {
  // The first line of output is for programs: the log goes to stderr.
  if (!spdlog::get("hub")) spdlog::set_default_logger(spdlog::stderr_logger_mt("hub"));
  if (!std::isfinite(options.speed) || options.speed <= 0 || options.speed > 10'000)
    return complain("The speed of the class clock is not a factor.", "Give one above 0 and up to 10000.");
  auto opened = store::Store::open(options.data);
  if (const auto* error = std::get_if<store::StoreError>(&opened)) return complain(error->what, error->right);

  const SystemClock system;
  const HubClock clock(options.clock ? *options.clock : system, options.speed);
  Server server(clock);
  if (const auto error = server.listen(options.listen)) return complain(error->what, error->right);
  try {
    Ledger ledger(std::get<std::unique_ptr<store::Store>>(std::move(opened)), clock, server, options.seams);
    ledger.start();
    std::printf("{\"listening\":\"127.0.0.1:%u\"}\n", static_cast<unsigned>(server.port()));
    std::fflush(stdout);
    server.run(ledger);
  } catch (const store::SqlError& e) {
    return complain(std::string("The database cannot be read: ") + e.what() + ".", "Restore a backup.");
  }
  return 0;
}

}  // namespace floorwheel::hub
