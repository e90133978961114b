"""Random states of seawater by an independent library, the TEOS-10 toolbox (package python3-gsw).

gsw_states.py SEED COUNT prints a table: practical salinity, temperature ITS-90, and at the pressure
of one atmosphere conductivity, salinity from it, absolute salinity, density, heat capacity and
enthalpy. A quarter of the states is of diluted seawater.
"""
import random
import sys

import gsw

CP0 = 3991.86795711963  # J/(kg K): conservative temperature is enthalpy over this, by definition


def state(chance):
    diluted = chance.random() < 0.25
    salinity = chance.uniform(0.05, 2) if diluted else chance.uniform(2, 42)
    celsius = chance.uniform(-2, 40)
    conductivity = gsw.C_from_SP(salinity, celsius, 0)
    grams = gsw.SR_from_SP(salinity)
    return (
        salinity,
        celsius,
        conductivity,
        gsw.SP_from_C(conductivity, celsius, 0),
        grams,
        gsw.rho_t_exact(grams, celsius, 0),
        gsw.cp_t_exact(grams, celsius, 0),
        CP0 * gsw.CT_from_t(grams, celsius, 0),
    )


def main():
    seed, count = int(sys.argv[1]), int(sys.argv[2])
    chance = random.Random(seed)
    for _ in range(count):
        print(",".join(repr(float(value)) for value in state(chance)))


main()
