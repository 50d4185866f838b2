// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/wire/kinds.h"

#include <array>

namespace floorwheel::wire {
namespace {

constexpr Audience everybody{Role::wall, Role::touch, Role::instructor, Role::desk, Role::tool};
constexpr Audience staff{Role::instructor, Role::desk, Role::tool};
constexpr Audience teacher{Role::instructor, Role::tool};
constexpr Audience page_readers{Role::touch, Role::instructor, Role::tool};
constexpr Audience people{Role::touch, Role::instructor, Role::desk, Role::tool};

// `saw` is the version of the run sheet that the screen showed (0: none published); another version is
// refused with code "stale" and both numbers. Hold and stop never need it: they must always work.
// A `sheet` in a row is {version, at_slot, style, ring:[station], timing:{slots, laps, work_s, change_s,
// show_s, warm_up_s, lead_in_s, cool_down_s, breaks:[{after_slot, s}]}, rows:[{member, stations:[id|null]}],
// stations:[StationView as snake_case keys]}; its words are, for everybody, {exercise_names:{id:name}}, for
// touch and instructor {loads_hg:{member:{station:n}}, exercises:{member:{station:exercise}}} (substitutes: a
// wall that knew them would know of exclusions) and, for the instructor alone, {cost:{}, bound:{}, proven:[],
// reasons:[], change:"sentence"}. A range of slots is [first, last] or, to the end, [first].
constexpr std::array commands{
    CommandKind{
        "member.add",
        "shown_as, level, id?, excluded_groups?, excluded_features?, excluded_exercises?, allowed_exercises?",
        "{member, level}",
        "{shown_as} to everybody; {excluded_groups, excluded_features, excluded_exercises, "
        "allowed_exercises} to the instructor",
        everybody, "adds a member; without an id the hub makes one"},
    CommandKind{"class.add", "toml, class?",
                "{class, start, length_s, timing, stations:[StationView], members:[{member, level}], "
                "guests:[member]}",
                "{name, aliases:{member: shown_as}, exercise_names} to everybody; {notes:{member:[..]}, "
                "loads_hg} to the instructor",
                everybody,
                "keeps a class file; members it names that the store lacks are added, one whose alias "
                "differs is refused"},
    CommandKind{"class.open", "class", "{class}", "", everybody,
                "chooses the class at hand: check-in is open"},
    CommandKind{
        "check_in", "class, member", "{class, member, level, expected}", "{shown_as} to everybody", everybody,
        "a member is here; again: nothing changes. A member not on the list takes a seat as a walk-in"},
    CommandKind{"check_in.undo", "class, member", "{class, member}", "", everybody,
                "a check-in tapped by mistake"},
    CommandKind{"heads.count", "class, here:[member], guests?", "{class, here:[member], guests:[member]}",
                "{aliases} to everybody", everybody,
                "the instructor's count: exactly these are here, and so many guests"},
    CommandKind{"answer.today", "class, member, answer: fine|take_it_easy|hurts|wants_a_word, spot?",
                "{class, member}", "{answer, spot} to the instructor", teacher,
                "how a member is today; 'hurts' with a spot leaves out exercises that load this group"},
    CommandKind{"station.close", "class, saw, station, until_slot?",
                "{class, station, from_slot, to_slot, sheet?}", "as of a sheet", everybody,
                "nobody works there from the next open slot on; with a running class a new run sheet"},
    CommandKind{"station.open", "class, saw, station", "{class, station, from_slot, sheet?}", "as of a sheet",
                everybody, "a closed station is used again"},
    CommandKind{"station.set", "class, saw, station, exercise",
                "{class, station, exercise, sheet?, stations}", "{exercise_names}; as of a sheet", everybody,
                "another exercise stands there"},
    CommandKind{"station.swap", "class, saw, station, with", "{class, station, with, sheet?, stations}",
                "{exercise_names}; as of a sheet", everybody,
                "two stations change places: what stands at each, not the letters"},
    CommandKind{"station.add", "class, saw, exercise, after?, capacity?",
                "{class, station, sheet?, stations}", "{exercise_names}; as of a sheet", everybody,
                "one more station, placed between its neighbours"},
    CommandKind{"floor.as_in_file", "class, saw", "{class, stations}", "{exercise_names}", everybody,
                "before the start: the floor as the class file says"},
    CommandKind{"class.publish", "class, saw, proposal", "{class, sheet}", "as of a sheet", everybody,
                "the proposal becomes the next run sheet on all screens"},
    CommandKind{"class.start", "class, saw", "{class, version}", "", everybody, "the class clock starts"},
    CommandKind{"class.hold", "class, saw?", "{class, power_cut?, elapsed_ms?}", "", everybody,
                "the class clock stands still"},
    CommandKind{"class.resume", "class, saw", "{class}", "", everybody,
                "it goes on at the same second of the same slot"},
    CommandKind{
        "class.skip", "class, saw, segment?", "{class, segment}", "", everybody,
        "ends the present segment; with `segment`, the index the screen showed, a second tap on the same "
        "one changes nothing"},
    CommandKind{"class.repeat", "class, saw", "{class}", "", everybody,
                "back to the start of the present slot"},
    CommandKind{"class.more_time", "class, saw, s", "{class, s}", "", everybody,
                "lengthens the present segment"},
    CommandKind{"class.late", "class, saw, member?", "{class, member, guest, level, present, sheet}",
                "as of a sheet; {shown_as}", everybody,
                "somebody comes late: a member, or without one a guest"},
    CommandKind{"class.leave", "class, saw, member", "{class, member, present, sheet}", "as of a sheet",
                everybody, "somebody leaves early"},
    CommandKind{"class.stop", "class, saw?", "{class}", "", everybody,
                "stop and help: all walls hold and show the emergency text"},
    CommandKind{"class.over", "class", "{class}", "", everybody, "it is over: the class is then held"},
    CommandKind{"class.end", "class, saw?", "{class}", "", everybody,
                "closes the class: it counts in the reports"},
    CommandKind{"record.add", "class, member, station, slot, done, exercise?, load_hg?, reps?, rir?",
                "{record, class, member, station, exercise, slot, done, load_hg?, reps?, rir?}", "", people,
                "one set as done; the record's UUID is the command's"},
    CommandKind{"record.correct", "record, done, load_hg?, reps?, rir?",
                "{record, corrects, class, member, station, exercise, slot, done, load_hg?, reps?, rir?}", "",
                people, "a new record in place of an earlier one; both are kept"},
    CommandKind{"page.show", "member, on", "{member, on}", "", people,
                "whether the touch screen, which all share, may show this member's own week: switched on by "
                "desk or instructor at the member's word, off by anybody"},
    CommandKind{
        "load.decide", "member, exercise, load_kg, reps?, sets?",
        "{member, exercise, load_g, reps?, sets?, suggested_g, suggested_change}", "", teacher,
        "what the instructor decides instead of the suggested next load; stands until the exercise is "
        "done next, and is learnt from"},
    CommandKind{"talk.note", "member, goal?, agreed?", "{member}", "{goal, agreed} to the instructor",
                teacher,
                "what a talk with a member came to: a goal in the member's own words, what was agreed; a "
                "later note takes the place of an earlier, an empty text takes it off, both stay in the "
                "journal"},
};

// A `change` is {kind, ...fields of that command without class and saw}: class.late, class.leave,
// station.close, station.open, station.set, station.swap or station.add.
constexpr std::array questions{
    QuestionKind{
        "classes", "",
        "{classes:[{class, name, start, state: ready|open|running|held|stopped|ended, expected, here}]}",
        everybody, "every class of the store, next first"},
    QuestionKind{"members", "", "{members:[{member, shown_as, level}]}", people, "every member"},
    QuestionKind{"exercises", "", "{exercises:[{id, name, primary, assisting, features, kind, substitutes}]}",
                 everybody, "the exercise table"},
    QuestionKind{
        "proposal", "class, slots?",
        "{proposal, sheet, words, rows:[{slots, class_s, fits, style, cost, gain}], ends_s}|{refusal}",
        teacher, "a rotation for the people who are here, with what one more slot buys"},
    QuestionKind{"preview", "class, saw, change",
                 "{preview, sheet, words, from_slot, changes:[{slot, members:[..]}], moved, cost_now, "
                 "cost_then, sentences:[..]}|{refusal}",
                 teacher, "what a change would do, before it is done"},
    QuestionKind{"attendance", "from?, to?", "{rows:[{class, name, date, expected, here}]}", staff,
                 "attendance by class"},
    QuestionKind{"frequency", "from?, to?", "{rows:[{member, shown_as, iso_week, visits}]}", staff,
                 "visits by ISO week and member"},
    QuestionKind{"dose", "week?, member?, today?",
                 "{week, rows:[{member, shown_as, week, group, sets, assisting_sets, days, band}]}", staff,
                 "working sets by muscle group in an ISO week, this one unless named"},
    QuestionKind{
        "member.page", "member, today?",
        "{member, shown_as, week, working_sets, dose:[..], next:[{exercise, name, hold, load_kg, reps, sets, "
        "change, rule, reason, ask_instructor, substitute, last_day, visits_without_progress, "
        "override?: {decided_by, decided_on, suggested_kg}}], "
        "trends:[{exercise, name, equation, points:[{day, "
        "one_rm_kg}], per_week_kg}]}",
        page_readers,
        "a member's dose of the week, next loads with reasons and three trends; of the touch screen only "
        "where page.show is on"},
    QuestionKind{"floor.stalls", "today?", "{stalls:[as next, with member, shown_as], pain:[..]}", teacher,
                 "who of the last four weeks stalls, and whose last visit notes pain"},
    QuestionKind{
        "talk.sheet", "member, today?",
        "{member, shown_as, level, day, week, visits:{week, four_weeks}, sets:{week, four_weeks, planned}, "
        "groups:[{group, done, planned, band}], loads:[{exercise, name, points:[{day, load_kg, reps}], "
        "per_week_kg}], goal, goal_day, agreed, agreed_day}",
        teacher,
        "a member's one page for a talk; planned: the sets of the week's run sheets, for the classes "
        "attended"},
    QuestionKind{
        "members.new", "",
        "{rows:[{member, shown_as, visits, visit, here, expected, last_day, look_at:[sentence]}]}", teacher,
        "members on one of their first four visits, or before it, and what we suggest to look at; who is "
        "here in the class at hand first. Who never came counts once they are expected there"},
    QuestionKind{"programmes", "", "{programmes:[name]}", teacher,
                 "the files NAME.programme.toml in the folder 'programmes' of the hub's data folder"},
    QuestionKind{"programme.check", "name",
                 "{name, title, level, days, weeks, findings:[as `check --json`]}|{name, error}", teacher,
                 "what the programme check finds in one of them; error: it cannot be read, with "
                 "file:line:column"},
    QuestionKind{"journal", "after?, most?", "{rows:[{seq, civil_ms, kind, body}]}", teacher,
                 "the journal itself"},
    QuestionKind{
        "health", "",
        "{version, database, schema, journal, wal_bytes, screens:[{role, reached}], speed, uptime_s}",
        everybody, "how the hub is"},
};

template <class Kind, std::size_t N>
const Kind* find(const std::array<Kind, N>& all, std::string_view kind) {
  for (const Kind& k : all)
    if (k.kind == kind) return &k;
  return nullptr;
}

}  // namespace

std::span<const CommandKind> command_kinds() { return commands; }
std::span<const QuestionKind> question_kinds() { return questions; }
const CommandKind* find_command(std::string_view kind) { return find(commands, kind); }
const QuestionKind* find_question(std::string_view kind) { return find(questions, kind); }

}  // namespace floorwheel::wire
