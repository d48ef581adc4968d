"""
One unit's pages as MkDocs sees them: files in memory, each with its own content.

Both ways to a site answer MkDocs' events here, so that they give the same bytes.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from html import escape
from typing import Any, Final

import jinja2
from mkdocs.config.base import BaseConfigOption, Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.plugins import BasePlugin
from mkdocs.structure.files import File, Files
from mkdocs.structure.pages import Page
from mkdocs.utils.templates import TemplateContext

from hatchleaf.manual.model import Page as Topic
from hatchleaf.manual.model import Pages
from hatchleaf.outputs import calendar, icons, offline, phone_copy, search
from hatchleaf.outputs.fragments import website_context
from hatchleaf.outputs.palette import variable
from hatchleaf.outputs.photos import photos_of_site
from hatchleaf.outputs.website.assets import (
    RECORD,
    STYLE,
    Shared,
    record,
    shared_files,
)
from hatchleaf.outputs.website.engine import strict

NAME: Final = "hatchleaf"
_ROOT: Final = "../../"


@dataclass(frozen=True)
class UnitSite:
    """All that one unit publishes, before MkDocs' templates."""

    pages: Pages
    shared: Shared
    files: Mapping[str, bytes]
    """
    Finished files by path below the site, the shared ones among them.

    The pages are missing, and so is the worker, whose list has them.
    """
    topics: Mapping[str, Topic]
    """The topics by the path that MkDocs takes for their source."""

    def context(self, source: str) -> dict[str, Any]:
        """Return what a page's template is given."""
        assets = f"{_ROOT}{self.shared.folder}/"
        topic = self.topics[source]
        return website_context(topic, self.pages, root=_ROOT, assets=assets)

    def worker(self, files: Mapping[str, bytes]) -> dict[str, bytes]:
        """
        Return the worker that keeps this unit on a phone, by its path.

        Args:
            files: All of the unit's files, the pages among them.
        """
        unit = self.pages.unit
        script = offline.worker(unit.code, unit.edition, files)
        return {f"{unit.code}/{offline.WORKER}": script}


def unit_site(
    pages: Pages,
    *,
    site_url: str,
    brand: str = "",
    others: Mapping[str, bytes] | None = None,
    env: jinja2.Environment | None = None,
) -> UnitSite:
    """
    Return what one unit publishes.

    Args:
        pages: All pages of the unit, links still symbolic.

        site_url: ``https://HOST/``, for the addresses in the calendar.

        brand: The dealership's colour as ``#rrggbb``; ours when empty.

        others: More files by path below the unit's own folder.

        env: An environment over our templates that has compiled them already.
    """
    shared = shared_files(brand)
    style = shared.files[STYLE].decode()
    copy = phone_copy.phone_copy(pages, brand=brand, env=env)
    own = {
        "index.html": leading_to("000/", pages.unit.title),
        search.FILE_NAME: search.words_json(pages).encode(),
        phone_copy.FILE_NAME: copy.encode(),
        RECORD: record(pages.unit.edition, shared),
        offline.MANIFEST: offline.manifest(pages.unit, style),
        **icons.icons(
            *(variable(style, name) for name in ("brand-day", "ink", "paper"))
        ),
        **photos_of_site(pages),
        **(others or {}),
    }
    if care := calendar.calendar(pages, site_url):
        own[calendar.FILE_NAME] = care
    files = {f"{pages.unit.code}/{name}": content for name, content in own.items()}
    files |= {f"{shared.folder}/{name}": data for name, data in shared.files.items()}
    topics = {f"{pages.unit.code}/{each.shown_number}.md": each for each in pages.pages}
    return UnitSite(pages=pages, shared=shared, files=files, topics=topics)


def leading_to(address: str, title: str) -> bytes:
    """
    Return a page that leads to another at once and has a link for those it fails.

    Args:
        address: Relative address of the other page.

        title: What the other page is.
    """
    there, name = escape(address), escape(title)
    return (
        '<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{name}</title>\n"
        '<meta name="robots" content="noindex, nofollow">\n'
        '<meta name="referrer" content="no-referrer">\n'
        f'<meta http-equiv="refresh" content="0; url={there}">\n</head>\n'
        f'<body>\n<main><h1><a href="{there}">{name}</a></h1></main>\n'
        "</body>\n</html>\n"
    ).encode()


class Options(Config):  # type: ignore[no-untyped-call]
    """Known to MkDocs by name only: `settings` reads them, with their places."""

    phone: BaseConfigOption[Any] = BaseConfigOption()
    colors: BaseConfigOption[Any] = BaseConfigOption()
    preview: BaseConfigOption[Any] = BaseConfigOption()
    allow_unreviewed: BaseConfigOption[Any] = BaseConfigOption()
    statement_checked: BaseConfigOption[Any] = BaseConfigOption()


class UnitEvents(BasePlugin[Options]):  # type: ignore[no-untyped-call]
    """Hands MkDocs the pages of one unit, whatever the folders hold."""

    def __init__(self) -> None:
        super().__init__()
        self._site: UnitSite | None = None
        self._contexts: dict[str, dict[str, Any]] = {}

    @property
    def site(self) -> UnitSite:
        """The unit whose pages MkDocs is given."""
        if self._site is None:
            raise AssertionError
        return self._site

    @site.setter
    def site(self, site: UnitSite) -> None:
        self._site = site
        self._contexts = {}

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:  # noqa: ARG002
        """Return our pages and files; of those found on disk none is published."""
        ours = Files(self._static(config))
        for source, topic in self.site.topics.items():
            file = File.generated(config, source, content="")
            Page(topic.title, file, config)
            ours.append(file)
        return ours

    def on_env(self, env: jinja2.Environment, **_: Any) -> jinja2.Environment:
        """Have it read our templates as they are written."""
        return strict(env)

    def on_page_read_source(self, **_: Any) -> str:
        """Return no Markdown: our pages are converted already."""
        return ""

    def on_page_content(self, html: str, *, page: Page, **_: Any) -> str:
        """Return the topic's body, links resolved, below what MkDocs has."""
        return html + str(self._ours(page)["p"].body)

    def on_page_context(
        self, context: TemplateContext, *, page: Page, **_: Any
    ) -> TemplateContext:
        """Add the names that our templates use; ours win."""
        context.update(self._ours(page))  # type: ignore[typeddict-item]
        return context

    def _static(self, config: MkDocsConfig) -> Iterable[File]:
        for name, content in self.site.files.items():
            yield File.generated(config, name, content=content)

    def _ours(self, page: Page) -> dict[str, Any]:
        source = page.file.src_uri
        if source not in self._contexts:
            self._contexts[source] = self.site.context(source)
        return self._contexts[source]
