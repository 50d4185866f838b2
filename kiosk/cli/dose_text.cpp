// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/cli/dose_text.h"

#include "kiosk/cli/training_input.h"

namespace floorwheel::cli {

std::string sets_text(training::Centisets n) {
  std::string text = std::to_string(n / 100);
  if (n % 100 == 0) return text;
  text += "." + std::string(n % 100 < 10 ? "0" : "") + std::to_string(n % 100);
  return text.substr(0, text.find_last_not_of('0') + 1);
}

std::string_view words_of(training::DoseBand band) {
  switch (band) {
    case training::DoseBand::under_3:
      return "under 3";
    case training::DoseBand::from_3_to_9:
      return "3 to 9";
    case training::DoseBand::from_10_to_15:
      return "10 to 15";
    case training::DoseBand::over_15:
      break;
  }
  return "over 15";
}

std::vector<std::string> judged(training::Centisets sets) {
  return {std::string(words_of(training::band_of(sets))),
          std::string(training::class_by_schoenfeld_2017(sets)),
          std::string(training::class_by_baz_valle_2022(sets))};
}

std::string dose_notes() {
  return "Band: a teaching rule of the trade, no source. Schoenfeld 2017 (J Sports Sci 35:1073): under 5 "
         "low, "
         "5 to 9 middle,\n10 and more high. Baz-Valle 2022 (J Hum Kinet 81:199): under 12 low, 12 to 20 "
         "moderate, over 20 high.\n" +
         std::string(caution);
}

}  // namespace floorwheel::cli
