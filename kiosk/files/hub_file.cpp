// SPDX-License-Identifier: GPL-3.0-or-later
#include "kiosk/files/hub_file.h"

#include <cmath>

#include "kiosk/files/text_file.h"
#include "kiosk/files/toml_reader.h"

namespace floorwheel::files {
namespace {

constexpr std::array<Key, 1> document_keys{{{"hub", "[hub]"}}};
constexpr std::array<Key, 3> hub_keys{{
    {"data", "data = \"/srv/floorwheel\""},
    {"listen", "listen = \"127.0.0.1:7413\""},
    {"speed", "speed = 1.0, a number above 0"},
}};

HubFile read_document(std::string_view toml, const std::string& file) {
  const TomlDocument document(toml, file, "hub file");
  const TomlTable root(document, document.root(), "a hub file", document_keys);
  HubFile out;
  if (!root.has("hub")) return out;
  const TomlTable hub(document, root.inner("hub"), "[hub]", hub_keys);
  if (hub.has("data")) out.data = hub.shown_text("data", 4096);
  if (hub.has("listen")) out.listen = hub.shown_text("listen", 100);
  if (hub.has("speed")) {
    const auto speed = hub.need("speed").value<double>();
    if (!speed || !std::isfinite(*speed) || *speed <= 0) hub.wrong("speed", "is no number above 0");
    out.speed = *speed;
  }
  return out;
}

}  // namespace

OrFileError<HubFile> parse_hub_file(std::string_view toml, const std::string& file) {
  return or_stopped([&] { return read_document(toml, file); });
}

OrFileError<HubFile> read_hub_file(const std::string& path) {
  return parse_file(path, "hub file (TOML)",
                    [&](const std::string& text) { return parse_hub_file(text, path); });
}

}  // namespace floorwheel::files
