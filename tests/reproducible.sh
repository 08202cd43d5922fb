#!/bin/sh
# SPDX-License-Identifier: MIT
# A release builds to the same bytes whoever builds it, wherever and whenever: the tarball twice, then what it installs, built in two folders under other names,
# hours, umasks and languages. The compiler is told to leave the folder's name out of what helps a debugger, as distributions do. Everything is made in twice/.
set -eu

: "${MAKE:=make}"
rm -rf twice
mkdir twice
export SOURCE_DATE_EPOCH=1700000000

tarball() {
    (umask "$1" && "$MAKE" -s dist > twice/log 2>&1) || { cat twice/log; exit 1; }
    mv "$DISTDIR.tar.gz" "twice/$2.tar.gz"
}
tarball 022 first
tarball 077 second
cmp twice/first.tar.gz twice/second.tar.gz
echo "tarball: $(wc -c < twice/first.tar.gz) bytes, the same twice"

# installed FOLDER: builds there, and installs into twice/root-FOLDER.
installed() {
    mkdir -p "twice/$1"
    tar -xzf twice/first.tar.gz -C "twice/$1"
    root=$PWD/twice/root-$1
    (
        cd "twice/$1/$DISTDIR"
        ./configure -q --prefix=/usr CFLAGS="-O2 -g -ffile-prefix-map=$PWD=."
        "$MAKE" -s -j2
        "$MAKE" -s install DESTDIR="$root"
    ) > "twice/log-$1" 2>&1 || { tail -n 20 "twice/log-$1"; exit 1; }
}
installed one
(
    umask 002
    export TZ=Pacific/Chatham LC_ALL=C.UTF-8 HOME=/nowhere
    installed another_longer_name
)
diff -r twice/root-one twice/root-another_longer_name
echo "installed: $(find twice/root-one -type f | wc -l) files, the same twice"
