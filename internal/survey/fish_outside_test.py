# A day of fish in the Quarry Road loop, worked apart from dryfit. Metre, kilogram, second, degree Celsius; oxygen and the like in kg/m3.
# The loop's figures are written down again here, the figures of fish, bacteria and waste are read from the tables (first argument), and
# levels, volumes and flows come from standard input.
import csv, json, math, os, sys
import gsw
import numpy as np
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq

given = json.load(sys.stdin)


def rows_of(name):
    with open(os.path.join(sys.argv[1], name + ".csv"), encoding="utf-8") as f:
        return list(csv.DictReader(line for line in f if not line.startswith("#")))


def table(name, key): return {r[key]: r for r in rows_of(name)}


g, day, hour, litre_a_minute = 9.80665, 86400.0, 3600.0, 1e-3 / 60
H, C, N, O, K = 1.008, 12.011, 14.007, 15.999, 39.098  # IUPAC atomic masses
Cl, Ca = 35.45, 40.078
CaCO3 = Ca + C + 3 * O

waters = dict(low=14.0, usual=21.0, high=28.0)
perch = table("species", "species")["silver-perch"]
bio = {k: float(r["value"]) for k, r in table("biology", "key").items()}
assumed = {k: float(r["value"]) for k, r in table("assumptions", "key").items()}
fish, fish_density = 9.5, 1000.0

rows = []
def row(at, value, within, why, over=None): rows.append(dict(at=at, value=value, within=within, over=within if over is None else over, why=why))


# ---- water: oxygen in it, by Garcia and Gordon 1992 as in TEOS-10's toolbox, at the pressure of the place

def air_pressure(height):
    """hydrostatic air that cools by 6.5 K a kilometre from 15 degC, integrated"""
    return 101325 * math.exp(-quad(lambda z: g * 0.0289644 / (8.314462618 * (288.15 - 0.0065 * z)), 0, height)[0])


def vapour(t):
    """Buck 1996, Pa"""
    return 611.21 * math.exp((18.678 - t / 234.5) * t / (257.14 + t))


def density(t): return float(gsw.rho(0, gsw.CT_from_t(0, t, 0), 0))


def full(t, p=101325.0):
    """water full of oxygen; what dissolves goes with the pressure of the dry part of the air"""
    sea = float(gsw.O2sol_SP_pt(0, t)) * 1e-6 * 2 * O * 1e-3 * density(t)
    return sea * (p - vapour(t)) / (101325 - vapour(t))


place = air_pressure(310)
for w, t in waters.items():
    row(f"water.oxygen_full@always/{w}", full(t, place), 0.003, "Garcia and Gordon against Benson and Krause: 0.1 %; Buck's vapour; no salt in either")


# ---- fish: feed, breath, ammonia

def feed(t): return float(np.interp(t, [14, 21, 28], [0.038, 0.120, 0.120])) / day


# Timmons and Ebeling: of protein 0.16 is N, of that 0.8 taken up, of that 0.8 let go, of that 0.9 as ammonia
def ammonia(t): return 0.16 * 0.8 * 0.8 * 0.9 * 0.36 * feed(t)


def breath(t):
    by_mass = fish * float(perch["oxygen_use"]) * 1e-6 / hour * math.exp(math.log(bio["breath_q10"]) * (t - float(perch["at"])) / 10)
    return max(bio["oxygen_of_feed"] * feed(t), by_mass)


for w, t in waters.items():
    # without growth NH4+ + 2 O2 + 2 HCO3-; with it NH4+ + 1.83 O2 + 1.97 HCO3- -> 1.86 CO2 ... (Ebeling, Timmons and Bisogni 2006)
    n = ammonia(t)
    row(f"water.ammonia_made@always/{w}", n, 0.003, "0.092 is 0.09216 rounded")
    row(f"tank.oxygen_need@always/{w}", breath(t), 0.0005, "the same law; written again")
    row(f"water.oxygen_used@always/{w}", breath(t) + 4 * O / N * n, 0.001, "4.57 rounded, a tenth of the sum")
    row(f"water.carbon_dioxide_made@always/{w}", (C + 2 * O) / (2 * O) * breath(t) + 1.86 * (C + 2 * O) / N * n, 0.002, "three figures in the reaction with growth")
    row(f"water.alkalinity_used@always/{w}", CaCO3 / N * n, 0.004, "7.14 and 0.092 rounded")


# ---- bacteria: what they turn, and the ammonia that this leaves, run in time

def share(of, x):
    points = [(float(r["at"]), float(r["share"])) for r in rows_of("nitrification") if r["of"] == of]
    return float(np.interp(x, *zip(*points)))


def frustum(small, large, height, z):
    """round, from the floor up to z, its wall leaning evenly"""
    return quad(lambda y: math.pi / 4 * (small + (large - small) * y / height) ** 2, 0, z)[0]


def raft_area(level):
    z = (level - 0.380) / 0.500
    return (2.00 + 0.01 * z) * (1.20 + 0.01 * z)


def ring(case):
    """the five vessels in the order of the water, and the flow through them"""
    volume = [given[f"{v}.water_volume{case}"] for v in ("tank", "settler", "biofilter", "raft")]
    return given["tank.inflow" + case], np.array(volume + [given["water.loop_volume" + case] - sum(volume)])


bed = raft_area(given["raft.water_level@run_least/usual"])
carriers = table("media", "kind")["carriers"]
media = 0.070
turned = {}  # by filter and rafts, of what all of them turn
for w, t in waters.items():
    both, base = share("temperature", t) * share("pH", 6.9), share("pH", 7.0)
    slow = max(0.25, both)
    filters = min(media * float(carriers["surface"]) * bio["surface_rate"], media * float(carriers["bed_rate"])) * slow * 1e-3 / day
    rafts = bed * bio["raft_rate"] * max(0.25, both / base) * 1e-3 / day
    row(f"biofilter.nitrifies@always/{w}", filters, 0.001, "the same tables, read again")
    row(f"raft.nitrifies@always/{w}", rafts, 0.001, "the same tables, read again; its rate was measured at pH 7")
    row(f"water.nitrification_share@always/{w}", ammonia(t) / (filters + rafts), 0.004, "0.092 rounded")

    case = f"@run_least/{w}"
    flow, volume = ring(case)
    turned[w] = np.array([0, 0, filters, rafts, 0]) / (filters + rafts)
    rate, made = np.array([0, 0, filters, rafts, 0]), np.array([ammonia(t), 0, 0, 0, 0])

    def balance(_, c):
        return (flow * (np.roll(c, 1) - c) + made - rate * np.minimum(1, c / 1e-3)) / volume

    c = solve_ivp(balance, (0, 60 * day), np.zeros(5), method="LSODA", rtol=1e-9, atol=1e-13).y[:, -1]
    assert abs(np.dot(balance(0, c), volume)) < 1e-4 * ammonia(t)
    row(f"tank.ammonia_level{case}", c[0], 0.04, "filter and rafts one after the other here, stirred into one there: 3 % more there at this flow")
    pka = 2835.76 / (t + 273.15) - 0.6322 + 0.001225 * (t + 273.15)  # Bates and Pinching 1949
    row(f"tank.poisonous_ammonia{case}", c[0] / (1 + 10 ** (pka - 7.2)), 0.05, "as the level; pKa within 0.004 of Emerson's")


# ---- oxygen in the tank: flow and stones against breath

oxygen_in_air = 0.20946 * 2 * O * 1e-3 * 101325 / (8.314462618 * 293.15)  # dry air of 20 degC, kg/m3; ideal gas


def stones(air, depth, t, kind="fine"):
    """m3/s of water that the stones keep full: their standard rate over the deficit of clean water at 20 degC, alpha and theta of ASCE"""
    standard = air * oxygen_in_air * bio["stone_" + kind] * depth
    return standard / full(20) * bio["transfer_alpha"] * 1.024 ** (t - 20)


running, meal = {}, bio["breath_after_meal"]
for w, t in waters.items():
    case = f"@run_least/{w}"
    flow, cs = given["tank.inflow" + case], full(t, place)
    k = stones(30 * litre_a_minute, given["tank.water_level" + case] - 0.380, t)
    coming = lambda c: flow * (bio["flow_carries"] * cs - c) + k * (cs - c)
    ease, stress = float(perch["ease"]) * 1e-3, float(perch["stress"]) * 1e-3
    running[w] = brentq(lambda c: coming(c) - breath(t), 0, 0.02, xtol=1e-12)
    air = "oxygen of air 0.2786 kg/m3 at 20 degC against 0.277: 0.6 %"
    row(f"tank.oxygen_by_air{case}", k * (cs - ease), 0.012, air + "; 0.1 % of fullness, thrice on the deficit")
    row(f"tank.oxygen_by_flow{case}", flow * (bio["flow_carries"] * cs - ease), 0.006, "0.1 % of fullness, up to five times on the deficit")
    row(f"tank.oxygen_level{case}", brentq(lambda c: coming(c) - meal * breath(t), 0, 0.02, xtol=1e-12), 0.004, air + ", on what the stones hold over the flow")
    row(f"tank.oxygen_share{case}", meal * breath(t) / coming(stress), 0.008, air)
    row(f"tank.oxygen_share_at_ease{case}", meal * breath(t) / coming(ease), 0.008, air)


# ---- the mains fail: still water, then backup air at once and for eight hours, then still water again

danger = float(perch["danger"]) * 1e-3
still_level = given["tank.static_level@stopped/siphon-break-open"] - 0.380
kept = frustum(1.350, 1.360, 0.850, still_level) - fish / fish_density


def runs(sum_up, start, until):
    """runs a balance until its first vessel, the tank, is in danger or the time is over; gives the time and where it ended"""
    stop = lambda _, c: c[0] - danger
    stop.terminal = True
    s = solve_ivp(lambda _, c: sum_up(c), (0, until), start, events=stop, rtol=1e-9, atol=1e-13, max_step=min(600, until / 50))
    return s.t[-1], s.y[:, -1]


def with_backup(blown, still, start):
    """eight hours of backup, then none"""
    held, left = runs(blown, start, 8 * hour)
    return held if held < 8 * hour else held + runs(still, left, 3 * day)[0]


for w, t in waters.items():
    use, cs = breath(t), full(t, place)
    still = lambda volume: lambda c: -use / volume + 0 * c
    kept_water = "the kept share of the worst run on the water of the least run there: 0.6 % less; twice the 0.1 % of the level it starts from"
    row(f"tank.time_to_danger@power_cut/{w}", runs(still(kept), [running[w]], 3 * day)[0], 0.012, kept_water)
    for d in (60, 5, 2):
        row(f"tank.time_at_{d}@power_cut/{w}", runs(still(fish / d - fish / fish_density), [running[w]], 3 * day)[0], 0.004, "twice the 0.1 % of the level it starts from")
    # 30 L/min into tank and biofilter, to each the half; the water of the tank has run down to where it stands
    k = stones(15 * litre_a_minute, still_level, t)
    blown = lambda c: (k * (cs - c) - use) / kept
    row(f"tank.backup_oxygen@power_cut/{w}", brentq(lambda c: k * (cs - c) - use, 0, cs), 0.012, "oxygen of air: 0.6 %, on what is missing to fullness")
    both = with_backup(blown, still(kept), [running[w]])
    row(f"tank.time_with_backup@power_cut/{w}", both, 0.015, "as what the backup holds, a tenth of the time")
    row(f"tank.cut_share@power_cut/{w}", 4 * hour / both, 0.015, "as the time")

    # The air pump fails and the pump runs: five vessels in a ring, of which fish breathe in the tank, bacteria in biofilter and raft.
    case = f"@run_least/{w}"
    flow, volume = ring(case)
    volume[0] -= fish / fish_density
    burnt = np.array([use, 0, 0, 0, 0]) + 4 * O / N * ammonia(t) * turned[w]
    none = lambda c: (flow * (np.roll(c, 1) - c) - burnt) / volume
    half = np.zeros(5)
    half[0] = stones(15 * litre_a_minute, given["tank.water_level" + case] - 0.380, t)
    half[2] = stones(15 * litre_a_minute, given["biofilter.water_level" + case] - 0.225, t, "medium")
    start = [running[w]] * 2 + [bio["flow_carries"] * cs] * 3
    row(f"tank.time_to_danger@air_pump_fails/{w}", runs(none, start, 3 * day)[0], 0.15, "a short form on the safe side: the rest of the water starts below the tank by what the flow does not make up; in cold water it does", 0.03)
    row(f"tank.time_with_backup@air_pump_fails/{w}", with_backup(lambda c: none(c) + half * (cs - c) / volume, none, start), 0.15, "as above; how the air divides", 0.02)


# ---- acid, beds, salt, water

for w, t in waters.items():
    v = given[f"water.loop_volume@run_clean/{w}"]
    fall = CaCO3 / N * ammonia(t) / v
    # potassium bicarbonate has one equivalent in a mole, half of calcium carbonate's
    base = CaCO3 / N * ammonia(t) * 2 * (K + H + C + 3 * O) / CaCO3
    row(f"water.alkalinity_lasts@always/{w}", brentq(lambda s: 0.060 - fall * s - 0.020, 0, 1e9), 0.004, "7.14 and 0.092 rounded")
    row(f"water.alkalinity_left@unattended/{w}", 0.060 - fall * 64 * hour, 0.005, "as above, on half of what there was")
    row(f"water.base_share@always/{w}", 0.018 / day / base, 0.004, "as above")
    crop = table("crops", "crop")["leafy"]
    row(f"water.bed_feed_share@always/{w}", feed(t) / (bed * float(crop["feed_most"]) * 1e-3 / day), 0.001, "the same geometry")


def carbon_dioxide(alkalinity, ph, t):
    """Plummer and Busenberg 1982 for K1; Davies for the activity of bicarbonate with chloride and cations of one charge beside it"""
    k = t + 273.15
    pk1 = 356.3094 + 0.06091964 * k - 21834.37 / k - 126.8339 * math.log10(k) + 1684915 / k ** 2
    bicarbonate = alkalinity * 2 / CaCO3  # mol/L of kg/m3
    ionic = bicarbonate + 0.060 / Cl
    root = math.sqrt(ionic)
    return (C + 2 * O) * bicarbonate * 10 ** (pk1 - ph - 0.509 * (root / (1 + root) - 0.3 * ionic))


for name, a, ph in (("", 0.060, 6.9), ("_low", 0.025, 6.5), ("_high", 0.080, 7.2)):
    row(f"water.carbon_dioxide{name}@always", carbon_dioxide(a, ph, 21), 0.075, "bicarbonate counted as if alone in the water there: 5 to 6 % more, and pK1 within 0.004")

across = 1.350 + 0.010 * (given["tank.water_level@run_clean/usual"] - 0.380) / 0.850
lost = (math.pi / 4 * across ** 2 * assumed["evaporation"] + bed * assumed["leaves_breathe"]) * 1e-3 / day
row("water.ammonium_chloride@always", 2e-3 * given["water.loop_volume@run_clean/usual"] * (N + 4 * H + Cl) / N, 0.001, "molar masses")
row("air.air_pressure_share@always", (density(14) * g * (given["tank.water_level@run_worst/low"] - 0.380) + 0.35 * 6894.757) / 10e3, 0.003, "2.4 kPa is 0.35 psi rounded")


# ---- the settler: grains, tanks in a row, sludge

def sinks(d, r, nu):
    """a grain of size d, heavier than water by the share r, where weight and drag agree; drag of Brown and Lawler 2003"""
    def drag(v):
        re = v * d / nu
        return (24 / re * (1 + 0.150 * re ** 0.681) + 0.407 / (1 + 8710 / re)) * v * v - 4 / 3 * r * g * d
    return brentq(drag, 1e-12, 10, xtol=1e-15)


def viscosity(t):
    """Korson, Drost-Hansen and Millero 1969, from 1.0020 mPa s at 20 degC"""
    return 1.0020e-3 * 10 ** ((1.1709 * (20 - t) - 0.001827 * (t - 20) ** 2) / (t + 89.93)) / density(t)


solids = rows_of("solids")
figure = {r["key"]: float(r["value"]) for r in solids if r["kind"] == "figure"}
classes = [(float(r["speed_mm_s"]) * 1e-3, float(r["share"])) for r in solids if r["kind"] == "class"]
flow = given["settler.greatest_inflow@always"]
plan = math.pi / 4 * (0.463 ** 2 - 0.140 ** 2)
tanks = round(1 / figure["stirred_radial"])


def passes(v):
    """what is left of a grain that sinks at v after stirred tanks in a row, run until they stand still"""
    part = plan / tanks
    step = lambda _, c: (flow * (np.concatenate(([1.0], c[:-1])) - c) - v * part * c) / (part * 0.6)
    return solve_ivp(step, (0, 12 * hour), np.zeros(tanks), method="LSODA", rtol=1e-10, atol=1e-14).y[-1, -1]


def settler_up_to(top):
    """water below a height, with the rounded corner of 25 mm between floor and wall"""
    def radius(y):
        return 0.2315 + 0.0025 * y / 0.735 - (0.025 - math.sqrt(0.025 ** 2 - (0.025 - y) ** 2) if y < 0.025 else 0)
    return quad(lambda y: math.pi * radius(y) ** 2, 0, top, points=[0.025])[0]


store, drawn = settler_up_to(0.110), settler_up_to(0.170)
row("settler.sludge_store@always", store, 0.015, "the corner of the floor is round here, sharp there: 0.2 L")
row("settler.water_a_clean@always", drawn, 0.01, "the corner of the floor")
row("settler.clean_share_week@always", drawn / 3 * 7 / given["water.loop_volume@run_clean/usual"], 0.01, "the corner of the floor")
row("water.water_used@always", lost + drawn / (3 * day), 0.005, "the corner of the floor, on a third of it")
for w, t in waters.items():
    caught = 0
    for v, f in classes:
        size = brentq(lambda d: sinks(d, 0.05, viscosity(20)) - v, 1e-6, 0.05, xtol=1e-12)
        caught += f * (1 - passes(sinks(size, 0.05, viscosity(t))))
    made, case = 0.25 * feed(t), f"@run_clean/{w}"
    kept_back = made * caught * figure["settles"]
    row(f"settler.capture_settleable{case}", caught, 0.004, "round grains here, rough ones there: the middle classes feel the cold a little more")
    row(f"settler.solids_caught{case}", kept_back, 0.004, "as the share")
    row(f"water.solids_passed_on{case}", made - kept_back, 0.004, "as the share")
    row(f"settler.sludge_days{case}", store / (kept_back / (0.015 * 1000)), 0.02, "the corner of the floor, and as the share")
row("settler.lip_speed@always", flow / (math.pi * 0.1292 * (0.305 - 0.110)), 0.001, "continuity")
row("settler.residence_time@run_clean/usual", given["settler.water_volume@run_clean/usual"] / flow, 0.001, "continuity")


# ---- the drain, opened once the clear water is drawn down: 470 mm of water over the paving, a mouth at 150

bore, wall = 0.04285 - 2 * 0.0005, 0.6e-3  # 0.5 mm of film, wall of 0.6 mm grain


def friction(v):
    re = v * bore / viscosity(21)
    return brentq(lambda f: 1 / math.sqrt(f) + 2 * math.log10(wall / bore / 3.7 + 2.51 / (re * math.sqrt(f))), 0.005, 0.2)  # Colebrook


# 135 mm of tail and 71 mm of leg inside the drain, cuff, stub, valve, slope: 857 mm
length = 0.135 + 0.071 + 0.030 + 0.067 + 0.150 + 0.080 + 0.229 * math.sqrt(2)
# Crane, Technical Paper 410: K in friction factors of rough pipe, fT 0.021 at this size; 90 degrees 30, 45 degrees 16, ball 3. Sharp entry 0.5 and a floor at a third
# of a bore before it 0.55 more (Idelchik, from memory); cuff wider than the pipe by 6 mm: Borda and a sharp step back.
gap = (bore / 0.048) ** 2
losses = 0.021 * (30 + 2 * 16 + 3) + 0.5 + 0.55 + (1 - gap) ** 2 + 0.5 * (1 - gap) + 1


def speed(h): return brentq(lambda v: (losses + friction(v) * length / bore) * v * v / (2 * g) - h, 0.01, 10)


drain = speed(0.470 - 0.150)
row("settler-waste.drain_speed@cleaning/usual", drain, 0.10, "K of fittings by other tables, 15 to 20 % on four fifths of the head, halved by the root")
empty = lambda _, z: z[0]
empty.terminal = True
s = solve_ivp(lambda _, z: [-speed(z[0] + 0.150) * math.pi / 4 * bore ** 2 / (math.pi * (0.2315 + 0.0025 * z[0] / 0.735) ** 2)], (0, 300), [0.170], events=empty, max_step=0.5)
row("settler-waste.drain_time@cleaning/usual", s.t[-1], 0.10, "as the speed")
# Carvajalino-Fernandez et al. 2020: 0.06 Pa lifts settled droppings off a smooth floor; at a friction factor of 0.03 that is 0.127 m/s
scour = math.sqrt(8 * 0.06 / (0.03 * density(21)))
row("settler.drain_radius@always", math.sqrt(given["settler-waste.drain_flow@cleaning/usual"] / (2 * math.pi * scour)), 0.005, "0.127 rounded; half a ball of flow through the radius")

print(json.dumps(rows))
