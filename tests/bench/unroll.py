"""Do leaders that pass more of a wave turn over sooner? `python -m tests.bench.unroll`.

Another model than the measure's: a chain of straight links in a vertical plane, with mass at their
ends, bending stiffness between them and the drag of air across them (gravity is left out). It ends
in a fly. The line's upper end is held; a loop in it has the line and the leader lie back above,
moving on at one speed, and rolls them out. How soon the fly has come to 95 % of the whole length is
ranked against the share of energy that the measure says the leader passes (Spearman's rank
correlation: -1 where all that pass more are sooner).

Assumptions, none of them measured: every leader is brought to one length, its shares kept; all are
of nylon of one modulus, and undamped; a level line of one kind; a light fly with little drag; drag
is that of a cylinder at one coefficient, across the link alone. A leader that doesn't come so far
before it falls back comes last, by how far it came.

It finds no relation: from -0.55 without drag to +0.21 with twice as much, of eight leaders, where
chance alone passes 0.7 either way once in twenty. So the measure says what joints reflect, and not
how soon a leader turns over.
"""

from collections.abc import Callable

import numpy as np
from msgspec import Struct
from msgspec.structs import replace
from numpy.typing import NDArray

from tagend.cards.leader.leader import Leader
from tagend.cards.leader.waves import measure
from tests.outside.test_wave_equation import STRINGS

Vector = NDArray[np.float64]
Ranked = list[tuple[float, ...]]
Motion = Callable[[Vector], Vector]

LEADER, LINE, LOOP = 2.7, 1.5, 0.3  # m: lengths, and the loop's height
AIR = 1.2  # kg/m3
NYLON = 1140.0  # kg/m3
LINE_DIAMETER, LINE_DENSITY, LINE_STIFFNESS = 0.9e-3, 900.0, 5e-6  # m, kg/m3, N m2
FLY, FLY_AREA = 3e-5, 2e-5  # kg, m2
FAR = 0.95


class Case(Struct, frozen=True):
    """What is varied: speed in m/s, drag coefficient, N/m2, seconds and metres."""

    name: str
    speed: float = 10.0
    drag: float = 1.2
    modulus: float = 3e9
    tick: float = 5e-4
    link: float = 0.075


CASES = (
    plain := Case("as assumed"),
    replace(plain, name="half the time step", tick=2.5e-4),
    replace(plain, name="links of 2/3 the length", link=0.05),
    replace(plain, name="no drag", drag=0.0),
    replace(plain, name="half the drag", drag=0.6),
    replace(plain, name="twice the drag", drag=2.4),
    replace(plain, name="15 m/s", speed=15.0),
    replace(plain, name="half the modulus", modulus=1.5e9),
)


class Chain(Struct, frozen=True):
    """The links from the held end to the fly."""

    link: float
    masses: Vector  # at each link's far end, kg
    widths: Vector  # of each link, m
    springs: Vector  # at each joint of two links, N m
    drag: float


def chain_of(leader: Leader, case: Case) -> Chain:
    """Return the chain of a leader, as long as all of them, on its line."""
    lengths = np.array([float(piece.finished.high_mm) for piece in leader.pieces])
    ends = LINE + np.cumsum(lengths) / lengths.sum() * LEADER
    sizes = np.array([float(piece.section.diameter.mm) / 1000 for piece in leader.pieces])
    count = round((LINE + LEADER) / case.link)
    at = (np.arange(count * 10) + 0.5) / 10 * case.link
    place = np.minimum(np.searchsorted(ends, at), len(ends) - 1)
    fine = np.where(at < LINE, LINE_DIAMETER, sizes[place])
    density = np.where(at < LINE, LINE_DENSITY, NYLON)
    bending = np.where(at < LINE, LINE_STIFFNESS, case.modulus * np.pi * fine**4 / 64)
    of_links = (density * np.pi * fine**2 / 4).reshape(count, 10).mean(axis=1) * case.link
    masses = of_links / 2
    masses[:-1] += of_links[1:] / 2
    masses[-1] += FLY
    # Of two links in a row: springs of all the short bits between their middles, one after another.
    limp = (1 / bending).reshape(count, 10)
    springs = 1 / (case.link / 10 * (limp[:-1, 5:].sum(axis=1) + limp[1:, :5].sum(axis=1)))
    widths = fine.reshape(count, 10).mean(axis=1)
    return Chain(case.link, masses, widths, springs, case.drag)


def motion(chain: Chain) -> Motion:
    """Return what gives the rates of the links' angles and of their speeds of turning."""
    count, link = len(chain.masses), chain.link
    beyond = np.cumsum(chain.masses[::-1])[::-1]
    hung = link**2 * beyond[np.maximum.outer(np.arange(count), np.arange(count))]

    def rates(state: Vector) -> Vector:
        angles, turning = state[:count], state[count:]
        sines, cosines = np.sin(angles), np.cos(angles)
        across = np.outer(cosines, cosines) + np.outer(sines, sines)  # cos(a - b)
        skew = np.outer(sines, cosines) - np.outer(cosines, sines)  # sin(a - b)
        right = -(hung * skew) @ turning**2
        vx, vy = np.cumsum(-link * sines * turning), np.cumsum(link * cosines * turning)
        middle_x, middle_y = vx + link * sines * turning / 2, vy - link * cosines * turning / 2
        speed = -middle_x * sines + middle_y * cosines
        force = -AIR / 2 * chain.drag * chain.widths * link * np.abs(speed) * speed
        fx, fy = -force * sines, force * cosines
        fly = -AIR / 2 * chain.drag * FLY_AREA * np.hypot(vx[-1], vy[-1])
        below_x = np.cumsum(fx[::-1])[::-1] - fx + fly * vx[-1]
        below_y = np.cumsum(fy[::-1])[::-1] - fy + fly * vy[-1]
        right += link * (cosines * below_y - sines * below_x) + link * force / 2
        moment = chain.springs * np.diff(angles)
        right[:-1] += moment
        right[1:] -= moment
        return np.concatenate([turning, np.linalg.solve(hung * across, right)])

    return rates


def turns_over(leader: Leader, case: Case) -> tuple[float, float]:
    """Return when the fly has come far enough, in s or infinite, and how far it came, as a share.

    Classical Runge-Kutta of the fourth order.
    """
    chain = chain_of(leader, case)
    count, length = len(chain.masses), len(chain.masses) * case.link
    middles = (np.arange(count) + 0.5) * case.link
    bend = np.pi * LOOP / 2
    angles = np.pi * np.clip((middles - LINE / 4) / bend, 0, 1)
    inside = (angles > 0) & (angles < np.pi)
    # A loop that rolls on at half the speed of what lies above it.
    turning = np.where(inside, -case.speed / 2 * np.pi / bend, 0.0)
    turning *= case.speed / (-np.sum(case.link * np.sin(angles) * turning))
    state, rates, tick = np.concatenate([angles, turning]), motion(chain), case.tick
    farthest = 0.0
    for step in range(int(4 * length / case.speed / tick)):
        came = float(np.cos(state[:count]).sum()) / count
        farthest = max(farthest, came)
        if came >= FAR:
            return step * tick, came
        one = rates(state)
        two = rates(state + tick / 2 * one)
        three = rates(state + tick / 2 * two)
        state = state + tick / 6 * (one + 2 * two + 2 * three + rates(state + tick * three))
    return float("inf"), farthest


def ranks(values: Ranked) -> Vector:
    """Return the rank of each value, from 0; like ones share the middle of theirs."""
    return np.array(
        [sum(o < v for o in values) + (sum(o == v for o in values) - 1) / 2 for v in values]
    )


def spearman(one: Ranked, other: Ranked) -> float:
    return float(np.corrcoef(ranks(one), ranks(other))[0, 1])


def main() -> None:
    """Print when each leader turns over in each case, and the correlations."""
    passed: Ranked = [
        (found.middle,) for tied in STRINGS.values() if (found := measure(tied).passed)
    ]
    print(f"{'':24} {' '.join(f'{name:>6}' for name in STRINGS)}   rank correlation")
    print(f"{'passed, %':24} {' '.join(f'{100 * share[0]:6.1f}' for share in passed)}")
    for case in CASES:
        times = [turns_over(tied, case) for tied in STRINGS.values()]
        told = " ".join(
            f"{1000 * time:4.0f}ms" if time < float("inf") else f"{100 * far:5.0f}%"
            for time, far in times
        )
        order: Ranked = [(time, -far if time == float("inf") else 0.0) for time, far in times]
        print(f"{case.name:24} {told}   {spearman(passed, order):+.2f}", flush=True)


if __name__ == "__main__":
    main()
