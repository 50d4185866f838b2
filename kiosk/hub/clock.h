// SPDX-License-Identifier: GPL-3.0-or-later
// The clocks of a hub: the machine's boot-time clock, which no change of the civil time moves and which goes
// on in suspend, its boot id, and civil time. An interface, so that a test can restart the machine.
#pragma once

#include <cstdint>
#include <string>

namespace floorwheel::hub {

/// Safe to read from any thread.
class Clock {
 public:
  virtual ~Clock() = default;
  [[nodiscard]] virtual std::string boot_id() const = 0;
  [[nodiscard]] virtual std::int64_t boot_ms() const = 0;
  [[nodiscard]] virtual std::int64_t civil_ms() const = 0;                  // Unix time
  [[nodiscard]] virtual int utc_offset_s(std::int64_t civil_ms) const = 0;  // of local time then
};

/// CLOCK_BOOTTIME, /proc's boot id, and the system's civil time and zone.
class SystemClock : public Clock {
 public:
  [[nodiscard]] std::string boot_id() const override;
  [[nodiscard]] std::int64_t boot_ms() const override;
  [[nodiscard]] std::int64_t civil_ms() const override;
  [[nodiscard]] int utc_offset_s(std::int64_t civil_ms) const override;
};

/// The class clock: boot time times a factor known to all. With a factor other than 1 civil time runs by it
/// too, from the hub's start on, so that a class played fast has plausible times of day.
class HubClock {
 public:
  HubClock(const Clock& clock, double speed);
  [[nodiscard]] const Clock& machine() const { return clock_; }
  [[nodiscard]] double speed() const { return speed_; }
  [[nodiscard]] std::int64_t class_ms() const;
  [[nodiscard]] std::int64_t civil_ms() const;
  [[nodiscard]] int utc_offset_s() const { return clock_.utc_offset_s(civil_ms()); }

 private:
  const Clock& clock_;
  double speed_;
  std::int64_t boot_at_start_ms_;
  std::int64_t civil_at_start_ms_;
};

}  // namespace floorwheel::hub
