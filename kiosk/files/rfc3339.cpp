// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/rfc3339.h"

namespace floorwheel::files {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Reads from the front of a text; after the first thing that is missing all fails.
class Reader {
 public:
  explicit Reader(std::string_view text) : left_(text) {}

  std::string_view take(std::size_t n) {
    if (left_.size() < n) good_ = false;
    if (!good_) return {};
    const std::string_view front = left_.substr(0, n);
    left_.remove_prefix(n);
    return front;
  }
  void one_of(std::string_view letters) {
    const std::string_view c = take(1);
    if (c.empty() || letters.find(c[0]) == std::string_view::npos) good_ = false;
  }
  /// Two digits from 0 to `most`.
  int two(int most) {
    const std::string_view d = take(2);
    if (d.size() != 2 || !is_digit(d[0]) || !is_digit(d[1])) good_ = false;
    if (!good_) return 0;
    const int n = (d[0] - '0') * 10 + (d[1] - '0');
    if (n > most) good_ = false;
    return n;
  }
  /// ".25" as microseconds; 0 where no point stands there.
  std::int64_t fraction_us() {
    if (!starts_with('.')) return 0;
    take(1);
    std::int64_t us = 0;
    int places = 0;
    while (!left_.empty() && is_digit(left_[0])) {
      if (places < 6) us = us * 10 + (left_[0] - '0');
      ++places;
      take(1);
    }
    if (places == 0) good_ = false;
    for (; places < 6; ++places) us *= 10;
    return us;
  }
  [[nodiscard]] bool starts_with(char c) const { return !left_.empty() && left_[0] == c; }
  [[nodiscard]] bool done() const { return good_ && left_.empty(); }

 private:
  std::string_view left_;
  bool good_ = true;
};

}  // namespace

std::optional<Moment> moment_from(std::string_view text) {
  Reader in(text);
  const auto day = training::day_from(in.take(10));
  if (!day) return std::nullopt;
  in.one_of("Tt ");
  std::int64_t s = std::int64_t{3600} * in.two(23);
  in.one_of(":");
  s += std::int64_t{60} * in.two(59);
  in.one_of(":");
  s += in.two(60);
  const std::int64_t us = in.fraction_us();
  std::int64_t offset_s = 0;
  if (in.starts_with('Z') || in.starts_with('z')) {
    in.take(1);
  } else {
    const bool behind = in.starts_with('-');
    in.one_of("+-");
    offset_s = std::int64_t{3600} * in.two(23);
    in.one_of(":");
    offset_s += std::int64_t{60} * in.two(59);
    if (behind) offset_s = -offset_s;
  }
  if (!in.done()) return std::nullopt;
  return Moment{*day, (std::int64_t{day->number} * 86'400 + s - offset_s) * 1'000'000 + us};
}

}  // namespace floorwheel::files
