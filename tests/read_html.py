# SPDX-License-Identifier: MIT
"""Reads a sheet or an order in HTML as check_html.sh asks, with Python's own parser:

    read_html.py words TEXT HTML    the words of both, in order, with numbers of steps and marks of points and cautions, are the same
    read_html.py shape HTML         the document's order, what it names and refers to, and that it fetches and runs nothing

Prints what is wrong, and exits with 1, if anything is.
"""
import html.parser
import re
import sys

WITHOUT_END = {"meta"}
KNOWN = WITHOUT_END | set(
    "html head title style body header nav main section h1 h2 h3 p strong span a ul ol li dl dt dd div table caption thead tbody tr th td".split()
    + "figure figcaption svg".split()
)
IN_SVG = set("title desc g line path circle text".split())
ATTRIBUTES = set("lang charset http-equiv content name class id href scope colspan value aria-label aria-labelledby".split())


class Element:
    def __init__(self, name, attributes, parent):
        self.name, self.attributes, self.parent, self.inside = name, attributes, parent, []

    def all(self, *names):
        """Those of such names, but what is inside of a drawing, which has names of its own."""
        for one in self.inside:
            if isinstance(one, Element):
                if one.name in names:
                    yield one
                if one.name != "svg":
                    yield from one.all(*names)

    def words(self):
        return " ".join(" ".join(one if isinstance(one, str) else one.words() for one in self.inside).split())


class Reader(html.parser.HTMLParser):
    """A tree; every element must be closed by its own end."""

    def __init__(self):
        super().__init__()
        self.top = self.here = Element("", {}, None)
        self.doctype = ""

    def handle_decl(self, declaration):
        self.doctype = declaration

    def handle_starttag(self, name, attributes):
        element = Element(name, dict(attributes), self.here)
        assert len(element.attributes) == len(attributes), f"line {self.getpos()[0]}: an attribute twice"
        self.here.inside.append(element)
        if name not in WITHOUT_END:
            self.here = element

    def handle_endtag(self, name):
        assert self.here.name == name, f"line {self.getpos()[0]}: </{name}> ends <{self.here.name}>"
        self.here = self.here.parent

    def handle_data(self, words):
        self.here.inside.append(words)

    def handle_comment(self, words):
        raise AssertionError(f"line {self.getpos()[0]}: a comment")


def read(name):
    with open(name, encoding="utf-8") as file:
        reader = Reader()
        reader.feed(file.read())
        reader.close()
    assert reader.here is reader.top, f"<{reader.here.name}> has no end"
    return reader


# --- the same words ---

HEAD = re.compile(r"(.*\S) +page (\d+) of \d+$|(ORDER  .*)$")  # an order is one page, however long


def words_of_text(name):
    """Titles of pages, and words. Where a page goes on, its head is repeated."""
    titles, words = [], []
    with open(name, encoding="utf-8") as file:
        pages = file.read().split("\f")
    for page in pages:
        head, _, body = page.partition("\n")
        paged, number, unpaged = HEAD.match(head).groups()
        title, whose = (paged or unpaged).split("  ", 1)
        whose = whose.removesuffix("...")
        if number in ("1", None) or titles[-1] != (title, whose):
            titles.append((title, whose))
        words += body.split()
    return titles, words


def words_of_html(name):
    main = next(read(name).top.all("main"))
    titles, words = [], []

    def walk(element):
        kind = element.name
        if kind == "h2":
            titles.append(tuple(" ".join(part.split()) for part in (element.inside[0], element.inside[1].words())))
        elif kind not in ("caption", "figure"):
            if kind == "li":
                words.append(element.attributes["value"] + "." if "value" in element.attributes else "-")
            for one in element.inside:
                if isinstance(one, str):
                    words.extend(one.split())
                elif one.name == "strong" and element.attributes.get("class") == "caution":
                    assert one.words() == "Caution:", one.words()
                    words.append("!")
                else:
                    walk(one)

    walk(main)
    return titles, words


def same_words(text, page):
    text_titles, text_words = words_of_text(text)
    titles, words = words_of_html(page)
    assert len(titles) == len(text_titles), (titles, text_titles)
    for (title, whose), (wanted, begins) in zip(titles, text_titles):
        assert title == wanted and whose.startswith(begins), (title, whose, wanted, begins)
    for i, (got, wanted) in enumerate(zip(words + ["(end)"], text_words + ["(end)"])):
        assert got == wanted, f"{got!r} is not {wanted!r}, after: {' '.join(text_words[max(0, i - 12) : i])}"
    assert len(words) > 100, len(words)


# --- shape ---


def one(top, *names):
    found = list(top.all(*names))
    assert len(found) == 1, (names, len(found))
    return found[0]


def check_head(reader):
    top = reader.top
    assert reader.doctype == "DOCTYPE html", reader.doctype
    assert one(top, "html").attributes == {"lang": "en"}
    head = one(top, "head")
    metas = [meta.attributes for meta in head.all("meta")]
    assert metas[0] == {"charset": "utf-8"}, metas[0]
    assert {"name": "viewport", "content": "width=device-width, initial-scale=1"} in metas
    policy = next(meta["content"] for meta in metas if meta.get("http-equiv") == "Content-Security-Policy")
    assert policy.split("; ") == ["default-src 'none'", "style-src 'unsafe-inline'", "base-uri 'none'", "form-action 'none'"], policy
    called = "Order" if one(reader.top, "h1").words() == "Order" else "Job sheet"
    assert one(head, "title").words().startswith(called)


def check_nothing_fetched(reader):
    for element in reader.top.all(*KNOWN - {"svg"}):
        strange = set(element.attributes) - ATTRIBUTES
        assert not strange, (element.name, strange)
    names = set(find_names(reader.top))
    assert names <= KNOWN, names - KNOWN
    for element in reader.top.all("a"):
        assert element.attributes["href"].startswith("#"), element.attributes
    # What stands in strings is content.
    style = re.sub(r'"(\\.|[^"\\])*"', '""', one(one(reader.top, "head"), "style").words())
    assert style.count("{") == style.count("}") > 20
    for word in ("url", "@import", "@font-face", "expression", "\\"):
        assert word not in style, word
    for colour in re.findall(r"(?:color|background): *([^;} ]+)", style):
        assert colour in ("black", "white", "inherit", "only"), colour


def find_names(element):
    for inside in element.inside:
        if isinstance(inside, Element):
            yield inside.name
            if inside.name != "svg":
                yield from find_names(inside)


def check_order(reader):
    main = one(reader.top, "main")
    headings = [element.name for element in reader.top.all("h1", "h2", "h3")]
    assert headings[:2] == ["h1", "h2"] and headings.count("h1") == 1, headings[:3]
    pages = list(main.all("section"))
    assert all(isinstance(page, Element) or not page.strip() for page in main.inside)
    assert [one for one in main.inside if isinstance(one, Element)] == pages
    ids = [element.attributes["id"] for element in reader.top.all("section", "h2")]
    assert len(set(ids)) == len(ids) == 2 * len(pages)
    for page in pages:
        head = one(page, "h2")
        assert page.attributes["aria-labelledby"] == head.attributes["id"]
    links = [link.attributes["href"][1:] for link in one(reader.top, "nav").all("a")]
    assert links == [page.attributes["id"] for page in pages]
    feet = re.findall(r"#(page-\d+) \{ page: (page-\d+) \}\n.*\n@page (page-\d+) ", one(reader.top, "style").inside[0])
    assert feet == [(link, link, link) for link in links], feet


def check_parts(reader):
    main = one(reader.top, "main")
    for table in main.all("table"):
        assert table.inside[1].name == "caption" and table.inside[1].words(), "a table without a caption"
        rows = list(table.all("tr"))
        for row in rows:
            cells = list(row.all("th", "td"))
            width = sum(int(cell.attributes.get("colspan", "1")) for cell in cells)
            assert width == len(list(rows[0].all("th", "td"))), row.words()
            scopes = [cell.attributes.get("scope") for cell in cells if cell.name == "th"]
            of_titles = row.parent.name == "thead"
            remark = row.attributes.get("class") == "remark"
            assert scopes == (["col"] * len(scopes) if of_titles else [] if remark else ["row"]), (row.words(), scopes)
    for steps in main.all("ol"):
        numbers = [step.attributes["value"] for step in steps.inside if isinstance(step, Element)]
        assert numbers == [str(i + 1) for i in range(len(numbers))], numbers
    for pairs in main.all("dl"):
        names = [item.name for item in pairs.inside if isinstance(item, Element)]
        assert names[0] == "dt" and set(names) == {"dt", "dd"} and not re.search("dt dt", " ".join(names)), names
    for caution in main.all("p"):
        if caution.attributes.get("class") == "caution":
            assert caution.inside[0].name == "strong"


# The views of each page, in their order; those that end in ? a side may do without.
OF_AN_END = ["END WALL, from outside", "WHOLE WALL, from outside?", "CORNER, from above", "EXTENDER?"]
VIEWS = {
    "CARD, drive's end": [view.rstrip("?") + ": drive's end" + "?" * view.endswith("?") for view in OF_AN_END],
    "CARD, free end": [view.rstrip("?") + ": free end" + "?" * view.endswith("?") for view in OF_AN_END],
    "CARD, the side": ["ALONG THE HOUSE, from outside", "ROLL, shut", "ROLL, open"],
    "ANNEX": ["OPENING, TORQUE, LEAN"],
}


def check_drawings(reader):
    for page in one(reader.top, "main").all("section"):
        captions = [one(figure, "figcaption").words() for figure in page.all("figure")]
        wanted = next((views for title, views in VIEWS.items() if one(page, "h2").words().startswith(title)), [])
        pattern = "".join("(%s[;:] .*\n)%s" % (re.escape(view.rstrip("?")), "?" * view.endswith("?")) for view in wanted)
        found = "".join(caption + (";" if caption in wanted else "") + " \n" for caption in captions)
        assert re.fullmatch(pattern, found), (one(page, "h2").words(), captions)
        for figure, caption in zip(page.all("figure"), captions):
            check_drawing(figure, caption)


def check_drawing(figure, caption):
    if ": not drawn, " in caption:
        assert not list(figure.all("svg")), caption
        return
    drawing = one(figure, "svg")
    assert drawing.attributes["role"] == "img" and set(find_all_names(drawing)) <= IN_SVG, set(find_all_names(drawing)) - IN_SVG
    told = {part.name: part.words() for part in drawing.inside if isinstance(part, Element) and part.name in ("title", "desc")}
    assert re.fullmatch(re.escape(told["title"]) + (r"" if told["title"].startswith("OPENING") else r"; 1:\d+ printed at 100 %"), caption), (told, caption)
    # Every text that is written on it is told to who does not see it; of axes their numbers are not.
    texts = [part.words() for part in all_within(drawing) if part.name == "text" and not re.fullmatch(r"-?[0-9.]+", part.words())]
    assert len(texts) > 3 or caption.startswith("WHOLE")
    missing = [words for words in texts if words not in told["desc"]]
    assert not missing, missing
    colours = {part.attributes[name] for part in all_within(drawing) for name in ("stroke", "fill") if name in part.attributes}
    assert colours == {"none", "#000"}, colours
    assert not any(name in part.attributes for part in all_within(drawing) for name in ("class", "style")), caption


def all_within(element):
    for inside in element.inside:
        if isinstance(inside, Element):
            yield inside
            yield from all_within(inside)


def find_all_names(element):
    return (inside.name for inside in all_within(element))


def check_shape(name):
    reader = read(name)
    check_head(reader)
    check_nothing_fetched(reader)
    check_order(reader)
    check_parts(reader)
    check_drawings(reader)


if __name__ == "__main__":
    try:
        {"words": same_words, "shape": check_shape}[sys.argv[1]](*sys.argv[2:])
    except AssertionError as wrong:
        sys.exit(f"{sys.argv[-1]}: {wrong}")
