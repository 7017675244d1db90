# Random loops worked apart from dryfit: levels and flows in steady flow, of loops that are read as plain numbers. Lengths in metre, flows
# in m3/s, heights above the datum. The equations are written down again from their sources; none of dryfit's tables or code is read.
#
# Friction: Churchill 1977, not Colebrook: many of these lines run laminar or between laminar and turbulent.
# Unknowns: the level of every vessel and tee, the flow of every line and weir. Each line either carries nothing, or the level above it is
# what its flow asks for; Fischer and Burmeister's function makes one equation of the two, and scipy's least squares solves them together.
import json, math, sys
import numpy as np
from scipy.interpolate import CubicHermiteSpline
from scipy.optimize import brentq, least_squares

g = 9.80665
KS = 7e-6  # new plastic pipe, 0.007 mm


def viscosity(t):
    """m2/s: IAPWS R12-08, simplified equation at 0.1 MPa, over Kell 1975"""
    r = (t + 273.15) / 300
    mu = 1e-6 * (280.68 * r ** -1.9 + 511.45 * r ** -7.7 + 61.131 * r ** -19.6 + 0.45903 * r ** -40)
    rho = (999.83952 + 16.945176 * t - 7.9870401e-3 * t ** 2 - 46.170461e-6 * t ** 3 + 105.56302e-9 * t ** 4 - 280.54253e-12 * t ** 5) / (1 + 16.879850e-3 * t)
    return mu / rho


def area(d): return math.pi / 4 * d * d
def head(v): return v * v / (2 * g)


def churchill(re, rough):
    """Churchill 1977, Chem. Eng. 84(24):91, as Darcy's f"""
    if re < 10:
        return 64 / re
    a = (2.457 * math.log(1 / ((7 / re) ** 0.9 + 0.27 * rough))) ** 16
    b = (37530 / re) ** 16
    return 8 * ((8 / re) ** 12 + (a + b) ** -1.5) ** (1 / 12)


# Darby 1999, Chem. Eng. 106(7):101: K1, Ki, Kd. Threaded standard elbows, tee through the branch, ball and gate valve open.
DARBY = dict(bend90=(800, 0.14, 4.0), bend45=(500, 0.071, 4.2), tee_turn=(500, 0.274, 4.0), ball=(300, 0.017, 3.5), gate=(300, 0.037, 3.9))
# Crane TP-410: sharp entrance flush with a wall. Rennels and Hudson 2012: projecting, wall of a twentieth of the bore. Munson: union.
PLAIN = dict(flush=0.5, projecting=0.57, union=0.08)
# Valves open in part. Munson, Young and Okiishi, table 8.2: ball 1/3 closed 5.5, gate 1/4, 1/2, 3/4 closed 0.26, 2.1, 17. Perry: plug cock at 40 degrees 17.3.
PART = {("ball", 66.67): 5.5, ("ball", 55.56): 17.3, ("gate", 75): 0.26, ("gate", 50): 2.1, ("gate", 25): 17.0}


def critical(q, d):
    """depth and velocity head at which Q^2 B = g A^3 in a round pipe"""
    if q <= 0:
        return 0.0, 0.0
    def wet(t): return d * d / 8 * (t - math.sin(t) if t > 1e-3 else t ** 3 / 6)
    def balance(t): return 2 * math.log(q) + math.log(d * math.sin(t / 2)) - math.log(g) - 3 * math.log(wet(t))
    least, most = 1e-3, 2 * math.pi - 1e-9
    if balance(least) < 0:
        t = least
    elif balance(most) > 0:
        t = most
    else:
        t = brentq(balance, least, most, xtol=1e-13)
    return d / 2 * (1 - math.cos(t / 2)), head(q / wet(t))


FOOT = 0.3048
def inlet(q, d):
    """level over the invert at a level pipe's beginning: HDS-5 with its limits 3.5 and 4.0 of Q/(A D^0.5) in feet and cubic feet a
    second; below them critical depth, its velocity head and half as much for the edge; above them 0.0398 and 0.67 of a square edge,
    started from where the first ends; a straight line between"""
    per = area(d / FOOT) * math.sqrt(d / FOOT) * FOOT ** 3
    def free(q):
        y, v = critical(q, d)
        return y + 1.5 * v
    lo, hi = 3.5 * per, 4.0 * per
    if q <= lo:
        return free(q)
    lift = max(0.67 * d, free(lo) - 0.0398 * 3.5 ** 2 * d)
    def drowned(q): return 0.0398 * (q / per) ** 2 * d + lift
    if q >= hi:
        return drowned(q)
    return free(lo) + (q - lo) / (hi - lo) * (drowned(hi) - free(lo))


def rim(q, d):
    """head over the open top of an upright pipe: a ring weir with a square edge, 1.6, or a hole, 0.6, whichever asks for more"""
    return max((q / (1.6 * math.pi * d)) ** (2 / 3), head(q / (0.6 * area(d))))


class Pump:
    """Head at a flow. Points: piecewise cubics with Fritsch and Butland's slopes, the chord at both ends. Two figures: the parabola with
    its top at no flow. None gives more than its curve says."""
    def __init__(self, p):
        points = p.get("points")
        if points is None:
            self.shut, self.most = p["shut"], p["open"]
            self.head = lambda q: self.shut * (1 - (q / self.most) ** 2)
            return
        q, h = np.array(points).T
        if len(q) == 2:
            a = (h[0] - h[1]) / (q[1] ** 2 - q[0] ** 2)
            self.shut = h[0] + a * q[0] ** 2
            self.most = math.sqrt(self.shut / a)
            self.head = lambda x: self.shut - a * x * x
            return
        chord, step = np.diff(h) / np.diff(q), np.diff(q)
        m = np.empty(len(q))
        m[0], m[-1] = chord[0], chord[-1]
        for i in range(1, len(q) - 1):
            a = (step[i - 1] + 2 * step[i]) / (3 * (step[i - 1] + step[i]))
            m[i] = chord[i - 1] * chord[i] / (a * chord[i] + (1 - a) * chord[i - 1])
        self.most, self.shut = q[-1], float(h[0] - chord[0] * q[0])
        spline = CubicHermiteSpline(q, h, m)
        self.head = lambda x: float(spline(x)) if x >= q[0] else float(h[0] + (x - q[0]) * chord[0])

    def __call__(self, q):
        if q <= self.most:
            return self.head(q)
        return self.head(self.most) - 3e5 * (q - self.most)


class Line:
    def __init__(self, s, nu):
        self.__dict__.update(s)
        self.nu = nu
        self.inches = s.get("nominal") or self.bore / 0.0254
        self.mouth, self.edges = s.get("mouth"), s.get("edges") or []
        self.curve = Pump(s["pump"]) if s.get("pump") else None

    def lost(self, q, n=None):
        """head lost in the first n pieces"""
        if q <= 0:
            return 0.0
        d, sum = self.bore, 0.0
        v = q / area(d)
        re = v * d / self.nu
        f = churchill(re, KS / d)
        for p in self.pieces[:n]:
            what = p["is"]
            if what == "pipe":
                sum += f * p.get("length", 0) / d * head(v)
            elif what == "slots":
                sum += head(q / (0.61 * p["count"] * p["width"] * p["length"]))
            elif (what, p.get("open")) in PART:
                sum += PART[what, p["open"]] * head(v)
            elif what in DARBY:
                k1, ki, kd = DARBY[what]
                sum += (k1 / re + ki * (1 + kd / self.inches ** 0.3)) * head(v)
            else:
                sum += PLAIN[what] * head(v)
        return sum

    def end(self, q):
        """what the mouth takes: the velocity head; a nozzle its own, with a sharp step (Rennels and Hudson 2012)"""
        if self.mouth is None or q <= 0:
            return 0.0
        d, small = self.bore, self.mouth.get("nozzle")
        if not small:
            return head(q / area(d))
        b = small / d
        l = 1 + 0.622 * (1 - 0.215 * b ** 2 - 0.785 * b ** 5)
        return (1 + 0.0696 * (1 - b ** 5) * l ** 2 + (l - 1) ** 2) * head(q / area(small))

    def need(self, q, below):
        """the level that a flow asks for above the line, and what asks for it"""
        all = self.lost(q) + self.end(q)
        out = (-math.inf, "nothing")
        if below is not None:
            out = (below + all, "full")
        if self.mouth is not None:
            z = self.mouth["height"]
            if not self.curve and self.mouth["facing"] == "level" and not self.mouth.get("nozzle"):
                z += critical(q, self.bore)[0] / 2  # HDS-5: (dc + D)/2 over the invert of a free end
            out = max(out, (z + all, "mouth"))
        if not self.pressed:
            for e in self.edges:
                h = {"inlet": inlet, "brink": lambda q, d: sum(critical(q, d)), "rim": rim, "mouth": lambda q, d: 0}[e["is"]](max(q, 0), self.bore)
                out = max(out, (e["height"] + h + self.lost(q, e["passed"]), e["is"]))
        if self.curve:
            out = (out[0] - self.curve(max(q, 0)), out[1])
        return out


# ISO 1438, after Kindsvater and Shen: Ce and the millimetres added to the head, at angles of 40, 60, 90 degrees; from memory but for 90.
NOTCH = {40: (0.582, 1.7), 60: (0.577, 1.2), 90: (0.578, 0.85)}


class Weir:
    """the edge of a vessel, to the water behind it"""
    curve, first, duty, pressed, drop = None, False, "weir", False, 0

    def __init__(self, w, vessel):
        self.__dict__.update(w)
        self.name, self.From, self.to = vessel + " weir", vessel, vessel + " behind"

    def free(self, h):
        if h <= 0:
            return 0.0, 1.5
        if self.kind in ("notched_ring", "notch"):
            ce, kh = NOTCH[self.angle]
            def one(h): return 8 / 15 * ce * math.tan(math.radians(self.angle / 2)) * math.sqrt(2 * g) * (h + kh / 1000) ** 2.5
            # under the 50 mm from which it is calibrated it goes on as h^2.5 to no flow at no head
            return self.notches * (one(h) if h >= 0.05 else one(0.05) * (h / 0.05) ** 2.5), 2.5
        if self.kind == "ring":
            return 1.84 * math.pi * self.across * h ** 1.5, 1.5  # Francis's thin crest
        if self.kind == "rim":
            return 1.6 * math.pi * self.across * h ** 1.5, 1.5  # a square edge
        return 1.84 * self.length * getattr(self, "notches", 1) * h ** 1.5, 1.5  # Francis 1855

    def over(self, h, back):
        """flow over the crest with the water behind it back over the crest"""
        if back == 0:
            return self.free(h)[0]
        def drowned(h):
            q, n = self.free(h)
            return q * (1 - (back / h) ** n) ** 0.385  # Villemonte 1947
        if h - back < 0.001:  # all but level: in a straight line to no flow
            return drowned(back + 0.001) * (h - back) / 0.001
        return drowned(h)

    def need(self, q, below):
        back = max(0.0, below - self.crest)
        if q <= 0:
            return self.crest + back, "weir"
        return self.crest + brentq(lambda h: self.over(h, back) - q, back, back + 20, xtol=1e-14), "drowned weir" if back > 0 else "free weir"


def tee(share, bores):
    """K of run and branch of a parting at a right angle, on the speed in the common leg: Crane TP-410, 2009"""
    a = bores ** 2
    m = 0.4 if a <= 0.4 else 2 * (2 * share - 1) if share <= 0.5 else 0.3 * (2 * share - 1)
    w = share / a
    if bores <= 2 / 3:
        branch = 1 + w * w
    else:
        branch = (1 + 0.3 * share ** 2) * (1 + 0.3 * w * w)
    return m * share ** 2, branch


class Loop:
    def __init__(self, spec):
        self.nu = viscosity(spec["celsius"])
        self.vessels = spec["vessels"]
        self.lines = [Line(s, self.nu) for s in spec["strands"]]
        self.tees = spec.get("tees") or []
        self.fixed = {v["name"]: v["held"] for v in self.vessels if "held" in v}
        self.nodes = []
        for v in self.vessels:
            if v["name"] not in self.fixed:
                self.nodes.append(v["name"])
            if v.get("weir"):
                self.nodes.append(v["name"] + " behind")
                self.lines.append(Weir(v["weir"], v["name"]))
        self.nodes += [t["name"] for t in self.tees]
        self.at = {n: i for i, n in enumerate(self.nodes)}
        self.leg = {}
        for t in self.tees:
            self.leg[t["run"]] = (t, 0)
            self.leg[t["branch"]] = (t, 1)

    def level(self, z, node): return self.fixed[node] if node in self.fixed else z[self.at[node]]

    def asked(self, l, q, z, flows):
        y, why = l.need(max(q, 0), None if l.to == "outside" else self.level(z, l.to))
        if l.name in self.leg:
            t, which = self.leg[l.name]
            run, branch = max(flows[t["run"]], 0), max(flows[t["branch"]], 0)
            whole = run + branch
            if whole > 0:
                y += tee(branch / whole, t["other"] / t["bore"])[which] * head(whole / area(t["bore"]))
        return y, why

    def start(self):
        """a guess: down the loop with equal parts at every parting, then levels up the loop"""
        q, into = {}, dict.fromkeys(self.nodes + list(self.fixed), 0.0)
        for l in self.lines:
            if l.curve:
                legs = [m for m in self.lines if getattr(m, "line", "") == l.line]
                lift = max(m.mouth["height"] for m in legs if m.mouth) + 0.1 - self.fixed[l.From]
                short = lambda x: l.curve(x) - lift - sum(m.lost(x) + m.end(x) for m in legs)
                q[l.name] = 1e-9 if short(0) <= 0 else l.curve.most if short(l.curve.most) >= 0 else brentq(short, 0, l.curve.most)
                into[l.to] += q[l.name]
        order = []
        for v in self.vessels:
            order += [n for n in (v["name"], v["name"] + " behind") if n in self.at]
            order += [t["name"] for t in self.tees if t["name"].startswith(v["name"] + "-")]
        order = [t["name"] for t in self.tees if t["name"] not in order] + order
        for n in order:
            out = [l for l in self.lines if l.From == n and l.duty != "overflow"]
            for l in out:
                q[l.name] = into[n] / len(out)
                into[l.to] += q[l.name]
        z = {}
        for n in reversed(order):
            z[n] = max(l.need(q[l.name], self.fixed.get(l.to, z.get(l.to, -9)))[0] for l in self.lines if l.From == n and l.name in q)
        return np.array([z[n] for n in self.nodes]), np.array([q.get(l.name, 0.0) for l in self.lines])

    def wrong(self, x):
        """what is wrong in the balances of the nodes, over the scale of flow, and in the lines"""
        k = len(self.nodes)
        z, q = x[:k], x[k:] * self.scale
        flows = {l.name: q[i] for i, l in enumerate(self.lines)}
        net, out = np.zeros(k), []
        def put(node, dq):
            if node in self.at:
                net[self.at[node]] += dq
        for i, l in enumerate(self.lines):
            put(l.From, -q[i])
            put(l.to, q[i])
            y, _ = self.asked(l, q[i], z, flows)
            up = self.level(z, l.From)
            if l.curve and up + l.curve.shut <= l.pump["rest"]:
                out.append(x[k + i])
                continue
            a, b = x[k + i], (y - up) / 0.05
            out.append(a + b - math.hypot(a, b))
        return np.concatenate([net / self.scale, out])

    def solve(self):
        z, q = self.start()
        self.scale = max(max((q[i] for i, l in enumerate(self.lines) if l.curve), default=1e-6), 1e-6)
        best = None
        for higher in (0, 0.02, 0.1, 0.3, 1, 3):  # from above: a line that has run dry tells the search nothing
            x = np.concatenate([z + higher, q / self.scale])
            r = least_squares(self.wrong, x, ftol=1e-15, xtol=1e-15, gtol=1e-15, max_nfev=200)
            if best is None or r.cost < best.cost:
                best = r
            if best.cost < 1e-16:
                break
        self.x, self.left = best.x, math.sqrt(2 * best.cost)
        return self


def answer(spec):
    for s in spec["strands"]:
        s["From"] = s.pop("from")
    l = Loop(spec).solve()
    k = len(l.nodes)
    z, q = l.x[:k], l.x[k:] * l.scale
    flows = {m.name: q[i] for i, m in enumerate(l.lines)}
    out = dict(seed=spec["seed"], left=l.left, levels={}, heads={}, flows={}, regimes={}, scale=l.scale, apart="")
    def saw(what): out["regimes"][what] = out["regimes"].get(what, 0) + 1
    few = 1e-3 * l.scale
    def through(n): return sum(flows[m.name] for m in l.lines if m.to == n)
    for m in l.lines:
        if m.curve and abs(l.level(z, m.From) + m.curve.shut - m.pump["rest"]) < 0.01:
            out["apart"] = "a pump lifts just as high as it can"
        elif m.duty != "weir" and not m.curve and not m.pressed and flows[m.name] < few <= through(m.From) and l.level(z, m.to) > max([l.level(z, m.From) + 1e-4] + [e["height"] for e in m.edges]):
            out["apart"] = "a line runs backwards"
    for v in l.vessels:
        n = v["name"]
        if l.level(z, n) > v["rim"]:
            out["apart"] = "a vessel spills"
        if n in l.fixed or through(n) < few:  # a level that nothing flows over is anywhere under its outlets
            continue
        dry = min(m.need(0, l.level(z, m.to))[0] for m in l.lines if m.From == n and m.duty != "overflow")
        out["levels"][n], out["heads"][n] = float(l.level(z, n)), float(l.level(z, n) - dry)
    for i, m in enumerate(l.lines):
        if m.first:
            out["flows"][m.line] = float(q[i])
        if q[i] < few:
            continue
        why = l.asked(m, q[i], z, flows)[1]
        if m.duty == "weir":
            saw(why)
            continue
        re = q[i] / area(m.bore) * m.bore / l.nu
        fr = q[i] / area(m.bore) / math.sqrt(g * m.bore)
        saw("laminar" if re < 2300 else "turbulent" if re > 4000 else "between")
        if m.curve or m.pressed or why == "full":
            saw("full")
        elif why in ("inlet", "brink") and fr < 0.617:
            saw("part full")
        if m.drop and why != "full" and not (m.curve or m.pressed):
            saw("self-venting" if fr < 0.3 else "surging" if fr < 1 else "gulping full")
    for n in l.nodes:
        if sum(1 for m in l.lines if m.From == n and flows[m.name] > 10 * few and m.duty == "flow") > 1:
            saw("divided")
    return out


if __name__ == "__main__":
    specs = json.load(sys.stdin)
    print(json.dumps([answer(s) for s in specs]))
