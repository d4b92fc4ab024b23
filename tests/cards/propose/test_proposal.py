"""Proposals against every taper that there is on small racks."""

import math
from collections.abc import Iterator, Sequence
from itertools import combinations, pairwise, product
from random import Random

import pytest
from cfractions import Fraction
from msgspec.structs import replace

from tagend.cards.base.shown_lengths import length
from tagend.cards.base.units import parse_diameter, parse_length, parse_span
from tagend.cards.leader.audit import audit
from tagend.cards.leader.choosing import joints
from tagend.cards.leader.joints import Joint
from tagend.cards.leader.leader import work_out
from tagend.cards.leader.passing import passing
from tagend.cards.leader.said import Said
from tagend.cards.leader.steps import beyond, big, step_of
from tagend.cards.practice.practice import Meets, Practice
from tagend.cards.propose.costs import step_costs
from tagend.cards.propose.lengths import plan_of
from tagend.cards.propose.links import recipe_of
from tagend.cards.propose.net import net_of
from tagend.cards.propose.proposal import Proposal, propose
from tagend.cards.propose.search import best_ways
from tagend.cards.propose.step_limit import StepLimit
from tagend.cards.propose.supplies import Supply
from tagend.cards.propose.wish import USUAL_SHARES, Shares, Tippet, Wish
from tagend.cards.recipe.recipe import Recipe, Section
from tagend.layouts.base.faults import Refused
from tagend.layouts.base.quantities import INCH_MM
from tests.written import PRACTICE, practice

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
    near = [each for each in found[:12] if each[0][1] == found[0][0][1]]
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


def most_knots(asked: Wish) -> int:
    """Return twice the knots of steps as big as asked for, and each 1.45 times, and one."""
    thick, thin = asked.butt.mm, asked.tippet.diameter.mm
    fewest = math.ceil(math.log(thick / thin) / math.log(1.45))
    if asked.step.most_mm is not None:
        fewest = max(fewest, math.ceil((thick - thin) / asked.step.most_mm))
    return 2 * fewest + 1


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
    for count in range(2, min(len(rack), most_knots(asked) + 1) + 1):
        for path in combinations(rack, count):
            ends = path[0].diameter.mm == asked.butt.mm and (
                path[-1].diameter.mm == asked.tippet.diameter.mm
                and asked.tippet.material in (None, path[-1].material)
            )
            if ends and all(may_follow(a, b, asked) for a, b in pairwise(path)):
                yield path


def cost(asked: Wish, path: tuple[Supply, ...]) -> tuple[int, ...]:
    """Return what speaks against a taper, the gravest first; logarithms in millionths."""
    tied = joints(recipe_of(*path), PRACTICE)
    too_far = [beyond(step_of(joint.meeting), asked.step.limits) for joint in tied]
    passed = [passing(joint.meeting).passed for joint in tied]
    return (
        max(millionths(max(apart.low, 1 / apart.high)) if apart else 0 for apart in too_far),
        sum(above.material != below.material for above, below in pairwise(path[:-1])),
        len(path) - 1,
        sum(joint.reason != Said(meets(joint)) for joint in tied),
        -sum(millionths((share.low + share.high) / 2) for share in passed if share),
    )


def meets(joint: Joint) -> Meets:
    if joint.meeting.mixed:
        return "nylon to fluorocarbon"
    return "big step" if big(step_of(joint.meeting), LIMITS) else "same line"


def millionths(number: float) -> int:
    return round(1_000_000 * math.log(number))


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
        takes = piece.at_butt.takes_mm + piece.at_fly.takes_mm
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
            found = [shown(proposal) for proposal in propose(asked, rack, PRACTICE, "Taper")]
        except Refused:
            found = []
        assert found == every_taper(asked, rack), f"case {seed}"


def test_the_search_keeps_what_a_worse_joint_further_down_makes_the_best() -> None:
    # Down to 10 the copolymer has no big step, and a nylon of 13 has: 1.54. But 8 to 5 has 1.6.
    rack = [supply(size) for size in (20, 13, 10, 8, 5)] + [supply(14, "copolymer")]
    net = net_of(wish(90, 20, 5, 9), rack, PRACTICE)
    (best,) = best_ways([net], step_costs(net), 1)
    assert [net.strands[place].label for place in best.strands] == (
        ["20 nylon", "13 nylon", "10 nylon", "8 nylon", "5 nylon"]
    )


def test_the_search_keeps_what_has_more_line_for_the_rest() -> None:
    # By 15 less turns back than by 14; but with every other spool at its plan, 15 is short of it.
    path = (supply(18), supply(14), supply(12), supply(9))
    plan = plan_of(4, USUAL_SHARES, net_of(wish(60, 18, 9), path, PRACTICE).tape)
    assert plan is not None
    full = rooms(tuple(replace(strand, left_mm=60 * INCH_MM) for strand in path), 60)
    rack = [
        replace(strand, left_mm=(60 - room + length) * INCH_MM)
        for strand, room, length in zip(path, full, plan.lengths, strict=True)
    ]
    short = replace(rack[1], left_mm=(60 - full[1] + plan.lengths[1] - 2) * INCH_MM)
    rack = [rack[0], replace(short, diameter=parse_diameter("15 thou")), *rack[1:]]
    net = net_of(wish(60, 18, 9, None), rack, PRACTICE)
    (best,) = best_ways([net], step_costs(net), 1)
    assert [net.strands[place].diameter.plain for place in best.strands][1] == "14 thou"


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
        found = [shown(proposal) for proposal in propose(asked, rack, PRACTICE, "Taper")]
    except Refused:
        found = []
    assert found == every_taper(asked, rack)


@pytest.mark.parametrize("more", range(24))
def test_a_spool_with_little_more_than_the_leader_is_measured_exactly(more: int) -> None:
    path = (supply(16), replace(supply(12), left_mm=(30 + more) * INCH_MM), supply(9))
    asked = wish(30, 16, 9, step=5)
    assert net_of(asked, path, PRACTICE).rooms((0, 1, 2)) == rooms(path, 30)


def test_a_new_material_counts_above_the_tippet_alone() -> None:
    rack = [
        supply(16),
        supply(13),
        supply(13, "fluorocarbon"),
        supply(10),
        supply(10, "fluorocarbon"),
    ]
    net = net_of(wish(90, 16, 10), rack, PRACTICE)
    cost = step_costs(net)
    steps = [(above, below) for above, row in enumerate(net.below) for below in row]
    assert {places for places in steps if cost(*places).changes} == {(0, 2)}


def made(rack: Sequence[Supply], asked: Wish, by: Practice = PRACTICE) -> list[str]:
    """Return what the best proposal is made of, by its diameters."""
    return [str(strand.diameter.plain) for strand in propose(asked, rack, by, "Taper")[0].strands]


def test_under_the_limit_a_knot_less_is_better_than_an_even_taper() -> None:
    # 20 to 10 by 14 is 1.43 and 1.4 times; by 16 and 13 each joint turns half as much back.
    rack = [supply(size) for size in (20, 16, 14, 13, 10)]
    assert made(rack, wish(90, 20, 10, None)) == ["20 thou", "14 thou", "10 thou"]


def test_beyond_the_limit_the_least_worst_joint_is_better_than_a_knot_less() -> None:
    # In one step 2 times, by 18 1.8 times and by 13 1.54; by 17 and 13 1.31.
    rack = [supply(size) for size in (20, 18, 13, 10)]
    assert made(rack[:1] + rack[3:], wish(90, 20, 10, 10)) == ["20 thou", "10 thou"]
    assert made([rack[0], rack[1], rack[3]], wish(90, 20, 10, 10))[1:] == ["18 thou", "10 thou"]
    assert made(rack, wish(90, 20, 10, 10)) == ["20 thou", "18 thou", "13 thou", "10 thou"]


def test_of_equal_knots_the_liked_ones_and_then_the_energy_decide() -> None:
    # By 13 the steps are 1.23 and 1.44 times, by 12 both 1.33, where less turns back in all.
    even = [supply(size) for size in (16, 13, 12, 9)]
    assert made(even, wish(90, 16, 9, None)) == ["16 thou", "12 thou", "9 thou"]
    # By 36 less turns back than by 30, but no blood knot draws up on 36, and one does on 30.
    thick = [supply(size) for size in (41, 36, 30, 27, 20)]
    assert made(thick, wish(120, 41, 20, None)) == ["41 thou", "30 thou", "27 thou", "20 thou"]


def test_a_persons_own_habit_is_as_good_as_the_first_choice() -> None:
    own = practice('[choice]\n"same line" = "albright"\n')
    thick = [supply(size) for size in (41, 36, 30, 27, 20)]
    assert made(thick, wish(120, 41, 20, None), own)[1] == "36 thou"
