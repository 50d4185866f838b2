# SPDX-License-Identifier: GPL-3.0-or-later
# Sourced by tests/run --long after the short run: what takes too long for every day.

say "clang-tidy"
# Configured only, and without precompiled headers: those of GCC are none to clang.
cmake -S "$root" -B "$root/build-tidy" -G Ninja -DCMAKE_BUILD_TYPE=Debug -DCMAKE_DISABLE_PRECOMPILE_HEADERS=ON >/dev/null
find "$root/scheduler" "$root/kiosk" -name '*.cpp' -print0 |
  xargs -0 -P2 -n4 clang-tidy-14 -p "$root/build-tidy" --quiet

say "ThreadSanitizer: hub, store and wire"
build build-threads Debug all -DFLOORWHEEL_THREAD_SANITIZE=ON -DCMAKE_CXX_FLAGS_DEBUG="-O1 -g1"
(cd "$root/build-threads" && ctest --output-on-failure --no-tests=error -R 'tst_(hub|store|wire)' "$@")

say "The long rows: the same tests with a hundred times the cases"
(cd "$root/build-checked" && FLOORWHEEL_LONG=1 ctest --output-on-failure --no-tests=error --timeout 7200 "$@")

say "The planner beside general solvers, and its own limits"
build build RelWithDebInfo bench_peers -DFLOORWHEEL_BENCH=ON
"$root/build/bench/bench_peers" --limit 60
