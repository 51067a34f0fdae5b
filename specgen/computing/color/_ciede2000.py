"""The steps of the color difference CIEDE2000, all weights 1, over two colors that the sum knows as L, a, b.

Hues are in degrees; `q` is the degrees of a radian. Source: Sharma, Wu and Dalal, 2005.
"""

from specgen.computing.working_builder import WorkingBuilder

# Two hues that lie opposite but for the last bit of a float lie opposite.
OPPOSITE = 180 + 1e-9


def add_ciede2000(working: WorkingBuilder) -> float:
    """The difference; every step is added to the sum."""
    _add_chroma(working)
    _add_hues(working)
    _add_differences(working)
    _add_means(working)
    return _add_difference(working)


def _add_chroma(working: WorkingBuilder) -> None:
    """Chroma as measured, then with the a axis stretched for grays."""
    working.step("C_1", "chroma of the first", "sqrt(a_1^2 + b_1^2)", "")
    working.step("C_2", "chroma of the second", "sqrt(a_2^2 + b_2^2)", "")
    working.step("C_m", "mean chroma", "(C_1 + C_2) / 2", "")
    working.step("G", "stretch of the a axis", "0.5 * (1 - sqrt(C_m^7 / (C_m^7 + 25^7)))", "")
    working.step("A_1", "a of the first, stretched", "(1 + G) * a_1", "")
    working.step("A_2", "a of the second, stretched", "(1 + G) * a_2", "")
    working.step("P_1", "chroma of the first, stretched", "sqrt(A_1^2 + b_1^2)", "")
    working.step("P_2", "chroma of the second, stretched", "sqrt(A_2^2 + b_2^2)", "")


def _add_hues(working: WorkingBuilder) -> None:
    for number, name in (("1", "first"), ("2", "second")):
        turn = " + 360" if working.known[f"b_{number}"] < 0 else ""
        working.step(f"h_{number}", f"hue of the {name}", f"atan2(b_{number}, A_{number}) * q{turn}", "deg")


def _add_differences(working: WorkingBuilder) -> None:
    known = working.known
    working.step("dL", "difference of lightness", "L_2 - L_1", "")
    working.step("dC", "difference of chroma", "P_2 - P_1", "")
    apart = known["h_2"] - known["h_1"]
    way = "h_2 - h_1"
    if not known["P_1"] * known["P_2"]:
        way = "0"  # gray has no hue to differ in
    elif abs(apart) > OPPOSITE:
        way += " - 360" if apart > 0 else " + 360"
    working.step("dh", "difference of hue angle, the short way", way, "deg")
    working.step("dH", "difference of hue", "2 * sqrt(P_1 * P_2) * sin(dh / 2 / q)", "")


def _add_means(working: WorkingBuilder) -> None:
    known = working.known
    working.step("L_m", "mean lightness", "(L_1 + L_2) / 2", "")
    working.step("P_m", "mean chroma, stretched", "(P_1 + P_2) / 2", "")
    way = "(h_1 + h_2) / 2"
    if not known["P_1"] * known["P_2"]:
        way = "h_1 + h_2"  # that of the color that has one
    elif abs(known["h_2"] - known["h_1"]) > OPPOSITE:
        way = "(h_1 + h_2 + 360) / 2" if known["h_1"] + known["h_2"] < 360 else "(h_1 + h_2 - 360) / 2"
    working.step("h_m", "mean hue", way, "deg")


def _add_difference(working: WorkingBuilder) -> float:
    working.step(
        "T",
        "weight of the hue",
        "1 - 0.17 * cos((h_m - 30) / q) + 0.24 * cos(2 * h_m / q)"
        " + 0.32 * cos((3 * h_m + 6) / q) - 0.2 * cos((4 * h_m - 63) / q)",
        "",
    )
    working.step("S_L", "weight of lightness", "1 + 0.015 * (L_m - 50)^2 / sqrt(20 + (L_m - 50)^2)", "")
    working.step("S_C", "weight of chroma", "1 + 0.045 * P_m", "")
    working.step("S_H", "weight of hue", "1 + 0.015 * P_m * T", "")
    working.step("t", "turn in the blues", "30 * exp(-((h_m - 275) / 25)^2)", "deg")
    working.step("R_C", "strength of the turn", "2 * sqrt(P_m^7 / (P_m^7 + 25^7))", "")
    working.step("R_T", "term of the turn", "-sin(2 * t / q) * R_C", "")
    squares = "(dL / S_L)^2 + (dC / S_C)^2 + (dH / S_H)^2 + R_T * (dC / S_C) * (dH / S_H)"
    return working.step("E", "color difference", f"sqrt({squares})", "")
