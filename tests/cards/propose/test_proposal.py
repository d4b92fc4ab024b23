"""Proposals against every taper that there is on small racks."""

import math
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from itertools import combinations, pairwise, product
from random import Random

import pytest

from tagend.cards.base.shown_lengths import length
from tagend.cards.base.units import parse_diameter, parse_length, parse_span
from tagend.cards.leader.audit import audit
from tagend.cards.leader.leader import work_out
from tagend.cards.propose.costs import knot_cost, step_costs
from tagend.cards.propose.links import recipe_of
from tagend.cards.propose.net import net_of
from tagend.cards.propose.proposal import Proposal, propose
from tagend.cards.propose.step_limit import StepLimit
from tagend.cards.propose.supplies import Supply
from tagend.cards.propose.wish import Shares, Tippet, Wish
from tagend.cards.recipe.recipe import Recipe, Section
from tagend.layouts.base.faults import Refused
from tagend.layouts.base.quantities import INCH_MM
from tests.written import PRACTICE

TAPE_MM = INCH_MM / 4
LIMITS = PRACTICE.rules["step"].limits
SHORTEST = 6  # in


def supply(thou: int, material: str = "nylon", left: int | None = None) -> Supply:
    left_mm = None if left is None else left * INCH_MM
    return Supply(material, parse_diameter(f"{thou} thou"), None, f"{thou} {material}", left_mm)


def wish(
    inches: int,
    butt: int,
    tippet: Tippet | int,
    step: int | None = 4,
    shares: Shares | None = None,
) -> Wish:
    end = Tippet(parse_diameter(f"{tippet} thou")) if isinstance(tippet, int) else tippet
    return Wish(
        parse_length(f"{inches} in"),
        parse_diameter(f"{butt} thou"),
        end,
        StepLimit(LIMITS, None if step is None else parse_diameter(f"{step} thou").mm),
        shares or Shares(60, 20, 20),
    )


def shown(proposal: Proposal) -> tuple[tuple[str, str], ...]:
    return tuple(
        (section.length.plain, str(strand.label))
        for section, strand in zip(proposal.recipe.sections, proposal.strands, strict=True)
    )


# A second solution, which tries everything: what the package's docstring says, word for word.


def every_taper(asked: Wish, rack: list[Supply]) -> list[tuple[tuple[str, str], ...]]:
    """Return the three best of all tapers, as `shown` shows them."""
    thickest_first = sorted(rack, key=lambda strand: -strand.diameter.mm)
    found = []
    for path in paths(asked, thickest_first):
        lengths = best_lengths(asked, path)
        if lengths is not None:
            order = [thickest_first.index(strand) for strand in path]
            found.append((cost(asked, path), order, lengths, path))
    found.sort(key=lambda each: each[:2])
    even = height(asked.butt.mm) - height(asked.tippet.diameter.mm)
    near = [each for each in found[:12] if each[0] <= found[0][0] + 5 * even**2]
    near.sort(key=lambda each: warnings(each[3], each[2]))
    return [
        tuple(
            (f"{length(n * INCH_MM, 'in')}", str(strand.label))
            for n, strand in zip(lengths, path, strict=True)
        )
        for _, _, lengths, path in near[:3]
    ]


def warnings(path: tuple[Supply, ...], lengths: tuple[Fraction, ...]) -> int:
    """Count what the audit says of a taper, without its notes."""
    sections = tuple(
        Section(parse_span(length(n * INCH_MM, "in")), strand.diameter, strand.material)
        for n, strand in zip(lengths, path, strict=True)
    )
    found = audit(work_out(Recipe("", sections), PRACTICE), PRACTICE)
    return sum(finding.severity in ("error", "warning") for finding in found)


def fewest_knots(asked: Wish) -> int:
    """Return the knots of steps as big as asked for, or each 1.35 times at the most."""
    thick, thin = asked.butt.mm, asked.tippet.diameter.mm
    if asked.step.most_mm is not None:
        return math.ceil((thick - thin) / asked.step.most_mm)
    return math.ceil(math.log(thick / thin) / math.log(1.35))


def may_follow(above: Supply, below: Supply, asked: Wish) -> bool:
    if above.diameter.mm <= below.diameter.mm:
        return False
    if asked.step.most_mm is not None:
        return above.diameter.mm - below.diameter.mm <= asked.step.most_mm
    return not any(
        finding.rule == "step"
        for finding in audit(work_out(recipe_of(above, below), PRACTICE), PRACTICE)
    )


def paths(asked: Wish, rack: list[Supply]) -> Iterator[tuple[Supply, ...]]:
    fewest = fewest_knots(asked)
    for count in range(2, min(len(rack), 2 * fewest + 2) + 1):
        for path in combinations(rack, count):
            ends = path[0].diameter.mm == asked.butt.mm and (
                path[-1].diameter.mm == asked.tippet.diameter.mm
                and asked.tippet.material in (None, path[-1].material)
            )
            if ends and all(may_follow(a, b, asked) for a, b in pairwise(path)):
                yield path


def height(mm: Fraction) -> int:
    return round(1_000_000 * math.log(mm))


def cost(asked: Wish, path: tuple[Supply, ...]) -> int:
    fewest = fewest_knots(asked)
    drop = height(asked.butt.mm) - height(asked.tippet.diameter.mm)
    paid = 0
    for place, (above, below) in enumerate(pairwise(path), start=2):
        paid += (fewest * (height(above.diameter.mm) - height(below.diameter.mm)) - drop) ** 2
        if above.material != below.material:
            paid += drop**2 * (1 if place == len(path) else 10)
    return paid


def best_lengths(asked: Wish, path: tuple[Supply, ...]) -> tuple[Fraction, ...] | None:
    total, count = int(asked.total.mm / INCH_MM), len(path)
    if count * SHORTEST > total:
        return None
    planned = shared(asked, count, [SHORTEST] * count, [total] * count)
    least = [max(SHORTEST, math.ceil(Fraction(9, 10) * length)) for length in planned]
    most = rooms(path, total)
    if any(low > high for low, high in zip(least, most, strict=True)) or sum(most) < total:
        return None
    return halved(shared(asked, count, least, most), least, most)


def halved(lengths: tuple[int, ...], least: list[int], most: list[int]) -> tuple[Fraction, ...]:
    """Share each part of pieces up to a foot in half inches, as near to its fall as can be."""
    count = len(lengths)
    sizes = [size for size in (count // 2, (count - 1) // 2, 1) if size]
    found: list[Fraction] = []
    for part, size in enumerate(sizes):
        at = slice(sum(sizes[:part]), sum(sizes[: part + 1]))
        whole = 2 * sum(lengths[at])
        if max(lengths[at]) > 12:
            found += map(Fraction, lengths[at])
            continue
        fall = [Fraction(2, 3) ** n if part == 0 else Fraction(1) for n in range(size)]
        ranges = [(2 * a, 2 * min(b, 12)) for a, b in zip(least[at], most[at], strict=True)]
        halves = closest([whole * f / sum(fall) for f in fall], ranges, whole)
        found += [Fraction(half, 2) for half in halves]
    return tuple(found)


def rooms(path: tuple[Supply, ...], total: int) -> list[int]:
    """Return for each strand the longest finished piece whose cut it has line for."""
    sections = (Section(parse_span("1 ft"), s.diameter, s.material) for s in path)
    pieces = work_out(Recipe("", tuple(sections)), PRACTICE).pieces
    found = []
    for strand, piece in zip(path, pieces, strict=True):
        takes = piece.at_butt.mm + piece.at_fly.mm
        cuts = (-(-(n * INCH_MM + takes) // TAPE_MM) * TAPE_MM for n in range(total, 0, -1))
        fits = (strand.left_mm is None or cut <= strand.left_mm for cut in cuts)
        found.append(next((n for n, fit in zip(range(total, 0, -1), fits, strict=False) if fit), 0))
    return found


def shared(asked: Wish, count: int, least: list[int], most: list[int]) -> tuple[int, ...]:
    """Return the lengths nearest to the shares, and then to the fall within each part."""
    total, shares = int(asked.total.mm / INCH_MM), asked.shares
    sizes = [size for size in (count // 2, (count - 1) // 2, 1) if size]
    percent = [shares.butt, shares.taper, shares.tippet]
    if len(sizes) == 2:
        percent = [shares.butt + shares.taper, shares.tippet]
    wanted = [Fraction(total * share, 100) for share in percent]
    ends = [sum(sizes[:n]) for n in range(len(sizes) + 1)]
    ranges = [(sum(least[a:b]), sum(most[a:b])) for a, b in pairwise(ends)]
    lengths: list[int] = []
    for part, whole in enumerate(closest(wanted, ranges, total)):
        fall = [Fraction(2, 3) ** n if part == 0 else Fraction(1) for n in range(sizes[part])]
        inside = list(zip(least, most, strict=True))[ends[part] : ends[part + 1]]
        lengths += closest([whole * f / sum(fall) for f in fall], inside, whole)
    return tuple(lengths)


def closest(wanted: list[Fraction], ranges: list[tuple[int, int]], total: int) -> tuple[int, ...]:
    """Return whole numbers of that sum nearest to those wanted; the first are the larger."""
    scale = math.lcm(*(number.denominator for number in wanted))
    scaled = [int(number * scale) for number in wanted]
    choices = product(*(range(low, min(high, total) + 1) for low, high in ranges[:-1]))
    low, high = ranges[-1]
    whole = ((*c, total - sum(c)) for c in choices if low <= total - sum(c) <= high)

    def nearness(numbers: tuple[int, ...]) -> tuple[int, tuple[int, ...]]:
        off = (scale * n - w for n, w in zip(numbers, scaled, strict=True))
        return -sum(n * n for n in off), numbers

    return max(whole, key=nearness)


def random_case(random: Random) -> tuple[Wish, list[Supply]]:
    tippet, butt = random.randint(5, 9), random.randint(13, 20)
    sizes = {
        butt,
        tippet,
        *random.sample(range(tippet + 1, butt), min(butt - tippet - 1, random.randint(2, 4))),
    }
    rack = [
        supply(
            size,
            random.choice(["nylon", "nylon", "nylon", "fluorocarbon"]),
            random.choice([None, None, random.randint(8, 50)]),
        )
        for size in sizes
    ]
    end = Tippet(parse_diameter(f"{tippet} thou"), random.choice([None, None, "fluorocarbon"]))
    if random.random() < 0.4:
        rack.append(supply(tippet, "fluorocarbon"))
    rack = list({(strand.diameter, strand.material): strand for strand in rack}.values())
    shares = random.choice([Shares(60, 20, 20), Shares(50, 25, 25), Shares(30, 30, 40)])
    return wish(
        random.randint(24, 45), butt, end, random.choice([None, None, *range(4, 10)]), shares
    ), rack


@pytest.mark.parametrize("block", range(20))
def test_proposals_are_the_best_of_all_tapers_in_500_cases(block: int) -> None:
    for seed in range(25 * block, 25 * (block + 1)):
        asked, rack = random_case(Random(seed))
        try:
            found = [shown(proposal) for proposal in propose(asked, rack, PRACTICE)]
        except Refused:
            found = []
        assert found == every_taper(asked, rack), f"case {seed}"


@pytest.mark.parametrize("seed", range(40))
def test_spools_that_are_all_nearly_used_up_are_shared_as_well_as_can_be(seed: int) -> None:
    # Each gives about its part of 60 in beside its knots; together they may fall short.
    random = Random(seed)
    whole = [supply(16), supply(12), supply(9)]
    asked = wish(60, 16, 9, step=5, shares=Shares(40, 30, 30))
    knots = [
        20 - room for room in rooms(tuple(replace(s, left_mm=20 * INCH_MM) for s in whole), 60)
    ]
    rack = [
        replace(strand, left_mm=(part + taken + random.choice([-1, 0, 0, 1])) * INCH_MM)
        for strand, part, taken in zip(whole, (24, 18, 18), knots, strict=True)
    ]
    try:
        found = [shown(proposal) for proposal in propose(asked, rack, PRACTICE)]
    except Refused:
        found = []
    assert found == every_taper(asked, rack)


@pytest.mark.parametrize("more", range(24))
def test_a_spool_with_little_more_than_the_leader_is_measured_exactly(more: int) -> None:
    path = (supply(16), replace(supply(12), left_mm=(30 + more) * INCH_MM), supply(9))
    asked = wish(30, 16, 9, step=5)
    assert net_of(asked, path, PRACTICE).rooms((0, 1, 2)) == rooms(path, 30)


def test_a_new_material_costs_ten_knots_above_the_tippet_and_one_at_it() -> None:
    rack = [
        supply(16),
        supply(13),
        supply(13, "fluorocarbon"),
        supply(10),
        supply(10, "fluorocarbon"),
    ]
    net = net_of(wish(90, 16, 10), rack, PRACTICE)
    costs = step_costs(net)
    assert costs[0, 2] - costs[0, 1] == 10 * knot_cost(net)
    assert costs[1, 4] - costs[1, 3] == knot_cost(net)
