// SPDX-License-Identifier: GPL-3.0-or-later
// From the hall to the planner and back: the class as it stands now as a problem (who is here, what hurts,
// what is closed or was laid out otherwise), and a plan as a run sheet with its words.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "kiosk/store/journal.h"
#include "kiosk/wire/shapes.h"
#include "scheduler/rotation/rotation.h"

namespace floorwheel::hub {

/// Looks a member up whom the class file does not name.
using FindMember = std::function<std::optional<MemberSpec>(const std::string&)>;

/// The floor of a class as screens see it.
std::vector<wire::StationView> stations_of(const ClassSpec&);
/// One station showing an exercise, with what the exercise's table says of loads and repetitions.
void put_exercise(wire::StationView&, const Exercise&);

/// Whom a plan is for: everybody who is here (everybody expected while nobody was counted or checked in),
/// or exactly the rows of the present run sheet and those added to it.
enum class People { here, on_sheet };

/// The class as it stands. `base` is the class file's; the view says what has changed since: exercises,
/// closures and new stations of the floor, windows of late arrivals and leavers, what hurts today (an
/// exercise allowed explicitly stays allowed).
ClassSpec spec_now(const ClassSpec& base, const wire::ClassView&, const FindMember&, People,
                   const std::vector<std::string>& added = {});

EarlierSheet earlier_of(const wire::RunSheet&);

/// What the instructor should know of each member beside the plan: 'together with Ana P.', 'overhead left
/// out'.
boost::json::object notes_of(const ClassSpec&);

/// A plan as the run sheet with this version.
wire::RunSheet sheet_of(const ClassSpec&, const Plan&, int version);
/// The words of a sheet by audience; `change` is one sentence for the instructor, or "".
std::vector<store::WordPart> words_of(const ClassSpec&, const wire::RunSheet&, const std::string& change);
/// All words of a sheet merged, for an answer to the instructor.
boost::json::object merged(const std::vector<store::WordPart>&);

/// The rotation of a sheet against a spec, or nothing where they do not fit each other.
std::optional<Rotation> rotation_of(const ClassSpec&, const wire::RunSheet&);

}  // namespace floorwheel::hub
