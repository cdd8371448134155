from .connect import connect_analyzer, connect_axes, connect_states
from .gcode_axes import GcodeAxes
from .line_axes import LineAxes
from .profile import analyzer_profile, axes_profile, profile_path
from .protocols import AnalyzerDriver, AxesDriver, InstrumentError, StateDriver, Sweep, SweepSettings
from .scpi_analyzer import ScpiAnalyzer
from .scpi_power import ScpiPowerReceiver

__all__ = [
    "AnalyzerDriver",
    "AxesDriver",
    "GcodeAxes",
    "InstrumentError",
    "LineAxes",
    "ScpiAnalyzer",
    "ScpiPowerReceiver",
    "StateDriver",
    "Sweep",
    "SweepSettings",
    "analyzer_profile",
    "axes_profile",
    "connect_analyzer",
    "connect_axes",
    "connect_states",
    "profile_path",
]
