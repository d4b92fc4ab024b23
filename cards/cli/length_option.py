"""Lengths on paper as options take them: `5 mm` or `3/16 in` in, points out."""

import click


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
        except ValueError as error:
            self.fail(f'{error}; write one with its unit, such as "5 mm" or "3/16 in".', param, ctx)


PAPER_LENGTH = _PaperLength()
