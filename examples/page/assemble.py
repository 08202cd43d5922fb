# SPDX-License-Identifier: MIT
"""Puts the page together as one file that fetches nothing, and beside it what a server hands out with it.

    assemble.py SCRIPTS SOURCE WASM OUT

SCRIPTS: the scripts, in their order; SOURCE: the folder of page.html and its style; WASM: core.c as WebAssembly; OUT: the folder that receives
    index.html               the page, whole
    manifest.webmanifest     for servers alone: how a phone shows it among its programs
    worker.js                for servers alone: keeps it for when there is no network
"""
import base64
import hashlib
import re
import sys
import zlib
from pathlib import Path

def source_of(allowed):
    return "'sha256-" + base64.b64encode(hashlib.sha256(allowed.encode("utf-8")).digest()).decode("ascii") + "'"


def main(given, source, wasm, out):
    folder = Path(source)
    core = base64.b64encode(zlib.compress(Path(wasm).read_bytes(), 9)).decode("ascii")
    scripts = [re.sub(r"^export ", "", Path(name).read_text(encoding="utf-8"), flags=re.MULTILINE) for name in given.split()]
    script = f'const CORE = "{core}";\n' + "\n".join(scripts)
    style = (folder / "page.css").read_text(encoding="utf-8")
    policy = ("default-src 'none'; script-src " + source_of(script) + " 'wasm-unsafe-eval'; style-src " + source_of(style)
              + "; img-src 'self' data:; manifest-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'")
    page = (folder / "page.html").read_text(encoding="utf-8")
    for mark, text in (("@POLICY@", policy), ("@STYLE@", style), ("@SCRIPT@", script)):
        page = page.replace(mark, text)
    Path(out).mkdir(parents=True, exist_ok=True)
    (Path(out) / "index.html").write_text(page, encoding="utf-8")
    worker = (folder / "worker.js").read_text(encoding="utf-8").replace("@VERSION@", hashlib.sha256(page.encode("utf-8")).hexdigest()[:16])
    (Path(out) / "worker.js").write_text(worker, encoding="utf-8")
    (Path(out) / "manifest.webmanifest").write_bytes((folder / "manifest.webmanifest").read_bytes())


if __name__ == "__main__":
    main(*sys.argv[1:])
