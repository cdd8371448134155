from . import acquire, analysis, app, geometry, instruments, model, planning, report, twin, waves
from .app.notebook import OpenCampaign, Pattern, Record, Run, demo_campaign, open_campaign
from .app.services.figure_table import Figures
from .app.services.pattern_object import FilePattern, open_pattern
from .errors import ColureError, InputError, InstrumentError, JournalError, MotionError

__version__: str

__all__ = [
    "ColureError",
    "Figures",
    "FilePattern",
    "InputError",
    "InstrumentError",
    "JournalError",
    "MotionError",
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
