"""SFTP to hosts whose keys the person has accepted before, and to no other."""

from __future__ import annotations

from typing import Any

import paramiko
from fsspec.implementations.sftp import SFTPFileSystem


class KnownHosts(SFTPFileSystem):  # type: ignore[misc]
    """Leaves unknown hosts alone, where fsspec would trust whoever answers."""

    def _connect(self) -> None:
        self.client = paramiko.SSHClient()
        self.client.load_system_host_keys()
        self.client.connect(self.host, **self.ssh_kwargs)
        self.ftp = self.client.open_sftp()


def opened(address: str, timeout: float) -> tuple[Any, str]:
    """
    Return the file system of a host, connected, and the path on it.

    Args:
        address: ``sftp://[USER@]HOST[:PORT]/PATH``.
        timeout: Seconds to wait for the host.
    """
    options = KnownHosts._get_kwargs_from_urls(address)  # noqa: SLF001  # its own way
    disk = KnownHosts(skip_instance_cache=True, timeout=timeout, **options)
    return disk, KnownHosts._strip_protocol(address).rstrip("/")  # noqa: SLF001
