"""A group of commands that loads one only when it is asked for: a person waits for every start."""

from collections.abc import Mapping, Sequence
from importlib import import_module
from typing import Any, cast

import click

from tagend.layouts.base.faults import Refused


class LazyGroup(click.Group):
    """Commands whose modules, called as they are, stand in one package."""

    def __init__(self, *args: Any, home: str, names: Mapping[str, str], **keys: Any) -> None:
        """Take the package, and what is said of each command in the order of their listing."""
        super().__init__(*args, **keys)
        self.home = home
        self.names = names

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(self.names)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if cmd_name not in self.names:
            return None
        # Nearly all need it. Deep in a chain of imports it takes three times as long: Python then
        # fetches and returns memory for the stack at every call.
        import pydantic_core  # noqa: F401

        command: click.Command = import_module(f"{self.home}.{cmd_name}").command
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """List the commands without loading them, which takes 0.1 s."""
        with formatter.section("Commands"):
            formatter.write_dl(list(self.names.items()))

    def invoke(self, ctx: click.Context) -> Any:
        """Run the command; what it refuses is told in the language of the shop."""
        try:
            return super().invoke(ctx)
        except Refused as error:
            from tagend.cards.cli.spoken import refusal_told

            raise refusal_told(error) from None

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """Find the command; where help is asked for, give it its examples."""
        name, command, rest = super().resolve_command(ctx, args)
        if name is not None and command is not None and set(rest) & set(ctx.help_option_names):
            path = f"{ctx.command_path} {name}".removeprefix("tagend ")
            command.epilog = "\n  ".join(("\b\nExamples:", *examples()[path]))
        return name, command, rest


def examples() -> Mapping[str, Sequence[str]]:
    """Return how each command may be used, by what is typed for it."""
    from tagend.cards.base.named_table import read_our_file

    return cast(Mapping[str, Sequence[str]], read_our_file("cli/examples.toml"))
