"""A sealant joint is as wide as its movement and the class of its sealant need.

Why: panels grow in sun and shrink in cold, and the joint takes it all. One that is too narrow
strains its sealant past its class in the first season.

passes
    climate: {cold_air: 10 F, hot_air: 95 F, peak_wall_irradiance: 800 W/m2}
    colors: {C1: {solar_reflectance: 0.5, emittance: 0.6}}
    elevations: {E1: {peak_irradiance: 800 W/m2, reflecting_surface_near: no}}
    sealants: {S1: {c920_class: 50}}
    joints:
      J1:
        {elevation: E1, width: 3/4 in, panel_length: 20 ft, thermal_expansion: 8e-6 /F,
         structural_closing: 0 in, structural_opening: 0 in, structural_shear: 0 in, moisture_strain: 0,
         tolerance: 1/8 in, install_low: 40 F, install_high: 90 F}
fails SLT-02a at joints.J1.width
    climate: {cold_air: 10 F, hot_air: 95 F, peak_wall_irradiance: 800 W/m2}
    colors: {C1: {solar_reflectance: 0.5, emittance: 0.6}}
    elevations: {E1: {peak_irradiance: 800 W/m2, reflecting_surface_near: no}}
    sealants: {S1: {c920_class: 50}}
    joints:
      J1:
        {elevation: E1, width: 1/2 in, panel_length: 20 ft, thermal_expansion: 8e-6 /F,
         structural_closing: 0 in, structural_opening: 0 in, structural_shear: 0 in, moisture_strain: 0,
         tolerance: 1/8 in, install_low: 40 F, install_high: 90 F}
"""

from specgen.judging.rule import STOP, Computed, Rule, Violations, violation
from specgen.model.absence import read_all
from specgen.model.typed_views import Joint
from specgen.quantities.comparison import less

RULE = Rule(
    "SLT-02",
    "Joint width for movement",
    remedy="Widen the joint, use a higher class of sealant, shorten the panel, or seal in mild weather.",
    steps="board_layout sealant",
    documents="D06 D07",
)


@RULE.test(
    "a",
    STOP,
    "The joint is {found} wide; minimum {wanted} for its movement and sealant class.",
    at="joint.width",
    basis="joint_width_course",
    remedy="Widen the joint to a minimum of {wanted}, use a higher class of sealant, shorten the panel, or seal in "
    "mild weather.",
)
def too_narrow_for_movement(joint: Joint, joint_width: Computed) -> Violations:
    """The width given is less than the width computed."""
    needed, width = read_all(lambda: joint_width().quantity, lambda: joint.width)
    if less(width, needed):
        yield violation(width, wanted=needed)
