// SPDX-License-Identifier: GPL-3.0-or-later
// Certificates on the command line: written by plan, held against a class and a rotation by audit.
#pragma once

#include <string>
#include <vector>

#include "kiosk/files/rotation_file.h"
#include "scheduler/rotation/certificate.h"

namespace floorwheel::cli {

/// Written beside itself and renamed; throws std::runtime_error where it cannot be written.
void write_certificate(const std::string& path, const ClassSpec&, const Certificate&);

/// What a certificate says of a rotation.
struct CertificateAudit {
  Certificate certificate;
  CertificateVerdict verdict;
  std::vector<std::string> wrong;  // what it or the rotation says of the other, whole sentences
  int proven = 0;                  // leading components that the check has recomputed
  int supported = 0;               // the same with those that it could not recheck
  [[nodiscard]] bool holds() const { return verdict.holds() && wrong.empty(); }
};
/// `cost`: the rotation's, recomputed. Throws files::FileError for what is no certificate.
CertificateAudit audit_certificate(const std::string& path, const ClassSpec&, const files::RotationFile&,
                                   const Cost& cost);
std::string text_of(const CertificateAudit&);
std::string json_of(const CertificateAudit&);

}  // namespace floorwheel::cli
