# SPDX-License-Identifier: GPL-3.0-or-later
# Sourced by kiosk/run and tests/run: installs what config/packages.txt lists and builds, saying what it does
# and doing nothing twice. Expects $root, the folder of the README.

say() { printf '\n== %s\n' "$*"; }
die() { printf '%s\n' "$*" >&2; exit 2; }

# Runs a command as root: as it is, or with sudo where we are somebody else.
as_root() {
  if [ "$(id -u)" = 0 ]; then "$@"
  elif command -v sudo >/dev/null 2>&1; then sudo "$@"
  else die "This needs packages and so root: run it as root, or install sudo. Missing: $missing"
  fi
}

# install_packages LIST...: every package named in these files that is not installed yet.
install_packages() {
  command -v apt-get >/dev/null 2>&1 || die "This installs its packages with apt-get: it is made for Debian 12 (bookworm)."
  missing=
  for package in $(cat "$@" | sed 's/#.*//'); do
    case "$(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null)" in
      installed) ;;
      *) missing="$missing $package" ;;
    esac
  done
  if [ -z "$missing" ]; then
    say "Packages: all there"
    return
  fi
  say "Packages: installing$missing"
  as_root apt-get update -q
  # shellcheck disable=SC2086 # a list of words
  as_root env DEBIAN_FRONTEND=noninteractive apt-get install -q -y --no-install-recommends \
    -o DPkg::Lock::Timeout=120 -o Dpkg::Use-Pty=0 $missing
}

# build FOLDER TYPE TARGETS OPTION...: configures once, then builds what changed; ninja shows the progress.
build() {
  export CCACHE_SLOPPINESS=pch_defines,time_macros # or ccache takes no file with precompiled headers
  folder=$1; type=$2; targets=$3; shift 3
  say "Building into $folder (about 5 minutes the first time on two cores)"
  cmake -S "$root" -B "$root/$folder" -G Ninja -DCMAKE_BUILD_TYPE="$type" \
    -DCMAKE_CXX_COMPILER_LAUNCHER=ccache "$@" >"$root/$folder.log" 2>&1 || { cat "$root/$folder.log" >&2; exit 2; }
  mv "$root/$folder.log" "$root/$folder/configure.log"
  # shellcheck disable=SC2086 # a list of words
  cmake --build "$root/$folder" --target $targets
}
