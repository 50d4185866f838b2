// SPDX-License-Identifier: GPL-3.0-or-later
// The JSON body that tell and ask take from the command line.
#pragma once

#include <string>

#include "kiosk/cli/args.h"

namespace floorwheel::cli {

/// The second operand as a JSON object: written out, `-` for standard input, or `@FILE`. A file that is no
/// JSON is sent as the field "toml" where `fields` has one. Nothing given: {}. Throws UsageError.
std::string body_of(const Args&, std::string_view fields);

}  // namespace floorwheel::cli
