"""Where a site is published: a folder, or a host that fsspec reaches."""

from __future__ import annotations

import contextlib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from importlib.util import find_spec
from pathlib import Path
from typing import Any, Final, Protocol
from urllib.parse import urlsplit

from hatchleaf.outputs.published import Published
from hatchleaf.outputs.upload import Sent, Upload
from hatchleaf.outputs.website.assets import land_site, may_put

SCHEMES: Final = ("sftp", "s3", "file", "memory")
"""What an address may begin with; the last two are for trying it out."""

_NEEDED: Final = {"sftp": "paramiko", "s3": "s3fs"}
"""What an extra of the package brings."""

_STORES: Final = ("s3",)
"""Those that hold objects by name and know no folders."""

_TIMEOUT: Final = 30
"""Seconds until a host that does not answer counts as lost."""


class AddressError(ValueError):
    """What was given is no place to publish at."""


class UploadError(RuntimeError):
    """The host refused or was lost; the text says why."""

    def __init__(self, where: str, what: str) -> None:
        """Keep where it was to go."""
        super().__init__(what)
        self.where = where


class Target(Protocol):
    """Where sites are published."""

    @property
    def shown(self) -> str:
        """The target as text, without who logs in there."""

    def send(
        self, code: str, files: Mapping[str, bytes], before: Published | None
    ) -> Sent:
        """
        Make the unit's part of the target hold exactly these files.

        Args:
            code: The unit's code.
            files: Bytes by path below the target.
            before: What was last published, here or elsewhere.
        """


def target(text: str) -> Target:
    """
    Return the target that a text names.

    Args:
        text: A folder's path, or an address such as ``sftp://HOST/PATH``.

    Raises:
        AddressError: It is neither, or what reaches it is not installed.
    """
    scheme, found, _ = text.partition("://")
    if not found:
        return Folder(Path(text).resolve())
    if scheme not in SCHEMES or "::" in text:
        allowed = ", ".join(f"{name}://" for name in ("sftp", "s3"))
        raise AddressError(f"'{text}' is neither a folder nor one of: {allowed}")
    parts = urlsplit(text)
    if parts.password is not None:
        raise AddressError(
            "no password in the address, where others can read it: use an SSH key or "
            "the environment"
        )
    if parts.query or parts.fragment or ".." in parts.path.split("/"):
        raise AddressError(f"'{text}' is not a plain address")
    needed = _NEEDED.get(scheme)
    if needed and find_spec(needed) is None:
        message = f"{scheme}:// needs more: pip install 'hatchleaf[{scheme}]'"
        raise AddressError(message)
    return Host(scheme, text.rstrip("/"))


@dataclass(frozen=True)
class Folder:
    """A folder on this machine: each unit is exchanged with the one before it."""

    path: Path

    @property
    def shown(self) -> str:
        """The folder's path."""
        return self.path.as_posix()

    def send(
        self,
        code: str,
        files: Mapping[str, bytes],
        before: Published | None,  # noqa: ARG002  # the files themselves tell
    ) -> Sent:
        """Land the files; see `Target.send`."""
        there = {
            path.relative_to(self.path).as_posix(): path
            for path in (self.path / code).rglob("*")
            if path.is_file()
        }
        shared = {name: self.path / name for name in files if name not in there}
        put = tuple(
            name
            for name, content in files.items()
            if _to_put(there.get(name) or shared[name], content, root="/" not in name)
        )
        land_site(self.path, files)
        return Sent(put, tuple(sorted(there.keys() - files.keys())))


def _to_put(path: Path, content: bytes, *, root: bool) -> bool:
    if root:
        return may_put(path, content)
    return not path.is_file() or path.read_bytes() != content


@dataclass(frozen=True)
class Host:
    """A host that fsspec reaches."""

    scheme: str
    address: str

    @property
    def shown(self) -> str:
        """The address without who logs in there."""
        parts = urlsplit(self.address)
        return parts._replace(netloc=parts.netloc.rpartition("@")[2]).geturl()

    def send(
        self, code: str, files: Mapping[str, bytes], before: Published | None
    ) -> Sent:
        """Upload what is not there yet; see `Target.send`."""
        with _told(self.shown):
            disk, base = _opened(self.scheme, self.address)
            upload = Upload(disk, base, code, files, stores=self.scheme in _STORES)
            return upload.run(before if before and before.to == self.shown else None)


def _opened(scheme: str, address: str) -> tuple[Any, str]:
    import fsspec  # noqa: PLC0415  # slow, and its parts may not be installed

    if scheme == "sftp":
        from hatchleaf.outputs import known_hosts  # noqa: PLC0415  # may be missing

        return known_hosts.opened(address, timeout=_TIMEOUT)
    disk, base = fsspec.url_to_fs(address)
    return disk, base.rstrip("/")


@contextlib.contextmanager
def _told(where: str) -> Iterator[None]:
    """Turn whatever a network library raises into one line; each has its own kinds."""
    try:
        yield
    except Exception as error:
        lines = str(error).splitlines()
        what = f"the upload stopped: {lines[0] if lines else type(error).__name__}"
        raise UploadError(where, what) from error
