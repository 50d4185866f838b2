// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace floorwheel::cli {

/// Whether a hub could listen on this port of 127.0.0.1 now.
bool is_free(int port);

}  // namespace floorwheel::cli
