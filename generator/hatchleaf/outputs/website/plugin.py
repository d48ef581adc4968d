"""
The plug-in for plain ``mkdocs build`` and ``mkdocs serve``: one unit, for looking at.

It reads the workspace, sets all that is not the dealership's to choose, and writes
below ``.hatchleaf/``.  What gets published is made by ``hatchleaf build`` alone.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any, Final, Literal

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.structure.files import File, Files
from mkdocs.structure.pages import Page

from hatchleaf.library import UNITS
from hatchleaf.outputs import fragments, offline
from hatchleaf.outputs.website.assets import shared_files
from hatchleaf.outputs.website.engine import (
    WrongEngineError,
    check_engine,
    prepared,
    theme_folder,
)
from hatchleaf.outputs.website.events import (
    UnitEvents,
    UnitSite,
    leading_to,
    unit_site,
)
from hatchleaf.outputs.website.problem_page import problem_page
from hatchleaf.photo_files import photo_sources
from hatchleaf.problems import Problem, ProblemsFound
from hatchleaf.workspace import Workspace

UNIT: Final = "hatchleaf_unit"
"""Key of MkDocs' ``extra`` by which `preview` names another unit than the settings."""


class HatchleafPlugin(UnitEvents):  # type: ignore[no-untyped-call]
    """Shows the unit named by ``preview`` in `mkdocs.yml`, or the first one."""

    def __init__(self) -> None:
        super().__init__()
        self._serving = False
        self._problems: tuple[Problem, ...] = ()
        self._shown: tuple[str, ...] = ()
        self._made: dict[str, bytes] = {}

    def on_startup(
        self, *, command: Literal["build", "gh-deploy", "serve"], **_: Any
    ) -> None:
        """Remember whether someone is looking on while files are edited."""
        if command == "gh-deploy":
            message = "a preview is not for publishing: use `hatchleaf publish`"
            raise PluginError(message)
        self._serving = command == "serve"

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Read the workspace; with problems, stop a build but not a preview."""
        try:
            check_engine()
        except WrongEngineError as error:
            raise PluginError(str(error)) from None
        workspace = Workspace(Path(config.config_file_path).resolve().parent)
        _keep_out_of_the_way(prepared(config), workspace)
        folders = (*workspace.content_folders(), workspace.root / UNITS, theme_folder())
        config.watch.extend(str(folder) for folder in folders if folder.is_dir())
        # A preview outlives edits of the theme.
        fragments.environment.cache_clear()
        self._problems = ()
        self._made = {}
        try:
            self.site = preview_site(workspace, config.extra.get(UNIT, ""))
        except ProblemsFound as found:
            if not self._serving:
                raise PluginError(str(found)) from None
            self._problems = found.problems
        return config

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Return the unit's files; with problems, a page that lists them."""
        if self._problems:
            return self._problem_files(config)
        ours = super().on_files(files, config=config)
        self._shown = tuple(file.dest_uri for file in ours if _is_page(file))
        if self._serving:
            pages = self.site.pages
            content = leading_to(f"{pages.unit.code}/000/", pages.unit.title)
            ours.append(File.generated(config, "index.html", content=content))
        return ours

    def on_post_page(self, output: str, *, page: Page, **_: Any) -> str:
        """Remember each page as MkDocs writes it."""
        self._made[page.file.dest_uri] = output.encode(errors="xmlcharrefreplace")
        return output

    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """Write the worker, whose list has all pages; a preview keeps nothing."""
        if self._problems:
            return
        code = self.site.pages.unit.code
        made = self.site.worker({**self.site.files, **self._made})
        if self._serving:
            # One that was met at the same address before would show old pages.
            made = {name: offline.retired_worker(code) for name in made}
        for name, content in made.items():
            (Path(config.site_dir) / name).write_bytes(content)

    def _problem_files(self, config: MkDocsConfig) -> Files:
        """Put the list wherever a browser may be looking, so that it reloads there."""
        shared = shared_files("")
        page = problem_page(self._problems, f"/{shared.folder}/style.css")
        wanted = dict.fromkeys((*self._shown, "index.html", "404.html"), page)
        for name, content in shared.files.items():
            wanted[f"{shared.folder}/{name}"] = content
        return Files(
            File.generated(config, name, content=content)
            for name, content in wanted.items()
        )


def preview_site(workspace: Workspace, unit: str = "") -> UnitSite:
    """
    Return the site of the unit to look at.

    Args:
        workspace: The dealership's folder.

        unit: The unit's name or code; the one of the settings when empty, or else
            the first.

    Raises:
        ProblemsFound: All that keeps the guide from being made.
    """
    workspace.keep_units_cached()
    # Here, since they are slow and use the cache named above.
    from hatchleaf.blocks.reading import read_library  # noqa: PLC0415
    from hatchleaf.manual.kept import Kept  # noqa: PLC0415
    from hatchleaf.manual.make import make  # noqa: PLC0415

    settings = workspace.settings
    name = unit or settings.preview or workspace.first_unit()
    problems: list[Problem] = []
    try:
        library = read_library(workspace.content_folders(), workspace.root)
    except ProblemsFound as found:
        problems += found.problems
    try:
        loaded = workspace.load(name)
    except ProblemsFound as found:
        problems += found.problems
    if problems:
        raise ProblemsFound(problems)
    with Kept(workspace.cache / "fragments.json") as kept:
        made = make(
            loaded,
            library,
            dealer_name=settings.site_name,
            dealer_phone=settings.phone,
            kept=kept,
            photos=photo_sources(loaded, workspace.root, workspace.cache),
            statement_checked=settings.checked_in_words,
        )
    return unit_site(made.pages, site_url=settings.site_url, brand=settings.brand)


def _keep_out_of_the_way(config: MkDocsConfig, workspace: Workspace) -> None:
    """Read from an empty folder, and never write where published files are."""
    empty = workspace.cache / "docs"
    empty.mkdir(exist_ok=True)
    config.docs_dir = str(empty)
    asked = Path(config.site_dir).resolve()
    site = workspace.site.resolve()
    if asked == site or site in asked.parents or asked in site.parents:
        config.site_dir = str(workspace.cache / "preview")


def _is_page(file: File) -> bool:
    return file.dest_uri.endswith(".html")
