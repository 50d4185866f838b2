// SPDX-License-Identifier: GPL-3.0-or-later
// Commands about sets done. A record is appended and never changed; a correction is a new record. Records are
// taken after the end of a class too: somebody may remember late.
#include <array>

#include "kiosk/hub/command.h"
#include "kiosk/store/records.h"

namespace floorwheel::hub {
namespace json = boost::json;
using wire::ClassView;
namespace {

constexpr int heaviest_hg = 100'000;
constexpr int most_reps = 10'000;  // seconds where a position is held
constexpr int most_rir = 20;

const ClassView& any_class(const Room& room, const std::string& id) {
  const auto found = room.hall.classes.find(id);
  if (found == room.hall.classes.end())
    refuse("not_found", "There is no class " + id + ".", "Ask 'classes' for those there are.");
  return found->second;
}

void read_set(const Fields& f, wire::SetRecord& r) {
  r.done = f.flag("done");
  r.load_hg = f.maybe_whole("load_hg", 0, heaviest_hg);
  r.reps = f.maybe_whole("reps", 0, most_reps).value_or(0);
  r.rir = f.maybe_whole("rir", 0, most_rir);
}

Change row(const Room& room, store::KeptRecord record, const json::object& more) {
  Change c;
  c.class_id = record.class_id;
  c.body = wire::json_of(record.set);
  wire::merge(c.body, more);
  c.receipt = {{"record", record.set.id}};
  c.write = [record = std::move(record), now = room.now](store::Database& db, std::int64_t seq) {
    store::add_record(db, record, seq, now);
  };
  return c;
}

Outcome record_add(Room& room, const Fields& f) {
  const ClassView& c = any_class(room, store::text_of(f.uuid("class")));
  const wire::StationView& station = station_of(c, f);
  wire::SetRecord r;
  r.id = store::text_of(room.command);
  r.member = f.text("member");
  const wire::MemberView* m = wire::find_member(c, r.member);
  if (!m) refuse("not_found", "'" + r.member + "' is not in this class.", "Check in first.");
  if (c.sheet.version == 0)
    refuse("refused", "This class has no run sheet yet.", "Records belong to a slot of a run sheet.");
  r.station = station.id;
  r.slot = f.whole("slot", 1, std::max(c.sheet.timing.slots, 1));
  const auto substitute = m->exercises.find(station.id);
  r.exercise =
      f.text_or("exercise", substitute == m->exercises.end() ? station.exercise : substitute->second);
  read_set(f, r);
  return row(room, {.id = room.command, .class_id = id_of_class(c), .set = r, .corrects = {}},
             {{"class", c.id}});
}

Outcome record_correct(Room& room, const Fields& f) {
  const store::Uuid earlier = f.uuid("record");
  const auto kept = store::find_record(room.database, earlier);
  if (!kept)
    refuse("not_found", "There is no record " + store::text_of(earlier) + ".",
           "Name a record of the journal.");
  if (store::is_corrected(room.database, earlier))
    refuse("stale", "This record has been corrected already.", "Correct the record that took its place.");
  store::KeptRecord next = *kept;
  next.id = room.command;
  next.set.id = store::text_of(room.command);
  next.corrects = earlier;
  read_set(f, next.set);
  const std::string class_id = store::text_of(next.class_id);
  return row(room, std::move(next), {{"class", class_id}, {"corrects", store::text_of(earlier)}});
}

constexpr std::array table{
    NamedCommand{"record.add", record_add},
    NamedCommand{"record.correct", record_correct},
};

}  // namespace

std::span<const NamedCommand> record_commands() { return table; }

}  // namespace floorwheel::hub
