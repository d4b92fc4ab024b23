"""A command of ours as a person can paste it: its words in, a line for their shell out."""

import os
import shlex
import subprocess


def command_line(*words: str) -> str:
    """Return `tagend` and the words, quoted where the system's own shell needs it."""
    line = ["tagend", *words]
    return subprocess.list2cmdline(line) if os.name == "nt" else shlex.join(line)
