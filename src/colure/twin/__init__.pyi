from .antennas import PanelFlaws, horn, panel
from .chamber import SimulatedRange
from .servers import RunningTwin, start_twin
from .sources import Cluster, transmission
from .truth import far_field_on, figures_of

__all__ = [
    "Cluster",
    "PanelFlaws",
    "RunningTwin",
    "SimulatedRange",
    "far_field_on",
    "figures_of",
    "horn",
    "panel",
    "start_twin",
    "transmission",
]
