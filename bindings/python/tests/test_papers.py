# SPDX-License-Identifier: MIT
"""What README.md, the manual and the package's own words say that Python prints is what it prints."""
import contextlib
import doctest
import io
import re
import unittest

import tunnelside as ts
from tree import tree

TOP = tree("README.md", "man/tunnelside-python.7")


class Papers(unittest.TestCase):
    def test_readme(self):
        text = (TOP / "README.md").read_text(encoding="utf-8")
        programs = re.findall(r"^```python\n(.*?)^```$.*?^```text\n(.*?)^```$", text, re.M | re.S)
        self.assertTrue(programs)
        for program, promised in programs:
            printed = io.StringIO()
            with contextlib.redirect_stdout(printed):
                exec(compile(program, "README.md", "exec"), {"__name__": "__main__"})
            self.assertEqual(printed.getvalue(), promised)

    def test_package(self):
        result = doctest.testmod(ts)
        self.assertGreater(result.attempted, 2)
        self.assertEqual(result.failed, 0)

    def test_manual(self):
        page = (TOP / "man" / "tunnelside-python.7").read_text(encoding="utf-8")
        examples = "\n".join(re.findall(r"^\.Bd -literal -offset indent\n(.*?)^\.Ed$", page, re.M | re.S)).replace("\\e", "\\").replace("\\&", "")
        test = doctest.DocTestParser().get_doctest(examples, {}, "tunnelside-python.7", None, None)
        self.assertGreater(len(test.examples), 5)
        self.assertEqual(doctest.DocTestRunner(verbose=False).run(test).failed, 0)
        for name in re.findall(r"^\.Fn (\w+)", page, re.M):
            self.assertTrue(hasattr(ts, name) or hasattr(ts.Roll, name), name)


if __name__ == "__main__":
    unittest.main()
