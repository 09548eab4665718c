#!/bin/sh
# Makes the Debian package, installs it into a Debian with nothing else in it, and tries it there:
# `sh tests/package.sh`. Wants root, debootstrap and Debian's archive; takes about three minutes.
set -eu
cd "$(dirname "$0")/.."
root=$PWD/build/clean-root

# ccache then knows the objects of the release build.
CCACHE_BASEDIR=$PWD
CCACHE_NOHASHDIR=1
export CCACHE_BASEDIR CCACHE_NOHASHDIR
cmake -S . -B build/package -G Ninja -DCMAKE_BUILD_TYPE=Release \
  -DCMAKE_COMPILE_WARNING_AS_ERROR=ON -DBUILD_TESTING=OFF
cmake --build build/package -j "$(nproc)"
(cd build/package && cpack -G DEB)
if [ ! -e "$root/etc/debian_version" ]; then
  debootstrap --variant=minbase bookworm "$root" http://deb.debian.org/debian
fi
cp build/package/nookfit_*.deb "$root/nookfit.deb"
# A slim Debian leaves out what stands in /usr/share/doc and man unless it is told not to.
rm -f "$root"/etc/dpkg/dpkg.cfg.d/*docker*

cat >"$root/try.sh" <<'TRY'
set -eu
export DEBIAN_FRONTEND=noninteractive LC_ALL=C.UTF-8 PATH=/usr/sbin:/usr/bin:/sbin:/bin
apt-get update -qq
apt-get remove -y -qq nookfit libcairo2 >/dev/null 2>&1 || true
apt-get install -y -qq --no-install-recommends /nookfit.deb >/dev/null
nookfit --version
rooms=/usr/share/doc/nookfit/rooms
for job in lookout window-bench corner-desk; do
  status=0
  nookfit check $rooms/$job --quiet || status=$?
  [ "$status" -le 1 ] || { echo "check of $job ended with $status"; exit 1; }
done
status=0
nookfit sheet $rooms/lookout -o /tmp/sheets --quiet || status=$?
[ "$status" -le 1 ] && ls /tmp/sheets/*.pdf >/dev/null
for file in man/man1/nookfit.1 bash-completion/completions/nookfit fish/vendor_completions.d/nookfit.fish \
  zsh/vendor-completions/_nookfit doc/nookfit/manual.md doc/nookfit/copyright; do
  [ -s "/usr/share/$file" ] || { echo "/usr/share/$file is missing"; exit 1; }
done
apt-get remove -y -qq nookfit >/dev/null
[ ! -e /usr/bin/nookfit ] && [ ! -e /usr/share/doc/nookfit ]
TRY
chroot "$root" sh /try.sh
echo 'package: installed, tried and removed'
