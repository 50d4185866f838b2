// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/class_spec.h"

#include <algorithm>
#include <set>
#include <string_view>

namespace floorwheel {
namespace {

constexpr std::string_view capitals = "ABCDEFGHJKLMNPRSTUVXYZ";  // without I, O, Q and W

/// The i-th name a station can get: a capital, then a figure, then two capitals, three, ...
std::string letter_at(std::size_t i) {
  if (i < capitals.size()) return std::string(1, capitals[i]);
  i -= capitals.size();
  if (i < 8) return std::string(1, static_cast<char>('2' + i));
  i -= 8;
  std::string out;
  std::size_t width = 2;
  std::size_t span = capitals.size() * capitals.size();
  for (; i >= span; i -= span, span *= capitals.size()) ++width;
  for (std::size_t k = 0; k < width; ++k, i /= capitals.size())
    out.insert(out.begin(), capitals[i % capitals.size()]);
  return out;
}

bool is_wall_letter(const std::string& id) {
  return id.size() == 1 && capitals.find(id[0]) != std::string_view::npos;
}

}  // namespace

int class_seconds(const ClassSpec& c, int slots) {
  int total = c.show_s + c.warm_up_s + c.lead_in_s + slots * (c.work_s + c.change_s) + c.cool_down_s;
  for (const BreakSpec& b : c.breaks)
    if (b.after_slot < slots) total += b.seconds;
  return total;
}

void add_guests(ClassSpec& c, int count) {
  std::set<std::string> taken;
  for (const MemberSpec& m : c.members) taken.insert(m.id);
  for (int n = 1; count > 0; ++n) {
    std::string id = "G" + std::to_string(n);
    if (taken.contains(id)) continue;
    MemberSpec guest;
    guest.id = id;
    guest.shown_as = id;
    guest.guest = true;
    c.members.push_back(guest);
    --count;
  }
}

std::vector<std::string> wall_letters(const ClassSpec& c) {
  std::set<std::string> taken;
  for (const StationSpec& s : c.stations)
    if (is_wall_letter(s.id)) taken.insert(s.id);
  std::vector<std::string> letters;
  std::size_t next = 0;
  for (const StationSpec& s : c.stations) {
    if (is_wall_letter(s.id)) {
      letters.push_back(s.id);
      continue;
    }
    while (taken.contains(letter_at(next))) ++next;
    letters.push_back(letter_at(next++));
  }
  return letters;
}

}  // namespace floorwheel
