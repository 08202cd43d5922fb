# SPDX-License-Identifier: MIT
"""Writes what tells Python's tools that make installed the package: distinfo.py VERSION LICENSE FOLDER, which becomes FOLDER/tunnelside-VERSION.dist-info.

Without a list of files, which the specification of recorded installations leaves to those who manage them: pip then names the package and its version, and
will not take it away, which `make uninstall` does.
"""
import re
import shutil
import sys
from pathlib import Path

HERE = Path(__file__).resolve().parent


def metadata(version):
    project = (HERE / "pyproject.toml").read_text(encoding="utf-8")
    said = dict(re.findall(r'^([\w-]+) = "(.*)"$', project, re.M))
    lines = ["Metadata-Version: 2.4", f"Name: {said['name']}", f"Version: {version}", f"Summary: {said['description']}", "License-Expression: MIT", "License-File: LICENSE"]
    lines += [f"Classifier: {one}" for one in re.findall(r'^    "(.* :: .*)",$', project, re.M)]
    lines += [f"Requires-Python: {said['requires-python'].replace(' ', '')}", "Description-Content-Type: text/markdown", ""]
    return "\n".join(lines) + "\n" + (HERE / said["readme"]).read_text(encoding="utf-8")


def main(version, licence, folder):
    place = Path(folder) / f"tunnelside-{version}.dist-info"
    (place / "licenses").mkdir(parents=True, exist_ok=True)
    (place / "METADATA").write_text(metadata(version), encoding="utf-8")
    (place / "INSTALLER").write_text("make\n", encoding="utf-8")
    shutil.copyfile(licence, str(place / "licenses" / "LICENSE"))


if __name__ == "__main__":
    main(*sys.argv[1:])
