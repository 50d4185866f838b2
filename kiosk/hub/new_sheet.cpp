// SPDX-License-Identifier: GPL-3.0-or-later
// The next run sheet after a change: planned as a least-change repair of the present one, for exactly the
// class as the change leaves it. Preview and command ask the same question, so the previewed plan is the one
// that is applied as long as nothing else has changed.
#include "kiosk/hub/command.h"
#include "kiosk/hub/sentences.h"

namespace floorwheel::hub {
namespace json = boost::json;
using wire::ClassView;
namespace {

struct Repaired {
  ClassView after;  // as the change leaves the class, still with the present sheet
  PlanRequest request;
};

Repaired repaired(const Room& room, const ClassView& c, const FloorChange& d) {
  Repaired r{.after = after_row(room, c, d.kind, d.body, merged(d.words)), .request = {}};
  r.request.spec = spec_now(base_of(room, c), r.after, finder(room), People::on_sheet, d.added);
  r.request.slots = c.sheet.timing.slots;
  r.request.old = earlier_of(c.sheet);
  r.request.at_slot = d.from_slot;
  return r;
}

json::object refusal_of(const Refusal& r) {
  json::array slots;
  for (const int s : r.slots) slots.emplace_back(s);
  return {{"rule", r.rule},
          {"members", wire::json_of(r.members)},
          {"stations", wire::json_of(r.stations)},
          {"slots", slots},
          {"reason", r.reason}};
}

}  // namespace

Outcome with_sheet(Room& room, const ClassView& c, FloorChange d) {
  Change row;
  row.class_id = id_of_class(c);
  row.receipt = {{"class", c.id}};
  for (const char* key : {"member", "station"})
    if (d.body.contains(key)) row.receipt[key] = d.body.at(key);
  row.write = d.write;
  if (c.sheet.version > 0) {
    Repaired r = repaired(room, c, d);
    const PlanShelf::Entry* entry = room.plans.find(r.request);
    if (!entry) return NeedsPlan{std::move(r.request)};
    if (const auto* refusal = std::get_if<Refusal>(&entry->result))
      refuse("refused", refusal->reason, "Leave it as it is, or make another change.", refusal_of(*refusal));
    const wire::RunSheet sheet =
        sheet_of(r.request.spec, std::get<SlotTable>(entry->result).chosen, c.sheet.version + 1);
    d.body["sheet"] = wire::sheet_body(sheet, r.after.stations);
    d.body.erase("stations");  // they are in the sheet
    for (store::WordPart& w : words_of(r.request.spec, sheet, d.sentence)) d.words.push_back(std::move(w));
    row.receipt["version"] = sheet.version;
    row.write = [id = *row.class_id, sheet, more = std::move(d.write)](store::Database& db,
                                                                       std::int64_t seq) {
      if (more) more(db, seq);
      store::keep_run_sheet(db, id, sheet.version, seq, sheet.at_slot, sheet.timing.slots);
    };
  }
  row.body = std::move(d.body);
  row.words = std::move(d.words);
  return row;
}

AnswerOrPlan preview_of(Room& room, const ClassView& c, const FloorChange& d) {
  if (c.sheet.version == 0)
    refuse("refused", "No run sheet is published yet: there is nothing to compare with.",
           "Make the change as it is.");
  Repaired r = repaired(room, c, d);
  const PlanShelf::Entry* entry = room.plans.find(r.request);
  if (!entry) return NeedsPlan{std::move(r.request)};
  if (const auto* refusal = std::get_if<Refusal>(&entry->result))
    return json::object{{"refusal", refusal_of(*refusal)}};
  const wire::RunSheet sheet =
      sheet_of(r.request.spec, std::get<SlotTable>(entry->result).chosen, c.sheet.version + 1);
  json::array changes;
  for (const SlotChange& change : changes_between(c.sheet, sheet, d.from_slot))
    changes.push_back({{"slot", change.slot}, {"members", wire::json_of(change.members)}});
  return json::object{{"preview", entry->id},
                      {"sheet", wire::sheet_body(sheet, r.after.stations)},
                      {"words", merged(words_of(r.request.spec, sheet, d.sentence))},
                      {"from_slot", d.from_slot},
                      {"changes", changes},
                      {"moved", sheet.cost[Component::moved]},
                      {"cost_now", wire::json_of(c.sheet.cost, c.sheet.at_slot > 0)},
                      {"cost_then", wire::json_of(sheet.cost, true)},
                      {"sentences", wire::json_of(sentences_of(c, r.after, sheet, d.sentence, d.from_slot))}};
}

}  // namespace floorwheel::hub
