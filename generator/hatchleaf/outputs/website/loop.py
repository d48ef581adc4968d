"""
One unit's website in memory: MkDocs' own steps, without its walks over the disk.

The steps are those of ``mkdocs build`` in their order; left out are reading a docs
folder, listing the theme's thousands of icons, and converting Markdown once more.
"""

from __future__ import annotations

from collections.abc import Mapping

from mkdocs.commands.build import get_context
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import Files, set_exclusions
from mkdocs.structure.nav import get_navigation
from mkdocs.structure.pages import Page

from hatchleaf.manual.model import Pages
from hatchleaf.outputs.website.engine import environment, in_memory
from hatchleaf.outputs.website.events import NAME, UnitEvents, UnitSite, unit_site
from hatchleaf.settings import Settings


def build_site(
    pages: Pages, settings: Settings, others: Mapping[str, bytes] | None = None
) -> dict[str, bytes]:
    """
    Return one unit's website with its phone copy.

    Args:
        pages: All pages of the unit, links still symbolic and already checked.

        settings: The dealership's settings.

        others: More files by path below the unit's own folder.

    Returns:
        Bytes by path below the site: ``<code>/...`` and ``a/<hash>/...``.

    Raises:
        WrongEngineError: Another MkDocs is installed than the one we know.
    """
    site = unit_site(
        pages,
        site_url=settings.site_url,
        brand=settings.brand,
        others=others,
        env=environment(),
    )
    config = in_memory(settings.site_name, settings.site_url)
    files = dict(site.files) | _rendered(site, config)
    return files | site.worker(files)


def _rendered(site: UnitSite, config: MkDocsConfig) -> dict[str, bytes]:
    events = UnitEvents()
    events.site = site
    config.plugins[NAME] = events
    files = config.plugins.on_files(Files([]), config=config)
    set_exclusions(files, config)
    nav = get_navigation(files, config)
    documents = files.documentation_pages()
    made = {}
    env = config.plugins.on_env(environment(), config=config, files=files)
    for file in documents:
        page = file.page
        if not isinstance(page, Page):
            raise TypeError(file.src_uri)
        page.active = True
        page.content = config.plugins.on_page_content(
            "", page=page, config=config, files=files
        )
        context = config.plugins.on_page_context(
            get_context(nav, documents, config, page), page=page, config=config, nav=nav
        )
        text = env.get_template("main.html").render(context)
        made[file.dest_uri] = text.encode(errors="xmlcharrefreplace")
        page.active = False
    return made
