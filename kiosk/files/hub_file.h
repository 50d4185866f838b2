// SPDX-License-Identifier: GPL-3.0-or-later
// The hub file (TOML): what `floorwheel hub` may be told in a file in place of options.
//   [hub]
//   data = "/srv/floorwheel"       # folder of the data; a relative one counts from where the hub is started
//   listen = "127.0.0.1:7413"      # this machine only; port 0 for any free one
//   speed = 1                      # factor of the class clock, above 0
// All keys may be left out.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "kiosk/files/file_error.h"

namespace floorwheel::files {

struct HubFile {
  std::optional<std::string> data;
  std::optional<std::string> listen;
  std::optional<double> speed;
};

OrFileError<HubFile> parse_hub_file(std::string_view toml, const std::string& file);
OrFileError<HubFile> read_hub_file(const std::string& path);

}  // namespace floorwheel::files
