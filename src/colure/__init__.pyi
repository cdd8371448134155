from . import acquire, analysis, app, geometry, instruments, model, planning, report, twin, waves
from .app.notebook import OpenCampaign, Pattern, Record, Run, demo_campaign, open_campaign
from .app.services.figure_table import Figures
from .app.services.pattern_object import FilePattern, open_pattern
from .model.loading import InputError

__version__: str

__all__ = [
    "Figures",
    "FilePattern",
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
    "open_pattern",
    "planning",
    "report",
    "twin",
    "waves",
]
