#!/bin/sh
# SPDX-License-Identifier: MIT
# The library's symbols bear the number of its soname, and so two sonames live in one process: a plugin that was built for this library
# runs this library's code, though another soname of it was loaded first, and for all to see.
set -eu

if test "$VERSION_SCRIPT" != yes; then
    echo "SKIPPED: this linker has no versions of symbols"
    exit 0
fi

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
failed=0

# version_node CURRENT AGE: what make writes for these numbers.
version_node() {
    $MAKE -s version_map="$work/map" LIB_CURRENT="$1" LIB_AGE="$2" "$work/map" > /dev/null
    sed -n '1s/ {$//p' "$work/map"
    mv "$work/map" "$work/map.$1"
}
# By libtool's rules the soname's number is CURRENT - AGE.
for numbers in 0:0:0 1:1:0 7:2:5; do
    current=${numbers%%:*}
    age=${numbers#*:}
    got=$(version_node "$current" "${age%:*}")
    test "$got" = "TUNNELSIDE_${numbers##*:}" || { echo "CURRENT:AGE $current:${age%:*}: the symbols bear $got, the soname ${numbers##*:}"; failed=1; }
done

shared=lib/.libs/libtunnelside.so
test -e $shared || { echo "SKIPPED the rest: no shared library"; exit $failed; }
soname=$($OBJDUMP -p $shared | awk '$1 == "SONAME" { print $2 }')
nodes=$($NM -D -g --defined-only $shared | sed -n 's/.* T .*@//p' | sort -u)
test "$nodes" = "TUNNELSIDE_${soname##*.so.}" || { echo "soname $soname, but its symbols bear: $nodes"; failed=1; }

# A later soname that says so, a plugin for each, and a program that loads the later one first, for all to see.
mkdir "$work/lib"
cp "$shared" "$work/lib/$soname"
ln -s "$soname" "$work/lib/libtunnelside.so"
echo 'const char *tside_version(void); const char *tside_version(void) { return "later"; }' > "$work/later.c"
$CC $CFLAGS -fPIC -shared -Wl,--version-script="$work/map.7" -Wl,-soname,libtunnelside.so.5 -o "$work/lib/libtunnelside.so.5" "$work/later.c"
for plugin in this later; do
    echo "const char *tside_version(void); const char *${plugin}_asks(void); const char *${plugin}_asks(void) { return tside_version(); }" > "$work/$plugin-plugin.c"
done
$CC $CFLAGS -fPIC -shared -Wl,-rpath,"$work/lib" -o "$work/this.so" "$work/this-plugin.c" "$work/lib/$soname"
$CC $CFLAGS -fPIC -shared -Wl,-rpath,"$work/lib" -o "$work/later.so" "$work/later-plugin.c" "$work/lib/libtunnelside.so.5"
cat > "$work/host.c" << 'END'
#include <dlfcn.h>
#include <stdio.h>

int main(int count, char **plugin)
{
    for (int i = 1; i + 1 < count; i += 2) {
        void *handle = dlopen(plugin[i], RTLD_NOW | RTLD_GLOBAL);
        const char *(*asks)(void) = handle ? (const char *(*)(void))dlsym(handle, plugin[i + 1]) : NULL;
        if (!asks)
            return fprintf(stderr, "%s\n", dlerror()), 1;
        puts(asks());
    }
    return 0;
}
END
$CC $CFLAGS -o "$work/host" "$work/host.c" -ldl
got=$("$work/host" "$work/later.so" later_asks "$work/this.so" this_asks | tr '\n' ' ')
version=$(sed -n 's/^#define TSIDE_VERSION "\(.*\)"/\1/p' include/tunnelside/version.h)
test "$got" = "later $version " || { echo "the plugins of the later soname and of this one ask for the version, and hear: $got"; failed=1; }

test $failed = 0 || exit 1
echo "symbols of $soname bear $nodes; two sonames in one process each run their own code"
