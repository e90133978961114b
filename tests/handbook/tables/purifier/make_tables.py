"""Writes the tables that stand on independent libraries. Debian: python3-gsw, python3-iapws,
python3-scipy.

    python3 tests/handbook/tables/purifier/make_tables.py
"""

import pathlib

import gsw
import iapws
import numpy as np
import scipy
from iapws._iapws import _Kw
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

# Water by IAPWS-95, its viscosity by IAPWS 2008, as PHREEQC has them. Below 0.01 degrees it is ice.
def water(celsius):
    return iapws.IAPWS95(T=max(celsius, 0.01) + 273.15, P=0.101325)


TEMPERATURES = range(0, 55, 5)

# Formulas and coefficients of USGS PHREEQC version 3: database/phreeqc.dat (repository
# usgs-coupled/phreeqcrm) and, for the conductivity, the sum in its function calc_SC.
PHREEQC = "PHREEQC version 3, U.S. Geological Survey"
# Tracer diffusion at 25 degrees, m2/s, and the coefficient of its temperature, K.
DIFFUSION = {"hydrogen": (9.31e-9, 838), "hydroxide": (5.27e-9, 478),
             "bicarbonate": (1.18e-9, -250), "sodium": (1.33e-9, 75), "chloride": (2.033e-9, 216)}


def ionisation(celsius):
    kelvin = celsius + 273.15
    return -(293.29227 + 0.1360833 * kelvin - 10576.913 / kelvin - 123.73158 * np.log10(kelvin)
             - 6.996455e-5 * kelvin ** 2)


def conductance(ion, celsius):
    diffusion, coefficient = DIFFUSION[ion]
    warmth = np.exp(coefficient / (celsius + 273.15) - coefficient / 298.15)
    thinner = water(25).mu / water(celsius).mu
    return 1e4 * 96485.33 ** 2 * diffusion * warmth * thinner / (8.314463 * 298.15)


def sodium_chloride(celsius):
    return conductance("sodium", celsius) + conductance("chloride", celsius)


def conductivity(sodium_chloride_ug_l, celsius):
    """Of water with a trace of salt, uS/cm."""
    ions = water(celsius).rho * 10 ** (-ionisation(celsius) / 2)
    own = ions * (conductance("hydrogen", celsius) + conductance("hydroxide", celsius))
    return own + sodium_chloride_ug_l / 58443 * sodium_chloride(celsius)


write("03_water_ionisation_phreeqc.csv",
      [f"pKw by the analytic expression in database/phreeqc.dat of {PHREEQC}."],
      "T_C,pKw", [(celsius, ionisation(celsius)) for celsius in TEMPERATURES])

write("03_water_ionisation_iapws.csv",
      ["pKw by IAPWS R11-07 (Bandura & Lvov), density by IAPWS-95.",
       f"Made with python3-iapws {iapws.__version__} by make_tables.py."],
      "T_C,pKw",
      [(celsius, _Kw(water(celsius).rho, water(celsius).T)) for celsius in (*TEMPERATURES, 75)])

write("03_ionic_conductance_phreeqc.csv",
      [f"Limiting conductances as {PHREEQC}, makes its specific conductance:",
       "F2 D / (R 298.15), from the tracer diffusion coefficients in its database, with its rule",
       "for their temperature and the viscosity of water by IAPWS 2008 (python3-iapws)."],
      "T_C,hydrogen,hydroxide,bicarbonate,sodium_chloride",
      [(celsius, *(conductance(ion, celsius) for ion in ("hydrogen", "hydroxide", "bicarbonate")),
        sodium_chloride(celsius)) for celsius in TEMPERATURES])

write("03_trace_salt_phreeqc.csv",
      [f"Conductivity of water with a trace of sodium chloride as {PHREEQC},",
       "sums it: pKw and diffusion of its database, density and viscosity by IAPWS",
       f"(python3-iapws {iapws.__version__}).",
       "The last column is the same water's at 25 degrees."],
      "NaCl_ug_L,T_C,kappa_uS_cm,kappa25_uS_cm",
      [(salt, celsius, conductivity(salt, celsius), conductivity(salt, 25))
       for salt in (0, 10, 50, 200) for celsius in TEMPERATURES])


# Printed: K25 = (K - A) / B + 0.05498, A and B polynomials in t - 25.
def marsh_stokes(raw, celsius):
    t = celsius - 25
    own = 0.05498 + 2.9326e-3 * t + 6.0629e-5 * t ** 2 + 4.2690e-7 * t ** 3
    return (raw - own) / (1 + 0.02 * t) + 0.05498


write("03_compensation_marsh_stokes.csv",
      ["Conductivity at 25 degrees by the equation of Marsh and Stokes, as printed on the page",
       "\"Adjusting Water Resistivity Measurement at a Given Temperature to 25C\" of Medical",
       "Algorithms.",
       "Up to 40 degrees: above, its linear law for the salt leaves sodium chloride's by 3 %."],
      "raw_uS_cm,T_C,kappa25_uS_cm",
      [(raw, celsius, marsh_stokes(raw, celsius))
       for raw in (0.2, 0.5, 1, 2, 5) for celsius in range(10, 45, 5)])


# A membrane by solution and diffusion: at each place water passes in proportion to the pressure
# that is left and salt in proportion to its concentration. 0.75 bar in a g/L, about that of
# natural water.
def along(area, feed_flow, feed, pressure, drop, back, water_rate, salt_rate):
    """Permeate flow, its concentration, and recovery."""

    def change(place, state):
        flow, salt = state
        here = salt / flow
        left = pressure - drop * place / area - back - 0.00075 * here
        passed = water_rate * left
        return [-passed, -passed * salt_rate * here / (passed + salt_rate)]

    flow, salt = solve_ivp(change, (0, area), (feed_flow, feed_flow * feed), rtol=1e-10,
                           atol=1e-12).y[:, -1]
    made = feed_flow - flow
    return made, (feed_flow * feed - salt) / made, made / feed_flow


SOUND = (3.0, 0.2)  # L/(h m2 bar) and L/(h m2)
CONDITIONS = [  # feed flow L/h, feed mg/L, pressure, its drop and back pressure, bar
    (40, 300, 5, 0.2, 0.1), (40, 300, 3.5, 0.2, 0.1), (25, 300, 5, 0.1, 0.1),
    (40, 800, 5, 0.2, 0.1), (60, 300, 6.5, 0.4, 0.3), (30, 500, 4, 0.2, 0.2),
    (50, 150, 3, 0.3, 0)]


def membrane_rows():
    runs = [(c, along(1, *c, *SOUND)) for c in CONDITIONS]
    (_, first_feed, *first_bars), (first_flow, first_salt, first_recovery) = runs[0]
    for (_, feed, *bars), (flow, salt, recovery) in runs[1:]:
        yield (first_feed, *first_bars, first_recovery, first_flow, first_salt,
               feed, *bars, recovery, flow, salt)


write("02_normalisation_scipy.csv",
      ["One sound membrane under two sets of conditions at 25 degrees, by solution and diffusion:",
       f"integrated along it with python3-scipy {scipy.__version__}, solve_ivp, by make_tables.py.",
       "3 L/(h m2 bar) of water, 0.2 L/(h m2) of salt, 0.75 bar of osmotic pressure in a g/L."],
      "ref_Cf_mgL,ref_P_bar,ref_dP_bar,ref_Pperm_bar,ref_Y,ref_Q,ref_Cp_mgL,"
      "op_Cf_mgL,op_P_bar,op_dP_bar,op_Pperm_bar,op_Y,op_Q,op_Cp_mgL",
      list(membrane_rows()))

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
