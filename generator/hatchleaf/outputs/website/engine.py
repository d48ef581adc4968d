"""
MkDocs as a library: the one version we know, and a configuration held in memory.

Plain ``mkdocs build`` and our own loop start from the same `prepared` configuration.
"""

from __future__ import annotations

from functools import cache
from importlib.resources import files as resources
from pathlib import Path
from typing import Final

import jinja2
import mkdocs
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.theme import Theme

from hatchleaf.compiled import kept_templates

VERSION: Final = "1.6.1"
"""The only MkDocs that is known to give our bytes."""

DROP_IN: Final = ("properdocs", "1.6.")
"""The maintained drop-in, which our tests build with as well."""

THEME_BASE: Final = "material"


class WrongEngineError(RuntimeError):
    """Another MkDocs is installed than the one that our pages are tested with."""


def check_engine() -> None:
    """
    Refuse an MkDocs that nobody has tried.

    Raises:
        WrongEngineError: Names the version found and the one needed.
    """
    name, found = mkdocs.__name__, mkdocs.__version__
    drop_in, release = DROP_IN
    if (name, found) == ("mkdocs", VERSION):
        return
    if name == drop_in and found.startswith(release):
        return
    message = (
        f"{name} {found} is installed, but the pages are made with mkdocs {VERSION}: "
        f"install it again with `pip install mkdocs=={VERSION}`"
    )
    raise WrongEngineError(message)


def theme_folder() -> Path:
    """Return the folder of our templates, style and script."""
    return Path(str(resources("hatchleaf") / "theme"))


@cache
def theme() -> Theme:
    """Return our templates laid over the base theme, to be changed by nobody."""
    made = Theme(name=THEME_BASE, custom_dir=str(theme_folder()))
    # Neither a 404 page nor a site map: nothing may list the units.
    made.static_templates.clear()
    return made


@cache
def environment() -> jinja2.Environment:
    """Return one environment for the whole process: templates are compiled once."""
    made = strict(theme().get_env())
    made.bytecode_cache = kept_templates("page")
    return made


def strict(env: jinja2.Environment) -> jinja2.Environment:
    """Have an environment stop at a misspelt name and leave no blank lines."""
    env.undefined = jinja2.StrictUndefined
    env.trim_blocks = True
    env.lstrip_blocks = True
    return env


def prepared(config: MkDocsConfig) -> MkDocsConfig:
    """
    Set all of a configuration that is not the dealership's to choose.

    Args:
        config: MkDocs' configuration, validated; it is changed.

    Returns:
        The same configuration.
    """
    config.theme = theme()
    config.nav = None
    config.use_directory_urls = True
    config.extra_css = []
    config.extra_javascript = []
    config.extra_templates = []
    return config


def in_memory(site_name: str, site_url: str) -> MkDocsConfig:
    """
    Return a configuration that no file stands behind.

    Args:
        site_name: The dealership's name.

        site_url: Address of the site, ending in a slash.

    Returns:
        A validated configuration without plug-ins.  Its docs_dir is never read.
    """
    check_engine()
    config = MkDocsConfig()
    config.load_dict(
        {
            "site_name": site_name,
            "site_url": site_url,
            "docs_dir": str(theme_folder()),
            "plugins": [],
            # Only so that the check finds a theme; `prepared` puts ours in its place.
            "theme": {"name": None, "custom_dir": str(theme_folder())},
        }
    )
    errors, warnings = config.validate()
    if errors or warnings:
        raise AssertionError([*errors, *warnings])
    return prepared(config)
