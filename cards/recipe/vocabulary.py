"""What a recipe may name: the knots and materials of whoever reads it, by any of their names."""

from typing import Literal, Protocol

EndOf = Literal["butt", "joint", "fly"]  # a section


class Vocabulary(Protocol):
    """The names that are known; each method raises `Refused` for others, with the nearest."""

    def material(self, name: str) -> str:
        """Return the material's own name."""
        ...

    def knot(self, name: str, end: EndOf) -> str:
        """Return the knot's own name, if it serves at this end."""
        ...
