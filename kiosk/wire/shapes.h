// SPDX-License-Identifier: GPL-3.0-or-later
// The JSON shapes that row bodies, words and answers share: stations, timing, run sheets, costs, records.
// The hub writes them and the fold of the hall reads them, both here, so that they cannot drift apart.
// Readers are lenient: a value that is missing or of another type is the default, never an exception.
#pragma once

#include <boost/json.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "kiosk/wire/hall.h"

namespace floorwheel::wire {

/// Parses a JSON object with bounded depth; anything else is an empty object.
boost::json::object object_from(std::string_view text);

std::int64_t get_int(const boost::json::object&, std::string_view key, std::int64_t otherwise = 0);
bool get_bool(const boost::json::object&, std::string_view key, bool otherwise = false);
std::string get_string(const boost::json::object&, std::string_view key);
/// The object or array under a key, or an empty one.
const boost::json::object& get_object(const boost::json::object&, std::string_view key);
const boost::json::array& get_array(const boost::json::object&, std::string_view key);
std::vector<std::string> get_strings(const boost::json::object&, std::string_view key);

boost::json::array json_of(const std::vector<std::string>&);
boost::json::object json_of(const Timing&);
boost::json::object json_of(const StationView&);
boost::json::array json_of(const std::vector<StationView>&);
boost::json::object json_of(const Cost&, bool with_moved);
/// The ids of the leading components that are proven, in order.
boost::json::array proven_of(int proven, bool with_moved);

/// A range of slots as rows write it: [first, last], or [first] to the end.
SlotRange range_from(const boost::json::array&);
Timing timing_from(const boost::json::object&);
StationView station_from(const boost::json::object&);
std::vector<StationView> stations_from(const boost::json::array&);
Cost cost_from(const boost::json::object&);

/// The body of a run sheet: version, order, timing, rows, and the floor it was made for.
boost::json::object sheet_body(const RunSheet&, const std::vector<StationView>&);
/// Its words for the instructor alone: cost, bound, proof, reasons, what changed.
boost::json::object sheet_words(const RunSheet&, std::string_view change);
/// A run sheet from its body and whatever of its words the audience may read.
RunSheet sheet_from(const boost::json::object& body, const boost::json::object& words);

boost::json::object json_of(const SetRecord&);
SetRecord record_from(const boost::json::object&);

/// Puts `from` into `into`, object by object; other values of `from` win.
void merge(boost::json::object& into, const boost::json::object& from);

}  // namespace floorwheel::wire
