"""A second evaluation of evidence files, written from the equations and not from the engine it is held against.

    python3 evaluate.py FILE.json ...   prints, as a certificate shows them: deviation and U in uV, error and U in deg C, k

Equations: EA-4/02, example S5 (two stages); JCGM 100:2008, 5.2.2, 7.2.6, G.3, G.4 (combination, rounding, Student's t,
Welch-Satterthwaite); IEC 60584-1:2013 (reference functions, tolerances). What a file may state beside them is described
in lib/domain/evidence/FORMAT.md, decisions 0010 and 0013. What is not written here is refused by name, never guessed
(repeatability from block means, corrections by error or cubic, k by dominant rectangles or Monte Carlo among it).
"""
import json
import math
import sys
from datetime import date
from decimal import ROUND_HALF_EVEN, ROUND_UP, Decimal
from pathlib import Path

TWO_SIGMA = math.erf(math.sqrt(2))  # "95.45 %"
METER = "calibrationUncertainty", "drift", "resolution"
# E/mV by t/deg C, NIST SRD 60
FUNCTIONS = json.loads(Path(__file__).with_name("reference-functions.json").read_text("utf-8"))["types"]

def derivatives(letter, t):
    """E in uV, S = dE/dt and dS/dt; at a join the lower piece holds."""
    piece = next(piece for piece in FUNCTIONS[letter] if piece["from"] <= t <= piece["to"])
    coefficients, exponential = ([float(c) for c in piece.get(key, [])] for key in ("coefficients", "exponential"))
    emf = math.fsum(c * t**i for i, c in enumerate(coefficients))
    slope = math.fsum(i * c * t ** (i - 1) for i, c in enumerate(coefficients) if i > 0)
    bend = math.fsum(i * (i - 1) * c * t ** (i - 2) for i, c in enumerate(coefficients) if i > 1)
    if exponential:
        a0, a1, a2 = exponential
        bell, inner = a0 * math.exp(a1 * (t - a2) ** 2), 2 * a1 * (t - a2)
        emf, slope, bend = emf + bell, slope + bell * inner, bend + bell * (2 * a1 + inner**2)
    return emf * 1000, slope * 1000, bend * 1000

def emf(item, t):
    return derivatives(item["type"], t)[0]

def mean(values):
    return math.fsum(values) / len(values)

def straight(points, x):
    """Straight lines between points; constant beyond them."""
    for (x0, y0), (x1, y1) in zip(points, points[1:]):
        if x <= x1:
            return y0 + (y1 - y0) * (max(x, x0) - x0) / (x1 - x0)
    return points[-1][1]

def certified_deviation(reference, t):
    """E_ref - E_table in uV, as the certificate states it."""
    said = reference["correction"]
    if said["kind"] == "points" and said.get("between", "linear") == "linear":
        return straight([(p["celsius"], p["deviationMicrovolt"]) for p in said["points"]], t)
    if said["kind"] == "polynomial":
        return math.fsum(a * t**i for i, a in enumerate(said["coefficientsMicrovolt"]))
    sys.exit(f"a correction by {said['kind']}, {said.get('between')}")

def temperature_of(reference, microvolt):
    """The t at which table value and certified deviation make up the emf: by halving, as the emf rises with t."""
    low, high = -40.0, FUNCTIONS[reference["type"]][-1]["to"]
    for _ in range(80):
        middle = (low + high) / 2
        is_below = emf(reference, middle) + certified_deviation(reference, middle) < microvolt
        low, high = (middle, high) if is_below else (low, middle)
    return (low + high) / 2

def in_window(evidence, channel, window):
    """(seconds, uV with the meter's correction, polarity) of one channel within the window, both ends included."""
    nodes = [(c["microvolt"], c["correctionMicrovolt"]) for c in evidence["voltmeter"]["corrections"]] or [(0.0, 0.0)]
    found = next(c for c in evidence["scans"]["channels"] if c["channel"] == channel)
    return [(t, v + straight(nodes, v), sign)
            for t, v, sign in zip(found["seconds"], found["microvolts"], found["polarity"])
            if window["fromSeconds"] <= t <= window["toSeconds"]]

def averaged(readings):
    """Emf with reversal taken out, its moment, its drift in uV/s pooled from both polarities; was a lead reversed?"""
    groups = [[(t, s * v) for t, v, s in readings if s == sign] for sign in (1, -1)]
    groups = [(g, mean([t for t, _ in g]), mean([v for _, v in g])) for g in groups if g]
    squares = math.fsum((t - t0) ** 2 for g, t0, _ in groups for t, _ in g)
    products = math.fsum((t - t0) * (v - v0) for g, t0, v0 in groups for t, v in g)
    return (mean([v0 for _, _, v0 in groups]), mean([t0 for _, t0, _ in groups]),
            products / squares if squares > 0 else 0.0, len(groups) == 2)

def tolerance(letter, name, t):
    """Half-width in deg C of a class (IEC 60584-1:2013): the greater of a fixed figure and a share of t."""
    if letter in "KN" and name in "12":
        return max(1.5, 0.004 * t) if name == "1" else max(2.5, 0.0075 * t)
    if letter in "RS" and name in "12":
        return max(1.0, 1 + 0.003 * (t - 1100)) if name == "1" else max(1.5, 0.0025 * t)
    sys.exit(f"tolerance class {name} of type {letter}")

def standard(line, nominal, letter=None):
    """(u, unit, nu) of a stated input as it acts at the nominal; nu is None for infinitely many."""
    kind, unit, nu = line["kind"], line.get("unit"), line.get("degreesOfFreedom")
    if kind == "zero" or nominal < line.get("fromCelsius", -math.inf):
        return 0.0, None, None
    if kind == "rectangular":
        return line["halfWidth"] / math.sqrt(3), unit, None
    if kind in ("expanded", "standard"):
        return line[kind] / line.get("coverageFactor", 1), unit, nu
    if kind == "tolerance-share":
        return line["share"] * tolerance(letter, line["toleranceClass"], nominal) / math.sqrt(3), "celsius", None
    if kind == "by-temperature":  # a half-width a known to within u acts as the rectangle of sqrt(a^2 + 3 u^2)
        below = max((a for a in line["at"] if a["celsius"] <= nominal), key=lambda a: a["celsius"])
        above = min((a for a in line["at"] if a["celsius"] >= nominal), key=lambda a: a["celsius"])
        u = max(math.hypot(a["halfWidthCelsius"] / 3**0.5, a["standardCelsius"]) for a in (below, above))
        return u, "celsius", None
    sys.exit(f"an uncertainty stated as {kind}")

def effect(stated, whole, per_microvolt, per_celsius):
    """A stated u as it acts on the stage's result; a relative one is a share of the whole emf."""
    u, unit, _ = stated
    return u * {None: 0.0, "celsius": per_celsius, "microvolt": per_microvolt, "relative": whole * per_microvolt}[unit]

def of_mean(effects, r):
    """The mean of n errors correlated by r(i, j): sqrt(sum of r e e) / n, with the sign they have together."""
    square = math.fsum((1 if i == j else r(i, j)) * a * b for i, a in enumerate(effects) for j, b in enumerate(effects))
    return math.copysign(math.sqrt(max(0.0, square)) / len(effects), math.fsum(effects))

def drift_of(reference, evidence):
    """What is taken off the reference's temperature for drift, and the line that stays, both in deg C."""
    said = reference["drift"]
    if said["kind"] != "by-use":
        return 0.0, said
    day, calibrated = evidence["scans"]["startedAt"][:10], reference["calibration"]["performedOn"]
    years = (date.fromisoformat(day) - date.fromisoformat(calibrated)).days / 365.25
    expected, half = (said["perYear"][key] * years + said["perHour"][key] * said["hours"]
                      for key in ("rateCelsius", "halfWidthCelsius"))
    taken_off = expected if said["isCorrected"] else 0.0
    return taken_off, {"kind": "rectangular", "halfWidth": half + abs(expected - taken_off), "unit": "celsius"}

def student_probability(t, nu):
    """P(|T| <= t) for whole nu: the finite series of Abramowitz and Stegun, 26.7.3 and 26.7.4."""
    angle, odd = math.atan(t / math.sqrt(nu)), nu % 2
    term, total = (math.cos(angle) if odd else 1.0), 0.0
    for j in range(odd, nu - 1, 2):
        total += term
        term *= math.cos(angle) ** 2 * (j + 1) / (j + 2)
    return 2 / math.pi * (angle + math.sin(angle) * total) if odd else math.sin(angle) * total

def coverage_factor(nu):
    """k at 95.45 %: Student's t for nu cut to the next lower whole number (expanded about the normal's 2 above 200)."""
    whole = math.inf if nu is None else math.floor(nu * (1 + 1e-9))
    if whole > 200:
        return 2 + 10 / (4 * whole) + (5 * 32 + 16 * 8 + 3 * 2) / (96 * whole**2)
    low, high = 1.0, 20.0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if student_probability(middle, whole) < TWO_SIGMA else (low, middle)
    return (low + high) / 2

def rounded(value, decimals):
    """Half to even on the decimal number; a true minus, and groups of three by a thin space from five digits on."""
    number = Decimal(repr(value)).quantize(Decimal(1).scaleb(-decimals), ROUND_HALF_EVEN)
    whole, point, rest = f"{abs(number):f}".partition(".")
    grouped = whole if len(whole) < 5 else f"{int(whole):,}".replace(",", "\u202f")
    return ("\u2212" if number < 0 else "") + grouped + point + rest

def rounded_uncertainty(u, digits, least):
    """U to one or two digits; up where rounding would hide more than 5 % of it, or fall below the capability."""
    exact = Decimal(repr(u))
    decimals = digits - 1 - exact.adjusted()
    shown = exact.quantize(Decimal(1).scaleb(-decimals), ROUND_HALF_EVEN)
    if shown < exact * Decimal("0.95") or (least is not None and shown < Decimal(repr(least))):
        shown = exact.quantize(Decimal(1).scaleb(-decimals), ROUND_UP)
    decimals -= shown.adjusted() > exact.adjusted()  # 0.0999 became 0.100: one digit too many
    return rounded(float(shown), decimals), decimals

def slopes(evidence, item, junction, t):
    """S at t and at the junction: from the reference function, or as a published example gives them."""
    if evidence["sensitivities"] == "given":
        given = item["givenSensitivity"]
        return 1 / given["celsiusPerMicrovolt"], 1 / given["celsiusPerMicrovoltAtJunction"]
    return derivatives(item["type"], t)[1], derivatives(item["type"], junction["celsius"])[1]

def mounted(evidence, kind, window, zero):
    """Everything in the load of one kind, with its emf for a junction at 0 deg C in the window."""
    for place in (place for place in evidence["load"] if place["item"]["kind"] == kind):
        item = next(x for x in evidence[kind + "s"] if x["id"] == place["item"]["id"])
        junction = next(j for j in evidence["junctions"] if j["id"] == place["junction"])
        readings = in_window(evidence, place["channel"], window)
        indicated, moment, drift, is_reversed = averaged(readings)
        indicated -= 0.0 if is_reversed else zero
        whole = indicated + emf(item, junction["celsius"]) + item.get("cable", {}).get("correctionMicrovolt", 0.0)
        yield {"item": item, "junction": junction, "offset": place.get("offsetCelsius", 0.0), "readings": readings,
               "indicated": indicated, "moment": moment, "drift": drift, "emf": whole}

def shares(one, other):
    a, b = one["junction"], other["junction"]
    return a["id"] == b["id"] or (a.get("block") is not None and a.get("block") == b.get("block"))

def temperatures(references, evidence, moment):
    """Each reference's t, its emf carried along its own drift to the moment; and that emf."""
    carried = [r["emf"] + r["drift"] * (moment - r["moment"]) for r in references]
    found = [temperature_of(r["item"], e) for r, e in zip(references, carried)]
    return [t - drift_of(r["item"], evidence)[0] for r, t in zip(references, found)], carried

def temperature_lines(evidence, references, nominal):
    """First stage, deg C: {line: (signed effect of the references' mean, nu, effects one by one)}."""
    meter, rho = evidence["voltmeter"], evidence["correlation"]["references"]
    found, carried = temperatures(references, evidence, mean([r["moment"] for r in references]))
    pairs = [slopes(evidence, r["item"], r["junction"], t) for r, t in zip(references, found)]
    indicated, fully = [r["indicated"] for r in references], lambda i, j: 1.0
    def line(stated_of, wholes=carried, r=fully, is_junction=False):
        stated = [stated_of(one) for one in references]
        acts = [(-1 / s, -s0 / s) if is_junction else (1 / s, 1.0) for s, s0 in pairs]
        effects = [effect(x, whole, *act) for x, whole, act in zip(stated, wholes, acts)]
        return of_mean(effects, r), min((nu for _, _, nu in stated if nu is not None), default=None), effects
    plain = lambda stated: lambda one: standard(stated, nominal)
    fixed = lambda name: lambda i, j: rho[name]["coefficient"]
    same = lambda i, j: 1.0 if shares(references[i], references[j]) else rho["own"]["coefficient"]
    own, room = fixed("own"), evidence["configuration"]["characterisation"]
    item_line = lambda name, r: line(lambda one: standard(one["item"][name], nominal), r=r)
    at_junction = lambda name, r: line(lambda one: standard(one["junction"][name], nominal), r=r, is_junction=True)
    return {
        "repeatability": line(plain(evidence["referenceRepeatability"])),
        "drift": line(lambda one: standard(drift_of(one["item"], evidence)[1], nominal), r=fixed("drift")),
        "calibration": item_line("calibrationUncertainty", fixed("calibration")),
        "interpolation": item_line("interpolation", fixed("calibration")),
        "inhomogeneity": item_line("inhomogeneity", own),
        **{f"meter's {name}": line(plain(meter[name]), indicated, own if name == "resolution" else fully)
           for name in METER},
        "parasitic": line(plain(evidence["scanner"]["parasitic"]), r=own),
        "pick-up": line(plain(evidence["heaterPickup"]), r=own),
        "junction": at_junction("uncertainty", same),
        "spread": at_junction("spread", own),
        "stability": line(plain(evidence["stability"])),
        **{name: line(plain(room[name])) for name in ("uniformity", "axial", "radial", "gradient")}}

def emf_lines(evidence, sensor, nominal, slope, slope0):
    """Second stage, uV, but for the temperature: {line: (signed effect, nu)}."""
    item, junction = sensor["item"], sensor["junction"]
    own = "repeatability", "lead", "inhomogeneity", "immersion", "shunting", "hysteresis"
    at = lambda said: standard(said, nominal, item["type"])
    line = lambda stated, whole=sensor["emf"], act=(1.0, slope): (effect(stated, whole, *act), stated[2])
    return {
        **{f"meter's {name}": line(at(evidence["voltmeter"][name]), sensor["indicated"]) for name in METER},
        "parasitic": line(at(evidence["scanner"]["parasitic"])),
        "pick-up": line(at(evidence["heaterPickup"])),
        "junction": line(at(junction["uncertainty"]), act=(-1.0, -slope0)),
        "spread": line(at(junction["spread"]), act=(-1.0, -slope0)),
        **{name: line(at(item[name])) for name in own}}

def combined(evidence, sensor, references, lines, slope, slope0, nominal):
    """u_c in uV and nu of V_X = V_iX + S_X (t_n - t_X): what meter and junction share enters with opposite signs."""
    rho, second = evidence["correlation"], emf_lines(evidence, sensor, nominal, slope, slope0)
    whole = lines["junction"][0]
    sharing = [e for r, e in zip(references, lines["junction"][2]) if shares(r, sensor)]
    part = math.fsum(sharing) / len(references) / whole if whole else 0.0
    r = {**{f"meter's {name}": rho["voltmeter"]["coefficient"] for name in METER[:2]},
         "junction": rho["junction"]["coefficient"] * (1.0 if len(sharing) == len(references) else part)}
    effects = [*second.values(), *((-slope * e, nu) for e, nu, _ in lines.values())]
    shared = math.fsum(2 * c * second[name][0] * -slope * lines[name][0] for name, c in r.items())
    variance = math.fsum(e * e for e, _ in effects) + shared
    freedom = math.fsum(e**4 / nu for e, nu in effects if nu is not None)
    return math.sqrt(variance), variance**2 / freedom if freedom else None

def capability(evidence, item, nominal):
    """The smallest U the scope allows at the point, deg C; None outside it or where none is stated."""
    lines = [] if "outsideScope" in item else [x for x in evidence.get("scope", []) if x["type"] == item["type"]]
    lines = [line for line in lines if line["fromCelsius"] <= nominal <= line["toCelsius"]]
    return min((line["expandedCelsius"] for line in lines), default=None)

def result(evidence, sensor, references, lines, nominal):
    """Deviation, U, error, U and k as printed: value and U rounded together, U never below the capability."""
    if evidence["coverage"] != "student":
        sys.exit(f"coverage by {evidence['coverage']}")
    item = sensor["item"]
    slope, slope0 = slopes(evidence, item, sensor["junction"], nominal)
    table, _, bend = derivatives(item["type"], nominal)
    to_go = nominal - mean(temperatures(references, evidence, sensor["moment"])[0]) - sensor["offset"]
    curved = bend / 2 * to_go**2 if evidence["comparison"]["carryOrder"] == 2 else 0.0
    deviation = sensor["emf"] + slope * to_go - curved - table
    u, nu = combined(evidence, sensor, references, lines, slope, slope0, nominal)
    k, least = coverage_factor(nu), capability(evidence, item, nominal)
    is_raised = least is not None and k * u / slope < least
    digits = item.get("uncertaintyDigits", evidence["rounding"]["uncertaintyDigits"])
    floor = None if least is None else least * slope
    microvolt, decimals = rounded_uncertainty(floor if is_raised else k * u, digits, floor)
    celsius, fine = rounded_uncertainty(least if is_raised else k * u / slope, digits, least)
    return rounded(deviation, decimals), microvolt, rounded(deviation / slope, fine), celsius, rounded(k, 2)

def evaluate(evidence):
    """(sensor, setpoint, deviation, U in uV, error, U in deg C, k) of every point that was measured."""
    if (evidence["format"], evidence["version"]) != ("emfolio-evidence", 2):
        sys.exit("another format or version")
    unmeasured = [(s["sensor"], s["setpoint"]) for s in evidence.get("states", [])]
    said, nominals = evidence["comparison"]["zero"], {s["id"]: s["nominalCelsius"] for s in evidence["setpoints"]}
    for window in evidence["windows"]:
        nominal = nominals[window["setpoint"]]
        zero = averaged(in_window(evidence, said["channel"], window))[0] if said["kind"] == "shorted-channel" else 0.0
        references = list(mounted(evidence, "reference", window, zero))
        lines = temperature_lines(evidence, references, nominal)
        for sensor in mounted(evidence, "sensor", window, zero):
            name = sensor["item"]["id"], window["setpoint"]
            if name not in unmeasured:
                yield *name, *result(evidence, sensor, references, lines, nominal)

for path in sys.argv[1:]:
    for row in evaluate(json.loads(Path(path).read_text("utf-8"))):
        print(path, *row, sep="\t")
