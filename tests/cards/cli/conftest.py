"""Fixtures: the command run in this process, and the samples in a fresh folder."""

from collections.abc import Callable
from io import BytesIO, TextIOWrapper
from pathlib import Path

import pytest
from msgspec import Struct

from tagend.cards.cli import main


class Outcome(Struct, frozen=True):
    status: int
    out: str
    err: str

    @property
    def faults(self) -> list[str]:
        """The lines on standard error of a run that printed nothing else."""
        assert self.out == ""
        return self.err.splitlines()


Tagend = Callable[..., Outcome]


@pytest.fixture
def tagend(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Tagend:
    for name in ("TAGEND_SHOP", "TAGEND_BOOK", "TAGEND_WHO"):
        monkeypatch.delenv(name, raising=False)

    def run(
        *arguments: str | Path, stdin: bytes = b"", reader: type[TextIOWrapper] = TextIOWrapper
    ) -> Outcome:
        monkeypatch.setattr("sys.stdin", reader(BytesIO(stdin)))
        with pytest.raises(SystemExit) as end:
            main([str(argument) for argument in arguments])
        printed = capsys.readouterr()
        assert isinstance(end.value.code, int)
        return Outcome(end.value.code, printed.out, printed.err)

    return run


@pytest.fixture
def demo(tmp_path: Path, tagend: Tagend) -> Path:
    folder = tmp_path / "demo"
    tagend("samples", folder)
    return folder
