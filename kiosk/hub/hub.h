// SPDX-License-Identifier: GPL-3.0-or-later
// The hub process: three threads that share nothing but values. io owns the sockets, ledger the store and the
// folded hall, planner the rotation under way. Bound to this machine alone until screens can be joined
// securely.
#pragma once

#include <functional>
#include <string>

#include "kiosk/hub/clock.h"
#include "kiosk/hub/ledger.h"

namespace floorwheel::hub {

struct HubOptions {
  std::string data;                       // folder of the database
  std::string listen = "127.0.0.1:7413";  // port 0: any free one
  double speed = 1.0;                     // factor of the class clock
  const Clock* clock = nullptr;           // null: the machine's
  LedgerSeams seams;                      // for fault tests
};

/// Runs until SIGINT or SIGTERM. Prints {"listening":"127.0.0.1:PORT"} as the first line of output once it
/// takes connections; errors go to stderr with what to do. Returns the exit code: 0, or 2 where it could not
/// start.
int run_hub(const HubOptions&);

}  // namespace floorwheel::hub
