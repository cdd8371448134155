from . import acquire, analysis, app, geometry, instruments, model, planning, report, twin, waves
from .app.notebook import Figures, OpenCampaign, Pattern, Record, Run, demo_campaign, open_campaign
from .model.loading import InputError

__version__: str

__all__ = [
    "Figures",
    "InputError",
    "OpenCampaign",
    "Pattern",
    "Record",
    "Run",
    "acquire",
    "analysis",
    "app",
    "demo_campaign",
    "geometry",
    "instruments",
    "model",
    "open_campaign",
    "planning",
    "report",
    "twin",
    "waves",
]
