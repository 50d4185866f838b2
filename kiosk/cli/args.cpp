// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/cli/args.h"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "kiosk/files/nearest.h"

namespace floorwheel::cli {
namespace {

bool may_be_left_out(std::string_view operand) { return operand.starts_with('['); }

std::string usage_line(const Usage& u) {
  std::string line = "floorwheel " + std::string(u.command);
  for (std::string_view operand : u.operands) line += " " + std::string(operand);
  if (!u.options.empty()) line += " [options]";
  return line;
}

const Option& option_named(const Usage& u, std::string_view name) {
  std::vector<std::string> known{"--help"};
  for (const Option& o : u.options) {
    if (o.name == name) return o;
    known.emplace_back(o.name);
  }
  throw UsageError{"there is no option " + std::string(name), files::did_you_mean(name, known)};
}

template <class Number>
bool read_number(const std::string& text, Number& number) {
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  return error == std::errc() && end == text.data() + text.size();
}

}  // namespace

std::string help_text(const Usage& u) {
  std::string text = usage_line(u) + "\n\n" + std::string(u.what) + "\n";
  std::size_t width = std::string_view("--help").size();
  const auto left = [](const Option& o) {
    return std::string(o.name) + (o.value.empty() ? "" : " " + std::string(o.value));
  };
  for (const Option& o : u.options) width = std::max(width, left(o).size());
  text += "\nOptions\n";
  for (const Option& o : u.options)
    text += "  " + left(o) + std::string(width + 2 - left(o).size(), ' ') + std::string(o.help) + "\n";
  text += "  --help" + std::string(width - 4, ' ') + "this text\n";
  text += u.examples.size() == 1 ? "\nExample\n" : "\nExamples\n";
  for (std::string_view example : u.examples) text += "  " + std::string(example) + "\n";
  return text;
}

std::string Args::value(std::string_view option, std::string_view otherwise) const {
  const auto it = options_.find(option);
  return it == options_.end() ? std::string(otherwise) : it->second;
}

std::optional<std::string> Args::operand(std::size_t i) const {
  return i < operands_.size() ? std::optional(operands_[i]) : std::nullopt;
}

std::optional<long long> Args::whole(std::string_view option, long long low, long long high) const {
  if (!has(option)) return std::nullopt;
  long long number = 0;
  if (!read_number(value(option), number) || number < low || number > high)
    throw UsageError{std::string(option) + " is \"" + value(option) + "\"",
                     "write a whole number from " + std::to_string(low) + " to " + std::to_string(high)};
  return number;
}

std::optional<double> Args::positive(std::string_view option) const {
  if (!has(option)) return std::nullopt;
  double number = 0;
  if (!read_number(value(option), number) || !std::isfinite(number) || number <= 0)
    throw UsageError{std::string(option) + " is \"" + value(option) + "\"",
                     "write a number above 0, such as 1.5"};
  return number;
}

Args parse(const Usage& u, std::span<const std::string> words) {
  Args args;
  bool only_operands = false;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const std::string& word = words[i];
    if (only_operands || !word.starts_with("--")) {
      args.operands_.push_back(word);
      continue;
    }
    if (word == "--") {
      only_operands = true;
      continue;
    }
    const std::size_t equals = word.find('=');
    const Option& o = option_named(u, std::string_view(word).substr(0, equals));
    std::string value;
    if (o.value.empty()) {
      if (equals != std::string::npos)
        throw UsageError{std::string(o.name) + " takes no value", "write " + std::string(o.name)};
    } else if (equals != std::string::npos) {
      value = word.substr(equals + 1);
    } else if (++i < words.size()) {
      value = words[i];
    } else {
      throw UsageError{std::string(o.name) + " has no value",
                       "write " + std::string(o.name) + " " + std::string(o.value)};
    }
    if (!args.options_.emplace(o.name, value).second)
      throw UsageError{std::string(o.name) + " is given twice", "give it once"};
  }

  const auto most = u.operands.size();
  const auto least = static_cast<std::size_t>(
      std::count_if(u.operands.begin(), u.operands.end(), [](auto o) { return !may_be_left_out(o); }));
  if (args.operands_.size() < least)
    throw UsageError{std::string(u.operands[args.operands_.size()]) + " is missing",
                     "write " + usage_line(u)};
  if (args.operands_.size() > most)
    throw UsageError{"\"" + args.operands_[most] + "\" is one word too many", "write " + usage_line(u)};
  return args;
}

}  // namespace floorwheel::cli
