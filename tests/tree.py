"""Where the tree of the project lies, for tests that read its files."""

from pathlib import Path

ROOT = Path(__file__).parents[1]
SAMPLES = ROOT / "samples"
BROKEN = ROOT / "tests" / "cards" / "broken"
