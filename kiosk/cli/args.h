// SPDX-License-Identifier: GPL-3.0-or-later
// The words after a command's name. One table for each command says what it takes; help and parsing both come
// from it, so that they cannot differ, and an unknown option gets the nearest known one.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace floorwheel::cli {

struct Option {
  std::string_view name;   // "--slots"
  std::string_view value;  // "T"; empty: the option is a switch
  std::string_view help;
};

struct Usage {
  std::string_view command;                // "plan"
  std::string_view what;                   // one sentence
  std::vector<std::string_view> operands;  // "CLASS"; "[JSON]" may be left out; all others must be there
  std::vector<Option> options;
  std::vector<std::string_view> examples;  // whole command lines
};

/// What a person reads after --help.
std::string help_text(const Usage&);

class Args {
 public:
  [[nodiscard]] bool has(std::string_view option) const { return options_.contains(option); }
  /// The value given for an option, or `otherwise`.
  [[nodiscard]] std::string value(std::string_view option, std::string_view otherwise = {}) const;
  [[nodiscard]] std::optional<std::string> operand(std::size_t i) const;
  /// The operands in order.
  [[nodiscard]] const std::vector<std::string>& operands() const { return operands_; }

  /// The whole number given for an option, nothing where it is not given.
  /// Throws UsageError outside low..high.
  [[nodiscard]] std::optional<long long> whole(std::string_view option, long long low, long long high) const;
  /// The same for a decimal above 0.
  [[nodiscard]] std::optional<double> positive(std::string_view option) const;

 private:
  friend Args parse(const Usage&, std::span<const std::string>);
  std::vector<std::string> operands_;
  std::map<std::string, std::string, std::less<>> options_;
};

/// What is wrong with a command line and what would be right; exit code 2.
struct UsageError {
  std::string what;
  std::string right;
};

/// Throws UsageError. Both `--slots 3` and `--slots=3` are understood; after `--` all is an operand.
Args parse(const Usage&, std::span<const std::string> words);

}  // namespace floorwheel::cli
