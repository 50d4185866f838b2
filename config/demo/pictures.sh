#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Makes the pictures of README.md anew: plays the demo class off-screen and keeps one picture of each screen.
set -eu
root=$(cd "$(dirname "$0")/../.." && pwd)
env -u DISPLAY -u WAYLAND_DISPLAY sh "$root/kiosk/run" --speed 20
for pair in wall-move-one-on:wall touch-record:touch instructor-during:instructor desk-attendance:desk; do
  cp "$root/build/pictures/${pair%%:*}.png" "$root/config/demo/pictures/${pair##*:}.png"
done
