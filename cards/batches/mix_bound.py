"""What lengths alone allow: line taken and left in; a mix in fractions and a bound out.

Give each kind of line a price for a part of a mm. A leader that takes less line than the price of
one leader earns the difference, so that no mix has more leaders than the line left is worth
together with what its leaders can earn: the weak duality of linear programming (V. Chvátal,
Linear Programming, chapter 5). Any prices give a bound, and the best prices the bound that
pieces of leaders would reach. So prices may be rounded, and the bound is exact all the same.
"""

from collections.abc import Sequence

from tagend.cards.batches.budget import Budget

_ONE = 1 << 40  # the price of a leader; prices are whole numbers
_PIVOTS = 500  # of the simplex method; what it has then, or out of steps, are prices too
_SMALL = 1e-9


def relaxed(
    takes: Sequence[Sequence[int]], left: Sequence[int], more: Sequence[int], budget: Budget
) -> tuple[list[float], int]:
    """Return how many of each leader there would be in fractions, and a bound on their sum.

    `takes` is the line that a leader takes, by kind and leader; `left` what is left, by kind;
    `more` how many of each leader may be made.
    """
    budget.charge(16 + 2 * (len(takes) + len(more)))
    scarce = [
        (row, rest)
        for row, rest in zip(takes, left, strict=True)
        if sum(take * count for take, count in zip(row, more, strict=True)) > rest
    ]
    rows = [[take / max(rest, 1) for take in row] for row, rest in scarce]
    rows += [[float(at == leader) for at in range(len(more))] for leader in range(len(more))]
    numbers, duals = _simplex(rows, [*(min(rest, 1.0) for _, rest in scarce), *more], budget)
    worth, costs = 0, [0] * len(more)
    for (row, rest), dual in zip(scarce, duals, strict=False):
        price = max(round(dual / max(rest, 1) * _ONE), 0)
        worth += price * rest
        costs = [cost + price * take for cost, take in zip(costs, row, strict=True)]
    worth += sum(max(_ONE - cost, 0) * count for cost, count in zip(costs, more, strict=True))
    return numbers, worth // _ONE


def _simplex(
    rows: Sequence[Sequence[float]], limits: Sequence[float], budget: Budget
) -> tuple[list[float], list[float]]:
    """Return the x and the prices of: make the sum of x as large as can be, rows x <= limits."""
    columns = len(rows[0])
    table = [
        [*row, *(float(at == place) for at in range(len(rows))), limit]
        for place, (row, limit) in enumerate(zip(rows, limits, strict=True))
    ]
    basis = list(range(columns, columns + len(rows)))
    goal = [-1.0] * columns + [0.0] * (len(rows) + 1)
    for _ in range(_PIVOTS):
        enters = min(range(len(goal) - 1), key=goal.__getitem__)
        ratios = [
            (row[-1] / row[enters], at) for at, row in enumerate(table) if row[enters] > _SMALL
        ]
        if goal[enters] > -_SMALL or not ratios or budget.left <= 0:
            break
        budget.charge(1 + (len(table) * len(goal) >> 4))
        leaves = min(ratios)[1]
        basis[leaves] = enters
        pivot = table[leaves] = [value / table[leaves][enters] for value in table[leaves]]
        table = [row if row is pivot else _less(row, pivot, row[enters]) for row in table]
        goal = _less(goal, pivot, goal[enters])
    values = dict(zip(basis, (row[-1] for row in table), strict=True))
    return [values.get(column, 0.0) for column in range(columns)], goal[columns:-1]


def _less(row: list[float], pivot: list[float], times: float) -> list[float]:
    return [a - times * b for a, b in zip(row, pivot, strict=True)] if times else row
