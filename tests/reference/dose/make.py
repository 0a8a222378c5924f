#!/usr/bin/python3
"""Special functions, quadrature and whole puffs of the dose model, from SciPy and NumPy.

  make.py            writes values.txt beside this file
  make.py --check    makes it again and compares (to 1e-11: another SciPy may round otherwise)

Lines:  word, arguments, value(s)
  erf x v                    scipy.special.erf
  power x p v                numpy
  below d mmad gsd v         scipy.stats.lognorm.cdf
  hatch cmd gsd q v          mass median etc. by scipy.integrate.quad of the weighted distribution
  overlap x v                overlap of two circles, 1 - that, by scipy.integrate.quad
  mean mmad gsd q v          mean of the mouth-throat curve S89 over the aerosol, by quad over +-4 sigma
  puff <10 inputs> <5 shares>    the slice model, written again here from facts/aerosol.md 3, 4 and 9
                             with NumPy arrays (41 sizes x 12 slices, constant flow)
  fine <10 inputs> lung      the same with scipy.integrate: Gauss over 200 sizes and 96 slices, to see
                             what the 41 x 12 grid costs
"""
import os
import sys

import numpy as np
from scipy import integrate, special, stats

HERE = os.path.dirname(os.path.abspath(__file__))
DEVICES = {  # kept | most, scale, fine scale, resistance; coarse or fine share; size; plume: aerosol.md 9
    0: dict(kept=.10, fine=1 - .686, mmad=2.8, gsd=1.8, plume=.20, suspension=True),
    1: dict(kept=.0, fine=1 - .28, mmad=1.6, gsd=1.6, plume=.25, suspension=False),
    3: dict(kept=.219, fine=1 - .368, mmad=3.0, gsd=1.8, plume=1.5, suspension=False),
    4: dict(R=.035, most=.80, PE=.5, fine=.709, PF=3.5, mmad=2.5, gsd=1.8, blister=False),
    5: dict(R=.026, most=.90, PE=.25, fine=.258, PF=.35, mmad=3.2, gsd=1.8, blister=True),
    6: dict(R=.027, most=.92, PE=.25, fine=.336, PF=.35, mmad=3.2, gsd=1.8, blister=True),
    7: dict(R=.051, most=.451, PE=.4, fine=.747, PF=2.4, mmad=3.0, gsd=1.8, blister=False),
}
FRC = 3301.


def s89(d, q):
    return 1 - 1 / (3.5e-8 * (d ** 2 * q) ** 1.7 + 1)


def diffusion(d):
    slip = 1 + 2 * .0712 / d * (1.246 + .42 * np.exp(-.87 * d / (2 * .0712)))
    return 1.380649e-23 * 310.15 * slip / (3 * np.pi * 1.9e-5 * d * 1e-6) * 1e4


def settling_cm_s(d):
    slip = 1 + .066 / d * (2.34 + 1.05 * np.exp(-.39 * d / .066))
    return 100 * 1000 * (d * 1e-6) ** 2 * 9.81 * slip / (18 * 1.81e-5)


def both(ae, th):
    return np.minimum(1, np.hypot(ae, th))


def bronchi(d, q, t, a):
    psi = 1 + 100 * np.exp(-np.log10(100 + 10 / d ** .9) ** 2)
    return both(-np.expm1(-a * (d ** 2 * q) ** 1.152), -np.expm1(-22.02 * psi * (diffusion(d) * t) ** .6391))


def bronchioles(d, t):
    return both(-np.expm1(-.1147 * ((.056 + t ** 1.5) * d ** (t ** -.25)) ** 1.173),
                -np.expm1(-90.2 * (diffusion(d) * t) ** .5676))


def alveoli(d, t):
    return both(-np.expm1(-.146 * (d ** 2 * t) ** .6495), -np.expm1(-273 * (diffusion(d) * t) ** .6101))


def tract(d, q, to_come, volume, hold, q_out):
    """Shares (mouth, airways, deep, out) of a slice; d an array."""
    mouth = s89(d, q)
    left = 1 - mouth
    airways, deep = np.zeros_like(d), np.zeros_like(d)
    beyond = to_come - 50
    if beyond <= 0:
        return mouth, airways, deep, left
    k, swell = 1 + volume / FRC, 1 + .5 * volume / FRC
    big, small = 49 * k, 47 * k
    f = min(1, beyond / big)

    def take(share):
        nonlocal left
        taken = left * share
        left = left - taken
        return taken

    airways = airways + take(1 - (1 - bronchi(d, q, 49 / q * swell, 4.08e-6)) ** f)
    if beyond < big:
        airways += take(-np.expm1(-settling_cm_s(d) * hold / .6))
    else:
        g = min(1, (beyond - big) / small)
        airways += take(1 - (1 - bronchioles(d, 47 / q * swell)) ** g)
        rest = beyond - big - small
        if rest < 0:
            airways += take(-np.expm1(-settling_cm_s(d) * hold / .08))
        else:
            deep += take(alveoli(d, rest / q + hold + rest / q_out))
        airways += take(1 - (1 - bronchioles(d, 47 / q_out * swell)) ** g)
    airways += take(1 - (1 - bronchi(d, q_out, 49 / q_out * swell, 2.04e-6)) ** f)
    mouth = mouth + take(s89(d, q_out))
    return mouth, airways, deep, left


def grid():
    z = -4 + 8 * (np.arange(41) + .5) / 41
    w = np.exp(-z * z / 2)
    return z, w / w.sum(), (np.arange(12) + .5) / 12, np.full(12, 1 / 12)


def fine_grid():
    z, w = np.polynomial.legendre.leggauss(200)
    w = w * np.exp(-8 * z * z)
    return 4 * z, w / w.sum(), (np.arange(96) + .5) / 96, np.full(96, 1 / 96)


def puff(device, flow, volume, press, hold, out_flow, vents, shaken, blown, tilted, points):
    p = DEVICES[device]
    fine = p['fine']
    if 'kept' in p:
        released, start, plume = 1 - p['kept'], press, p['plume']
        if p['suspension'] and not shaken:
            released, fine = released * .745, fine * .643 / .745
    else:
        flow = flow * (1 - vents)
        pull = (p['R'] * flow) ** 2
        released, start, plume = -p['most'] * np.expm1(-pull / p['PE']), .05, .30
        fine = -fine * np.expm1(-pull / p['PF'])
        released *= .8 if tilted and p['blister'] else 1
        if blown:
            released, fine = released * .8, fine * .7
    q, q_out = flow / .06, out_flow / .06
    z, w, s, ws = points
    d = p['mmad'] * p['gsd'] ** z
    got = np.array([1 - released, released * (1 - fine), 0, 0, 0])
    for part, weight in zip(s, ws):
        t = start + part * plume
        share = released * fine * weight
        if t > volume / q:
            got[4] += share
            continue
        alive = np.exp(min(0, t))
        got[1] += share * (1 - alive)
        landed = tract(d, q, volume - q * max(0, t), volume, hold, q_out)
        got[1:] += share * alive * np.array([(w * part_of).sum() for part_of in landed])
    assert abs(got.sum() - 1) < 1e-12
    return got


def techniques():
    rng = np.random.default_rng(20261125)
    for n in range(70):
        device = list(DEVICES)[n % 7]
        yield (device, rng.uniform(8, 120), rng.uniform(250, 4500), rng.uniform(-2, 6), rng.uniform(0, 15),
               rng.uniform(10, 60), rng.uniform(0, .9) * (n % 3 == 0), int(n % 4 != 0), int(n % 5 == 0),
               int(n % 6 == 1))


def special_lines():
    for x in np.concatenate([np.linspace(-7, 7, 57), [1e-12, 1e-3, .4769362762044699]]):
        yield ('erf', x), special.erf(x)
    for x, p in ((.01, 1.7), (3, .6495), (1e-7, .6391), (12345.6, 1.152), (.0637, -.25), (2e5, 1.7)):
        yield ('power', x, p), np.power(x, p)
    for d, mmad, gsd in ((5, 2.5, 1.8), (5, 3.5, 2.0), (5, 1.1, 2.0), (3, 2.5, 1.8), (1, 1.1, 2.0), (.2, 3.2, 1.5)):
        yield ('below', d, mmad, gsd), stats.lognorm.cdf(d, np.log(gsd), scale=mmad)
    for cmd, gsd, q in ((1, 2, 3), (1, 2, 2), (.5, 1.8, 3), (.7, 1.6, 1.5)):
        sigma = np.log(gsd)
        if q == 1.5:  # diameter of mean volume
            third = integrate.quad(lambda z: np.exp(3 * sigma * z) * stats.norm.pdf(z), -20, 20)[0]
            yield ('hatch', cmd, gsd, q), cmd * third ** (1 / 3)
        else:  # the median of the distribution weighted by d^q: exp of its mean in ln d
            top = integrate.quad(lambda z: z * np.exp(q * sigma * z) * stats.norm.pdf(z), -20, 20)[0]
            bottom = integrate.quad(lambda z: np.exp(q * sigma * z) * stats.norm.pdf(z), -20, 20)[0]
            yield ('hatch', cmd, gsd, q), cmd * np.exp(sigma * top / bottom)
    for x in (0.05, .2, .5, .9, .999):  # circles of width 1, one displaced by x
        half = integrate.quad(lambda u: 2 * np.sqrt(.25 - u * u), x / 2, .5, epsabs=1e-13)[0]
        yield ('overlap', x), 1 - 2 * half / (np.pi / 4)
    for mmad, gsd, q in ((2.8, 1.8, 500), (1.6, 1.6, 500), (3.2, 1.8, 1000)):
        top = integrate.quad(lambda z: s89(mmad * gsd ** z, q) * np.exp(-z * z / 2), -4, 4)[0]
        bottom = integrate.quad(lambda z: np.exp(-z * z / 2), -4, 4)[0]
        yield ('mean', mmad, gsd, q), top / bottom


def make():
    lines = list(special_lines())
    for given in techniques():
        lines.append((('puff', *given), puff(*given, grid())))
        lines.append((('fine', *given), puff(*given, fine_grid())[2:4].sum()))
    out = []
    for given, value in lines:
        numbers = [float(x).__repr__() for x in (*given[1:], *np.atleast_1d(value))]
        out.append(' '.join([given[0], *numbers]))
    return '\n'.join(out) + '\n'


def same(a, b):
    rows = list(zip(a.split('\n'), b.split('\n')))
    if a.count('\n') != b.count('\n'):
        return False
    for one, other in rows:
        x, y = one.split(), other.split()
        if x[:1] != y[:1] or not np.allclose([float(v) for v in x[1:]], [float(v) for v in y[1:]],
                                             rtol=1e-11, atol=1e-13):
            return False
    return True


path = os.path.join(HERE, 'values.txt')
if sys.argv[1:] == ['--check']:
    good = same(open(path).read(), make())
    print('as it should be' if good else 'values.txt is not what make.py makes')
    sys.exit(0 if good else 1)
with open(path, 'w') as file:
    file.write(make())
