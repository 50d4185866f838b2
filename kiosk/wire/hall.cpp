// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/wire/hall.h"

#include <algorithm>
#include <array>

#include "kiosk/wire/shapes.h"

namespace floorwheel::wire {
namespace json = boost::json;
namespace {

/// One row while it is folded.
struct Folding {
  Hall& hall;
  ClassView& view;
  const Row& row;
  const json::object& body;
  const json::object& words;
};

MemberView* member(ClassView& c, std::string_view id) {
  for (MemberView& m : c.members)
    if (m.id == id) return &m;
  return nullptr;
}

MemberView& member_or_new(ClassView& c, const std::string& id) {
  if (MemberView* m = member(c, id)) return *m;
  MemberView fresh;
  fresh.id = id;
  fresh.shown_as = id;
  return c.members.emplace_back(std::move(fresh));
}

void drop(ClassView& c, const std::string& id) {
  std::erase_if(c.members, [&id](const MemberView& m) { return m.id == id; });
}

/// The names of exercises are in the words; stations get theirs whenever either changes.
void take_names(Folding& f) {
  for (const auto& [id, name] : get_object(f.words, "exercise_names"))
    if (name.is_string()) f.hall.exercise_names[std::string(id)] = std::string(name.get_string());
  for (StationView& s : f.view.stations) {
    const auto known = f.hall.exercise_names.find(s.exercise);
    s.exercise_name = known == f.hall.exercise_names.end() ? s.exercise : known->second;
  }
}

void take_aliases(Folding& f) {
  for (const auto& [id, alias] : get_object(f.words, "aliases"))
    if (MemberView* m = member(f.view, id); m && alias.is_string()) m->shown_as = alias.get_string();
}

void take_alias(Folding& f, MemberView& m) {
  if (const std::string alias = get_string(f.words, "shown_as"); !alias.empty()) m.shown_as = alias;
}

void take_loads(Folding& f) {
  for (const auto& [id, loads] : get_object(f.words, "loads_hg"))
    if (MemberView* m = member(f.view, id); m && loads.is_object()) {
      m->loads_hg.clear();
      for (const auto& [station, hg] : loads.get_object())
        if (hg.is_int64()) m->loads_hg[std::string(station)] = static_cast<int>(hg.get_int64());
    }
}

void take_stations(Folding& f, const json::object& from) {
  if (from.contains("stations")) f.view.stations = stations_from(get_array(from, "stations"));
  take_names(f);
}

void take_sheet(Folding& f) {
  const json::object& body = get_object(f.body, "sheet");
  if (body.empty()) return;
  ClassView& c = f.view;
  c.sheet = sheet_from(body, f.words);
  c.last_change = get_string(f.words, "change");
  take_stations(f, body);
  take_loads(f);
  for (MemberView& m : c.members) {
    m.exercises.clear();
    for (const auto& [station, exercise] : get_object(get_object(f.words, "exercises"), m.id))
      if (exercise.is_string()) m.exercises[std::string(station)] = std::string(exercise.get_string());
  }
  apply_sheet(c.clock, c.sheet.timing, f.row.at_ms);
}

void class_add(Folding& f) {
  ClassView& c = f.view;
  c = ClassView{};
  c.id = get_string(f.body, "class");
  c.name = get_string(f.words, "name");
  c.start = get_string(f.body, "start");
  c.length_s = static_cast<int>(get_int(f.body, "length_s"));
  c.timing = timing_from(get_object(f.body, "timing"));
  for (const json::value& v : get_array(f.body, "members"))
    if (v.is_object()) {
      MemberView& m = member_or_new(c, get_string(v.get_object(), "member"));
      m.level = level_from(get_string(v.get_object(), "level")).value_or(Level::novice);
      m.expected = true;
    }
  for (const std::string& id : get_strings(f.body, "guests")) {
    MemberView& m = member_or_new(c, id);
    m.guest = true;
    m.expected = true;
  }
  take_aliases(f);
  for (const auto& [id, notes] : get_object(f.words, "notes"))
    if (MemberView* m = member(c, id); m && notes.is_array())
      for (const json::value& note : notes.get_array())
        if (note.is_string()) m->notes.emplace_back(note.get_string());
  take_loads(f);
  take_stations(f, f.body);
}

void class_open(Folding& f) {
  f.view.open = true;
  f.hall.current = f.view.id;
}

void arrive(Folding& f, MemberView& m) {
  if (!m.here) m.here_at_ms = f.row.civil_ms;
  m.here = true;
}

void check_in(Folding& f) {
  MemberView& m = member_or_new(f.view, get_string(f.body, "member"));
  m.expected = get_bool(f.body, "expected", m.expected);
  if (const auto level = level_from(get_string(f.body, "level"))) m.level = *level;
  take_alias(f, m);
  arrive(f, m);
}

void check_in_undo(Folding& f) {
  const std::string id = get_string(f.body, "member");
  MemberView* m = member(f.view, id);
  if (!m) return;
  m->here = false;
  m->here_at_ms = 0;
  if (!m->expected) drop(f.view, id);  // a walk-in gives the seat back
}

void heads_count(Folding& f) {
  ClassView& c = f.view;
  const std::vector<std::string> here = get_strings(f.body, "here");
  const std::vector<std::string> guests = get_strings(f.body, "guests");
  const auto among = [](const std::vector<std::string>& all, const std::string& id) {
    return std::find(all.begin(), all.end(), id) != all.end();
  };
  std::erase_if(c.members, [&](const MemberView& m) {
    return m.guest ? !among(guests, m.id) : !m.expected && !among(here, m.id);
  });
  for (const std::string& id : here) member_or_new(c, id);
  for (const std::string& id : guests) member_or_new(c, id).guest = true;
  for (MemberView& m : c.members) {
    if (among(m.guest ? guests : here, m.id)) {
      arrive(f, m);
    } else {
      m.here = false;
      m.here_at_ms = 0;
    }
  }
  take_aliases(f);
  c.heads_counted = true;
}

void answer_today(Folding& f) {
  if (MemberView* m = member(f.view, get_string(f.body, "member")))
    m->today = TodayAnswer{.answer = get_string(f.words, "answer"), .spot = get_string(f.words, "spot")};
}

StationView* station(ClassView& c, std::string_view id) {
  for (StationView& s : c.stations)
    if (s.id == id) return &s;
  return nullptr;
}

void station_close(Folding& f) {
  if (StationView* s = station(f.view, get_string(f.body, "station"))) {
    SlotRange r;
    r.first = static_cast<int>(get_int(f.body, "from_slot", 1));
    r.last = static_cast<int>(get_int(f.body, "to_slot", SlotRange::to_the_end));
    s->closed.push_back(r);
    s->closed_now = r.last == SlotRange::to_the_end;
  }
  take_sheet(f);
}

void station_open(Folding& f) {
  if (StationView* s = station(f.view, get_string(f.body, "station"))) {
    const int from = static_cast<int>(get_int(f.body, "from_slot", 1));
    std::erase_if(s->closed, [from](SlotRange r) { return r.first >= from; });
    for (SlotRange& r : s->closed) r.last = std::min(r.last, from - 1);
    s->closed_now = false;
  }
  take_sheet(f);
}

void floor_changed(Folding& f) {
  take_stations(f, f.body);
  take_sheet(f);
}

void class_start(Folding& f) { apply_start(f.view.clock, f.view.sheet.timing, f.row.at_ms); }

void class_hold(Folding& f) {
  if (get_bool(f.body, "power_cut"))
    apply_power_cut(f.view.clock, get_int(f.body, "elapsed_ms"));
  else
    apply_hold(f.view.clock, f.row.at_ms);
}

void class_resume(Folding& f) { apply_resume(f.view.clock, f.row.at_ms); }

void class_skip(Folding& f) {
  // `segment` is the one meant: if it ended in the meantime there is nothing to skip.
  const Moment m = moment_at(f.view.clock, f.row.at_ms);
  if (get_int(f.body, "segment", m.segment) == m.segment) apply_skip(f.view.clock, f.row.at_ms);
}

void class_repeat(Folding& f) { apply_repeat(f.view.clock, f.row.at_ms); }

void class_more_time(Folding& f) { apply_more_time(f.view.clock, f.row.at_ms, 1000 * get_int(f.body, "s")); }

void class_late(Folding& f) {
  const std::string id = get_string(f.body, "member");
  const bool known = find_member(f.view, id) != nullptr;
  MemberView& m = member_or_new(f.view, id);
  if (!known) {
    m.guest = get_bool(f.body, "guest");
    m.level = level_from(get_string(f.body, "level")).value_or(Level::novice);
  }
  take_alias(f, m);
  arrive(f, m);
  m.present = range_from(get_array(f.body, "present"));
  take_sheet(f);
}

void class_leave(Folding& f) {
  if (MemberView* m = member(f.view, get_string(f.body, "member")))
    m->present = range_from(get_array(f.body, "present"));
  take_sheet(f);
}

void class_stop(Folding& f) { apply_stop(f.view.clock, f.row.at_ms); }
void class_over(Folding& f) { apply_over(f.view.clock, f.row.at_ms); }

void class_end(Folding& f) {
  apply_end(f.view.clock, f.row.at_ms);
  f.view.open = false;
  if (f.hall.current == f.view.id) f.hall.current.clear();
}

void record(Folding& f) {
  SetRecord r = record_from(f.body);
  f.view.records[{r.member, r.slot}] = std::move(r);
}

/// The one row about a member and no class.
void page_show(Hall& hall, const json::object& body) {
  if (get_bool(body, "on"))
    hall.pages_shown.insert(get_string(body, "member"));
  else
    hall.pages_shown.erase(get_string(body, "member"));
}

struct Fold {
  std::string_view kind;
  void (*fold)(Folding&);
};
constexpr std::array folds{
    Fold{"class.add", class_add},
    Fold{"class.open", class_open},
    Fold{"check_in", check_in},
    Fold{"check_in.undo", check_in_undo},
    Fold{"heads.count", heads_count},
    Fold{"answer.today", answer_today},
    Fold{"station.close", station_close},
    Fold{"station.open", station_open},
    Fold{"station.set", floor_changed},
    Fold{"station.swap", floor_changed},
    Fold{"station.add", floor_changed},
    Fold{"floor.as_in_file", floor_changed},
    Fold{"class.publish", take_sheet},
    Fold{"class.start", class_start},
    Fold{"class.hold", class_hold},
    Fold{"class.resume", class_resume},
    Fold{"class.skip", class_skip},
    Fold{"class.repeat", class_repeat},
    Fold{"class.more_time", class_more_time},
    Fold{"class.late", class_late},
    Fold{"class.leave", class_leave},
    Fold{"class.stop", class_stop},
    Fold{"class.over", class_over},
    Fold{"class.end", class_end},
    Fold{"record.add", record},
    Fold{"record.correct", record},
};

}  // namespace

void fold(Hall& hall, const Row& row) {
  if (row.seq <= hall.reached) return;
  hall.reached = row.seq;
  if (row.kind == "page.show") return page_show(hall, object_from(row.body));
  const auto* known =
      std::find_if(folds.begin(), folds.end(), [&](const Fold& f) { return f.kind == row.kind; });
  if (known == folds.end()) return;
  const json::object body = object_from(row.body);
  const json::object words = object_from(row.words);
  const std::string id = get_string(body, "class");
  if (id.empty()) return;
  if (row.kind != "class.add" && !hall.classes.contains(id)) return;
  Folding folding{.hall = hall, .view = hall.classes[id], .row = row, .body = body, .words = words};
  known->fold(folding);
}

const ClassView* current_class(const Hall& hall) {
  const auto found = hall.classes.find(hall.current);
  return found == hall.classes.end() ? nullptr : &found->second;
}

const StationView* find_station(const ClassView& c, std::string_view id) {
  const auto found =
      std::find_if(c.stations.begin(), c.stations.end(), [id](const StationView& s) { return s.id == id; });
  return found == c.stations.end() ? nullptr : &*found;
}

const MemberView* find_member(const ClassView& c, std::string_view id) {
  const auto found =
      std::find_if(c.members.begin(), c.members.end(), [id](const MemberView& m) { return m.id == id; });
  return found == c.members.end() ? nullptr : &*found;
}

std::string station_of(const ClassView& c, std::string_view member, int slot) {
  for (const RunSheetRow& r : c.sheet.rows)
    if (r.member == member)
      return slot >= 1 && static_cast<std::size_t>(slot) <= r.stations.size()
                 ? r.stations[static_cast<std::size_t>(slot) - 1]
                 : std::string();
  return {};
}

}  // namespace floorwheel::wire
