// SPDX-License-Identifier: GPL-3.0-or-later
// Certificates as JSON (scheduler/rotation/certificate.h says what they claim). Stations, members and
// equipment by their ids, slots from 1, prices one for each slot.
#pragma once

#include <string>
#include <string_view>

#include "kiosk/files/file_error.h"
#include "scheduler/rotation/certificate.h"

namespace floorwheel::files {

std::string to_json(const ClassSpec&, const Certificate&);

/// What is no certificate is a FileError. One whose hash is not the class's comes back without claims, since
/// its ids need not be the class's: its check says that it is of another class.
OrFileError<Certificate> parse_certificate(std::string_view json, const std::string& file, const ClassSpec&);

}  // namespace floorwheel::files
