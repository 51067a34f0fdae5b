"""Generated from the schema by `python -m tests.golden`: the type of all that each section and member holds.

Reading a value that the project does not give raises Absent.
"""

import datetime
from fractions import Fraction
from typing import Literal

from specgen.model.project import Members, View
from specgen.quantities.quantity import Quantity

Number = int | Fraction

def root_of(view: View) -> Description: ...

class Description(View):
    format: int
    firm: str
    coating_system: str
    records: tuple[str, ...]
    package: Package
    parties: Parties
    contract: Contract
    code: Code
    site: Site
    building: Building
    climate: Climate
    elevations: Members[Elevation]
    details: Members[WaterDetail]
    accessories: Members[Accessory]
    walls: Members[Wall]
    aesthetic_joint: AestheticJoint
    panel_limits: PanelLimits
    joints: Members[Joint]
    sealants: Members[Sealant]
    finish: Finish
    colors: Members[Color]
    gloss_target: GlossTarget
    smoothing: Smoothing
    primer: Primer
    gloss: Gloss
    spray: Spray
    guns: Members[SprayGun]
    compressor: Compressor
    hoses: Members[Hose]
    tank: Tank
    instruments: Members[Instrument]
    people: Members[Person]
    safety: Safety
    crews: Members[Crew]
    access: Members[MeansOfAccess]
    shade: Members[Shading]
    weather: Weather
    protection: Protection
    mockup: Mockup
    schedule: Schedule
    attachments: Members[Attachment]
    deviations: Members[Deviation]
    comments: Members[Comment]
    answers: Members[Answer]
    result: Members[Result]
    accepted: Accepted
    log: Members[SiteRecordEntry]
    release: Members[Release]
    inspection: Members[Inspection]
    disposition: Members[Disposition]

class Package(View):
    purpose: Literal["design_draft", "mockup_submittal", "work_submittal", "resubmittal", "closeout"]
    number: str
    revision: int
    date: datetime.date
    units: Literal["ip", "si"]
    both_units: bool
    calculated_by: str
    calculated_on: datetime.date
    checked_by: str
    checked_on: datetime.date
    changes: tuple[str, ...]
    review: Review
    contractor_review: ContractorReview

class Review(View):
    action: Literal["approved", "approved_as_noted", "no_exceptions_taken", "make_corrections_noted", "revise_and_resubmit", "rejected"]
    by: str
    on: datetime.date

class ContractorReview(View):
    by: str
    signed_on: datetime.date
    statement: str

class Project(View):
    name: str
    number: str
    address: str

class Parties(View):
    owner: Owner
    architect: Architect
    general_contractor: GeneralContractor
    applicator: Applicator
    sealant_applicator: SealantApplicator
    eifs_source: EifsSource
    finish_source: FinishSource
    wrb_source: WrbSource
    sealant_source: SealantSource
    inspector: Inspector
    design_engineer: DesignEngineer

class Owner(View):
    name: str
    contact: str
    email: str
    phone: str

class Architect(View):
    name: str
    contact: str
    email: str
    phone: str

class GeneralContractor(View):
    name: str
    contact: str
    email: str
    phone: str

class Applicator(View):
    name: str
    contact: str
    email: str
    phone: str

class SealantApplicator(View):
    name: str
    contact: str
    email: str
    phone: str

class EifsSource(View):
    name: str
    contact: str
    email: str
    phone: str

class FinishSource(View):
    name: str
    contact: str
    email: str
    phone: str

class WrbSource(View):
    name: str
    contact: str
    email: str
    phone: str

class SealantSource(View):
    name: str
    contact: str
    email: str
    phone: str

class Inspector(View):
    name: str
    contact: str
    email: str
    phone: str

class DesignEngineer(View):
    name: str
    contact: str
    email: str
    phone: str

class Contract(View):
    number: str
    procedure: Literal["architect_review", "ufgs_013300"]
    award_date: datetime.date
    completion_date: datetime.date
    hold_points_released_by: str
    witness_notice_hours: Number
    report_max_age_years: Number
    spec_sections: Members[SpecificationSection]
    demands: Members[Demand]
    review_days: int
    review_day_kind: Literal["calendar", "working"]
    resubmittal_days: int
    variation_review_days: int
    items: Members[SubmittalItem]
    inspection_level: Literal["none", "periodic", "full_time"]
    inspector_engaged_by: Literal["owner", "architect", "general_contractor", "applicator"]
    warranty_years: Number
    warranty_start: Literal["substantial_completion", "final_acceptance"]
    warrantors: tuple[Literal["eifs_source", "finish_source", "sealant_source", "applicator", "sealant_applicator", "general_contractor"], ...]

class SpecificationSection(View):
    number: str
    title: str
    date: datetime.date
    rest_reviewed: str

class Demand(View):
    section: str
    paragraph: str
    field: str
    relation: Literal["=", "<=", ">=", "in"]
    value: str

class SubmittalItem(View):
    section: str
    paragraph: str
    title: str
    group: Literal["action", "informational", "closeout"]
    sd_type: Literal["SD-01", "SD-02", "SD-03", "SD-04", "SD-05", "SD-06", "SD-07", "SD-08", "SD-09", "SD-10", "SD-11"]
    classification: str
    due_on: datetime.date
    attachments: tuple[Attachment, ...]

class Code(View):
    model: Literal["ibc", "irc", "other"]
    name: str
    edition: int
    jurisdiction: str
    local_amendments: Members[LocalAmendment]
    local_fasteners_required: bool
    local_fasteners_basis: str
    local_fasteners_above: Quantity
    construction_type: Literal["IA", "IB", "IIA", "IIB", "IIIA", "IIIB", "IV", "IVA", "IVB", "IVC", "IVHT", "VA", "VB"]
    occupancy_groups: tuple[Literal["A-1", "A-2", "A-3", "A-4", "A-5", "B", "E", "F-1", "F-2", "H-1", "H-2", "H-3", "H-4", "H-5", "I-1", "I-2", "I-3", "I-4", "M", "R-1", "R-2", "R-3", "R-4", "S-1", "S-2", "U"], ...]
    cited_eifs_section: str
    cited_inspection_section: str
    wind_standard: Literal["asce_7_02", "asce_7_05", "asce_7_10", "asce_7_16", "asce_7_22"]
    required_r_value: Quantity
    required_r_value_basis: str
    voc_limit: Quantity

class LocalAmendment(View):
    topic: str
    demand: str
    reference: str

class Site(View):
    latitude: Quantity
    longitude: Quantity
    time_zone: str
    altitude: Quantity
    ground_reflectance: Number
    exposure: Literal["B", "C", "D"]
    wind_speed: Quantity
    risk_category: Literal["I", "II", "III", "IV"]
    topographic_factor: Number
    surroundings: tuple[Literal["coastal_salt", "dust", "vehicles_below", "public_way_below", "neighbors_close", "power_lines"], ...]
    power_line_distance: Quantity
    power_line_voltage: Quantity
    power_line_insulated: bool

class Building(View):
    mean_roof_height: Quantity
    least_plan_width: Quantity
    enclosure: Literal["enclosed", "partially_enclosed"]
    eifs_top: Quantity
    stories: int
    built_year: int

class Climate(View):
    hot_air: Quantity
    cold_air: Quantity
    zone: str
    peak_wall_irradiance: Quantity
    months: Members[Month]

class Month(View):
    month: Literal["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"]
    mean_min: Quantity
    mean_max: Quantity
    mean_humidity: Number
    mean_wind: Quantity
    calm_days: Number
    rain_days: Number
    source: str

class Elevation(View):
    name: str
    drawing: str
    wall: Wall
    color: Color
    facing: Quantity
    width: Quantity
    height: Quantity
    outline: tuple[str, ...]
    base_above_grade: Quantity
    openings: Members[Opening]
    left_end: Literal["outside_corner", "inside_corner", "other_material", "end"]
    right_end: Literal["outside_corner", "inside_corner", "other_material", "end"]
    left_meets: Elevation
    right_meets: Elevation
    floor_lines: Members[FloorLine]
    joint_needs: Members[PlaceThatNeedsAJoint]
    no_joint_reason: str
    framing_changes: bool
    grade_clearance: Quantity
    grade_is_soil: bool
    fire_separation: Quantity
    local_fasteners_required: bool
    prominent: bool
    critical_light: bool
    reflecting_surface_near: bool
    peak_irradiance: Quantity
    viewing_distance: Quantity
    public_reach: bool
    impact_zones: Members[ImpactZone]
    shade_hours: Members[ShadeHoursEntry]
    layout: Layout
    design_pressure_inward: Quantity
    design_pressure_outward: Quantity

class Opening(View):
    kind: Literal["window", "door", "louver", "vent", "other"]
    x: Quantity
    y: Quantity
    width: Quantity
    height: Quantity
    sill_pan: bool
    head_flashing: bool
    landing: str

class FloorLine(View):
    height: Quantity
    deflects: bool

class PlaceThatNeedsAJoint(View):
    place: str
    kind: Literal["building_expansion", "substrate_change", "dissimilar_material", "height_change", "panel_joint", "penetration"]

class ImpactZone(View):
    to: Quantity

class ShadeHoursEntry(View):
    month: Literal["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"]
    to: datetime.time

class Layout(View):
    mode: Literal["given", "request"]
    vertical_lines: tuple[Quantity, ...]
    horizontal_lines: tuple[Quantity, ...]
    consent: Attachment
    target_width: Quantity
    target_height: Quantity
    align_to: tuple[Literal["jambs", "heads", "sills", "corners", "center"], ...]

class WaterDetail(View):
    kind: Literal["roof_end", "parapet", "eave", "ledge", "penetration", "deck_ledger", "roof_below"]
    elevation: Elevation
    at: str
    x: Quantity
    y: Quantity
    width: Quantity
    height: Quantity
    diverter: bool
    cap: bool
    slope: Quantity
    depth: Quantity
    sealed: bool
    joint_width: Quantity
    joint_depth: Quantity
    rod_diameter: Quantity
    flashing: bool
    clearance: Quantity
    thickness: Quantity

class Accessory(View):
    kind: Literal["sheathing_joint_treatment", "flashing_membrane", "sill_pan", "head_flashing", "step_flashing", "kick_out_flashing", "floor_line_flashing", "cap", "collar", "starter", "edge_profile", "drainage_outlet", "bond_break_tape", "membrane_primer", "masking_tape", "other"]
    description: str
    at: str
    maker: str
    product: str
    most_days: Number
    least_temperature: Quantity
    most_exposure_days: int

class Wall(View):
    framing: Framing
    substrate: Substrate
    wrb: Wrb
    attachment: WallAttachment
    drainage: Drainage
    insulation: Insulation
    base_coat: BaseCoat
    mesh: Mesh
    required_r_value: Quantity
    required_r_value_basis: str
    layers: Members[WallLayer]

class Framing(View):
    kind: Literal["cold_formed_steel", "wood", "none"]
    spacing: Quantity
    deflection_limit: Literal["L/120", "L/180", "L/240", "L/360", "L/480", "L/600"]

class Substrate(View):
    kind: Literal["concrete", "concrete_masonry", "aac", "icf", "stone", "stucco", "glass_mat_gypsum", "cement_board", "plywood", "osb", "paper_faced_gypsum", "existing_coated", "existing_brick", "metal"]
    base: Literal["concrete", "masonry", "framed"]
    standard: str
    thickness: Quantity
    age_days: int
    completed_on: datetime.date
    condition: tuple[Literal["laitance", "form_release", "efflorescence", "damp", "chalking", "loose_coating", "frost_damage", "open_joints", "untreated_panel_joints", "unsound", "dirt", "oil"], ...]
    moisture: Number
    coating_removed: bool
    lead_tested: bool
    lead_found: bool
    asbestos_tested: bool
    asbestos_found: bool
    bond_report: Attachment
    bond_limit: Quantity
    bond_result: Quantity
    bond_pulls: int
    bond_failure: Literal["substrate", "old_coating", "adhesive", "board", "not_stated"]
    plane_limit: Quantity
    plane_measured: Quantity
    fastener_schedule: Attachment

class Wrb(View):
    kind: Literal["none", "fluid_applied", "self_adhered_sheet", "building_wrap", "felt"]
    product: str
    standard: str
    coats: int
    dry_thickness: Quantity
    dry_hours: Number
    least_temperature: Quantity
    most_temperature: Quantity
    direct_sun: bool
    most_exposure_days: int
    bond_report: Attachment

class WallAttachment(View):
    method: Literal["adhesive_full_bed", "adhesive_notched_trowel", "adhesive_ribbon_and_dab", "mechanical", "adhesive_and_mechanical", "direct_applied"]
    adhesive_kind: Literal["cement_based", "dispersion", "foam"]
    product: str
    notch: str
    ribbon_direction: Literal["vertical", "horizontal"]
    cure_hours: Number
    most_temperature: Quantity
    direct_sun: bool
    ultimate_strength: Quantity
    safety_factor: Number
    instructions: Attachment

class Drainage(View):
    kind: Literal["none", "adhesive_ribbons", "grooved_board", "drainage_mat"]
    efficiency: Number
    groove_depth: Quantity
    outlets: tuple[Literal["base", "heads", "joints", "other"], ...]

class Insulation(View):
    kind: Literal["eps", "xps", "polyiso", "phenolic", "mineral_wool"]
    product: str
    c578_type: Literal["I", "II", "VIII", "IX", "XI", "XIV", "XV", "not_stated"]
    e2430: bool
    thickness: Quantity
    rasp_allowance: Quantity
    aged: bool
    flame_spread: int
    smoke_developed: int
    r_value: Quantity
    service_limit: Quantity
    board_joint_to_reveal: Quantity
    board_joint_to_opening_corner: Quantity

class BaseCoat(View):
    kind: Literal["cement_added", "cement_blended", "no_cement"]
    product: str
    passes: int
    dry_thickness: Quantity
    first_pass_dry_hours: Number
    cure_hours: Number
    most_temperature: Quantity
    direct_sun: bool
    instructions: Attachment

class Mesh(View):
    layers: Members[MeshLayer]
    detail_at_aesthetic_joints: bool
    diagonals: bool
    back_wrap: bool

class MeshLayer(View):
    kind: Literal["standard", "intermediate", "high_impact", "detail"]
    product: str
    weight: Quantity
    order: int
    edge: Literal["lapped", "butted"]
    lap: Quantity
    dry_hours: Number
    zone: Literal["all", "standard", "medium", "high", "ultra_high"]

class WallLayer(View):
    name: str
    r_value: Quantity
    permeance: Quantity

class AestheticJoint(View):
    profile: Literal["v", "square", "trapezoid", "rounded"]
    width: Quantity
    depth: Quantity
    tolerance: Quantity
    cut_tool: Literal["router", "hot_groove", "hand_saw", "other"]

class PanelLimits(View):
    max_width: Quantity
    max_height: Quantity
    max_area: Quantity
    least_side: Quantity

class Joint(View):
    elevation: Elevation
    kind: Literal["building_expansion", "substrate_change", "dissimilar_material", "height_change", "panel_joint", "penetration", "floor_line", "opening_perimeter", "eifs_to_eifs"]
    runs: Literal["vertical", "horizontal", "around_opening"]
    at: Quantity
    serves: tuple[str, ...]
    left_open: str
    other_face: str
    sealant: Sealant
    length: Quantity
    panel_length: Quantity
    thermal_expansion: Quantity
    moisture_strain: Number
    structural_closing: Quantity
    structural_opening: Quantity
    structural_shear: Quantity
    tolerance: Quantity
    install_low: Quantity
    install_high: Quantity
    width: Quantity
    depth: Quantity
    rod_kind: Literal["closed_cell", "bicellular", "open_cell", "none"]
    rod_product: str
    rod_maker: str
    rod_diameter: Quantity
    bond_break_tape: bool
    bond_face: Literal["base_coat", "sealant_primer_on_base_coat", "smoothing_coat", "primer", "gloss"]

class Sealant(View):
    product: str
    color: str
    c920_type: Literal["S", "M", "other"]
    c920_grade: Literal["NS", "P", "other"]
    c920_class: Literal["12.5", "25", "35", "50", "100/50"]
    chemistry: Literal["silicone", "polyurethane", "hybrid"]
    modulus: Literal["low", "medium", "high"]
    adhesion_report: Attachment
    reported_face: Literal["base_coat", "sealant_primer_on_base_coat", "smoothing_coat", "primer", "gloss"]
    reported_conditions: tuple[Literal["dry", "wet", "frozen", "heated", "weathered"], ...]
    sequence: Literal["before_gloss", "after_gloss"]
    cure_hours: Number
    pull_cure_days: Number
    primer: SealantPrimer
    tooling: Literal["dry", "wet"]
    field_tests: int

class SealantPrimer(View):
    name: str
    open_minutes: Number

class Finish(View):
    flatness_long: Quantity
    flatness_short: Quantity
    repair_method: Literal["recoat_to_break", "spot"]

class Color(View):
    reference: str
    number: str
    kind: Literal["standard", "custom"]
    metallic: bool
    lead_time_days: int
    solar_reflectance: Number
    emittance: Number
    solar_reflectance_method: Literal["C1549", "E903", "not_stated"]
    emittance_method: Literal["C1371", "E408", "not_stated"]
    lrv: Number
    tolerance: Number
    angles: tuple[Literal["15", "25", "45", "75", "110"], ...]
    range_samples: int

class GlossTarget(View):
    units: Number
    angle: Literal["20", "60", "85"]
    tolerance: Number

class Smoothing(View):
    product: str
    coats: int
    between_hours: Number
    total_thickness: Quantity
    sand_after_least_minutes: Number
    sand_after_most_minutes: Number
    abrasive: Literal["very_fine", "fine", "medium", "coarse"]
    motion: Literal["circular", "straight"]
    contrasting_tint: bool
    dry_hours: Number
    most_open_days: int
    most_temperature: Quantity
    direct_sun: bool
    spreading_rate: Quantity
    pail: Quantity
    reserve: Number
    voc: Quantity
    shelf_life_months: Number
    least_storage_temperature: Quantity
    instructions: Attachment

class Primer(View):
    product: str
    tinted: bool
    coats: int
    pattern: Literal["cross_hatch", "one_way", "random"]
    dry_hours: Number
    most_recoat_hours: Number
    late_recoat: str
    most_humidity: Number
    most_temperature: Quantity
    least_dry_temperature: Quantity
    most_ph: Number
    release_moisture: Number
    moisture_scale: str
    volume_solids: Number
    dry_film: Quantity
    target_dry_film: Quantity
    most_dry_film: Quantity
    transfer_efficiency: Number
    pail: Quantity
    reserve: Number
    cup: Literal["zahn_1", "zahn_2", "zahn_3", "zahn_4", "zahn_5", "ford_4", "iso_3", "iso_4", "iso_5", "iso_6", "other"]
    cup_least: Quantity
    cup_most: Quantity
    max_water: Number
    voc: Quantity
    shelf_life_months: Number
    least_storage_temperature: Quantity
    instructions: Attachment

class Gloss(View):
    product: str
    coats: int
    pattern: Literal["cross_hatch", "one_way", "random"]
    first_pass: Literal["light", "full"]
    same_sprayer: bool
    touch_dry_hours: Number
    dry_hours: Number
    most_recoat_hours: Number
    late_recoat: str
    most_humidity: Number
    most_temperature: Quantity
    least_dry_temperature: Quantity
    permeance: Quantity
    volume_solids: Number
    dry_film: Quantity
    target_dry_film: Quantity
    most_dry_film: Quantity
    transfer_efficiency: Number
    pail: Quantity
    reserve: Number
    cup: Literal["zahn_1", "zahn_2", "zahn_3", "zahn_4", "zahn_5", "ford_4", "iso_3", "iso_4", "iso_5", "iso_6", "other"]
    cup_least: Quantity
    cup_most: Quantity
    max_water: Number
    voc: Quantity
    shelf_life_months: Number
    least_storage_temperature: Quantity
    instructions: Attachment

class Spray(View):
    atomizing_pressure: Quantity
    stream_length: Quantity
    strainer_mesh: int
    distance: Quantity
    overlap: Number
    pattern: Literal["oval", "round", "fan_flat"]

class SprayGun(View):
    kind: Literal["conventional_pressure_fed", "hvlp", "airless", "air_assisted_airless", "electrostatic"]
    count: int
    spares: int
    air_flow: Quantity
    inlet_pressure: Quantity
    fluid_nozzle: Quantity
    air_nozzle: str
    duty: Number

class Compressor(View):
    air_flow: Quantity
    at_pressure: Quantity
    rating_basis: Literal["free_air", "standard_air"]
    engine_derate: Quantity
    receiver: Quantity
    dryer: bool
    filter: Quantity

class Hose(View):
    use: Literal["air_supply", "air_gun", "fluid"]
    length: Quantity
    bore: Quantity
    clear: bool
    safety_device: bool

class Tank(View):
    volume: Quantity
    lined: bool
    relief_valve: bool
    rated_pressure: Quantity
    regulators: int
    agitation: Literal["none", "by_hand", "agitator", "recirculating"]

class Instrument(View):
    kind: Literal["zahn_4_cup", "iso_cup", "other_cup", "moisture_meter", "air_thermometer", "surface_thermometer", "hygrometer", "wind_meter", "gloss_meter", "color_meter", "long_straightedge", "short_straightedge", "feeler_gauge", "profile_gauge", "step_gauge", "wet_film_comb", "film_gauge", "pressure_gauge", "measuring_jug", "material_thermometer", "stopwatch", "raking_lamp", "pull_tester", "micrometer", "ph_strips", "other"]
    calibrated_to: datetime.date

class Person(View):
    name: str
    role: Literal["foreman", "plasterer", "sprayer", "sealant_applicator", "inspector", "competent_person", "quality_manager", "project_manager"]
    employer: str
    crew: Crew
    certificates: tuple[Attachment, ...]
    years: Number
    years_on_system: Number
    projects: int
    signed_on: datetime.date

class Safety(View):
    rules: Literal["us_osha", "other"]
    respirator_program: Attachment
    silica_plan: Attachment
    hazcom: Attachment
    emergency_number: str
    hospital: str
    first_aid: str

class Crew(View):
    steps: tuple[Literal["site_conditions", "old_coating", "substrate", "equipment", "mockup", "wrb", "flashings", "board_layout", "boards", "rasp", "aesthetic_joints", "heavy_mesh", "mesh", "second_pass", "smoothing_1", "smoothing_2", "protection", "setup", "primer", "release_primer", "gloss", "clean_equipment", "acceptance", "metal_caps", "sealant", "final_viewing"], ...]
    rates: Members[Quantity]
    size: int

class MeansOfAccess(View):
    elevation: Elevation
    kind: Literal["frame_scaffold", "system_scaffold", "mast_climber", "suspended_platform", "outrigger", "scissor_lift", "boom_lift", "ground"]
    face_gap: Quantity
    platform_width: Quantity
    front_guard: Literal["none", "guardrail", "personal_fall_arrest"]
    height: Quantity
    base: Quantity
    tie_plan: Attachment
    tie_location: Literal["movement_joint", "opening", "field_of_wall", "none"]
    ties: tuple[str, ...]
    sheeted_design: Attachment
    side_brackets_at_spray: bool
    fall_arrest: bool

class Shading(View):
    elevation: Elevation
    kind: Literal["none", "natural", "shade_cloth", "tent"]
    hung_from_building: bool
    rig_minutes: Number
    rigged_by: str
    heated: bool
    heater: Literal["indirect_vented", "direct_fired", "none"]
    ventilated: bool
    light: Quantity

class Weather(View):
    max_spray_wind: Quantity
    most_humidity: Number
    hours_after_frost: Number

class Protection(View):
    exclusion: Quantity
    overspray_plan: str
    wash_water: Literal["contained", "sanitary_sewer", "storm_drain"]

class Mockup(View):
    location: str
    kind: Literal["in_place", "free_standing"]
    frame: str
    facing: Quantity
    width: Quantity
    height: Quantity
    walls: tuple[Wall, ...]
    includes: tuple[Literal["full_panel", "joint_crossing", "outside_corner", "opening", "sealant_joint", "grade_end", "each_mesh_zone", "each_color", "day_stop", "recoat_patch", "build_up_steps"], ...]
    crew: tuple[Crew, ...]
    same_equipment: bool
    same_access: bool
    same_shade: bool
    planned_on: datetime.date
    duration_days: int
    accepted_on: datetime.date
    kept_to: datetime.date
    criteria: Members[AcceptanceCriterion]
    omit: tuple[Literal["wrb_thickness", "base_coat_thickness", "flatness_long", "flatness_short", "raking_light", "aesthetic_joint_size", "aesthetic_joint_line", "mesh", "opening_mesh", "grade_end", "smoothing_build", "smoothing_feel", "surface_ph", "primer_cup", "primer_gloss_cup", "primer_water", "primer_wet_film", "primer_gloss_wet_film", "primer_dryness", "film_dry", "film_gloss_dry", "gloss", "color_reading", "color_range", "look", "look_recoat", "adhesion_tape", "adhesion_pull", "water_sill", "water_head", "sealant_pull", "sealant_face", "other_settings"], ...]
    omit_decided_by: str
    omit_reason: str
    approver: Literal["owner", "architect", "general_contractor", "inspector"]
    destructive_area_apart: bool

class AcceptanceCriterion(View):
    name: Literal["flatness", "raking_light", "aesthetic_joint", "mesh", "smoothing", "primer", "film", "gloss", "color", "look", "adhesion", "sealant", "water", "other", "wrb_thickness", "base_coat_thickness", "flatness_long", "flatness_short", "aesthetic_joint_size", "aesthetic_joint_line", "opening_mesh", "grade_end", "smoothing_build", "smoothing_feel", "surface_ph", "primer_cup", "primer_gloss_cup", "primer_water", "primer_wet_film", "primer_gloss_wet_film", "primer_dryness", "film_dry", "film_gloss_dry", "color_reading", "color_range", "look_recoat", "adhesion_tape", "adhesion_pull", "water_sill", "water_head", "sealant_pull", "sealant_face", "other_settings"]
    method: str
    instrument: str
    limit: str
    readings: int

class Schedule(View):
    submit_on: datetime.date
    meeting_on: datetime.date
    work_start: datetime.date
    spray_start: datetime.date
    spray_end: datetime.date
    color_sample_order_on: datetime.date
    color_main_order_on: datetime.date
    shift_start: datetime.time
    shift_hours: Number
    night_work: bool
    days_off: tuple[str, ...]
    holidays: str
    viewing_hours: Number
    weather_days: int
    gaps: Members[PlannedWait]
    later_trades: tuple[Literal["roof_edge", "window_cleaning", "masonry_wash", "landscape", "signage", "paving"], ...]

class PlannedWait(View):
    from_step: Literal["site_conditions", "old_coating", "substrate", "equipment", "mockup", "wrb", "flashings", "board_layout", "boards", "rasp", "aesthetic_joints", "heavy_mesh", "mesh", "second_pass", "smoothing_1", "smoothing_2", "protection", "setup", "primer", "release_primer", "gloss", "clean_equipment", "acceptance", "metal_caps", "sealant", "final_viewing"]
    to_step: Literal["site_conditions", "old_coating", "substrate", "equipment", "mockup", "wrb", "flashings", "board_layout", "boards", "rasp", "aesthetic_joints", "heavy_mesh", "mesh", "second_pass", "smoothing_1", "smoothing_2", "protection", "setup", "primer", "release_primer", "gloss", "clean_equipment", "acceptance", "metal_caps", "sealant", "final_viewing"]
    hours: Number

class Attachment(View):
    kind: Literal["data_sheet", "sds", "test_report", "letter", "certificate", "drawing", "calculation", "sample", "instructions", "warranty", "program"]
    covers: tuple[Literal["sheathing", "wrb", "adhesive", "board", "base_coat", "mesh", "smoothing", "primer", "gloss", "sealant_primer", "sealant", "backing", "accessories", "access", "safety"], ...]
    title: str
    issued_on: datetime.date
    valid_to: datetime.date
    file: str
    signed: bool
    marked: bool
    project_named: bool
    standard: str
    assembly: Wall
    parties: tuple[Literal["eifs_source", "finish_source", "wrb_source", "sealant_source"], ...]
    colors: tuple[Color, ...]
    states: tuple[str, ...]

class Deviation(View):
    kind: Literal["deviation", "substitution"]
    answers: tuple[str, ...]
    demanded: str
    proposed: str
    reason: str
    effects: Effects
    approved_by: str
    approval_document: str
    approved_on: datetime.date

class Effects(View):
    cost: str
    time: str
    fire: str
    warranty: str

class Comment(View):
    text: str
    answer: str
    where: str
    closed: bool

class Answer(View):
    party: Literal["applicator", "architect", "eifs_source", "wrb_source", "engineer", "finish_source", "general_contractor", "inspector", "owner", "sealant_source"]
    by: str
    on: datetime.date
    sheet: str
    fields: tuple[str, ...]

class Result(View):
    criterion: Literal["wrb_thickness", "base_coat_thickness", "flatness_long", "flatness_short", "raking_light", "aesthetic_joint_size", "aesthetic_joint_line", "mesh", "opening_mesh", "grade_end", "smoothing_build", "smoothing_feel", "surface_ph", "primer_cup", "primer_gloss_cup", "primer_water", "primer_wet_film", "primer_gloss_wet_film", "primer_dryness", "film_dry", "film_gloss_dry", "gloss", "color_reading", "color_range", "look", "look_recoat", "adhesion_tape", "adhesion_pull", "water_sill", "water_head", "sealant_pull", "sealant_face", "other_settings"]
    own: str
    part: str
    reading: str
    passed: bool
    signed_by: str
    signed_on: datetime.date

class Accepted(View):
    crew: Crew
    gun: SprayGun
    fluid_nozzle: Quantity
    air_nozzle: str
    atomizing_pressure: Quantity
    fluid_pressure: Quantity
    stream_length: Quantity
    stream_tolerance: Quantity
    cup: Instrument
    cup_time: Quantity
    distance: Quantity
    water: Number

class SiteRecordEntry(View):
    date: datetime.date
    elevation: Elevation
    area: str
    panels: tuple[str, ...]
    masked_panels: tuple[str, ...]
    step: Literal["site_conditions", "old_coating", "substrate", "equipment", "mockup", "wrb", "flashings", "board_layout", "boards", "rasp", "aesthetic_joints", "heavy_mesh", "mesh", "second_pass", "smoothing_1", "smoothing_2", "protection", "setup", "primer", "release_primer", "gloss", "clean_equipment", "acceptance", "metal_caps", "sealant", "final_viewing"]
    coat: int
    crew: Crew
    started_at: datetime.time
    ended_at: datetime.time
    air: Quantity
    surface: Quantity
    humidity: Number
    wind: Quantity
    gust: Quantity
    sun_on_wall: bool
    rain: bool
    forecast_rain: bool
    forecast_low: Quantity
    cup: Instrument
    cup_time_before_water: Quantity
    cup_time: Quantity
    material_temperature: Quantity
    batch: str
    pail: str
    boxed_batches: bool
    water_added: Quantity
    water: Number
    stirred: bool
    strained: bool
    tank_clean: bool
    tank_lined: bool
    lid_tight: bool
    regulators_at_zero: bool
    atomizing_pressure: Quantity
    fluid_pressure: Quantity
    stream_length: Quantity
    pattern: Literal["oval", "round", "fan_flat"]
    distance: Quantity
    wet_film: Quantity
    equipment_cleaned: bool

class Release(View):
    step: Literal["site_conditions", "old_coating", "substrate", "equipment", "mockup", "wrb", "flashings", "board_layout", "boards", "rasp", "aesthetic_joints", "heavy_mesh", "mesh", "second_pass", "smoothing_1", "smoothing_2", "protection", "setup", "primer", "release_primer", "gloss", "clean_equipment", "acceptance", "metal_caps", "sealant", "final_viewing"]
    elevation: Elevation
    area: str
    date: datetime.date
    time: datetime.time
    hours_dry: Number
    moisture_reading: Number
    even_look: bool
    wall_dry: bool
    defects: tuple[Literal["mesh_visible", "cat_face", "out_of_line", "trowel_mark", "debris", "uneven", "damp"], ...]
    by: str

class Inspection(View):
    step: Literal["site_conditions", "old_coating", "substrate", "equipment", "mockup", "wrb", "flashings", "board_layout", "boards", "rasp", "aesthetic_joints", "heavy_mesh", "mesh", "second_pass", "smoothing_1", "smoothing_2", "protection", "setup", "primer", "release_primer", "gloss", "clean_equipment", "acceptance", "metal_caps", "sealant", "final_viewing", "board_straightedge", "sight_lines", "joint_layout", "first_in_place"]
    elevation: Elevation
    done_on: datetime.date
    outcome: Literal["accepted", "refused"]
    by: str

class Disposition(View):
    clause: str
    date: datetime.date
    time: datetime.time
    elevation: Elevation
    area: str
    step: Literal["site_conditions", "old_coating", "substrate", "equipment", "mockup", "wrb", "flashings", "board_layout", "boards", "rasp", "aesthetic_joints", "heavy_mesh", "mesh", "second_pass", "smoothing_1", "smoothing_2", "protection", "setup", "primer", "release_primer", "gloss", "clean_equipment", "acceptance", "metal_caps", "sealant", "final_viewing"]
    file: str
    row: str
    decision: Literal["accepted_as_is", "repaired", "recoated", "replaced", "rejected"]
    by: str
    decided_on: datetime.date
    note: str
