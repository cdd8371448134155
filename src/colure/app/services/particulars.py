"""What a report states of laboratory, customer, device and equipment: read from the files beside the campaign and its run."""

from __future__ import annotations

from datetime import UTC, date, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from colure.app.storage.begun import edits_since
from colure.app.storage.run_identity import PHOTOGRAPHS, identity_of
from colure.errors import InputError
from colure.model.conditions import celsius, humidity_percent, spans_of
from colure.model.equipment import Register
from colure.model.loading import load
from colure.model.report_settings import Interval, ReportSettings

if TYPE_CHECKING:
    import xarray as xr

    from colure.app.storage.folders import RunFolder
    from colure.model.campaign import Campaign
    from colure.report.document import Chart, Logo
    from colure.report.particulars import Particulars

#: Clocks before this (2001-09-09) are those of simulated runs: no date is read from them.
FIRST_CLOCK_S = 1e9
#: A logo larger than this is refused.
LARGEST_LOGO_BYTES = 2_000_000
#: How the two kinds of pictures begin.
PNG_BEGINS = b"\x89PNG\r\n\x1a\n"


def settings_of(folder: Path) -> ReportSettings:
    """Return report.toml of a campaign folder; an empty one if there is none. Raises `InputError` with every fault."""
    path = folder / "report.toml"
    return load(ReportSettings, path) if path.exists() else ReportSettings()


def register_of(folder: Path) -> Register | None:
    """Return equipment.toml of a campaign folder; None if there is none. Raises `InputError` with every fault."""
    path = folder / "equipment.toml"
    if not path.exists():
        return None
    register = load(Register, path)
    missing = [one for one in register.item if one.certificate_file and not (folder / one.certificate_file).is_file()]
    if missing:
        raise InputError([f"equipment.toml: certificate_file = {one.certificate_file!r} of {one.label}: no such file beside it"
                          for one in missing])  # fmt: skip
    return register


def today() -> date:
    """Return the day of now (UTC)."""
    return datetime.now(UTC).date()


def equipment_warnings(folder: Path, day: date | None = None) -> list[str]:
    """Return what equipment.toml says against measuring on a day (today if left out); nothing if there is no register."""
    register = register_of(folder)
    return [] if register is None else register.warnings(day or today())


def days_of(record: xr.Dataset) -> tuple[date, date] | None:
    """Return first and last day (UTC) of a record's sweeps; None where its clock was a simulated one."""
    wall = record["wall_time"].values
    if wall.size == 0 or float(wall.min()) < FIRST_CLOCK_S:
        return None
    first, last = (datetime.fromtimestamp(float(x), UTC).date() for x in (wall.min(), wall.max()))
    return first, last


def particulars_of(
    campaign: Campaign,
    run: RunFolder,
    record: xr.Dataset,
    sha256: str,
    *,
    method: tuple[str, ...],
    issued: date | None = None,
) -> Particulars:
    """Return everything that a run's report states beside its results.

    Raises
    ------
    InputError
        If report.toml, equipment.toml or the run's identity is not as it must be, or the logo or a photograph cannot be read.
    """
    from colure.report.particulars import Particulars
    from colure.report.texts import Texts

    settings = _with_conditions(settings_of(campaign.folder), record)
    return Particulars(
        settings=settings,
        run=run.path.name,
        record_sha256=sha256,
        identity=dict(identity_of(run).said),
        device=campaign.device.name,
        measured=days_of(record),
        issued=issued or today(),
        method=method,
        register=register_of(campaign.folder),
        logo=_logo(campaign.folder, settings.logo),
        photographs=_photographs(run),
        say=Texts.of(settings.language),
        edits=_edits(run, campaign),
    )


def _edits(run: RunFolder, campaign: Campaign) -> dict[str, tuple[str, ...]]:
    """Return the entries that were edited after the run began, by the catalogue's key of which values are used."""
    edits: dict[str, tuple[str, ...]] = {}
    for one in edits_since(run, campaign):
        key = "edited_then" if one.used == one.then else "edited_now"
        entry = f"{one.file} {one.name} = {one.used} ({one.now if key == 'edited_then' else one.then})"
        edits[key] = (*edits.get(key, ()), entry)
    return edits


def _photographs(run: RunFolder) -> tuple[Chart, ...]:
    """Return the photographs that are kept with a run, as a report shows them. Raises `InputError` naming one that is broken."""
    from colure.app.storage.pictures import report_picture
    from colure.report.document import Chart

    names = [name for name in identity_of(run).photographs.split(", ") if name]
    return tuple(Chart(report_picture(run.path / PHOTOGRAPHS / name), "jpg", name) for name in names)


def _with_conditions(settings: ReportSettings, record: xr.Dataset) -> ReportSettings:
    """Fill in temperature and humidity as the sensors said them, where report.toml does not state them."""
    spans, more = spans_of(record), {}
    for name, span in (("temperature_c", celsius(spans)), ("humidity_percent", humidity_percent(spans))):
        if getattr(settings, name) is None and span is not None:
            more[name] = Interval(low=round(span[0], 1), high=round(span[1], 1))
    return settings.model_copy(update=more) if more else settings


def _logo(folder: Path, name: str) -> Logo | None:
    from colure.report.document import Logo

    if not name:
        return None
    path = folder / name
    if path.resolve().parent != folder.resolve() or path.suffix.lower() not in (".png", ".svg"):
        raise InputError([f"report.toml: logo = {name!r}: must be a .png or .svg file beside report.toml"])
    try:
        data = path.read_bytes()
    except OSError as error:
        raise InputError([f"report.toml: logo = {name!r}: cannot be read: {error.strerror}"]) from None
    if len(data) > LARGEST_LOGO_BYTES:
        raise InputError(
            [f"report.toml: logo = {name!r}: {len(data)} bytes; must be at most {LARGEST_LOGO_BYTES} bytes"]
        )
    kind = path.suffix.lower()[1:]
    if kind == "png" and not data.startswith(PNG_BEGINS):
        raise InputError([f"report.toml: logo = {name!r}: holds no PNG picture"])
    return Logo(data, kind)


def stops_of(record: xr.Dataset) -> tuple[str, ...]:
    """Return when and why a run stopped on its way; a run that was finished ends with no reason of its own."""
    from colure.model.files import history

    stops = [one for entry in history(record) for one in entry["parameters"].get("stops", [])]
    return tuple(
        f"{datetime.fromtimestamp(one['wall_time'], UTC):%Y-%m-%d %H:%M} UTC, {one['state']}: {one['reason']}"
        for one in stops
        if one["state"] != "done"
    )


def checks_of(record: xr.Dataset) -> tuple[str, ...]:
    """Return what of the instruments was not checked before a run, or did not pass."""
    from colure.model.files import history

    told = [one for entry in history(record) for one in entry["parameters"].get("checks", [])]
    return tuple(f"{datetime.fromtimestamp(one['wall_time'], UTC):%Y-%m-%d %H:%M} UTC, {one['text']}" for one in told)


def again_of(record: xr.Dataset) -> tuple[str, ...]:
    """Return when which slices of a finished run were measured again."""
    from colure.model.files import history

    requests = [one for entry in history(record) for one in entry["parameters"].get("again", [])]
    return tuple(
        f"{datetime.fromtimestamp(one['wall_time'], UTC):%Y-%m-%d %H:%M} UTC: slices {one['said']}, {len(one['points'])} points; the first "
        "readings are kept in the journal"
        for one in requests
    )
