// SPDX-License-Identifier: GPL-3.0-or-later
// The words of the domain that everything shares: muscle groups, features of an exercise, levels, styles.
// Ids are those of the class file. Nothing here decides anything.
#pragma once

#include <array>
#include <cstdint>
#include <initializer_list>
#include <optional>
#include <string_view>

namespace floorwheel {

enum class Group : std::uint8_t {
  chest,
  shoulders,
  triceps,
  biceps,
  forearms,
  lats,
  upper_back,
  lower_back,
  abs,
  obliques,
  glutes,
  quadriceps,
  hamstrings,
  adductors,
  abductors,
  calves,
  hip_flexors,
  serratus,
  rotator_cuff,
  shin,
  neck,
};
inline constexpr int group_count = 21;

/// What a body must be able to do for an exercise; never a diagnosis.
enum class Feature : std::uint8_t {
  overhead,
  hanging,
  lying_back,
  lying_front,
  floor,
  kneeling,
  jump,
  balance,
  head_down,
  long_hold,
  heavy_hinge,
  deep_knee,
  wrist_load,
};
inline constexpr int feature_count = 13;

enum class Level : std::uint8_t { novice, intermediate, advanced };
inline constexpr int level_count = 3;

/// How a rotation is laid out; `automatic` (written "auto") lets the planner choose.
enum class Style : std::uint8_t { automatic, ring, free };

enum class PairRule : std::uint8_t { together, apart };

enum class ExerciseKind : std::uint8_t { compound, isolation };

/// A set of enumerators as bits of one word.
template <class E>
class EnumSet {
 public:
  constexpr EnumSet() = default;
  constexpr EnumSet(std::initializer_list<E> items) {
    for (E e : items) insert(e);
  }
  constexpr void insert(E e) { bits_ |= bit(e); }
  constexpr void erase(E e) { bits_ &= ~bit(e); }
  [[nodiscard]] constexpr bool contains(E e) const { return (bits_ & bit(e)) != 0; }
  [[nodiscard]] constexpr bool empty() const { return bits_ == 0; }
  [[nodiscard]] constexpr bool meets(EnumSet o) const { return (bits_ & o.bits_) != 0; }
  [[nodiscard]] constexpr std::uint32_t bits() const { return bits_; }
  constexpr EnumSet& operator|=(EnumSet o) {
    bits_ |= o.bits_;
    return *this;
  }
  friend constexpr bool operator==(EnumSet, EnumSet) = default;

 private:
  static constexpr std::uint32_t bit(E e) { return std::uint32_t{1} << static_cast<unsigned>(e); }
  std::uint32_t bits_ = 0;
};
using GroupSet = EnumSet<Group>;
using FeatureSet = EnumSet<Feature>;

// The id of each word as files write it ("upper_back", "lying-back", "novice", "auto", "together", ...).
std::string_view id_of(Group);
std::string_view id_of(Feature);
std::string_view id_of(Level);
std::string_view id_of(Style);
std::string_view id_of(PairRule);
std::string_view id_of(ExerciseKind);

// The word an id stands for, or nothing.
std::optional<Group> group_from(std::string_view id);
std::optional<Feature> feature_from(std::string_view id);
std::optional<Level> level_from(std::string_view id);
std::optional<Style> style_from(std::string_view id);
std::optional<PairRule> pair_rule_from(std::string_view id);
std::optional<ExerciseKind> exercise_kind_from(std::string_view id);

}  // namespace floorwheel
