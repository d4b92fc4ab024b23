"""A batch and its spools in; the part of a page that tells what it takes and lacks out."""

import hashlib
import json
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from msgspec import Struct

from tagend.cards.batches import COUNT_MOST
from tagend.cards.batches.batch import Batch
from tagend.cards.batches.batch_json import batch_json
from tagend.cards.batches.best_mix import best_mix
from tagend.cards.book.orders import Wanted
from tagend.cards.desk.desk import Desk
from tagend.cards.desk.page import part
from tagend.cards.practice.rack_file import Rack
from tagend.cards.practice.rules import Severity
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.words.batch_words import batch_told
from tagend.cards.words.leader_words import Told
from tagend.cards.words.said_words import in_words
from tagend.layouts.base.faults import Fault, refuse_any, refused


class Heeded(Struct, frozen=True, kw_only=True):
    """What is wrong or unwise in a leader, in words."""

    name: str
    severity: Severity
    told: str  # how grave it is
    what: str
    why: str


def asked_of(desk: Desk, counts: Mapping[str, Any]) -> list[tuple[Recipe, int]]:
    """Return the leaders of files with how many of each; raises `Refused`, naming the file."""
    faults: list[Fault] = []
    asked: list[tuple[Recipe, int]] = []
    for name, text in counts.items():
        written = str(text).strip()
        if not written.strip("0"):
            continue
        kept = desk.leader(name)
        if kept is None or kept.recipe is None:
            raise refused("there is no such leader in this folder", "load the page again", name)
        if written.isdecimal() and 1 <= int(written[:9]) <= COUNT_MOST:
            asked.append((kept.recipe, int(written)))
        else:
            found = f"{written[:40]!r} is no number of leaders"
            faults.append(Fault(name, found, f"write one from 1 to {COUNT_MOST}"))
    refuse_any(faults)
    return asked


def plan_told(
    desk: Desk, wanted: Sequence[Wanted], batch: Batch, rack: Rack
) -> dict[str, str | bool]:
    """Return what the page shows of a batch; `seen` changes with anything that is in it."""
    job = desk.job()
    found = list(heeded(job.told([each.sheet for each in wanted])))
    html = part(
        desk,
        "plan",
        told=batch_told(batch, job.wording),
        mix=best_mix(batch.orders, rack) if batch.shortages else None,
        names=[order.leader.recipe.name for order in batch.orders],
        number=sum(order.count for order in batch.orders),
        heeded=found,
    )
    return {
        "html": html,
        "is_wrong": any(each.severity == "error" for each in found),
        "is_short": bool(batch.shortages),
        "seen": sign_of(batch),
    }


def sign_of(batch: Batch) -> str:
    """Return what changes with anything that a batch takes from a spool, or lacks."""
    text = json.dumps(batch_json(batch), default=str, sort_keys=True)
    return hashlib.sha256(text.encode()).hexdigest()


def heeded(all_told: Sequence[Told]) -> Iterator[Heeded]:
    """Yield what is found in leaders; notes stay on the leader's own page."""
    for told in all_told:
        for finding in told.findings:
            if finding.severity != "note":
                yield Heeded(
                    name=told.leader.recipe.name,
                    severity=finding.severity,
                    told=told.wording.term(finding.severity),
                    what=in_words(finding.says, told),
                    why=in_words(finding.reason, told),
                )
