// SPDX-License-Identifier: GPL-3.0-or-later
// A plan as a person reads it: members down, slots across; cost and proof in sentences. Nothing is said by
// colour.
#pragma once

#include <array>
#include <optional>
#include <string>

#include "scheduler/class_spec.h"
#include "scheduler/rotation/change.h"
#include "scheduler/rotation/rotation.h"

namespace floorwheel::cli {

std::string plan_text(const ClassSpec&, const Plan&);
/// First what each number of slots buys, then the chosen one.
std::string plan_text(const ClassSpec&, const SlotTable&);
/// One row a change of the floor, with what it buys.
std::string what_if_text(const ClassSpec&, const WhatIf&);
/// "hall.class.toml: cannot be planned (rule 5): ..."
std::string refusal_text(const Refusal&, const std::string& class_file);

/// Seconds by level; not said where they are not known.
using RecoveryTimes = std::optional<std::array<int, level_count>>;

/// One sentence for each component of the cost, in order.
std::string cost_sentences(const Plan&, const RecoveryTimes&);
std::string proof_sentences(const Plan&);

}  // namespace floorwheel::cli
