// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/hub/clock.h"

#include <cmath>
#include <ctime>
#include <fstream>

namespace floorwheel::hub {
namespace {

std::int64_t read_ms(clockid_t id) {
  timespec t{};
  clock_gettime(id, &t);
  return std::int64_t{1000} * t.tv_sec + t.tv_nsec / 1'000'000;
}

std::int64_t scaled(std::int64_t ms, double speed) {
  return speed == 1.0 ? ms : std::llround(static_cast<double>(ms) * speed);
}

}  // namespace

std::string SystemClock::boot_id() const {
  std::ifstream in("/proc/sys/kernel/random/boot_id");
  std::string id;
  std::getline(in, id);
  return id;
}

std::int64_t SystemClock::boot_ms() const { return read_ms(CLOCK_BOOTTIME); }
std::int64_t SystemClock::civil_ms() const { return read_ms(CLOCK_REALTIME); }

int SystemClock::utc_offset_s(std::int64_t civil_ms) const {
  const auto seconds = static_cast<std::time_t>(civil_ms / 1000);
  std::tm local{};
  localtime_r(&seconds, &local);
  return static_cast<int>(local.tm_gmtoff);
}

HubClock::HubClock(const Clock& clock, double speed)
    : clock_(clock),
      speed_(speed),
      boot_at_start_ms_(clock.boot_ms()),
      civil_at_start_ms_(clock.civil_ms()) {}

std::int64_t HubClock::class_ms() const { return scaled(clock_.boot_ms(), speed_); }

std::int64_t HubClock::civil_ms() const {
  if (speed_ == 1.0) return clock_.civil_ms();
  return civil_at_start_ms_ + scaled(clock_.boot_ms() - boot_at_start_ms_, speed_);
}

}  // namespace floorwheel::hub
