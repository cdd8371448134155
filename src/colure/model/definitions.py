"""Names, units, definitions and sources of every figure, in the order of the reports.

A figure is computed and its uncertainty propagated in its *native* variable, in which errors
add up evenly (a field ratio, an angle, a level); `display` turns that into what people read.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import Any

from colure.geometry.conventions import amplitude_db, power_db
from colure.model.components import DIPOLE_DBI, SYMBOLS, component_definitions, signed_ratio_db, wanted
from colure.model.evaluation import Evaluation

#: Not read itself: definitions are worded from memory, as the documentation says.
IEEE_145 = "IEEE Std 145-2013"
LUDWIG = "A. C. Ludwig, IEEE Trans. Antennas Propag. 21(1):116-119, 1973, third definition"
GUM = "definition derivable"
#: From memory.
RETURN_LOSS = "T. S. Bird, IEEE Antennas Propag. Mag. 51(2):166-167, 2009"
TRADE = "common practice, no source"
TRP = "3GPP TS 38.521-2 annex M, TR 25.914"
#: What no over-the-air measurement of the device's own transmitter or receiver stands behind.
CONDUCTED = ", computed from conducted power"
COVERAGE = "3GPP TS 38.101-2, 6.2.1 (spherical coverage), weighted with solid angle"


@dataclass(frozen=True, kw_only=True)
class Definition:
    """One figure: how it is called, what it means, how its native variable is shown, and what it depends on.

    What the rooms know of a figure they register against its `key`: its reading (`analysis.figures.readings`), its forecast
    (`planning.forecast`) and its truth in the simulated chamber (`twin.truth`).

    key
        The figure, or the family of figures that differ by `at` alone; the name where there is one only.
    at
        What tells the members of a family apart: a plane (`e`, `h`, or degrees from E towards H), a level in dB, a sector.
    symbol
        As formulas write it.
    topic
        The table of the report that it stands in.
    sphere, pair, band
        True: it needs the whole sphere, both polarizations, or several frequencies.
    gain
        +1 or -1 where the reference's gain moves it dB for dB.
    absolute
        True: it needs the reference, though the gain does not move it.
    radiated
        +1 or -1 where the whole radiated power moves it dB for dB.
    floor
        True: errors fill it, as they fill a null: a bias upwards, larger the deeper the null.
        What errors did on average is then no guide to what they did here: nothing is taken off for it.
    least
        True: the smallest modulus over many directions. Errors as large as it is leave it no lower end.
    single_beam
        True: it is read at one beam, and says nothing where the direction of the beam is not defined.
    filled
        True: a low level over many directions, to which errors add their power: its interval is even in power, not in dB.
    at_peak
        True: it is wrong where the strongest direction lies at the edge of the region, though it needs no single beam.
    in_plane
        True: it is read in the E plane or one counted from it.
    phase_centre
        True: it says nothing where the phase about the phase centre is not flat.
    middle
        Name of a figure without which, at the middle frequency, this one does not exist.
    anew
        True: it is read over many directions, so that its change with an error is read from the changed pattern, not told
        from slope and curvature at the places where it was read.
    power
        True: power alone, without phase, gives it.
    period
        What the value may be off by without being another: half a turn of an ellipse, a turn of an azimuth; 0 if nothing.
    absent
        What the pattern lacks where the figure does not exist.
    no_forecast, no_truth
        Why a plan does not forecast its uncertainty, or the simulated chamber does not know its truth; empty if they do.
    """

    name: str
    label: str
    unit: str
    text: str
    source: str
    display: Callable[[float], float]
    topic: str = "beam"
    key: str = ""
    at: tuple[str | float, ...] = ()
    symbol: str = ""
    sphere: bool = False
    pair: bool = False
    band: bool = False
    gain: int = 0
    absolute: bool = False
    floor: bool = False
    radiated: int = 0
    least: bool = False
    filled: bool = False
    single_beam: bool = False
    at_peak: bool = False
    in_plane: bool = False
    phase_centre: bool = False
    middle: str = ""
    anew: bool = False
    power: bool = False
    period: float = 0.0
    absent: str = ""
    no_forecast: str = ""
    no_truth: str = ""

    def __post_init__(self) -> None:
        if not self.key:
            object.__setattr__(self, "key", self.name)


#: What a pattern lacks where a figure of a cut does not exist.
NEVER_FALLS = "it never falls so far below the peak"
NO_LOBE = "there is no side lobe"
#: Beyond this ratio the co-polar component has a null in the beam, and the ratio there is what the sampling makes of it.
MOST_CROSS_DB = 20.0
NO_CO = (
    f"the cross-polar component stands more than {MOST_CROSS_DB:g} dB above the co-polar one within the beam; "
    "is slant_deg (device.toml) the device's, or principal_planes = 'measured' (evaluation.toml)?"
)
NO_MINIMUM = "there is no minimum beside the main lobe"
#: Why a plan does not forecast a figure.
BEYOND = "device.toml does not declare what this figure depends on"
FROM_GAIN = "it is as uncertain as the gain"
FROM_EFFICIENCY = "it is as uncertain as the efficiency"


def _same(x: float) -> float:
    return x


def _ratio_down_db(x: float) -> float:
    """Level of a ratio below one, as a positive number of dB; zero ratio is infinitely far down."""
    return float("inf") if x <= 0.0 else float(-amplitude_db(x))


def _level_db(x: float) -> float:
    return float("-inf") if x <= 0.0 else float(amplitude_db(x))


def _power_db(x: float) -> float:
    return float("-inf") if x <= 0.0 else float(power_db(x))


def definitions_for(
    settings: Evaluation,
    *,
    band: bool = False,
    reflection: bool = False,
    partial: bool = False,
    circular: bool = False,
    hands: bool = False,
    reflection_measured: bool = False,
) -> tuple[Definition, ...]:
    """Return the definitions of every figure that settings ask for, in the order of the reports.

    band
        True: several frequencies were measured, so that figures along the band exist.
    reflection
        True: the device's reflection is known, so that its mismatch can be told from its losses.
    partial
        True: one polarization was measured, so that gains are partial gains (IEEE Std 145).
    circular
        True: the device is declared circularly polarized. It has no E plane (IEEE Std 145): labels say which plane it is.
    hands
        True: the device is declared not linear: gains of both hands are figures.
    reflection_measured
        True: that reflection was measured in the run: it and its cost are figures with intervals of their own.
    """
    definitions = (
        *_gain(settings, reflection, partial),
        *(_mismatch() if reflection_measured else ()),
        *_beam(settings),
        *_lobes(settings),
        *_polarization(settings, hands),
        *_components(settings, hands),
        *_phase(band),
        *_power(settings, partial),
    )
    if not circular:
        return definitions
    return tuple(
        replace(d, label=d.label.replace("E plane", "declared plane").replace("H plane", "plane at right angles"))
        for d in definitions
    )


def _gain(settings: Evaluation, reflection: bool, partial: bool) -> Iterator[Definition]:
    topic = "gain"
    peak, total = ("Peak partial gain", "partial") if partial else ("Peak gain", "total")
    what = "radiation intensity of the measured polarization" if partial else "radiation intensity"
    yield Definition(name="gain_dbi", label=f"{peak} (realized)", unit="dBi",
                     text=f"Largest {what} over that of an isotropic radiator fed with the available power; "
                     "mismatch of the device is not removed.", source=IEEE_145, display=_same, topic=topic, symbol="G",
                     gain=1, at_peak=True, power=True)  # fmt: skip
    yield Definition(name="directivity_dbi", label="Peak directivity", unit="dBi",
                     text="Largest radiation intensity over its mean over all directions, both polarizations.",
                     source=IEEE_145, display=_same,
                     topic=topic, symbol="D", sphere=True, pair=True, radiated=-1, power=True)  # fmt: skip
    yield Definition(name="efficiency_db", label="Total efficiency", unit="dB",
                     text="Gain minus directivity: radiated power over available power.", source=IEEE_145,
                     display=_same, topic=topic,
                     symbol="eta", sphere=True, pair=True, gain=1, radiated=1, power=True)  # fmt: skip
    if reflection:
        yield Definition(name="gain_accepted_dbi", label=f"{peak} (accepted power)", unit="dBi",
                         text=f"{peak} (realized) over 1 - |reflection|^2 of the device: what it would be without its mismatch.",
                         source=IEEE_145, display=_same, topic=topic, symbol="G_a", gain=1, at_peak=True,
                         no_forecast=FROM_GAIN)  # fmt: skip
        yield Definition(name="radiation_efficiency_db", label="Radiation efficiency", unit="dB",
                         text="Accepted-power gain minus directivity: radiated over accepted power.", source=IEEE_145,
                         display=_same, topic=topic,
                         symbol="eta_r", sphere=True, pair=True, gain=1, radiated=1, no_forecast=FROM_EFFICIENCY)  # fmt: skip
    for window in settings.sectors:
        for kind, words in (("mean", "Mean (over solid angle)"), ("min", "Smallest value")):
            yield Definition(
                name=f"sector_{window.name}_{kind}_dbi",
                label=f"{'Partial gain' if partial else 'Gain'} in sector {window.name}, {kind}", unit="dBi",
                text=f"{words} of the {total} gain for azimuth {window.azimuth_deg[0]:g} to {window.azimuth_deg[1]:g} and elevation "
                f"{window.elevation_deg[0]:g} to {window.elevation_deg[1]:g} deg (pole y).", source=TRADE,
                display=_same, topic=topic, gain=1,
                key=f"sector_{kind}_dbi", at=(window.name,), symbol=f"G_{kind}", anew=True, least=kind == "min",
                no_forecast=BEYOND,
            )  # fmt: skip


def _mismatch() -> Iterator[Definition]:
    why = "it is as uncertain as the one-port calibration"
    yield Definition(name="mismatch_loss_db", label="Mismatch loss", unit="dB",
                     text="-10 log(1 - |S11|^2) of the device's connector: gain of the accepted power minus realized gain.", source=GUM, display=_same,
                     topic="gain", symbol="L_m", no_forecast=why)  # fmt: skip
    yield Definition(name="return_loss_db", label="Return loss", unit="dB",
                     text="-20 log|S11| of the device's connector, measured at the start and before every boresight check.", source=RETURN_LOSS,
                     display=_ratio_down_db, topic="gain", symbol="RL", no_forecast=why)  # fmt: skip


def _beam(settings: Evaluation) -> Iterator[Definition]:
    cut = _cut_words(settings)
    width: dict[str, Any] = {"at_peak": True, "in_plane": True, "absent": NEVER_FALLS}
    yield Definition(name="beam_azimuth_deg", label="Beam azimuth", unit="deg",
                     text="atan2(u, w) of the direction of the peak; positive towards +x of the device.", source=GUM,
                     display=_same, symbol="az",
                     period=360.0, single_beam=True, power=True)  # fmt: skip
    yield Definition(name="beam_elevation_deg", label="Beam elevation", unit="deg",
                     text="asin(v) of the direction of the peak; positive towards +y of the device.", source=GUM,
                     display=_same, symbol="el",
                     single_beam=True, power=True)  # fmt: skip
    if settings.commanded_deg:
        yield Definition(name="pointing_error_deg", label="Pointing error", unit="deg",
                         text="Angle between the peak and the direction that the device was told to point at.",
                         source=GUM, display=_same,
                         single_beam=True, symbol="delta", no_forecast="it is as uncertain as the beam's direction")  # fmt: skip
    if settings.reference_axis_deg is not None:
        yield Definition(name="squint_axis_deg", label=f"Squint from {axis_words(settings)}", unit="deg",
                         text=f"Angle between the peak and the stated reference axis, {axis_words(settings)}.",
                         source=IEEE_145, display=_same,
                         single_beam=True, symbol="delta_s", no_forecast="it is as uncertain as the beam's direction")  # fmt: skip
    yield Definition(name="beamwidth_e_deg", label="Half-power beamwidth, E plane", unit="deg",
                     text=f"Angle between the half-power directions of {cut} in the great circle through the peak that contains "
                     f"{_e_plane_words(settings)}.", source=IEEE_145, display=_same, symbol="HPBW_E", **width)  # fmt: skip
    yield Definition(name="beamwidth_h_deg", label="Half-power beamwidth, H plane", unit="deg",
                     text="The same in the great circle at right angles to the E plane.", source=IEEE_145,
                     display=_same, symbol="HPBW_H", **width)  # fmt: skip
    for level in settings.beamwidth_levels_db:
        for plane in ("E", "H"):
            yield Definition(name=f"beamwidth_{plane.lower()}_{level:g}db_deg",
                             label=f"{level:g} dB beamwidth, {plane} plane", unit="deg",
                             text=f"Angle between the directions {level:g} dB below the peak, {cut} in the {plane} plane.",
                             source=IEEE_145, display=_same, key="beamwidth_level_deg", at=(plane.lower(), level),
                             symbol=f"BW_{plane}({level:g} dB)",
                             no_forecast=BEYOND, **width)  # fmt: skip
    for angle in settings.cut_planes_deg:
        yield Definition(name=f"beamwidth_at_{angle:g}_deg", label=f"Half-power beamwidth, plane at {angle:g} deg",
                         unit="deg",
                         text=f"The same in the cut through the peak {angle:g} deg from E towards H.", source=IEEE_145,
                         display=_same,
                         key="beamwidth_plane_deg", at=(angle,), symbol=f"HPBW_{angle:g}", no_forecast=BEYOND, **width)  # fmt: skip


def axis_words(settings: Evaluation) -> str:
    """Name the reference axis that squint is stated against; empty if settings state none."""
    if settings.reference_axis_deg is None:
        return ""
    azimuth, elevation = settings.reference_axis_deg
    if azimuth == 0.0 and elevation == 0.0:
        return "the mechanical boresight"
    return f"the axis at azimuth {azimuth:g}, elevation {elevation:g} deg"


def _cut_words(settings: Evaluation) -> str:
    return (
        "the co-polar component (Ludwig 3)"
        if settings.cuts_of == "co"
        else "the radiation intensity (both polarizations)"
    )


def _e_plane_words(settings: Evaluation) -> str:
    if settings.principal_planes == "auto":
        return (
            "the declared co-polar vector, or the major axis of a linear ellipse that lies elsewhere; a circularly polarized "
            "antenna has no E plane, and the declared vector names one"
        )
    return "the co-polar vector" + (" (measured)" if settings.principal_planes == "measured" else " (declared)")


def _lobes(settings: Evaluation) -> Iterator[Definition]:
    topic = "side lobes"
    cut = _cut_words(settings)
    lobe: dict[str, Any] = {"single_beam": True, "absent": NO_LOBE}
    yield Definition(name="side_lobe_e_db", label="First side lobe, E plane", unit="dB",
                     text=f"Higher of the two first maxima beside the main lobe of {cut} in the E plane, relative to the "
                     "peak.", source=IEEE_145, display=_level_db, topic=topic, symbol="SLL_E", **lobe)  # fmt: skip
    yield Definition(name="side_lobe_h_db", label="First side lobe, H plane", unit="dB",
                     text="The same in the H plane.", source=IEEE_145, display=_level_db, topic=topic, symbol="SLL_H",
                     **lobe)  # fmt: skip
    for angle in settings.cut_planes_deg:
        yield Definition(name=f"side_lobe_at_{angle:g}_db", label=f"First side lobe, plane at {angle:g} deg", unit="dB",
                         text=f"The same in the cut {angle:g} deg from E towards H.", source=IEEE_145,
                         display=_level_db, topic=topic,
                         key="side_lobe_plane_db", at=(angle,), symbol=f"SLL_{angle:g}", no_forecast=BEYOND, **lobe)  # fmt: skip
    yield Definition(name="side_lobe_highest_db", label="Highest side lobe anywhere", unit="dB",
                     text="Largest local maximum of the total intensity other than the peak, relative to it.",
                     source=IEEE_145, display=_level_db,
                     topic=topic, symbol="SLL", no_forecast=BEYOND, **lobe)  # fmt: skip
    for plane in ("E", "H"):
        yield Definition(name=f"null_{plane.lower()}_db", label=f"First null, {plane} plane", unit="dB",
                         text=f"Shallower of the two first minima beside the main lobe of {cut} in the {plane} plane, relative to the "
                         "peak.", source=IEEE_145, display=_level_db, topic=topic, symbol=f"N_{plane}", floor=True,
                         at_peak=True, in_plane=True, absent=NO_MINIMUM,
                         no_forecast=BEYOND)  # fmt: skip
    yield Definition(name="front_to_back_db", label="Front-to-back ratio", unit="dB",
                     text="Total amplitude at the peak over that in the opposite direction.", source=IEEE_145,
                     display=_ratio_down_db, topic=topic,
                     symbol="FBR", sphere=True, single_beam=True, power=True)  # fmt: skip
    if settings.reference_axis_deg is not None:
        yield Definition(name="front_to_back_axis_db", label=f"Front-to-back ratio about {axis_words(settings)}",
                         unit="dB",
                         text=f"Total amplitude at the peak over that in the direction opposite to {axis_words(settings)}.", source=IEEE_145,
                         display=_ratio_down_db, topic=topic, symbol="FBR_s", sphere=True, single_beam=True,
                         no_forecast=BEYOND)  # fmt: skip
    yield Definition(name="front_to_rear_db", label="Front-to-rear ratio", unit="dB",
                     text=f"Total amplitude at the peak over the largest within {settings.rear_sector_deg:g} deg of the opposite "
                     "direction, its edge included.", source=TRADE, display=_ratio_down_db, topic=topic, symbol="FRR",
                     sphere=True, single_beam=True,
                     no_forecast=BEYOND)  # fmt: skip


def _polarization(settings: Evaluation, hands: bool) -> Iterator[Definition]:
    topic = "polarization"
    pair: dict[str, Any] = {"pair": True, "single_beam": True}
    where = "the half-power beam" if settings.cone_deg is None else f"{settings.cone_deg:g} deg of the peak"
    # Beside the ratio of both hands, the one of two linear components needs its name.
    ratio = "Linear cross-polar discrimination" if hands else "Cross-polar discrimination"
    yield Definition(name="xpd_db", label=f"{ratio} at peak", unit="dB",
                     text="Co-polar over cross-polar amplitude (Ludwig 3, reference of the device) at the peak.",
                     source=LUDWIG,
                     display=_ratio_down_db, topic=topic, symbol="XPD", **pair)  # fmt: skip
    yield Definition(name="xpd_worst_db", label=f"{ratio}, worst", unit="dB",
                     text=f"Smallest ratio of co- to cross-polar amplitude within {where}, along 16 rays from the peak.", source=LUDWIG,
                     display=_ratio_down_db, topic=topic, symbol="XPD_min", absent=NO_CO, no_forecast=BEYOND, **pair)  # fmt: skip
    yield Definition(name="axial_ratio_db", label="Axial ratio at peak", unit="dB",
                     text="Major over minor axis of the polarization ellipse at the peak.", source=IEEE_145,
                     display=_ratio_down_db, topic=topic,
                     symbol="AR", no_forecast=BEYOND, **pair)  # fmt: skip
    yield Definition(name="tilt_deg", label="Tilt of the ellipse at peak", unit="deg",
                     text="Major axis from the device's co-polar vector towards the cross-polar one, -90 to 90.",
                     source=IEEE_145, display=_same,
                     topic=topic, symbol="tau", period=180.0, no_forecast=BEYOND, **pair)  # fmt: skip
    yield Definition(name="circularity", label="Circularity at peak", unit="1",
                     text="(R^2 - L^2)/(R^2 + L^2): +1 purely right-hand, -1 purely left-hand, 0 linear.",
                     source=IEEE_145, display=_same, topic=topic,
                     symbol="V/I", no_forecast=BEYOND, **pair)  # fmt: skip


def _components(settings: Evaluation, hands: bool) -> Iterator[Definition]:
    shown: dict[str, Callable[[float], float]] = {
        "amplitude": _level_db,
        "ratio": _ratio_down_db,
        "signed": signed_ratio_db,
        "dbd": lambda x: x - DIPOLE_DBI,
        "linear": lambda x: float(10.0 ** (x / 10.0)),
    }
    for name, label, unit, text, kind in component_definitions(wanted(settings, circular=hands), settings.gain_units):
        level, other = kind not in ("ratio", "signed"), kind in ("dbd", "linear")
        yield Definition(name=name, label=label, unit=unit, text=text, source=IEEE_145, display=shown[kind],
                         topic="gain" if other else "polarization", gain=int(level),
                         symbol=SYMBOLS[name], pair=not other, single_beam=not other, at_peak=other,
                         no_forecast=FROM_GAIN if level else BEYOND)  # fmt: skip


def _phase(band: bool) -> Iterator[Definition]:
    topic = "phase"
    for axis in "xyz":
        yield Definition(name=f"phase_centre_{axis}_mm", label=f"Phase centre, {axis}", unit="mm",
                         text="Point about which the co-polar phase is flat, in the least-squares sense weighted with power, in the "
                         "cone about the peak that ends 10 dB below it in the narrowest plane (60 deg at most); from the axes' "
                         "intersection.", source=IEEE_145, display=_same, topic=topic, symbol=f"{axis}_pc", pair=True,
                         single_beam=True, phase_centre=True,
                         no_forecast=BEYOND)  # fmt: skip
    if band:
        yield Definition(name="group_delay_ns", label="Group delay at peak, about its mean", unit="ns",
                         text="-(1/2 pi) d phase / d frequency of the co-polar field at the peak, referred to the axes' intersection, minus its "
                         "mean over the band.", source=GUM, display=_same, topic=topic, symbol="tau_g", band=True,
                         absolute=True, single_beam=True,
                         absent="its band has one frequency", no_forecast=BEYOND)  # fmt: skip
        yield Definition(name="squint_deg", label="Squint from the mid-band beam", unit="deg",
                         text="Frequency scan. The reference axis is the peak at the middle frequency; the sign is that of the larger of azimuth "
                         "and elevation differences.", source=IEEE_145, display=_same, topic=topic, symbol="delta_f",
                         band=True, single_beam=True, middle="beam_azimuth_deg",
                         no_forecast=BEYOND)  # fmt: skip
        yield Definition(name="phase_centre_wander_mm", label="Phase centre, wander", unit="mm",
                         text="Distance between the phase centre and the one at the middle frequency, with the sign of its largest "
                         "component.", source=IEEE_145, display=_same, topic=topic, symbol="delta_pc", band=True,
                         pair=True, single_beam=True, phase_centre=True,
                         middle="phase_centre_x_mm", no_forecast=BEYOND)  # fmt: skip


def _power(settings: Evaluation, partial: bool) -> Iterator[Definition]:
    topic = "power"
    peak = "peak partial gain" if partial else "peak gain"
    whole: dict[str, Any] = {"sphere": True, "pair": True, "power": True, "no_forecast": BEYOND}
    yield Definition(name="upper_share_db", label="Upper hemisphere partial power", unit="dB",
                     text=f"Power into the hemisphere about +{settings.up} of the device over all radiated power.",
                     source=TRP, display=_power_db,
                     topic=topic, symbol="P_up", **whole)  # fmt: skip
    for band in settings.horizon_bands_deg:
        yield Definition(name=f"horizon_{band:g}_db", label=f"Partial power within {band:g} deg of the horizon",
                         unit="dB",
                         text=f"Power within {band:g} deg of the plane at right angles to {settings.up}, over all radiated power.", source=TRP,
                         display=_power_db, topic=topic, key="horizon_db", at=(band,), symbol=f"P_{band:g}", **whole)  # fmt: skip
    for percent in settings.coverage_percent:
        yield Definition(name=f"coverage_{percent:g}_dbi", label=f"Total gain, {percent:g}th percentile of the CDF",
                         unit="dBi",
                         text=f"Total gain that {percent:g} % of the solid angle does not exceed (cumulative distribution over solid angle).", source=COVERAGE, display=_same, topic=topic,
                         key="coverage_dbi", at=(percent,), symbol=f"G_{percent:g}%", gain=1, anew=True, filled=True, **whole)  # fmt: skip
    if settings.transmit_power_dbm is not None:
        p = f"{settings.transmit_power_dbm:g} dBm"
        eirp = ("Peak partial EIRP" if partial else "Peak EIRP") + CONDUCTED
        yield Definition(name="eirp_dbm", label=eirp, unit="dBm", text=f"{p} plus the {peak}.", source=TRP,
                         display=_same, topic=topic, symbol="EIRP", gain=1,
                         at_peak=True, power=True, no_forecast=FROM_GAIN)  # fmt: skip
        yield Definition(name="trp_dbm", label=f"Total radiated power{CONDUCTED}", unit="dBm",
                         text=f"{p} plus the efficiency: the mean of EIRP over all directions.",
                         source=TRP, display=_same, topic=topic, symbol="TRP", sphere=True, pair=True, gain=1,
                         radiated=1, power=True,
                         no_forecast=FROM_EFFICIENCY)  # fmt: skip
    if settings.sensitivity_dbm is not None:
        s = f"{settings.sensitivity_dbm:g} dBm"
        eis = f"effective isotropic sensitivity{CONDUCTED}"
        yield Definition(name="eis_dbm", label=f"Peak partial {eis}" if partial else f"Peak {eis}", unit="dBm",
                         text=f"{s} minus the {peak}.", source=TRP, display=_same, topic=topic,
                         symbol="EIS", gain=-1, at_peak=True, power=True, no_forecast=FROM_GAIN)  # fmt: skip
        yield Definition(name="tis_dbm", label=f"Total isotropic sensitivity{CONDUCTED}", unit="dBm",
                         text=f"{s} minus the efficiency (harmonic mean of EIS).", source=TRP,
                         display=_same, topic=topic, symbol="TIS", sphere=True, pair=True, gain=-1, radiated=-1,
                         power=True,
                         no_forecast=FROM_EFFICIENCY)  # fmt: skip


#: What a report shows where no evaluation.toml asks for more: without, and with figures along a band.
DEFINITIONS = definitions_for(Evaluation())
BAND_DEFINITIONS = definitions_for(Evaluation(), band=True)
NAMES = tuple(d.name for d in DEFINITIONS)
