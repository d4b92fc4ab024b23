"""The sample files that come with the tool: nothing in, their names and bytes out."""

from collections.abc import Iterator
from importlib.resources import files


def sample_files() -> Iterator[tuple[str, bytes]]:
    """Yield the name of each sample file and what it holds, in the order of their names."""
    for source in sorted(files("tagend.samples").iterdir(), key=lambda source: source.name):
        if source.name.endswith((".toml", ".csv", ".png")):
            yield source.name, source.read_bytes()
