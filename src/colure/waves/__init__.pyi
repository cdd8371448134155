from .expansion import Expansion, from_cartesian_field
from .horn import horn_gain_dbi
from .probe import FirstOrderResponse, apply_response, first_order_response, ideal_response, remove_response
from .probe_models import dipole, open_waveguide, pyramidal_horn
from .scattered import adjoint_at, synthesis_at
from .scattered_fit import Samples, fit_scattered
from .threads import use_threads
from .transform import adjoint_synthesis, analysis, highest_order, synthesis

__all__ = [
    "Expansion",
    "FirstOrderResponse",
    "Samples",
    "adjoint_at",
    "adjoint_synthesis",
    "analysis",
    "apply_response",
    "dipole",
    "first_order_response",
    "fit_scattered",
    "from_cartesian_field",
    "highest_order",
    "horn_gain_dbi",
    "ideal_response",
    "open_waveguide",
    "pyramidal_horn",
    "remove_response",
    "synthesis",
    "synthesis_at",
    "use_threads",
]
