"""What can hurt someone, said before anything moves."""

from __future__ import annotations

from typing import TYPE_CHECKING

from colure.app.services.bench_check import unchecked

if TYPE_CHECKING:
    from colure.model.campaign import Campaign
    from colure.model.plan import Plan


def cautions_of(campaign: Campaign, plan: Plan) -> list[str]:
    """Return the cautions that a person acknowledges before a run."""
    exposure = plan.predicted["exposure"]
    beyond = "; the guideline ends at 300 GHz, its value there is shown" if plan.frequency_hz[-1] > 300e9 else ""
    swap = campaign.chamber.reference.method == "swap"
    exchange = [
        "Exchange of device and horn: the run rests twice and says what to mount; the source is off and the axes are held, "
        "but nothing locks the door: take the drives' power away before you go in."
    ]
    steps = campaign.goal.distance_steps
    moving = [
        f"Distance steps: the run rests before each distance and says how far the {steps.moves} is moved; the source is off and the axes "
        "are held, but nothing locks the door: take the drives' power away before you go in."
    ] if steps is not None else []  # fmt: skip
    by_itself = [
        f"The device transmits by itself ({campaign.device.eirp_dbm:g} dBm EIRP): nothing here can switch it off, no stop and "
        "no interlock; switch it off at the device, or stay out of its beam."
    ] if campaign.device.eirp_dbm is not None else []  # fmt: skip
    return [
        *(f"{text[0].upper()}{text[1:]}." for text in unchecked(campaign, plan)),
        *(exchange if swap else []),
        *moving,
        *by_itself,
        "Axes move without warning and for a long time: nobody inside, door closed, hands and cables clear.",
        "Colure's stop brakes the axes but is no emergency stop: that one is hard-wired, works without software and "
        "cuts the drives; know where it is and try it.",
        f"RF: about {exposure['eirp_dbm']:.0f} dBm EIRP; keep {max(0.1, exposure['public_distance_m']):.2f} m away in the "
        f"beam while the {'source' if campaign.device.eirp_dbm is None else 'device'} is on ({exposure['public_limit_w_m2']:g} W/m\u00b2, ICNIRP 2020, general public{beyond}).",
        "Alignment lasers: class 2 or lower, do not look into the beam, switch off before the run.",
        f"Lifting: device {campaign.device.mass_kg:g} kg; secure it against falling before the roll axis turns.",
        "Local codes and the site's licensed responsible persons come before anything written here.",
    ]
