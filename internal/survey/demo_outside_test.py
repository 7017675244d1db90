# The Quarry Road loop, worked apart from dryfit. Lengths in metre, flows in m3/s, heights above the paving.
# Each number is one of the design's, written down again here; none is read from the system file or from dryfit's tables.
import json, math
from fluids.fittings import Hooper2K, contraction_sharp, entrance_distance
from fluids.friction import Clamond
from scipy.interpolate import PchipInterpolator
from scipy.integrate import quad
from scipy.optimize import brentq

g = 9.80665
LH = 1 / 3.6e6  # one litre an hour

# Water at 21 degC: log-interpolated between 20 and 22 degC of tables of IAPWS 2008 viscosity over density, mm2/s.
nu = math.sqrt(1.0034e-6 * 0.9565e-6)

# AS/NZS 1477 PN12, mean bores and outsides: DN25 33.55/29.85, DN40 48.25/42.85, DN50 60.35/53.75 mm.
D25, D40, D50 = 0.02985, 0.04285, 0.05375
OD40 = 0.04825


def velocity(q, d): return 4 * q / (math.pi * d * d)
def head(q, d): return velocity(q, d) ** 2 / (2 * g)


def pipe(q, d, length, ks):
    """Darcy-Weisbach with Colebrook (Clamond 2009); all flows compared here have Re above 4000."""
    re = velocity(q, d) * d / nu
    assert re > 4000
    return Clamond(re, ks / d) * length / d * head(q, d)


def hooper(q, d, k1, kinf):
    """Hooper 1981, two-K; the table wants the bore in inches."""
    return Hooper2K(Di=d / 0.0254, Re=velocity(q, d) * d / nu, K1=k1, Kinfty=kinf) * head(q, d)


# Hooper 1981: 90 standard screwed 800/0.40, 45 standard 500/0.20, tee as elbow screwed 500/0.70, ball full bore 300/0.10.
def elbow90(q, d): return hooper(q, d, 800, 0.40)
def elbow45(q, d): return hooper(q, d, 500, 0.20)
def branch(q, d): return hooper(q, d, 500, 0.70)
def ball(q, d): return hooper(q, d, 300, 0.10)
def union(q, d): return 0.08 * head(q, d)  # Munson, Young and Okiishi, Table 8.2


def entry(q, d):
    """Rennels and Hudson 2012, pipe end that projects, wall 0.05 bores."""
    return entrance_distance(Di=1, t=0.05, method="Rennels") * head(q, d)


def slots(q, n, w, l):
    """Sharp slots, Cd 0.61 (textbooks 0.60 to 0.62)."""
    return (q / (0.61 * n * w * l)) ** 2 / (2 * g)


# The pump: monotone cubic through its seven points.
curve = PchipInterpolator([0, 400 * LH, 800 * LH, 1000 * LH, 1200 * LH, 1500 * LH, 1800 * LH], [1.75, 1.66, 1.40, 1.21, 0.97, 0.54, 0])
sump, crest, mouth, nozzle = 0.190, 0.380 + 0.880, 0.380 + 0.750, 0.020


def riser_to_crest(q, ks):
    """intake, 250 up, union, ball valve, 970 up to the crest, elbow, 1600, elbow, 900 to the rim, 120 beyond, elbow down."""
    return entry(q, D25) + union(q, D25) + ball(q, D25) + 3 * elbow90(q, D25) + pipe(q, D25, 0.250 + 0.970 + 1.600 + 0.900 + 0.120, ks)


def riser(q, ks):
    """and 130 down, elbow, 60, a sharp step into the nozzle, its jet."""
    jet = (1 + contraction_sharp(D25, nozzle)) * head(q, nozzle)
    return riser_to_crest(q, ks) + elbow90(q, D25) + pipe(q, D25, 0.130 + 0.060, ks) + jet


def operating(asked): return brentq(lambda q: float(curve(q)) - asked(q), 500 * LH, 1790 * LH, xtol=1e-12)


clean = operating(lambda q: mouth - sump + riser(q, 7e-6))
# fouled to ks 0.15 mm (British design tables for slimed rising mains), the falling leg full of air
least = operating(lambda q: max(mouth - sump + riser(q, 1.5e-4), crest - sump + riser_to_crest(q, 1.5e-4)))

# The settler: 12 notches of 90 degrees at 605 over a floor at 300; ISO 1438, Ce 0.578, kh 0.85 mm.
settler = lambda q: 0.300 + 0.605 + (q / 12 / (8 / 15 * 0.578 * math.sqrt(2 * g))) ** 0.4 - 0.00085


def to_tee(q, ks, film):
    d = D40 - 2 * film
    return slots(q, 40, 0.008 - 2 * film, 0.030 - 2 * film) + entry(q, d) + pipe(q, d, 0.650, ks)


def to_brink(q, ks, film):
    """through the tee, level for 700 mm, the 45 that turns down"""
    d = D40 - 2 * film
    return to_tee(q, ks, film) + branch(q, d) + pipe(q, d, 0.675 + 0.025, ks) + elbow45(q, d)


def solids(q, ks, film):
    """the whole run: 300 down at 45 degrees, 45, 402 level with union and valve, two 45s, 100 of slope and 44 up, the exit"""
    d = D40 - 2 * film
    up = 0.300 + 0.565 - 0.750 - 0.100 * math.sqrt(0.5)
    rest = pipe(q, d, 0.300 / math.sin(math.pi / 4) + 0.120 + 0.110 + 0.172 + 0.100 + up, ks)
    return to_brink(q, ks, film) + rest + 3 * elbow45(q, d) + union(q, d) + ball(q, d) + head(q, d)


def wet(d, y):
    """area and width of a circle of water to depth y, by the height of the chord"""
    r = d / 2
    return r * r * math.acos((r - y) / r) - (r - y) * math.sqrt(2 * r * y - y * y), 2 * math.sqrt(2 * r * y - y * y)


def critical(q, d):
    """depth and velocity head at which Q^2 B = g A^3"""
    def balance(y):
        a, b = wet(d, y)
        return q * q * b - g * a ** 3
    top = d * (1 - 1e-9)
    y = brentq(balance, 1e-4 * d, top) if balance(top) < 0 else d
    a = wet(d, min(y, top))[0]
    return y, (q / a) ** 2 / (2 * g)


def inlet(q, d):
    """FHWA HDS-5 in its own units: feet and cubic feet a second; square edge, c 0.0398, Y 0.67. Below Q/(A D^0.5) = 3.5 critical
    depth and half a velocity head."""
    ft = 0.3048
    x = lambda q: (q / ft ** 3) / (math.pi / 4 * (d / ft) ** 2 * math.sqrt(d / ft))
    def free(q):
        y, v = critical(q, d)
        return y + 1.5 * v
    lo, hi = brentq(lambda q: x(q) - 3.5, 0, 1), brentq(lambda q: x(q) - 4.0, 0, 1)
    drowned = lambda q: (0.0398 * x(q) ** 2 + 0.67) * d
    if q <= lo: return free(q)
    if q >= hi: return drowned(q)
    return free(lo) + (q - lo) / (hi - lo) * (drowned(hi) - free(lo))


def tank(q, below, ks, film):
    """highest of: whole run drowned; over the invert behind the vented tee; over the invert where the run turns down"""
    d = D40 - 2 * film
    invert = 0.380 + 0.670 - d / 2
    return max(below + solids(q, ks, film), invert + inlet(q, d) + to_tee(q, ks, film), invert + sum(critical(q, d)) + to_brink(q, ks, film))


def capacity(ks, film):
    below = settler(clean)
    return brentq(lambda q: tank(q, below, ks, film) - (0.380 + 0.850 - 0.050), 500 * LH, 20000 * LH)


# The ring between well (140 outside) and drum (463 inside), the well (129.2 inside) round the 48.25 pipe that rises in it.
ring, well = math.pi / 4 * (0.463 ** 2 - 0.140 ** 2), math.pi / 4 * (0.1292 ** 2 - OD40 ** 2)

# The cuff of the drain: 4.5 mm of 60 Shore A round 48.25 mm, 30 mm free, 80 mm from the foot, tail 6 mm over the hole. Castigliano's
# theorem summed numerically; E between Gent 1958 and the Ruess relation; shear on half the section.
def cuff():
    s, w, gap, b, d = 60, 0.0045, 0.030, 0.080, 0.085 - 0.079
    gent = 0.0981e6 * (56 + 7.62336 * s) / (0.137505 * (254 - 2.54 * s))
    ruess = 1e6 * 10 ** (0.0235 * s - 0.6403)
    e = math.sqrt(gent * ruess)
    i = quad(lambda a: ((OD40 / 2 + w) ** 4 - (OD40 / 2) ** 4) / 4 * math.cos(a) ** 2, 0, 2 * math.pi)[0]
    area = math.pi * ((OD40 / 2 + w) ** 2 - (OD40 / 2) ** 2)
    bend = quad(lambda x: x * x / (e * i), b, b + gap)[0]
    return d / (bend + quad(lambda x: 1 / (0.5 * e / 3 * area), 0, gap)[0])


rows = []
def row(subject, name, case, value, within, why, water="usual"):
    rows.append(dict(subject=subject, name=name, case=case, water="" if case == "always" else water, value=value, within=within, why=why))


row("water", "kinematic_viscosity", "always", nu, 0.002 * nu, "table to four figures", "usual")
rows[-1]["water"] = "usual"
tables = "Hooper's K against Darby's: up to 15 % of some 85 mm in fittings, and the head falls 1.5 mm for each L/h"
row("riser", "flow", "run_clean", clean, 8 * LH, tables)
row("riser", "flow", "run_worst", clean, 8 * LH, tables)
row("riser", "flow", "run_least", least, 8 * LH, tables)
row("riser", "head_loss", "run_clean", riser(clean, 7e-6), 0.06 * riser(clean, 7e-6), "Hooper's K against Darby's; half of the loss is the jet, which is the same")
row("main", "pump_head", "run_clean", float(curve(clean)), 0.015, "the flow's difference along the curve; pchip against our own monotone cubic")
row("main", "pump_head", "run_least", float(curve(least)), 0.015, "as above")
row("solids-run", "flow", "run_clean", clean, 8 * LH, "as the riser")
row("solids-run", "velocity", "run_clean", velocity(clean, D40), 0.01 * velocity(clean, D40), "as the flow")
for case, ks, film in ("run_clean", 7e-6, 0), ("run_worst", 6e-4, 5e-4):
    h = solids(clean, ks, film)
    row("solids-run", "head_loss", case, h, 0.10 * h, "Hooper's K against Darby's: 10 to 15 % on a tee and four 45s; Colebrook against Churchill: 3 %")
    row("tank", "water_level", case, tank(clean, settler(clean), ks, film), 0.001, "critical depth is the same physics; 10 % of 6 mm of losses before the brink")
    c = capacity(ks, film)
    row("solids-run", "capacity", case, c, 0.05 * c, "head over the invert goes with q^2: 10 % in K on two thirds of it is 4 % of flow")
row("solids-run", "head_had", "run_clean", 1.180 - settler(clean), 0.0012, "as the level of the settler")
for case, q in ("run_clean", clean), ("run_least", least):
    row("settler", "water_level", case, settler(q), 0.001, "under 50 mm of head we go on as h^2.5 through zero: by kh = 0.85 mm higher at most")
    row("settler", "overflow_rate", case, q / ring, 0.01 * q / ring, "as the flow")
    row("settler", "well_downflow", case, q / well, 0.01 * q / well, "as the flow")
    z = settler(q)
    row("settler", "lip_depth_fraction", case, (z - 0.300 - 0.305) / (z - 0.300), 0.001, "1 mm of level over 618 mm of depth, halved")
row("settler", "ring_area", "always", ring, 1e-6, "the same circle")
row("settler-waste/0", "drain_offset", "always", 0.006, 1e-9, "the same difference")
row("settler-waste/0", "cuff_force", "always", cuff(), 1e-3 * cuff(), "quadrature against the closed form")

# The raft: a 53.75 bore standpipe at 400 over a floor at 380, as a square-edged ring weir, c 1.6 (1.5 to 1.7 for thick edges).
row("raft", "water_level", "run_clean", 0.780 + (clean / (1.6 * math.pi * D50)) ** (2 / 3), 0.0005, "as the flow")
# The biofilter: a DN50 side outlet at 607 over a floor at 225, behind 60 slots of 6 by 40 mm.
row("biofilter", "water_level", "run_clean", 0.225 + 0.607 - D50 / 2 + inlet(clean, D50) + slots(clean, 60, 0.006, 0.040), 0.0005, "as the flow")
# The launder's DN50 outlet at 555 over a floor at 300.
row("clear-run", "upstream_level", "run_clean", 0.300 + 0.555 - D50 / 2 + inlet(clean, D50), 0.0005, "as the flow")
print(json.dumps(rows))
