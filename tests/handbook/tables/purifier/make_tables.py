"""Writes the tables that stand on independent libraries. Debian: python3-gsw, python3-scipy.

    python3 tests/handbook/tables/purifier/make_tables.py
"""

import pathlib

import gsw
import numpy as np
import scipy
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq
from scipy.stats import logistic

HERE = pathlib.Path(__file__).parent
SLICES = 400


def write(name, source, head, rows):
    lines = [f"# {line}" for line in source] + [head]
    lines += [",".join(c if isinstance(c, str) else f"{c:.8g}" for c in row) for row in rows]
    (HERE / name).write_text("\n".join(lines) + "\n")


def osmotic_pressure_bar(solids_mg_l, celsius):
    salinity = brentq(lambda s: s * gsw.rho_t_exact(s, celsius, 0) - solids_mg_l, 1e-6, 60)
    pure = gsw.chem_potential_water_t_exact(0, celsius, 0)
    decibars = brentq(
        lambda p: gsw.chem_potential_water_t_exact(salinity, celsius, p) - pure, 0, 1000)
    return decibars / 10


def feed_side(rejection, recovery):
    if recovery == 0:
        return 1.0
    return np.exp(solve_ivp(lambda y, _: [rejection / (1 - y)], (0, recovery), [0],
                            rtol=1e-11, atol=1e-12).y[0, -1])


def held_litres(half, spread, litres):
    return quad(lambda v: 1 - logistic.cdf(v, loc=half, scale=spread), 0, litres,
                epsabs=1e-9, epsrel=1e-12, limit=400)[0]


def concentrations(loading, sharpness, entering):
    """In the middle of each slice, and behind the last."""
    depth = np.cumsum(sharpness * (1 - loading) / SLICES)
    middle = depth - sharpness * (1 - loading) / SLICES / 2
    return entering * np.exp(-middle), entering * np.exp(-depth[-1])


def two_beds(sharpness, state):
    lead, lag = state[:SLICES], state[SLICES:]
    in_lead, behind_lead = concentrations(lead, sharpness, 1.0)
    in_lag, behind_lag = concentrations(lag, sharpness, behind_lead)
    rates = sharpness * np.concatenate([in_lead * (1 - lead), in_lag * (1 - lag)])
    return rates, behind_lead, behind_lag


def run(sharpness, lead, when, fraction):
    """Litres, in parts of one bed's half, and the loading of both beds. The lag begins fresh."""

    def reached(_, state):
        return two_beds(sharpness, state)[1 if when == "lead" else 2] - fraction

    reached.terminal = True
    done = solve_ivp(lambda _, state: two_beds(sharpness, state)[0], (0, 4),
                     np.concatenate([lead, np.zeros(SLICES)]), events=reached,
                     rtol=1e-7, atol=1e-9)
    return done.t[-1], done.y[:, -1]


def rotation(sharpness, when, fraction):
    """Turns until the runs repeat."""
    lead, before = np.zeros(SLICES), None
    while True:
        litres, state = run(sharpness, lead, when, fraction)
        if before is not None and abs(litres - before) < 1e-6:
            _, behind_lead, behind_lag = two_beds(sharpness, state)
            return litres, state[:SLICES].mean(), behind_lead, behind_lag
        lead, before = state[SLICES:], litres


write("02_osmotic_teos10.csv",
      ["Osmotic pressure of seawater salts, TEOS-10: the pressure at which water in the solution",
       "has the chemical potential of pure water without it.",
       f"Made with python3-gsw {gsw.__version__} and scipy.optimize.brentq by make_tables.py."],
      "tds_mgL,T_C,pi_bar",
      [(solids, celsius, osmotic_pressure_bar(solids, celsius))
       for solids in (100, 250, 500, 1000, 2000, 5000, 10000, 20000, 35000, 40000)
       for celsius in (5, 15, 25, 35)])

# Along the membrane the feed side follows d ln c / dy = r / (1 - y).
write("01_local_rejection_scipy.csv",
      ["A membrane of constant local rejection, its feed side integrated along the recovery.",
       f"Made with python3-scipy {scipy.__version__}, solve_ivp and quad, by make_tables.py.",
       "mean_factor: mean of 1 / (1 - y), a membrane that lets nothing through."],
      "local_rejection,recovery,Cc_over_Cf,Cp_over_Cf,apparent_rejection,mean_factor",
      [(rejection, recovery, feed_side(rejection, recovery), passed, 1 - passed,
        quad(lambda y: 1 / (1 - y), 0, recovery)[0] / recovery)
       for rejection in (0.9, 0.96, 0.985) for recovery in (0.1, 0.3, 0.6, 0.8)
       for passed in [quad(lambda y: (1 - rejection) * feed_side(rejection, y), 0, recovery)[0]
                      / recovery]])

# Formula and tracer diffusion coefficients of USGS PHREEQC version 3, database/phreeqc.dat.
PHREEQC = "database/phreeqc.dat of PHREEQC version 3, U.S. Geological Survey"

write("03_water_ionisation_phreeqc.csv",
      [f"pKw by the analytic expression in {PHREEQC}."],
      "T_C,pKw",
      [(celsius, -(293.29227 + 0.1360833 * kelvin - 10576.913 / kelvin
                   - 123.73158 * np.log10(kelvin) - 6.996455e-5 * kelvin ** 2))
       for celsius in range(0, 55, 5) for kelvin in [celsius + 273.15]])

DIFFUSION = {"hydrogen": 9.31e-9, "hydroxide": 5.27e-9, "bicarbonate": 1.18e-9,
             "sodium_chloride": 1.33e-9 + 2.03e-9}
write("03_ionic_conductance_phreeqc.csv",
      ["Limiting conductances at 25 degrees, F2 D / (R T), from the tracer diffusion coefficients",
       f"in {PHREEQC}."],
      "T_C," + ",".join(DIFFUSION),
      [(25, *(1e4 * 96485.33 ** 2 * d / (8.314463 * 298.15) for d in DIFFUSION.values()))])

write("04_logistic_scipy.csv",
      ["The breakthrough curve as a logistic distribution: scipy.stats.logistic.ppf, and for what",
       "the bed has held scipy.integrate.quad of 1 - cdf.",
       f"Made with python3-scipy {scipy.__version__} by make_tables.py."],
      "V50_L,s_L,C_over_C0,V_L,held_L",
      [(half, spread, fraction, litres, held_litres(half, spread, litres))
       for half, spread in ((5000, 500), (3000, 200), (1200, 120), (8000, 2000))
       for fraction in (0.001, 0.01, 0.05, 0.2, 0.5, 0.8, 0.99)
       if (litres := logistic.ppf(fraction, loc=half, scale=spread)) > 0])

FRESH = np.zeros(SLICES)

write("04_fresh_beds_scipy.csv",
      ["One bed and two beds, fresh, by numerical integration as 04_leadlag_scipy.csv."],
      "K,fraction,one,two_per_canister",
      [(sharpness, fraction, run(sharpness, FRESH, "lead", fraction)[0],
        run(sharpness, FRESH, "lag", fraction)[0] / 2)
       for sharpness in (5.0, 10.0, 20.0) for fraction in (0.01, 0.05, 0.3)])

write("04_leadlag_scipy.csv",
      [f"Lead and lag by numerical integration of dq/dt = K c (1 - q) in {SLICES} slices a bed.",
       f"Made with python3-scipy {scipy.__version__}, solve_ivp, by make_tables.py."],
      "K,when,fraction,run_per_canister,utilisation,behind_lead,behind_lag",
      [(sharpness, when, fraction, *rotation(sharpness, when, fraction))
       for sharpness in (5.0, 10.0, 20.0)
       for when, fraction in (("lead", 0.5), ("lead", 0.3), ("lag", 0.01), ("lag", 0.05))])
