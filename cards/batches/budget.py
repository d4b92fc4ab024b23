"""What a search may take: steps counted in, and an end where they are used up."""


class Spent(Exception):
    """A search has used up its steps, and nothing is proven."""


class Budget:
    """Steps of about a microsecond. They are counted, so that every machine answers alike."""

    def __init__(self, steps: int, whole: "Budget | None" = None) -> None:
        self.left = steps
        self._whole = whole

    def charge(self, steps: int) -> None:
        """Count steps that must be taken anyway."""
        self.left -= steps
        if self._whole is not None:
            self._whole.charge(steps)

    def spend(self, steps: int) -> None:
        """Count steps of a search; raises `Spent` where there are none left."""
        self.charge(steps)
        if self.left < 0:
            raise Spent

    def part(self, share: int) -> "Budget":
        """Return a budget of one in so many of the steps left, which are taken from both."""
        return Budget(max(self.left, 0) // share, self)
