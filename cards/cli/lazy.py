"""A group of commands that loads one only when it is asked for: a person waits for every start."""

from collections.abc import Sequence
from importlib import import_module
from typing import Any

import click


class LazyGroup(click.Group):
    """Commands whose modules, called as they are, stand in one package."""

    def __init__(self, *args: Any, home: str, names: Sequence[str], **keys: Any) -> None:
        """Take the package, and its commands in the order of their listing."""
        super().__init__(*args, **keys)
        self.home = home
        self.names = names

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(self.names)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if cmd_name not in self.names:
            return None
        command: click.Command = import_module(f"{self.home}.{cmd_name}").command
        return command
