"""What ISO/IEC 17025:2017, 7.8.2.1, asks of every report, item by item; what nobody stated is printed as not stated."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from datetime import date
from typing import TYPE_CHECKING

from colure.model.equipment import Register
from colure.model.report_settings import Interval, Party, ReportSettings
from colure.report.document import Block, Chart, Document, Logo, Paragraph, ReportSection, Side, Table
from colure.report.texts import Texts

if TYPE_CHECKING:
    from collections.abc import Sequence


@dataclass(frozen=True)
class Decision:
    """The rule by which a specification was decided: `simple` or `guard-band`, and the specification's name."""

    rule: str
    name: str


@dataclass(frozen=True)
class Particulars:
    """Who measured what for whom, when, how and with what.

    run
        Name of the run, and the beginning of its record's hash: what the report is known by if it has no number.
    identity
        What a person said of the run: operator, serial, customer, order, tag, note.
    measured
        First and last day of the measurement (UTC); None where the record holds no dates.
    issued
        Day of issue (UTC).
    method
        Keys of the catalogue's sentences on how the results came about.
    register
        Equipment; None where the campaign holds none.
    photographs
        Of the set-up, as they are shown.
    edits
        Entries that were edited after the run began, by the catalogue's key of which values are used.
    """

    settings: ReportSettings
    run: str
    record_sha256: str
    identity: dict[str, str]
    device: str
    measured: tuple[date, date] | None
    issued: date
    method: tuple[str, ...]
    register: Register | None = None
    logo: Logo | None = None
    photographs: tuple[Chart, ...] = ()
    say: Texts = field(default_factory=lambda: Texts.of("en"))
    edits: dict[str, tuple[str, ...]] = field(default_factory=dict)

    @property
    def number(self) -> str:
        """Unique number of the report."""
        return self.settings.number or f"{self.run}-{self.record_sha256[:12]}"

    def framed(self, document: Document) -> Document:
        """Return a document with what stands on every page and at its end: number, page count, logo, language."""
        say, issue = self.say, self.settings.issue
        return replace(
            document,
            footer=say("footer", number=self.number, issue=issue),
            page_words=say("page_of", page="{page}", pages="{pages}"),
            ending=say("end", number=self.number, issue=issue),
            language=self.settings.language,
            logo=self.logo,
        )


def particulars_sections(
    one: Particulars, *, decision: Decision | None = None, not_included: Sequence[str] = (), undeclared: bool = True
) -> tuple[ReportSection, ...]:
    """Return the laboratory's particulars, the equipment, and the statements that every report makes.

    decision
        None where no specification was given.
    not_included
        Terms that the intervals do not hold.
    undeclared
        True: because nobody declared them; False: whatever was declared.
    """
    return (
        ReportSection(one.say("particulars"), (Table(("", ""), _rows(one), wide=True, shares=(1.0, 3.0)),)),
        ReportSection(one.say("equipment"), _equipment(one)),
        ReportSection(
            one.say("statements"),
            tuple(Paragraph(text) for text in _statements(one, decision, not_included, undeclared=undeclared)),
        ),
    )


def photographs_section(one: Particulars) -> tuple[ReportSection, ...]:
    """Return the photographs of the set-up, two beside each other; nothing where none are kept with the run."""
    pairs = tuple(Side(one.photographs[i : i + 2]) for i in range(0, len(one.photographs), 2))
    return (ReportSection("Photographs", pairs),) if pairs else ()


def _rows(one: Particulars) -> tuple[tuple[str, str], ...]:
    say, told, said = one.say, one.settings, one.identity
    customer = told.customer if told.customer.name else Party(
        name=said.get("customer", ""), address=told.customer.address, contact=told.customer.contact
    )  # fmt: skip
    named = bool(told.laboratory.address)
    rows = [
        ("identification", say("issue", number=one.number, issue=told.issue)),
        ("laboratory", _party(told.laboratory)),
        ("location", told.location or (say("at_laboratory") if named else "")),
        ("customer", _party(customer)),
        ("order", said.get("order", "")),
        ("device", one.device),
        ("serial", said.get("serial", "")),
        ("condition", told.condition),
        ("received", _day(told.received)),
        ("measured", _days(one)),
        ("issued", _day(one.issued)),
        (
            "run",
            ", ".join(
                x for x in (one.run, said.get("tag", ""), said.get("note", ""), said.get("photographs", "")) if x
            ),
        ),
        ("operator", said.get("operator", "")),
        ("authorized", told.authorized_by),
        ("method", "; ".join(x for x in (told.method, *(say(key) for key in one.method)) if x)),
        ("sampling", told.sampling),
        ("deviations", "; ".join(x for x in (told.deviations, *_edited(one)) if x)),
        ("external", told.external),
        ("temperature", _range(told.temperature_c, "\u00b0C", say)),
        ("humidity", _range(told.humidity_percent, "%", say)),
    ]
    shown = [(say(key), text or say("not_stated")) for key, text in rows]
    if told.issue > 1:
        shown.insert(1, (say("changes", before=told.issue - 1), told.changes))
    return tuple(shown)


def _edited(one: Particulars) -> list[str]:
    return [one.say(key, entries=", ".join(entries)) for key, entries in one.edits.items()]


def _party(one: Party) -> str:
    return ", ".join(text for text in (one.name, one.address, one.contact) if text)


def _day(day: date | None) -> str:
    return "" if day is None else day.isoformat()


def _days(one: Particulars) -> str:
    if one.measured is None:
        return ""
    first, last = (day.isoformat() for day in one.measured)
    return first if first == last else one.say("measured_from", first=first, last=last)


def _range(interval: Interval | None, unit: str, say: Texts) -> str:
    return "" if interval is None else say.numeral(f"{interval.low:g} \u2013 {interval.high:g} {unit}")


def _equipment(one: Particulars) -> tuple[Block, ...]:
    """Return every piece with its calibration; what was overdue at the measurement is marked."""
    say = one.say
    if one.register is None or not one.register.item:
        return (Paragraph(say("no_equipment")),)
    day = one.measured[1] if one.measured is not None else one.issued
    unknown = say("not_stated")
    rows = tuple(
        (
            f"{say('kind_' + piece.kind)}: {piece.name}",
            piece.serial or unknown,
            piece.certificate or piece.certificate_file or unknown,
            piece.uncertainty or unknown,
            _day(piece.calibrated) or unknown,
            (_day(piece.due) or unknown) + (f" {say('overdue')}" if piece.due is not None and piece.due < day else ""),
        )
        for piece in one.register.item
    )
    header = (say("equipment"), say("serial"), say("certificate"), say("uncertainty"), say("calibrated"), say("due"))
    return (Table(header, rows, wide=True, shares=(1.6, 1.0, 1.0, 1.1, 0.9, 1.0)),)


def _statements(
    one: Particulars, decision: Decision | None, not_included: Sequence[str], *, undeclared: bool
) -> list[str]:
    say = one.say
    sentences = [say("only_item"), say("in_full"), say("coverage")]
    if not_included:
        sentences.append(
            say(
                "not_included" if undeclared else "not_in_intervals",
                terms=", ".join(say.term(one) for one in not_included),
            )
        )
    if decision is None:
        return [*sentences, say("rule_none")]
    key = "rule_guard_band" if decision.rule == "guard-band" else "rule_simple"
    sentences.append(say(key, name=decision.name))
    return [*sentences, say("risk_not_included")] if not_included else sentences
