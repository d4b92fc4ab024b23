"""What of longer pulses gets through leaders in print: `python -m tests.bench.pulses`.

The measure takes each joint by itself, which holds for pulses shorter than every section. Here the
wave equation is solved for pulses of 0.3 and 1 m too, on which several joints act together, and
beside it stands what one step from the butt to the last strand would pass. All in per cent of the
energy sent down.
"""

from tagend.cards.leader.passing import Spread, passing
from tagend.cards.leader.suitability import Meeting
from tagend.cards.leader.waves import measure
from tests.ideal_string import arriving, short_pulse, string_of
from tests.outside.test_wave_equation import STRINGS
from tests.written import SIX, leader

LONG_MM = (300.0, 1000.0)


def main() -> None:
    """Print the table."""
    print("leader  measure  short (mm)   0.3 m     1 m   one step")
    for name, tied in {**STRINGS, "six": leader(SIX)}.items():
        parts = string_of(tied)
        short = short_pulse(parts)
        sent = [arriving(parts, pulse) for pulse in (short, *LONG_MM)]
        first, last = tied.joints[0].meeting, tied.joints[-1].meeting
        direct = Meeting(
            upper=first.upper,
            upper_mm=first.upper_mm,
            lower=last.lower,
            lower_mm=last.lower_mm,
        )
        print(
            f"{name:6} {percent(measure(tied).passed)}   {100 * sent[0]:5.1f} ({short:3.0f})"
            f"   {100 * sent[1]:5.1f}   {100 * sent[2]:5.1f}   {percent(passing(direct).passed)}"
        )


def percent(share: Spread | None) -> str:
    return f"{100 * share.middle:7.1f}" if share else "      ?"


if __name__ == "__main__":
    main()
