"""Strained, stirred material goes from a clean, lined tank through clean equipment.

Why: rust, skins and lumps of the last job come loose in a bare tank. In a smooth gloss each of them shows.

passes
    tank: {lined: yes}
fails AIR-03a at tank.lined
    tank: {lined: no}
fails AIR-03b at log.0.strained
    log: [{step: gloss, strained: no}]
fails AIR-03c at log.0.tank_lined
    log: [{step: gloss, tank_lined: no}]
fails AIR-03d at log.0.tank_clean
    log: [{step: gloss, tank_clean: no}]
fails AIR-03e at log.0.stirred
    log: [{step: gloss, stirred: no}]
fails AIR-03f at log.0.equipment_cleaned
    log: [{step: gloss, equipment_cleaned: no}]
"""

from specgen.judging.rule import STOP, Rule

RULE = Rule(
    "AIR-03",
    "Clean material in a clean tank",
    remedy="Use a lined tank; strain every pail into it, and clean and dry it after each coat.",
    steps="setup clean_equipment",
    documents="D08 D12b",
)

RULE.clause(
    "a",
    STOP,
    "The pressure tank is not lined; bare metal brings rust and dirt into the coat.",
    when="tank.lined = no",
    basis="practice",
)

RULE.clause(
    "b",
    STOP,
    "Unstrained material went into the tank and brings lumps into the coat.",
    when="log.strained = no",
    basis="practice",
    step="setup",
    remedy="Empty the tank, strain the material, and fill it again; respray panels with lumps to a natural break.",
)

RULE.clause(
    "c",
    STOP,
    "The tank was filled without a liner.",
    when="log.tank_lined = no",
    basis="practice",
    step="setup",
    remedy="Empty the tank, clean it, and fit a fresh liner; strain the material again before it is sprayed.",
)

RULE.clause(
    "d",
    STOP,
    "The tank was filled before it was clean, dry, and free of rust.",
    when="log.tank_clean = no",
    basis="practice",
    step="setup",
    remedy="Empty the tank and discard the material; clean and dry the tank, and take it out of use where it rusts.",
)

RULE.clause(
    "e",
    STOP,
    "The material was not stirred before the cup was read.",
    when="log.stirred = no",
    basis="practice",
    step="setup",
    remedy="Stir the pail to its bottom, and read the cup again before it is thinned or sprayed.",
    why="flake and solids settle, so that the cup reads the thin top of the pail",
)

RULE.clause(
    "f",
    STOP,
    "Gun, hoses, and tank were not cleaned and dried after the coat.",
    when="log.equipment_cleaned = no",
    basis="practice",
    step="clean_equipment",
    remedy="Clean and dry gun, nozzles, hoses, tank, and strainers before the next coat; replace what has set hard.",
)
