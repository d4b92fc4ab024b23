"""The register of what was tied: its table in, leaders out; new leaders in, a longer table out."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from datetime import date

from tagend.cards.code.notation import write_notation
from tagend.cards.leader.leader import Leader
from tagend.cards.practice.line_kind import Line
from tagend.cards.practice.practice import Practice
from tagend.cards.practice.rack_file import Rack
from tagend.cards.tables.growing_table import LogRow, read_log, with_rows
from tagend.layouts.base.faults import Fault, refuse_any

COLUMNS = ("number", "tied", "recipe", "check", "materials", "lots")

_APART = "; "  # between materials or lots in one cell


@dataclass(frozen=True, slots=True)
class Tied:
    """One leader that was tied and labelled."""

    number: int
    day: date
    recipe: str  # its name
    check: str  # the two last characters of its label's code
    materials: tuple[str, ...]
    lots: tuple[str, ...]  # `spool: lot`, of all spools that its line may have come from


def read_register(data: bytes) -> list[Tied]:
    """Return the leaders of a register; raises `Refused` with every row that cannot be read."""
    leaders: list[Tied] = []
    faults: list[Fault] = []
    for number, row in read_log(data, COLUMNS):
        try:
            leaders.append(_tied(row))
        except ValueError:
            found = f"{row['number']!r:.20} and {row['tied']!r:.20} are no number and day"
            faults.append(Fault(f"row {number}", found, "write such as 17 and 2026-05-31"))
    refuse_any(faults)
    return leaders


def next_number(leaders: Iterable[Tied]) -> int:
    """Return the number after the highest there is; numbers begin with 1."""
    return max((leader.number for leader in leaders), default=0) + 1


def entered(data: bytes | None, leaders: Iterable[Tied]) -> bytes:
    """Return the register with leaders added at its end, or a new one."""
    return with_rows(data, COLUMNS, map(_row, leaders))


def tied_leaders(
    leader: Leader, day: date, numbers: Iterable[int], rack: Rack | None, practice: Practice
) -> Iterator[Tied]:
    """Return the entries of like leaders."""
    one = Tied(
        number=0,
        day=day,
        recipe=leader.recipe.name,
        check=write_notation(leader.recipe, practice.knots, practice.materials)[-2:],
        materials=tuple(dict.fromkeys(piece.section.material for piece in leader.pieces)),
        lots=lots_of(leader, rack),
    )
    return (replace(one, number=number) for number in numbers)


def lots_of(leader: Leader, rack: Rack | None) -> tuple[str, ...]:
    """Return the lots of all spools that a leader's line may have come from.

    Of two like spools nobody can say later which it was, so both stand: a search for a bad lot
    may find a leader too many, and never one too few. The spool's name stands before its lot, so
    that no spreadsheet takes a lot for a number and drops its noughts.
    """
    lines = [Line.of(piece.section) for piece in leader.pieces if not piece.bought]
    spools = [spool for line in lines for spool in line.spools(rack) if spool.lot is not None]
    return tuple(dict.fromkeys(_in_list(f"{spool.label}: {spool.lot}") for spool in spools))


def chosen(
    leaders: Iterable[Tied],
    *,
    lot: str | None = None,
    recipe: str | None = None,
    tied_before: date | None = None,
) -> Iterator[Tied]:
    """Yield the leaders of a lot, of a recipe and tied before a day; None leaves all."""
    for leader in leaders:
        if lot is not None and not any(_is_lot(lot, named) for named in leader.lots):
            continue
        if recipe is not None and leader.recipe.casefold() != recipe.strip().casefold():
            continue
        if tied_before is None or leader.day < tied_before:
            yield leader


def _is_lot(lot: str, named: str) -> bool:
    return f": {named}".casefold().endswith(f": {_in_list(lot.strip())}".casefold())


def _in_list(text: str) -> str:
    return text.replace(_APART.strip(), ",")


def _tied(row: LogRow) -> Tied:
    return Tied(
        number=int(row["number"]),
        day=date.fromisoformat(row["tied"]),
        recipe=row["recipe"],
        check=row["check"].zfill(2),  # a spreadsheet makes 7 of 07
        materials=_list(row["materials"]),
        lots=_list(row["lots"]),
    )


def _list(cell: str) -> tuple[str, ...]:
    return tuple(part.strip() for part in cell.split(_APART.strip()) if part.strip())


def _row(leader: Tied) -> LogRow:
    return {
        "number": str(leader.number),
        "tied": leader.day.isoformat(),
        "recipe": leader.recipe,
        "check": leader.check,
        "materials": _APART.join(leader.materials),
        "lots": _APART.join(leader.lots),
    }
