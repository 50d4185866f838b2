// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/screens/link_clock.h"

#include <time.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace floorwheel::screens {

namespace {
std::int64_t sped(std::int64_t ms, double speed) {
  return speed == 1.0 ? ms : static_cast<std::int64_t>(std::llround(static_cast<double>(ms) * speed));
}
}  // namespace

void LinkClock::welcome(const wire::Welcome& hub, std::int64_t mono_ms) {
  const std::int64_t rough = hub.hub_boot_ms - mono_ms;
  if (!known_ || std::llabs(rough - offset_ms_) > 1000) offset_ms_ = rough;
  known_ = true;
  count_ = 0;
  speed_ = hub.speed;
  utc_offset_s_ = hub.utc_offset_s;
  civil_ms_ = hub.civil_ms;
  civil_at_ms_ = sped(hub.hub_boot_ms, speed_);
}

void LinkClock::probe_back(std::int64_t sent_ms, std::int64_t hub_boot_ms, std::int64_t mono_ms) {
  const std::int64_t delay = mono_ms - sent_ms;
  if (delay < 0) return;  // not ours
  samples_[static_cast<std::size_t>(count_ % probes_kept)] = {delay, hub_boot_ms - (sent_ms + delay / 2)};
  ++count_;
  const auto end = samples_.begin() + std::min(count_, probes_kept);
  offset_ms_ = std::min_element(samples_.begin(), end, [](const Sample& a, const Sample& b) {
                 return a.delay_ms < b.delay_ms;
               })->offset_ms;
}

std::int64_t LinkClock::class_ms(std::int64_t mono_ms) const {
  return known_ ? sped(mono_ms + offset_ms_, speed_) : 0;
}

std::int64_t LinkClock::civil_ms(std::int64_t mono_ms) const {
  return known_ ? civil_ms_ + class_ms(mono_ms) - civil_at_ms_ : 0;
}

std::int64_t mono_now_ms() {
  timespec now{};
  clock_gettime(CLOCK_BOOTTIME, &now);
  return std::int64_t{now.tv_sec} * 1000 + now.tv_nsec / 1'000'000;
}

}  // namespace floorwheel::screens
