"""Input impedance of a chain of cones and holes, vectorised over frequency with numpy.

Reads {"chain": ..., "frequencies": [...], "runs": n} as JSON on standard input and writes
{"re": [...], "im": [...], "milliseconds": [...]} on standard output. Same physics as src/acoustics:
exact wall losses, spherical-wave cones, T-circuit holes, unflanged bell. SI units, time convention e^{+jwt}.

Written to be quick as well as plain: work is done once per element on whole arrays, real arithmetic is used
where the quantities are real, large arguments take the same 14-term asymptotic Bessel ratio as the
TypeScript does, and the state (p, u) is carried as a vector, never as a product of matrices.
"""

import json
import sys
import time

import numpy as np

TERMS = 14
SERIES_FROM = 26.0


def hankel_coefficients():
    """b_k of J1/J0(s e^{-j pi/4}) = sum b_k s^-k, from the Riccati equation g' = 1 - g/x + g^2."""
    a = [-1j]
    for k in range(1, TERMS):
        total = (2 - k) * a[k - 1] - sum(a[i] * a[k - i] for i in range(1, k))
        a.append(total / (2 * a[0]))
    return [a[k] * np.exp(1j * k * np.pi / 4) for k in range(TERMS)]


B = hankel_coefficients()
B_RE = [b.real for b in B]
B_IM = [b.imag for b in B]


def asymptotic(s):
    y = 1.0 / s
    re = np.full_like(y, B_RE[-1])
    im = np.full_like(y, B_IM[-1])
    for k in range(TERMS - 2, -1, -1):
        re *= y
        re += B_RE[k]
        im *= y
        im += B_IM[k]
    out = np.empty(s.shape, dtype=complex)
    out.real = re
    out.imag = im
    return out


def recurrence(s):
    inverse = np.exp(1j * np.pi / 4) / s
    g = np.zeros(s.shape, dtype=complex)
    for n in range(int(np.ceil(s[-1])) + 24, 0, -1):
        g = 1.0 / (2 * n * inverse - g)
    return g


def bessel_ratio(s):
    """J1/J0 on the ray; s rises with frequency, so the two routes are two slices."""
    split = int(np.searchsorted(s, SERIES_FROM))
    if split == 0:
        return asymptotic(s)
    if split == s.size:
        return recurrence(s)
    return np.concatenate([recurrence(s[:split]), asymptotic(s[split:])])


def wall_terms(r, air, omega, root_omega):
    """Propagation constant and specific characteristic impedance of a round tube."""
    sv = (r * np.sqrt(air["density"] / air["viscosity"])) * root_omega
    st = air["prandtlRoot"] * sv
    two_over = np.sqrt(2.0) * (1 + 1j)
    v = 1.0 - (two_over / sv) * bessel_ratio(sv)
    y = 1.0 + ((air["heatRatio"] - 1.0) * two_over / st) * bessel_ratio(st)
    q = np.sqrt(y / v)
    return (1j / air["soundSpeed"]) * omega * q, (air["density"] * air["soundSpeed"]) / (v * q)


def open_end(a, extra, air, omega):
    k = omega / air["soundSpeed"]
    x = (k * a) ** 2
    modulus = (1 + 0.8 * x) / (1 + x * (1.3 + x * (0.266 + x * 0.0263)))
    length = 0.6133 * a * (1 + 0.0599 * x) / (1 + x * (0.238 + x * (-0.0153 + x * 0.0015))) + extra
    r = -modulus * np.exp(-2j * k * length)
    return air["density"] * air["soundSpeed"] / (np.pi * a * a) * (1 + r) / (1 - r)


def input_impedance(chain, f):
    omega = 2 * np.pi * f
    root_omega = np.sqrt(omega)
    p = open_end(chain["bellRadius"], chain["bellCorrection"], chain["bellAir"], omega)
    u = np.ones(f.shape, dtype=complex)
    for e in reversed(chain["elements"]):
        air = e["air"]
        if e["kind"] == "bore":
            length, r1, r2 = e["length"], e["r1"], e["r2"]
            ratio = r2 / r1 - 1
            r_eq = r1 * (1 + ratio / 2 - ratio * ratio / 12) if abs(ratio) < 1e-4 else (r2 - r1) / np.log(r2 / r1)
            gamma, z = wall_terms(r_eq, air, omega, root_omega)
            s = gamma * length
            grow = np.exp(s)
            shrink = 1.0 / grow
            ch = 0.5 * (grow + shrink)
            sh = 0.5 * (grow - shrink)
            area = np.pi * r1 * r2
            if r1 == r2:
                p, u = ch * p + (z / area) * (sh * u), (area / z) * (sh * p) + ch * u
            else:
                up, t1, t2 = r2 / r1, (r2 - r1) / r1, (r2 - r1) / r2
                inv = 1.0 / s
                m = sh * inv
                m1 = (ch - m) * inv
                p, u = (
                    (up * ch - t1 * m) * p + (z / area) * (sh * u),
                    (area / z) * ((sh + (t1 * t2) * m1) * p) + (ch / up + t2 * m) * u,
                )
        else:
            b = e["radius"]
            area = np.pi * b * b
            series = 1j * e["halfSeriesPerHz"] * f
            gamma, z = wall_terms(b, air, omega, root_omega)
            t = np.tanh(gamma * e["tube"])
            if e["end"] is None:
                line = t / z
            else:
                end = np.empty(f.shape, dtype=complex)
                end.real = air["density"] * area / (4 * np.pi * air["soundSpeed"]) * omega * omega
                end.imag = air["density"] * e["end"] * omega
                if e["gap"] > 0:
                    x = (e["gap"] / 2 * np.sqrt(air["density"] / air["viscosity"] / 2)) * root_omega
                    back = np.exp((-2 - 2j) * x)
                    tanh_over_u = (1 - back) / (1 + back) / ((1 + 1j) * x)
                    end += (1j * air["density"] * e["gapShare"]) * omega * (1 / (1 - tanh_over_u) - 1)
                line = (z + end * t) / (z * (end + z * t))
            shunt = area * line / (1 + (1j * air["density"] * e["inner"]) * omega * line)
            p = p + series * u
            u = u + shunt * p
            p = p + series * u
    return p / u


def main():
    request = json.load(sys.stdin)
    f = np.array(request["frequencies"])
    times = []
    z = input_impedance(request["chain"], f)
    for _ in range(request["runs"]):
        start = time.perf_counter()
        z = input_impedance(request["chain"], f)
        times.append(1000 * (time.perf_counter() - start))
    json.dump({"re": z.real.tolist(), "im": z.imag.tolist(), "milliseconds": times}, sys.stdout)


main()
