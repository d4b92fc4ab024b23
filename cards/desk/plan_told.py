"""A batch and its spools in; all that the page shows of it, as JSON, out."""

import hashlib
import json
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from tagend.cards.batches import COUNT_MOST
from tagend.cards.batches.batch import Batch, LeaderAt
from tagend.cards.batches.batch_json import batch_json
from tagend.cards.batches.best_mix import best_mix
from tagend.cards.book.orders import Wanted
from tagend.cards.desk.desk import Desk
from tagend.cards.desk.page import Json
from tagend.cards.practice.rack_file import Rack
from tagend.cards.printing.job import Job
from tagend.cards.recipe.recipe import Recipe
from tagend.cards.words.batch_words import PullTold, batch_told
from tagend.cards.words.said_words import in_words
from tagend.layouts.base.faults import Fault, refuse_any, refused


def asked_of(desk: Desk, counts: Mapping[str, Any]) -> list[tuple[Recipe, int]]:
    """Return the leaders of files with how many of each; raises `Refused`, naming the file."""
    faults: list[Fault] = []
    asked: list[tuple[Recipe, int]] = []
    for name, text in counts.items():
        written = str(text).strip()
        if not written.strip("0"):
            continue
        kept = desk.leader(name)
        if not written.isdecimal() or not 1 <= int(written[:9]) <= COUNT_MOST:
            found = f"{written[:40]!r} is no number of leaders"
            faults.append(Fault(name, found, f"write one from 1 to {COUNT_MOST}"))
        elif kept is None or kept.recipe is None:
            raise refused("there is no such leader in this folder", "load the page again", name)
        else:
            asked.append((kept.recipe, int(written)))
    refuse_any(faults)
    return asked


def plan_told(job: Job, wanted: Sequence[Wanted], batch: Batch, rack: Rack) -> dict[str, Any]:
    """Return what a batch takes and lacks, and what is to be heed in it; `seen` is its sign."""
    told = batch_told(batch, job.wording)
    findings = list(_findings(job, wanted))
    return {
        "orders": [
            {"name": order.leader.recipe.name, "count": order.count} for order in batch.orders
        ],
        "pulls": [_pull(pull) for pull in told.pulls if pull.cuts or pull.runs_out_at],
        "to_buy": [*told.to_buy, *told.ready_made],
        "spare": told.spare,
        "mix": _mix(batch, rack) if batch.shortages else None,
        "findings": findings,
        "is_wrong": any(each["severity"] == "error" for each in findings),
        "is_short": bool(batch.shortages),
        "seen": sign_of(batch),
    }


def sign_of(batch: Batch) -> str:
    """Return what changes with anything that a batch takes from a spool, or lacks."""
    text = json.dumps(batch_json(batch), default=str, sort_keys=True)
    return hashlib.sha256(text.encode()).hexdigest()


def _pull(pull: PullTold) -> Json:
    return {
        "spool": pull.spool,
        "lot": pull.lot,
        "line": pull.line,
        "drawn": pull.drawn,
        "left": pull.left,
        "cuts": [
            {
                "count": cut.count,
                "length": cut.length,
                "recipe": cut.recipe,
                "section": cut.section,
            }
            for cut in pull.cuts
        ],
        "runs_out_at": pull.runs_out_at and _at(pull.runs_out_at),
    }


def _at(found: LeaderAt) -> Json:
    return {"number": found.number, "name": found.order.leader.recipe.name}


def _mix(batch: Batch, rack: Rack) -> Json:
    """Return how many of a batch the spools make, where they do not make all."""
    mix = best_mix(batch.orders, rack)
    names = (order.leader.recipe.name for order in batch.orders)
    return {
        "each": [
            {"name": name, "count": count} for name, count in zip(names, mix.numbers, strict=True)
        ],
        "whole": sum(mix.numbers),
        "more": mix.at_most - sum(mix.numbers),
    }


def _findings(job: Job, wanted: Sequence[Wanted]) -> Iterator[dict[str, str]]:
    """Yield what is wrong or unwise in leaders; notes stay on the leader's own page."""
    for told in job.told([each.sheet for each in wanted]):
        for finding in told.findings:
            if finding.severity != "note":
                yield {
                    "severity": finding.severity,
                    "told": told.wording.term(finding.severity),
                    "name": told.leader.recipe.name,
                    "what": in_words(finding.says, told),
                    "why": in_words(finding.reason, told),
                }
