// SPDX-License-Identifier: GPL-3.0-or-later
// The hub's clocks as this screen knows them. The hub's boot clock is this machine's plus an offset; the
// offset is taken from the probe with the shortest way there and back among the last eight, since delay can
// only make a probe worse. Pure: readings come in as arguments. Milliseconds everywhere.
#pragma once

#include <array>
#include <cstdint>

#include "kiosk/wire/message.h"

namespace floorwheel::screens {

class LinkClock {
 public:
  static constexpr int probes_kept = 8;

  /// A (new) hub says its clocks. Until probes come back the offset is rough by one way's delay; a known
  /// offset is kept if the hub's word agrees with it to a second, so that a reconnection moves nothing.
  void welcome(const wire::Welcome&, std::int64_t mono_ms);
  /// A probe came back.
  void probe_back(std::int64_t sent_ms, std::int64_t hub_boot_ms, std::int64_t mono_ms);

  [[nodiscard]] bool known() const { return known_; }
  [[nodiscard]] double speed() const { return speed_; }
  [[nodiscard]] int utc_offset_s() const { return utc_offset_s_; }
  [[nodiscard]] std::int64_t offset_ms() const { return offset_ms_; }
  /// The class clock: the hub's boot clock times the speed; 0 before the first welcome.
  [[nodiscard]] std::int64_t class_ms(std::int64_t mono_ms) const;
  /// Unix time of the hub, running as fast as the class clock.
  [[nodiscard]] std::int64_t civil_ms(std::int64_t mono_ms) const;

 private:
  struct Sample {
    std::int64_t delay_ms = 0;
    std::int64_t offset_ms = 0;
  };
  std::array<Sample, probes_kept> samples_{};
  int count_ = 0;  // of samples ever taken since the last welcome
  bool known_ = false;
  double speed_ = 1.0;
  int utc_offset_s_ = 0;
  std::int64_t offset_ms_ = 0;
  std::int64_t civil_at_ms_ = 0;  // class clock when the hub's Unix time was civil_ms_
  std::int64_t civil_ms_ = 0;
};

/// This machine's clock since boot, counting time asleep (CLOCK_BOOTTIME).
std::int64_t mono_now_ms();

}  // namespace floorwheel::screens
