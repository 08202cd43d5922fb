# SPDX-License-Identifier: MIT
"""
Builds the package with pip: the C sources are compiled into the extension module, so that no library need be installed.

From git, SWIG makes the wrapper; a release has it already. The version is configure.ac's, and in a source distribution the one that was written then.
A wrapper of SWIG 4.2 or newer asks no more of Python than its stable interface has from 3.11 on (buffers came last): one wheel then serves all from there.
"""
import os
import re
import shutil
import subprocess
import sys
import sysconfig
from pathlib import Path

import setuptools
from setuptools import Extension, setup
from setuptools.command.build_ext import build_ext
from setuptools.command.build_py import build_py
from setuptools.command.sdist import sdist

HERE = Path(__file__).resolve().parent
os.chdir(HERE)
# A source distribution carries the C library in a folder of its own.
TOP = HERE / "c" if (HERE / "c").is_dir() else HERE.parent.parent
INCLUDE = TOP / "include"
# What a source distribution carries of the tree: the library, and what the tests read.
CARRIED = ["lib/**/*.[ch]", "include/**/*.h", "include/**/*.in", "tests/data/*.csv", "examples/*.py", "examples/*.csv", "examples/*.json", "examples/batch/*", "examples/sites/*", "man/*.7",
           "README.md", "configure.ac"]
MADE = ["core_wrap.c", "tunnelside/_api.py", "tunnelside/_api.pyi", "tunnelside/_core.pyi", "tunnelside/_names.py", "tunnelside/_version.py"]


def version():
    configure = TOP / "configure.ac"
    if configure.exists():
        return re.search(r"AC_INIT\(\[libtunnelside\], \[([^]]+)\]", configure.read_text(encoding="utf-8"))[1]
    return re.search(r'"(.*)"', (HERE / "tunnelside" / "_version.py").read_text(encoding="utf-8"))[1]


def outdated():
    sources = [HERE / name for name in ("generate.py", "records.py", "core.i", "core_module.c", "core_hints.pyi")] + [*HERE.glob("core_*.h"), INCLUDE / "headers2records", *INCLUDE.rglob("*.awk"), *INCLUDE.rglob("*.h")]
    sources = [path for path in sources if path.name != "version.h"]
    made = [HERE / name for name in MADE]
    return not all(path.exists() for path in made) or min(path.stat().st_mtime for path in made) < max(path.stat().st_mtime for path in sources)


def make():
    """The wrapper and the Python names, where they are not there, or older than what they are made from."""
    if (HERE / "c").is_dir() or not outdated():
        return
    swig = shutil.which("swig") or shutil.which("swig4.0")
    if not swig:
        sys.exit("tunnelside: building from git needs SWIG 4 (Debian: apt-get install swig); a release has its wrapper and does not")
    topics = sorted(path for path in (INCLUDE / "tunnelside").iterdir() if path.suffix in (".h", ".in") and path.name != "version.h")
    with open("interface.tsv", "w", encoding="utf-8") as records:
        subprocess.run(["sh", INCLUDE / "headers2records", INCLUDE / "tunnelside.h", *topics], stdout=records, check=True)
    subprocess.run([sys.executable, "generate.py", "interface.tsv", version(), "."], check=True)
    subprocess.run([swig, "-python", "-noproxy", "-o", "core_wrap.c", "core.i"], check=True)
    for name in MADE:
        os.utime(name)


def version_header(folder):
    """What configure makes of version.h.in."""
    text = (INCLUDE / "tunnelside" / "version.h.in").read_text(encoding="utf-8")
    parts = dict(zip(("VERSION_MAJOR", "VERSION_MINOR", "VERSION_PATCH"), version().split(".")), PACKAGE_VERSION=version())
    for name, value in parts.items():
        text = text.replace(f"@{name}@", value)
    path = Path(folder) / "include" / "tunnelside" / "version.h"
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")
    return str(path.parent.parent)


def licence():
    """The licence as today's metadata have it, or as setuptools before 77 knew it; its text beside this file, where both look for it."""
    if (TOP / "LICENSE").exists():
        shutil.copyfile(TOP / "LICENSE", HERE / "LICENSE")
    return {"license_expression" if int(setuptools.__version__.split(".")[0]) >= 77 else "license": "MIT"}


def stable():
    """Whether the wrapper, and this Python, have the stable interface, as a build without the interpreter's lock has not."""
    found = re.search(r"Version (\d+)\.(\d+)", (HERE / "core_wrap.c").read_text(encoding="utf-8")[:400])
    swig = tuple(map(int, found.groups())) if found else (0, 0)
    return swig >= (4, 2) and sys.version_info >= (3, 11) and sys.implementation.name == "cpython" and not sysconfig.get_config_var("Py_GIL_DISABLED")


def exports(folder):
    """What tells the linker that nothing but the module's entry leaves it, so that no other library can answer in the place of what is within."""
    if sys.platform == "darwin":
        return ["-Wl,-exported_symbol,_PyInit__core"]
    if os.name != "posix":
        return []
    path = Path(folder) / "exports.map"
    path.write_text("{ global: PyInit__core; local: *; };\n", encoding="utf-8")
    return [f"-Wl,--version-script={path}"]


def exact(command):
    """What makes this compiler reckon in doubles, as configure finds it out: 32-bit x86 has wider registers."""
    for flags in ([], ["-msse2", "-mfpmath=sse"]):
        asked = [*command, *flags, "-E", "-x", "c", str(TOP / "lib" / "base" / "doubles.h")]
        if subprocess.run(asked, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL).returncode == 0:
            return flags
    return []  # doubles.h says why not


class Build(build_ext):
    def build_extension(self, extension):
        # By their full names: objects of sources outside this folder would else lie outside the build's. Only while they are compiled: an editable
        # installation lists the sources, and will not have such names.
        listed = extension.sources
        extension.sources = ["core_module.c"] + [str(path) for path in sorted((TOP / "lib").glob("*/*.c"))]
        extension.include_dirs = [version_header(self.build_temp), os.path.relpath(INCLUDE), os.path.relpath(TOP / "lib"), "."]
        if self.compiler.compiler_type != "msvc":
            # Without fused multiply-add the results are the same bits on all machines; the library never reads errno.
            extension.extra_compile_args = ["-ffp-contract=off", "-fno-math-errno", "-O3", "-fvisibility=hidden", *exact(self.compiler.compiler_so)]
        extension.extra_link_args = exports(self.build_temp)
        super().build_extension(extension)
        extension.sources = listed


class Modules(build_py):
    def run(self):
        make()
        super().run()


class Source(sdist):
    def run(self):
        make()
        super().run()

    def make_release_tree(self, base_dir, files):
        super().make_release_tree(base_dir, files)
        shutil.rmtree(Path(base_dir) / "c", ignore_errors=True)
        for pattern in CARRIED:
            for path in sorted(TOP.glob(pattern)):
                target = Path(base_dir) / "c" / path.relative_to(TOP)
                if path.name not in ("version.h", "tunnelside.pc.in"):
                    target.parent.mkdir(parents=True, exist_ok=True)
                    shutil.copyfile(path, target)


make()
setup(
    version=version(),
    packages=["tunnelside", "tunnelside.tests", "tunnelside.bench"],
    package_dir={"tunnelside.tests": "tests", "tunnelside.bench": "bench"},
    package_data={"tunnelside": ["py.typed", "*.pyi"]},
    ext_modules=[Extension("tunnelside._core", ["core_module.c"], libraries=["m"] if os.name == "posix" else [], py_limited_api=stable(),
                           define_macros=[("Py_LIMITED_API", "0x030B0000")] if stable() else [])],
    options={"bdist_wheel": {"py_limited_api": "cp311"}} if stable() else {},
    **licence(),
    cmdclass={"build_ext": Build, "build_py": Modules, "sdist": Source},
)
