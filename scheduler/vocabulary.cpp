// SPDX-License-Identifier: GPL-3.0-or-later
#include "scheduler/vocabulary.h"

namespace floorwheel {
namespace {

constexpr std::array<std::string_view, group_count> group_ids = {
    "chest",      "shoulders", "triceps",     "biceps",   "forearms",     "lats",       "upper_back",
    "lower_back", "abs",       "obliques",    "glutes",   "quadriceps",   "hamstrings", "adductors",
    "abductors",  "calves",    "hip_flexors", "serratus", "rotator_cuff", "shin",       "neck"};
constexpr std::array<std::string_view, feature_count> feature_ids = {
    "overhead", "hanging",   "lying-back", "lying-front", "floor",     "kneeling",  "jump",
    "balance",  "head-down", "long-hold",  "heavy-hinge", "deep-knee", "wrist-load"};
constexpr std::array<std::string_view, level_count> level_ids = {"novice", "intermediate", "advanced"};
constexpr std::array<std::string_view, 3> style_ids = {"auto", "ring", "free"};
constexpr std::array<std::string_view, 2> pair_ids = {"together", "apart"};
constexpr std::array<std::string_view, 2> kind_ids = {"compound", "isolation"};

template <class E, std::size_t N>
std::optional<E> find(const std::array<std::string_view, N>& ids, std::string_view id) {
  for (std::size_t i = 0; i < N; ++i)
    if (ids[i] == id) return static_cast<E>(i);
  return std::nullopt;
}

}  // namespace

std::string_view id_of(Group g) { return group_ids[static_cast<std::size_t>(g)]; }
std::string_view id_of(Feature f) { return feature_ids[static_cast<std::size_t>(f)]; }
std::string_view id_of(Level l) { return level_ids[static_cast<std::size_t>(l)]; }
std::string_view id_of(Style s) { return style_ids[static_cast<std::size_t>(s)]; }
std::string_view id_of(PairRule r) { return pair_ids[static_cast<std::size_t>(r)]; }
std::string_view id_of(ExerciseKind k) { return kind_ids[static_cast<std::size_t>(k)]; }

std::optional<Group> group_from(std::string_view id) { return find<Group>(group_ids, id); }
std::optional<Feature> feature_from(std::string_view id) { return find<Feature>(feature_ids, id); }
std::optional<Level> level_from(std::string_view id) { return find<Level>(level_ids, id); }
std::optional<Style> style_from(std::string_view id) { return find<Style>(style_ids, id); }
std::optional<PairRule> pair_rule_from(std::string_view id) { return find<PairRule>(pair_ids, id); }
std::optional<ExerciseKind> exercise_kind_from(std::string_view id) {
  return find<ExerciseKind>(kind_ids, id);
}

}  // namespace floorwheel
