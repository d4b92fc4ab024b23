"""A strand on the paper: where it lies and how thick it is in; its outline out.

No material has a look of its own: black is for the thin strand of a knot, and words tell materials.
"""

from msgspec import Struct

from tagend.layouts.paper.face import Path, Step

_LINE = 0.5  # points; thinner lines break up on an office printer


class Band(Struct, frozen=True):
    """A strand lying along x with its middle at `y`, from one thickness to another."""

    x: float
    y: float
    length: float
    from_thick: float
    to_thick: float

    @property
    def end(self) -> float:
        return self.x + self.length

    @property
    def middle(self) -> float:
        return self.x + self.length / 2

    def half(self, x: float) -> float:
        """Return half the thickness at x."""
        share = (x - self.x) / self.length if self.length else 0.0
        return (self.from_thick + share * (self.to_thick - self.from_thick)) / 2

    @property
    def outline(self) -> Path:
        end, near, far = self.end, self.from_thick / 2, self.to_thick / 2
        steps: tuple[Step, ...] = (
            ("move", self.x, self.y - near),
            ("line", end, self.y - far),
            ("line", end, self.y + far),
            ("line", self.x, self.y + near),
            ("close",),
        )
        return Path(steps, _LINE, fill=1.0)
