"""Signs that several outputs draw."""

from typing import Final

ALERT_PATH: Final = (
    "M12 2 23 21H1z M12 4.6 3 19.6H21z M11 9h2l-.4 6h-1.2z M11 16.3h2v2h-2z"
)
"""The safety alert symbol, a triangle with an exclamation mark, drawn even-odd."""
