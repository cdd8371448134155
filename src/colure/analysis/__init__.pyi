from .alignment import Estimate, estimate
from .assembly import MeasuredSphere, assemble
from .calibration import GainTransfer, gain_transfer
from .compare import Match, match, normalized_error
from .drift import DriftTrack, track
from .face import Face, face_of
from .fields import far_field
from .gating import Gate, gated, impulse_response
from .nearfield import FarFieldStep, far_field_step, pattern_grid
from .recipe import Processed, default_recipe, process
from .self_check import Finding, self_check
from .stages import Known, Transformed, known_of, transform
from .uncertainty import Budget, budget_of, figures_with_budget
from .verdicts import Verdict, overall

__all__ = [
    "Budget",
    "DriftTrack",
    "Estimate",
    "Face",
    "FarFieldStep",
    "Finding",
    "GainTransfer",
    "Gate",
    "Known",
    "Match",
    "MeasuredSphere",
    "Processed",
    "Transformed",
    "Verdict",
    "assemble",
    "budget_of",
    "default_recipe",
    "estimate",
    "face_of",
    "far_field",
    "far_field_step",
    "figures_with_budget",
    "gain_transfer",
    "gated",
    "impulse_response",
    "known_of",
    "match",
    "normalized_error",
    "overall",
    "pattern_grid",
    "process",
    "self_check",
    "track",
    "transform",
]
