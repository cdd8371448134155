from .compare.match import Match, match, normalized_error
from .fields.near_to_far import far_field
from .figures.face import Face, face_of
from .findings.finding import Finding
from .findings.self_check import self_check
from .pipeline.recipe import Processed, default_recipe, process
from .pipeline.stages import Known, Transformed, known_of, transform
from .steps.alignment import Estimate, estimate
from .steps.assemble import MeasuredSphere, assemble
from .steps.drift import DriftTrack, track
from .steps.far_field import FarFieldStep, far_field_step, pattern_grid
from .steps.gain import GainTransfer, gain_transfer
from .steps.time_gate import Gate, gated, impulse_response
from .uncertainty.budget import Budget, budget_of, figures_with_budget
from .verdict.verdicts import Verdict, overall

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
