"""What the phone copy leaves out of its markup is what every parser puts back."""

from __future__ import annotations

from browser.conftest import Phone, Site
from hatchleaf.outputs.slimming import implied, lean

TREE = "text => new DOMParser().parseFromString(text, 'text/html').body.innerHTML"


def test_left_out_ends_and_quotes_change_no_page(each_site: Site, phone: Phone) -> None:
    """The browser's own parser makes the same tree of both, node for node."""
    phone.page.goto("about:blank")
    saved = 0
    for file in sorted(each_site.folder.glob("*/index.html")):
        text = file.read_text(encoding="utf-8")
        less = implied(text)
        saved += len(text) - len(less)
        trees = [phone.page.evaluate(TREE, one) for one in (text, less)]
        assert trees[0] == trees[1], file
    assert saved > 10_000


def test_an_end_that_says_something_stays(phone: Phone) -> None:
    """A space before the next tag would fall inside; a slash would join the value."""
    for text in (
        '<p class="said"></p>\n<form></form>',
        '<svg><circle r="11"/><circle r="12" /></svg>',
        "<p>one</p> two <ul><li>a</li> b</ul>",
        '<a href="#x y" title="a>b">1</a>',
    ):
        phone.page.goto("about:blank")
        trees = [phone.page.evaluate(TREE, one) for one in (text, implied(text))]
        assert trees[0] == trees[1]


def test_a_comment_within_code_stays() -> None:
    """Only comments with lines of their own go; no string is touched."""
    code = '  /* ours\n   * two */\n  a("/* kept */"); /* beside */\n\n  b();\n'
    assert lean(code) == 'a("/* kept */"); /* beside */\nb();\n'
