"""Lengths on paper as options take them: `5 mm` or `3/16 in` in, points out."""

import click

from tagend.layouts.base.faults import Refused


class _PaperLength(click.ParamType[float]):
    name = "LENGTH"

    def convert(
        self, value: object, param: click.Parameter | None, ctx: click.Context | None
    ) -> float:
        from tagend.layouts.paper.lengths import parse_length

        if isinstance(value, float):
            return value
        try:
            return parse_length(str(value))
        except Refused as error:
            self.fail(f"{error}.", param, ctx)


PAPER_LENGTH = _PaperLength()
