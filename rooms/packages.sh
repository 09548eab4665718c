# What the two scripts need from Debian 12: `need NAME...` installs what is not there yet.

for_program='cmake ninja-build g++ libfmt-dev libtomlplusplus-dev libeigen3-dev libcgal-dev
  libcli11-dev nlohmann-json3-dev libexpected-dev pkg-config libcairo2-dev fonts-dejavu-core'
for_tests='catch2 ccache clang clang-format clang-tidy git python3 python3-jsonschema
  chromium libxml2-utils poppler-utils python3-ezdxf libgeos-dev libclang-rt-14-dev
  libbenchmark-dev libpolyclipping-dev groff-base fish zsh dpkg-dev'

missing_of() {
  for name; do
    dpkg-query -W -f='${Status}' "$name" 2>/dev/null | grep -q 'ok installed' || echo "$name"
  done
}

need() {
  missing=$(missing_of "$@" | tr '\n' ' ')
  [ -z "$missing" ] && return 0
  as_root=''
  if [ "$(id -u)" -ne 0 ]; then
    command -v sudo >/dev/null 2>&1 || {
      echo "These packages are missing, and there is no sudo to install them: $missing" >&2
      return 1
    }
    as_root='sudo'
  fi
  echo "Installing: $missing"
  $as_root env DEBIAN_FRONTEND=noninteractive apt-get update -qq &&
    $as_root env DEBIAN_FRONTEND=noninteractive \
      apt-get install -y -qq --no-install-recommends $missing >/dev/null
}
