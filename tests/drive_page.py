# SPDX-License-Identifier: MIT
"""The page in a real browser: a house typed as a fitter types it, against the program; what is kept, lost, refused, printed; hostile files and links."""
import base64
import functools
import html.parser
import http.server
import json
import math
import os
import re
import shutil
import subprocess
import tempfile
import threading
import time
import unittest
import zlib
from fractions import Fraction
from pathlib import Path

from selenium import webdriver
from selenium.webdriver.chrome.service import Service
from selenium.webdriver.common.by import By
from selenium.webdriver.support.ui import Select, WebDriverWait

TREE, BUILD = Path(os.environ["top_srcdir"]).resolve(), Path(os.environ["BUILD"])
SITE, PROGRAM, ORDERER = BUILD / "examples" / "page" / "site", BUILD / "examples" / "tunnelside-plan", BUILD / "examples" / "tunnelside-order"
SHOTS = os.environ.get("PAGE_SHOTS")  # a folder for pictures of the page, to look at
FILM = json.loads((TREE / "examples" / "sites" / "film30.json").read_text(encoding="utf-8"))


# Of every text that is shown, in the sheet too: its colour, what lies behind it, and the words.
TEXTS = """
    const all = root => [...root.querySelectorAll("*")].flatMap(one => one.shadowRoot ? [one, ...all(one.shadowRoot)] : [one]);
    const own = one => [...one.childNodes].filter(node => node.nodeType === Node.TEXT_NODE).map(node => node.data.trim()).join("");
    const ground = one => {
        const colour = getComputedStyle(one).backgroundColor, above = one.parentElement ?? one.getRootNode().host;
        return /^rgba.*, 0\\)$/.test(colour) && above ? ground(above) : colour;
    };
    return all(document).filter(one => own(one) && one.getClientRects().length && !(one instanceof SVGElement) && !one.matches("option, style, script"))
        .map(one => [getComputedStyle(one).color, ground(one), own(one)]);
"""


def words_of(text):
    """All words of HTML, without its head and its drawings."""
    class Words(html.parser.HTMLParser):
        out, skip = [], 0

        def handle_starttag(self, tag, attributes):
            self.skip += tag in ("head", "header", "svg", "caption")

        def handle_endtag(self, tag):
            self.skip -= tag in ("head", "header", "svg", "caption")

        def handle_data(self, data):
            if not self.skip:
                self.out.extend(data.split())

    parser = Words()
    parser.out = []
    parser.feed(text)
    return "".join(parser.out)


class Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, *_):
        pass


class Page(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.mkdtemp()
        cls.server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(Quiet, directory=str(SITE)))
        threading.Thread(target=cls.server.serve_forever, daemon=True).start()
        cls.served = f"http://127.0.0.1:{cls.server.server_address[1]}/"
        cls.file = (SITE / "index.html").as_uri()

    @classmethod
    def tearDownClass(cls):
        if cls.driver:
            cls.driver.quit()
        cls.server.shutdown()
        shutil.rmtree(cls.folder, ignore_errors=True)

    driver = None

    def browser(self, width=360, height=800):
        """The browser that all tests share, as if it were a new one."""
        if not Page.driver:
            Page.driver = self.new_browser()
        driver = Page.driver
        self.addCleanup(self.clear, driver)
        return self.sized(driver, width, height)

    def clear(self, driver):
        for window in driver.window_handles[1:]:
            driver.switch_to.window(window)
            driver.close()
        driver.switch_to.window(driver.window_handles[0])
        driver.execute_script("localStorage.clear(); location.href = 'about:blank'")
        driver.execute_cdp_cmd("Emulation.setEmulatedMedia", {"features": []})
        driver.get_log("browser")

    def sized(self, driver, width, height):
        driver.execute_cdp_cmd("Emulation.setDeviceMetricsOverride", {"width": width, "height": height, "deviceScaleFactor": 1, "mobile": False})
        return driver

    def new_browser(self):
        options = webdriver.ChromeOptions()
        for one in ("--headless=new", "--no-sandbox", "--disable-gpu", "--hide-scrollbars"):
            options.add_argument(one)
        options.set_capability("goog:loggingPrefs", {"browser": "ALL"})
        options.add_experimental_option("prefs", {"download.default_directory": self.folder})
        return webdriver.Chrome(service=Service(shutil.which("chromedriver")), options=options)

    def browser_of_its_own(self):
        driver = self.sized(self.new_browser(), 360, 800)
        self.addCleanup(driver.quit)
        return driver

    def go(self, driver, address=None):
        driver.get(address or self.file)
        self.ready(driver)
        return driver

    def ready(self, driver):
        WebDriverWait(driver, 30).until(lambda d: d.execute_script("return document.documentElement.dataset.ready"))

    def part(self, driver, name):
        driver.find_element(By.CSS_SELECTOR, f"[data-part={name}]").click()

    def shot(self, driver, name):
        if SHOTS:
            driver.save_screenshot(str(Path(SHOTS) / f"{name}.png"))

    def press(self, driver, within, words):
        for one in driver.find_elements(By.CSS_SELECTOR, f"{within} button"):
            if one.text == words:
                one.click()
                return
        self.fail(f"no button {words} in {within}")

    def question(self, driver):
        found = driver.find_elements(By.CSS_SELECTOR, "#question label, #question h2")
        return found[0].text if found else ""

    def kept(self, driver):
        """What the page keeps of the side that is open."""
        return json.loads(driver.execute_script("return localStorage.getItem('roll-up-side:side:' + localStorage.getItem('roll-up-side:last'))"))

    def put(self, driver, file, number="77"):
        """A side on the device, as if it had been typed before."""
        driver.execute_script("localStorage.setItem('roll-up-side:side:' + arguments[1], arguments[0]); localStorage.setItem('roll-up-side:last', arguments[1])", json.dumps(file), number)
        driver.refresh()
        self.ready(driver)

    def paper(self, driver):
        return driver.execute_script("return document.getElementById('paper').shadowRoot.innerHTML")

    def program(self, file, form="html", program=PROGRAM):
        path = Path(self.folder) / "typed.json"
        path.write_text(json.dumps(file), encoding="utf-8")
        return subprocess.run([program, f"--format={form}", path], capture_output=True, text=True, check=True).stdout

    def turns(self, driver, file):
        """The page's turn table against the numbers that the program gives to other programs, to the last digit that the page shows."""
        told = json.loads(self.program(file, "json"))["sides"][0]["turns"]
        tables = driver.execute_script("return [...document.getElementById('paper').shadowRoot.querySelectorAll('table')].map(table => [...table.rows].map(row => [...row.cells].map(cell => cell.textContent)))")
        shown = next(table[-len(told):] for table in tables if table[0][0].strip() == "turns" and len(table) > len(told))
        inch, units = 0.0254, {"turn": 1, "torque": 0.45359237 * 9.80665 * 0.3048, "lean": math.pi / 180}
        for cells, row in zip(shown, told):
            for cell, name in zip(cells, ("turn", "taken_up", "total", "diameter", "underside", "opening", "torque", "lean"), strict=True):
                whole, _, part = cell.replace("\xa0", " ").rpartition(" ") if "/" in cell else (cell, "", "0")
                step = 1 / 16 if "/" in cell else 10**-len(whole.partition(".")[2])
                self.assertAlmostEqual(float(whole or 0) + float(Fraction(part)), row[name]["value"] / units.get(name, inch), delta=0.5000001 * step, msg=(name, row["turn"]))

    def complaints(self, driver):
        return [one["message"] for one in driver.get_log("browser") if one["level"] == "SEVERE" and "inline style" not in one["message"]]

    # --- a house, as typed ---

    def answer(self, driver, words):
        """Answers the question on the screen: by the page's own keys where it has them."""
        field = driver.find_element(By.ID, "answer")
        if field.tag_name == "select":
            Select(field).select_by_value(words)
            return 1
        if not driver.find_elements(By.CSS_SELECTOR, "#keys button"):
            field.send_keys(words)
            return len(words)
        field.click()
        parts, presses = re.findall(r" (?:\d+/16|\d+/8|\d+/4|\d+/2) in$| ?(?:ft|in|mm|m)\b|.", words), 1
        for one in parts:
            key = one.strip() or "Gap"
            if re.fullmatch(r" \d+/\d+ in", one):
                self.press(driver, "#keys", "n/16")
                key = key.removesuffix(" in")
                presses += 1
            if key in [button.text for button in driver.find_elements(By.CSS_SELECTOR, "#keys button")]:
                self.press(driver, "#keys", key)
            else:
                field.send_keys(one)
            presses += 1
        return presses

    def test_a_house_typed_from_start_to_finish(self):
        driver = self.go(self.browser())
        answers = {
            "what this side is called": "House 20 ft wide, west side", "hand of the side": "left", "width of the whole tunnel": "20 ft", "height at which the plumb leg ends": "4 ft 6 in",
            "height of the bow's peak": "10 ft 6 in", "height of the curtain's fixing": "4 ft", "height down to which the wall opens": "1 ft 2 in",
            "side over the outside": "1 1/2 in", "height of the end wall's member": "3 ft", "member's outer end": "9 ft 6 in", "length along the side": "72 ft", "joints along the bar": "3",
        }
        sizes = {"frame": ("1.9 in", "0.083 in"), "guide": ("1.66 in", "0.095 in"), "bar": ("1.315 in", "0.083 in"), "extender": ("", "0.12 in")}
        pressed, screens, order = 0, 0, iter(["frame", "guide", "bar", "guide"])
        group = None
        for _ in range(120):
            words, path = self.question(driver), driver.find_element(By.CSS_SELECTOR, "#answer, #question button")
            text = re.sub(r"^[A-Z]{1,2} ", "", words)
            typed = next((value for key, value in answers.items() if value and key in text), None)
            if text.startswith("true diameter"):
                group = next(order)
                typed = sizes[group][0]
            elif text.startswith("side over"):
                group = "extender"
            elif text == "wall":
                typed = sizes[group][1]
            if typed and path.get_attribute("id") == "answer":
                pressed += self.answer(driver, typed)
            screens += 1
            following = driver.find_element(By.ID, "ask-next")
            if not following.is_enabled():
                break
            following.click()
        state = driver.find_element(By.ID, "state").text
        self.shot(driver, "typed")
        self.assertRegex(state, r"^\d+\.\d turns; ", driver.find_element(By.ID, "question").text)
        file = self.kept(driver)
        self.assertEqual(file["hand"], "left")
        self.assertEqual(file["bar"]["splices"], 3)
        self.part(driver, "see")
        self.shot(driver, "sheet")
        self.assertEqual(words_of(self.paper(driver)), words_of(self.program(file)), "the page's sheet is not the program's")
        self.turns(driver, file)
        self.part(driver, "work")
        self.shot(driver, "work")
        self.assertIn("Mark the bow's hole", driver.find_element(By.ID, "step").text)
        figures = driver.find_elements(By.CSS_SELECTOR, "#step dd")
        self.assertTrue(figures and all(float(one.value_of_css_property("font-size")[:-2]) >= 32 for one in figures))
        print(f"a house typed: {pressed} taps and keys, {screens} screens")
        self.assertEqual(self.complaints(driver), [])

    # --- what is kept ---

    def test_nothing_typed_is_lost_through_a_reload(self):
        driver = self.go(self.browser())
        for _ in range(4):
            driver.find_element(By.ID, "ask-next").click()
        self.answer(driver, "20 f")
        before = self.question(driver)
        driver.refresh()
        self.ready(driver)
        self.assertEqual(self.question(driver), before)
        self.assertEqual(driver.find_element(By.ID, "answer").get_attribute("value"), "20 f")
        self.put(driver, FILM)
        self.part(driver, "work")
        for _ in range(3):
            driver.find_element(By.ID, "work-next").click()
        step = driver.find_element(By.ID, "step").text
        driver.refresh()
        self.ready(driver)
        self.assertEqual(driver.find_element(By.ID, "step").text, step)

    def test_a_half_typed_answer_keeps_the_last_plan_and_names_it_old(self):
        driver = self.go(self.browser())
        self.put(driver, FILM)
        for _ in range(4):
            driver.find_element(By.ID, "ask-next").click()
        self.assertIn("width of the whole tunnel", self.question(driver))
        field = driver.find_element(By.ID, "answer")
        field.clear()
        field.send_keys("30 f")
        self.assertEqual(driver.find_element(By.ID, "fault").text, "", "a fault before the field is left")
        self.assertIn("the plan shown is old", driver.find_element(By.ID, "state").text)
        before = driver.find_element(By.ID, "ask-next").location
        driver.execute_script("document.getElementById('answer').blur()")
        lit = driver.execute_script("const box = document.querySelector('.lit').getBoundingClientRect(), picture = document.getElementById('picture').getBoundingClientRect(); return [box.x, box.y, box.right, box.bottom, picture.x, picture.y, picture.right, picture.bottom]")
        self.assertTrue(lit[0] >= lit[4] and lit[1] >= lit[5] and lit[2] <= lit[6] and lit[3] <= lit[7], lit)
        self.assertIn("no such unit", driver.find_element(By.ID, "fault").text)
        self.assertEqual(driver.find_element(By.ID, "ask-next").location, before, "something moved under the thumb")
        self.shot(driver, "fault")
        self.part(driver, "see")
        self.assertTrue(driver.find_element(By.ID, "see-old").is_displayed())
        self.assertIn("AFX1", self.paper(driver))

    def test_an_answer_typed_over_is_brought_back(self):
        driver = self.go(self.browser())
        self.put(driver, FILM)
        for _ in range(4):
            driver.find_element(By.ID, "ask-next").click()
        undo = lambda: driver.find_element(By.ID, "ask-undo")
        self.assertFalse(undo().is_enabled())
        width = FILM["frame"]["width"]
        before = driver.find_element(By.ID, "ask-next").location, undo().location
        field = driver.find_element(By.ID, "answer")
        field.clear()
        field.send_keys("31 fo")
        self.assertEqual((driver.find_element(By.ID, "ask-next").location, undo().location), before, "something moved under the thumb")
        self.assertEqual(undo().get_attribute("aria-label"), f"Bring back {width}")
        self.assertIn(f"It was {width}.", driver.find_element(By.ID, "close").text)
        driver.find_element(By.ID, "ask-next").click()
        self.assertFalse(undo().is_enabled(), "another question's answer")
        driver.find_element(By.ID, "ask-back").click()
        driver.refresh()
        self.ready(driver)
        undo().click()
        self.assertEqual(driver.find_element(By.ID, "answer").get_attribute("value"), width)
        self.assertEqual(self.kept(driver), FILM)
        self.assertEqual(undo().get_attribute("aria-label"), "Bring back 31 fo")
        undo().click()
        self.assertEqual(self.kept(driver)["frame"]["width"], "31 fo")
        undo().click()
        for _ in range(2):
            driver.find_element(By.ID, "ask-back").click()
        self.assertIn("hand", self.question(driver))
        Select(driver.find_element(By.ID, "answer")).select_by_value("left")
        undo().click()
        self.assertEqual(self.kept(driver)["hand"], "right")

    def test_the_picture_grows_with_the_answers(self):
        driver = self.go(self.browser())
        drawn = lambda: driver.execute_script("return document.querySelector('#part svg')?.outerHTML ?? ''")
        self.assertIn("<line", drawn(), "no picture before the first answer")
        for _ in range(4):
            driver.find_element(By.ID, "ask-next").click()
        self.assertEqual(drawn(), "") # a tape's place is shown
        self.answer(driver, "12 ft")
        while "true diameter" not in self.question(driver):
            driver.find_element(By.ID, "ask-next").click()
        narrow = drawn()
        self.assertIn("<line", narrow)
        while "width of the whole tunnel" not in self.question(driver):
            driver.find_element(By.ID, "ask-back").click()
        field = driver.find_element(By.ID, "answer")
        field.clear()
        field.send_keys("30 ft")
        while "true diameter" not in self.question(driver):
            driver.find_element(By.ID, "ask-next").click()
        self.assertNotEqual(drawn(), narrow)

    def test_two_tabs_on_one_side(self):
        driver = self.go(self.browser(), self.served)
        self.put(driver, FILM)
        driver.switch_to.new_window("tab")
        self.go(driver, self.served)
        self.assertIn("another tab", driver.find_element(By.ID, "told").text)
        driver.execute_script("const field = document.getElementById('answer'); field.disabled = false; field.value = 'overwritten'; field.dispatchEvent(new Event('input'))")
        self.assertEqual(self.kept(driver)["name"], FILM["name"])

    def test_a_tab_that_died_holds_nothing_for_long(self):
        driver = self.go(self.browser())
        self.put(driver, FILM)
        driver.execute_script("setInterval = () => 0; addEventListener('pagehide', () => localStorage.setItem('roll-up-side:held:77', JSON.stringify({tab: 'dead', time: Date.now()})))")
        driver.refresh()
        self.ready(driver)
        self.assertIn("another tab", driver.find_element(By.ID, "told").text)
        WebDriverWait(driver, 20).until(lambda d: d.find_element(By.ID, "told").text == "")
        self.assertTrue(driver.find_element(By.ID, "answer").is_enabled())

    def test_what_another_tab_kept_meanwhile_is_not_overwritten(self):
        driver = self.go(self.browser())
        self.put(driver, FILM)
        driver.execute_script("localStorage.removeItem('roll-up-side:held:77'); localStorage.setItem('roll-up-side:side:77', JSON.stringify({name: 'newer'})); const field = document.getElementById('answer'); field.value = 'stale'; field.dispatchEvent(new Event('input'))")
        self.assertEqual(self.kept(driver)["name"], "newer")
        WebDriverWait(driver, 20).until(lambda d: d.find_element(By.ID, "answer").get_attribute("value") == "newer")

    def test_without_storage_it_says_so(self):
        driver = self.browser_of_its_own()
        driver.execute_cdp_cmd("Page.addScriptToEvaluateOnNewDocument", {"source": "Object.defineProperty(window, 'localStorage', { get() { throw new Error('none') } })"})
        self.go(driver)
        self.assertIn("keeps nothing", driver.find_element(By.ID, "told").text)
        self.part(driver, "keep")
        self.assertIn("save a file after each part", driver.find_element(By.ID, "keep").text)

    def test_a_viewer_that_runs_no_script_says_what_to_do(self):
        driver = self.browser_of_its_own()
        driver.execute_cdp_cmd("Emulation.setScriptExecutionDisabled", {"value": True})
        driver.get(self.file)
        self.assertIn("open it in a browser", driver.find_element(By.TAG_NAME, "body").text)

    def test_full_storage_is_said(self):
        # For a while after its storage was filled, Chromium may give a page that is reloaded what was kept there earlier (4 of 652 reloads; of 2736 without, none).
        driver = self.browser_of_its_own()
        self.go(driver)
        driver.execute_script("localStorage.setItem('filler', 'x'.repeat(1)); try { for (let n = 1 << 22; n > 0; n >>= 1) try { localStorage.setItem('filler', localStorage.getItem('filler') + 'x'.repeat(n)) } catch {} } catch {}")
        self.answer(driver, "a name that is longer than what is left")
        self.assertIn("no more room", driver.find_element(By.ID, "told").text)

    # --- the order ---

    def test_the_order_is_the_programs(self):
        driver = self.go(self.browser())
        for name, file in (("order", FILM), ("order-of-a-job", json.loads((TREE / "examples" / "sites" / "two_sides_job.json").read_text(encoding="utf-8")))):
            self.put(driver, file)
            self.part(driver, "see")
            self.assertNotIn("BUY", self.paper(driver), "an order is made before it is asked for")
            Select(driver.find_element(By.ID, "page")).select_by_value("order")
            self.shot(driver, name)
            told, path = self.program(file, program=ORDERER), Path(self.folder) / "typed.json"
            self.assertEqual(words_of(self.paper(driver)), words_of(told).replace(f"({path})", ""), "the page's order is not the program's")
            self.assertEqual(driver.find_element(By.ID, "print").text, "Print the order")
            self.assertLessEqual(driver.execute_script("return document.documentElement.scrollWidth"), 360)
            if shutil.which("pdfinfo"):
                count, _ = self.printed(driver, name)
                self.assertIn(count, range(1, 7))
        self.assertIn("House 20 ft wide", driver.find_element(By.ID, "whose").text + self.paper(driver).replace("&nbsp;", " "))

    def test_an_order_of_an_old_plan_is_named_old(self):
        driver = self.go(self.browser())
        self.put(driver, FILM)
        self.part(driver, "see")
        Select(driver.find_element(By.ID, "page")).select_by_value("order")
        shown = self.paper(driver)
        self.put(driver, FILM)
        self.part(driver, "ask")
        for _ in range(4):
            driver.find_element(By.ID, "ask-next").click()
        field = driver.find_element(By.ID, "answer")
        field.clear()
        field.send_keys("30 f")
        self.part(driver, "see")
        Select(driver.find_element(By.ID, "page")).select_by_value("order")
        self.assertTrue(driver.find_element(By.ID, "see-old").is_displayed())
        self.assertEqual(self.paper(driver), shown)
        self.part(driver, "ask")
        field = driver.find_element(By.ID, "answer")
        field.clear()
        field.send_keys("30 ft")
        self.part(driver, "see")
        self.assertEqual(self.paper(driver), shown)
        self.part(driver, "ask")
        driver.find_element(By.ID, "answer").send_keys("x")
        self.part(driver, "see")
        self.assertTrue(driver.find_element(By.ID, "see-old").is_displayed())
        self.assertEqual(self.paper(driver), shown)

    # --- files and links ---

    def test_files_are_opened_and_saved(self):
        driver = self.go(self.browser())
        self.part(driver, "keep")
        driver.find_element(By.CSS_SELECTOR, "input[type=file]").send_keys(str(TREE / "examples" / "sites" / "two_sides_job.json"))
        WebDriverWait(driver, 20).until(lambda d: "turns" in d.find_element(By.ID, "state").text)
        self.part(driver, "keep")
        self.shot(driver, "kept")
        self.press(driver, "#keep", "Save as a file")
        saved = Path(self.folder) / "side.json"
        WebDriverWait(driver, 20).until(lambda _: saved.exists())
        time.sleep(0.3)
        self.assertEqual(json.loads(saved.read_text(encoding="utf-8")), json.loads((TREE / "examples" / "sites" / "two_sides_job.json").read_text(encoding="utf-8")))
        saved.unlink()
        self.part(driver, "see")
        self.assertEqual(words_of(self.paper(driver)), words_of(self.program(self.kept(driver))))

    def test_the_other_side_of_a_house(self):
        driver = self.go(self.browser())
        self.put(driver, FILM)
        self.part(driver, "keep")
        self.press(driver, "#keep", "Add the house's other side")
        file = self.kept(driver)
        self.assertEqual([one["hand"] for one in file["sides"]], ["right", "left"])
        self.assertIn("turns", driver.find_element(By.ID, "state").text)
        self.part(driver, "see")
        self.assertEqual(words_of(self.paper(driver)), words_of(self.program(file)))

    def link(self, text):
        return "#side=" + base64.urlsafe_b64encode(zlib.compress(text.encode("utf-8"))).decode("ascii").rstrip("=")

    def test_a_link_opens_as_another_side(self):
        driver = self.go(self.browser(), self.served)
        self.put(driver, {"name": "at hand"})
        driver.get("about:blank")
        self.go(driver, self.served + self.link(json.dumps(FILM)))
        WebDriverWait(driver, 20).until(lambda d: "turns" in d.find_element(By.ID, "state").text)
        self.assertEqual(self.kept(driver)["name"], FILM["name"])
        self.assertNotIn("#", driver.current_url)
        self.assertIn("at hand", driver.execute_script("return localStorage.getItem('roll-up-side:side:77')"))

    def test_what_strangers_send_is_text(self):
        driver = self.go(self.browser(), self.served)
        evil = "<img src=x onerror=\"document.title='gone'\"><script>document.title='gone'</script>"
        file = {**FILM, "name": evil, "note": evil, "drive_at": evil, "mark": evil, "__proto__": {"polluted": 1}, "constructor": evil, evil: evil}
        driver.get("about:blank")
        self.go(driver, self.served + self.link(json.dumps(file)))
        for part in ("ask", "see", "work", "keep"):
            self.part(driver, part)
        time.sleep(0.2)
        self.assertEqual(driver.title, "Roll-up side")
        self.assertIn("<img", driver.find_element(By.ID, "whose").text)
        self.assertEqual(driver.execute_script("return document.images.length"), 0)
        self.assertIsNone(driver.execute_script("return ({}).polluted ?? null"))
        for text in ("{", "[]", "[1]", '"x"', "{" * 100000, "\0", '{"sides": 3}', '{"sides": []}'):
            driver.get("about:blank")
            self.go(driver, self.served + self.link(text))
            self.assertTrue(driver.find_element(By.ID, "state").is_displayed(), text[:20])
        driver.get("about:blank")
        self.go(driver, self.served + "#side=AAAA%%%")
        self.assertIn("cannot be read", driver.find_element(By.ID, "told").text)
        driver.get("about:blank")
        self.go(driver, self.served + self.link('{"name": "one",\n "name": "two"}'))
        self.assertIn("line 2: column 7: duplicate object key near '\"name\"'", driver.find_element(By.ID, "told").text)

    # --- without a network; on paper; under a thumb ---

    def test_without_a_network(self):
        server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), self.server.RequestHandlerClass)
        threading.Thread(target=server.serve_forever, daemon=True).start()
        address = f"http://localhost:{server.server_address[1]}/"
        driver = self.go(self.browser(), address)
        WebDriverWait(driver, 20).until(lambda d: d.execute_async_script("const done = arguments[0]; navigator.serviceWorker.ready.then((one) => done(!!one.active))"))
        driver.refresh()
        self.ready(driver)
        server.shutdown()
        server.server_close()
        driver.refresh()
        self.ready(driver)
        self.assertIn("still to answer", driver.find_element(By.ID, "state").text)

    def printed(self, driver, name):
        path = Path(self.folder) / f"{name}.pdf"
        path.write_bytes(base64.b64decode(driver.execute_cdp_cmd("Page.printToPDF", {"preferCSSPageSize": True})["data"]))
        if SHOTS:
            shutil.copy(path, SHOTS)
        told = subprocess.run(["pdfinfo", path], capture_output=True, text=True, check=True).stdout
        return int(re.search(r"Pages: +(\d+)", told)[1]), re.search(r"Page size: +(.*)", told)[1]

    @unittest.skipUnless(shutil.which("pdfinfo"), "no pdfinfo")
    def test_sheet_and_template_are_printed(self):
        driver = self.go(self.browser())
        self.put(driver, FILM)
        self.part(driver, "see")
        pages, figures = driver.execute_script("return ['section', 'figure'].map((name) => document.getElementById('paper').shadowRoot.querySelectorAll(name).length)")
        count, _ = self.printed(driver, "sheet")
        self.assertGreaterEqual(count, pages)
        self.assertLessEqual(count, pages + figures + 4)
        driver.execute_script("window.print = () => {}")
        for paper, size in (("a4", "(594.96|595.2[0-9]*|595) x (841.92|841.8[0-9]*|842)"), ("letter", "612 x 792")):
            driver.find_element(By.ID, f"template-{paper}").click()
            sheets = len(driver.find_elements(By.CSS_SELECTOR, "#template svg"))
            driver.execute_script("document.body.classList.add('template')")
            driver.execute_script(f"const style = new CSSStyleSheet(); style.replaceSync('@page {{ size: {'A4' if paper == 'a4' else 'letter'}; margin: 0 }}'); document.adoptedStyleSheets = [style]")
            count, told = self.printed(driver, f"template-{paper}")
            self.assertEqual(count, sheets)
            self.assertRegex(told, size)
            driver.execute_script("document.body.classList.remove('template')")

    def test_targets_are_for_a_gloved_thumb(self):
        driver = self.go(self.browser())
        self.put(driver, FILM)
        for _ in range(4):
            driver.find_element(By.ID, "ask-next").click()
        for part in ("ask", "see", "work", "keep"):
            self.part(driver, part)
            self.shot(driver, f"phone-{part}")
            self.assertLessEqual(driver.execute_script("return document.documentElement.scrollWidth"), 360, part)
            boxes = driver.execute_script("""
                return [...document.querySelectorAll("button, select, input:not([type=file]), .file")].filter((one) => one.offsetParent).map((one) => {
                    const box = one.getBoundingClientRect();
                    return [box.x, box.y, box.right, box.bottom, one.textContent.trim().slice(0, 20), getComputedStyle(one).fontSize];
                })""")
            self.assertGreater(len(boxes), 4)
            for one in boxes:
                self.assertGreaterEqual(one[2] - one[0], 56, one)
                self.assertGreaterEqual(one[3] - one[1], 56, one)
                self.assertGreaterEqual(float(one[5][:-2]), 18, one)
            for i, one in enumerate(boxes):
                for other in boxes[:i]:
                    gap = max(one[0] - other[2], other[0] - one[2], one[1] - other[3], other[1] - one[3])
                    self.assertGreaterEqual(gap, 7.9, (part, one, other))

    @unittest.skipUnless(os.environ.get("AXE"), "no axe-core")
    def test_it_is_accessible(self):
        driver = self.go(self.browser())
        self.put(driver, FILM)
        for part in ("ask", "see", "work", "keep"):
            self.part(driver, part)
            driver.execute_script(Path(os.environ["AXE"]).read_text(encoding="utf-8"))
            found = driver.execute_async_script("axe.run({runOnly: ['wcag2a', 'wcag2aa', 'wcag2aaa', 'wcag21aa', 'wcag22aa', 'best-practice']}).then(arguments[0])")
            self.assertEqual([(one["id"], [node["html"] for node in one["nodes"]]) for one in found["violations"]], [], part)

    def test_every_text_has_a_contrast_of_7(self):
        driver = self.go(self.browser())
        self.put(driver, FILM)

        def light(colour):
            parts = [int(one) / 255 for one in re.findall(r"\d+", colour)[:3]]
            return sum(share * (one / 12.92 if one <= 0.04045 else ((one + 0.055) / 1.055) ** 2.4) for share, one in zip((0.2126, 0.7152, 0.0722), parts))  # WCAG 2.2

        for scheme in ("light", "dark"):
            driver.execute_cdp_cmd("Emulation.setEmulatedMedia", {"features": [{"name": "prefers-color-scheme", "value": scheme}]})
            for part in ("ask", "see", "work", "keep"):
                self.part(driver, part)
                texts = driver.execute_script(TEXTS)
                self.assertGreater(len(texts), 50 if part == "see" else 5, part)
                for colour, ground, words in texts:
                    high, low = sorted((light(colour), light(ground)), reverse=True)
                    self.assertGreaterEqual((high + 0.05) / (low + 0.05), 7, (scheme, part, words, colour, ground))

    def answers(self, driver):
        """How long the page takes to plan after a stroke, in ms, the least first."""
        return driver.execute_script("""
            const field = document.getElementById("answer"), times = [];
            for (let i = 0; i < 20; i++) {
                const before = performance.now();
                field.value = "name " + i;
                field.dispatchEvent(new Event("input"));
                times.push(performance.now() - before);
            }
            return times.sort((a, b) => a - b);""")

    def test_it_answers_fast(self):
        driver = self.go(self.browser())
        paint = driver.execute_script("return performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? performance.now()")
        self.put(driver, FILM)
        took, slowed = self.answers(driver), []
        driver.execute_cdp_cmd("Emulation.setCPUThrottlingRate", {"rate": 6})
        try:
            slowed = self.answers(driver)
        finally:
            driver.execute_cdp_cmd("Emulation.setCPUThrottlingRate", {"rate": 1})
        packed = len(zlib.compress((SITE / "index.html").read_bytes(), 9))
        print(f"{(SITE / 'index.html').stat().st_size} bytes, {packed} compressed; first paint after {paint:.0f} ms; an answer takes {took[10]:.1f} ms, at most {took[-1]:.1f} ms; slowed sixfold {slowed[10]:.1f} ms")
        self.assertLess(took[10], 500) # a loaded machine; 20 ms are aimed at on a quiet one

    @unittest.skipUnless(SHOTS, "no folder for pictures")
    def test_the_readmes_picture(self):
        """Four screens beside each other, as README shows them: page.png in the folder for pictures."""
        driver, screens = self.go(self.browser()), []
        keep = lambda: screens.append(driver.get_screenshot_as_base64())
        self.put(driver, FILM)
        for _ in range(4):
            driver.find_element(By.ID, "ask-next").click()
        keep()
        field = driver.find_element(By.ID, "answer")
        field.clear()
        field.send_keys("30 fo")
        driver.execute_script("document.getElementById('answer').blur()")
        keep()
        self.press(driver, "#ask .steps", "Bring back")
        self.part(driver, "see")
        keep()
        self.part(driver, "work")
        while not driver.find_elements(By.CSS_SELECTOR, "#step dd"):
            driver.find_element(By.ID, "work-next").click()
        keep()
        driver.get("about:blank")
        self.sized(driver, 4 * 360 + 5 * 16, 800 + 2 * 16)
        driver.execute_script("""
            document.body.style = "margin: 16px; display: flex; gap: 16px; background: #ccc";
            for (const screen of arguments[0]) {
                const image = document.createElement("img");
                image.src = "data:image/png;base64," + screen;
                document.body.append(image);
            }""", screens)
        WebDriverWait(driver, 20).until(lambda d: d.execute_script("return [...document.images].every((one) => one.complete)"))
        self.shot(driver, "page")
        self.assertEqual(len(set(screens)), 4)
        self.go(driver)

    def test_wide_screen_and_dark(self):
        driver = self.go(self.browser(1200, 900))
        self.put(driver, FILM)
        self.shot(driver, "wide")
        driver.execute_cdp_cmd("Emulation.setEmulatedMedia", {"features": [{"name": "prefers-color-scheme", "value": "dark"}]})
        self.shot(driver, "dark")
        self.assertEqual(driver.find_element(By.TAG_NAME, "html").value_of_css_property("background-color"), "rgba(17, 17, 17, 1)")


if __name__ == "__main__":
    unittest.main()
