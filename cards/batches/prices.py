"""How many leaders the spools can make at the most: lengths taken and left in; a bound out.

Give each kind of line a price for a part of a mm. A leader that takes less line than the price of
one leader earns the difference, so that no mix has more leaders than the line left is worth
together with what its leaders can earn: the weak duality of linear programming (V. Chvátal,
Linear Programming, chapter 5). Any prices give a bound, and the best prices the bound that
pieces of leaders would reach. So prices may be rounded, and the bound is exact all the same.
"""

from collections.abc import Sequence

_ONE = 1 << 40  # the price of a leader; prices are whole numbers
_STEPS = 500  # of the simplex method; what it has then are prices too
_SMALL = 1e-9

Row = list[float]


def bound(takes: Sequence[Sequence[int]], left: Sequence[int], more: Sequence[int]) -> int:
    """Return how many more leaders there can be.

    `takes` is the line that a leader takes, by kind and leader; `left` what is left, by kind;
    `more` how many more of each leader may be made.
    """
    prices = _prices(takes, left, more)
    worth = sum(price * rest for price, rest in zip(prices, left, strict=True))
    for leader, count in enumerate(more):
        cost = sum(price * row[leader] for price, row in zip(prices, takes, strict=True))
        worth += max(_ONE - cost, 0) * count
    return worth // _ONE


def _prices(takes: Sequence[Sequence[int]], left: Sequence[int], more: Sequence[int]) -> list[int]:
    """Return the best prices, found by the simplex method and rounded."""
    scales = [max(rest, 1) for rest in left]
    rows = [
        ([take / scale for take in row], rest / scale)
        for row, rest, scale in zip(takes, left, scales, strict=True)
    ]
    rows += [
        ([float(at == leader) for at in range(len(more))], float(count))
        for leader, count in enumerate(more)
    ]
    duals = _duals([row for row, _ in rows], [limit for _, limit in rows])
    return [
        max(round(dual / scale * _ONE), 0)
        for dual, scale in zip(duals[: len(left)], scales, strict=True)
    ]


def _duals(rows: Sequence[Row], limits: Row) -> Row:
    """Return the dual solution of: make the sum of x as large as can be, rows times x <= limits."""
    columns = len(rows[0])
    table = [
        [*row, *(float(at == place) for at in range(len(rows))), limit]
        for place, (row, limit) in enumerate(zip(rows, limits, strict=True))
    ]
    goal = [-1.0] * columns + [0.0] * (len(rows) + 1)
    for _ in range(_STEPS):
        enters = min(range(len(goal) - 1), key=goal.__getitem__)
        ratios = [
            (row[-1] / row[enters], at) for at, row in enumerate(table) if row[enters] > _SMALL
        ]
        if goal[enters] > -_SMALL or not ratios:
            break
        _, leaves = min(ratios)
        pivot = table[leaves] = [value / table[leaves][enters] for value in table[leaves]]
        table = [row if row is pivot else _less(row, pivot, row[enters]) for row in table]
        goal = _less(goal, pivot, goal[enters])
    return goal[columns:-1]


def _less(row: Row, pivot: Row, times: float) -> Row:
    return [a - times * b for a, b in zip(row, pivot, strict=True)] if times else row
