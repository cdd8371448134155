from .charts import budget_bars, cuts_polar, cuts_rectangular, face_picture, over_frequency, solid, sphere_map
from .comparison_charts import comparison_chart, series_chart
from .content import compose
from .html import render_html
from .maps import coverage_curve, front_maps, waterfall
from .pdf import render_pdf
from .source import Source

__all__ = [
    "Source",
    "budget_bars",
    "comparison_chart",
    "compose",
    "coverage_curve",
    "cuts_polar",
    "cuts_rectangular",
    "face_picture",
    "front_maps",
    "over_frequency",
    "render_html",
    "render_pdf",
    "series_chart",
    "solid",
    "sphere_map",
    "waterfall",
]
