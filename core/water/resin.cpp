#include "core/water/resin.hpp"

#include <algorithm>

#include "core/water/dissolved_solids.hpp"

namespace tidewright::water {
namespace {

constexpr Range gases{"carbon dioxide", "mg/L", 0, 500};
constexpr Range silicas{"silica", "mg/L", 0, 200};
constexpr Range resins{"resin", "L", 0.01, 10000};
constexpr Range cation_capacities{"cation capacity", "eq/L", 0.01, 3};
constexpr Range anion_capacities{"anion capacity", "eq/L", 0.01, 3};
constexpr Range utilisations{"utilisation", "", 0.01, 1};
constexpr Range loads{"load", "meq/L", 1e-5, 1000};
constexpr Range fresh{"capacity", "eq", 0, 1e5};
constexpr Range used{"used capacity", "eq", 0, 1e5};
constexpr Range kilograins{"capacity", "kgr/ft3", 0, 100};

constexpr double carbon_dioxide_mg_per_meq = 44.01;
constexpr double silica_mg_per_meq = 60.08;

// 50.0435 g of calcium carbonate per equivalent, 28.316847 L per cubic foot, 64.79891 mg per grain.
constexpr double kilograins_per_equivalent = 50.0435 * 28.316847 / 64.79891;

Litres of(double equivalents, MilliequivalentsPerLitre load) {
  return {1000 * equivalents / load.value};
}

}  // namespace

Answer<ResinLoad> resin_load(MicrosiemensPerCm permeate_at_25, MilligramsPerLitre carbon_dioxide,
                             MilligramsPerLitre silica) {
  const Answer<MilliequivalentsPerLitre> ions = equivalents(permeate_at_25, IonMix::natural_water);
  if (!ions) return *ions.outside();
  if (const auto bad =
          first(outside(gases, carbon_dioxide.value), outside(silicas, silica.value))) {
    return *bad;
  }
  return ResinLoad{*ions,
                   {ions->value + carbon_dioxide.value / carbon_dioxide_mg_per_meq +
                    silica.value / silica_mg_per_meq}};
}

Answer<ResinRun> resin_run(const ResinBed& bed, const ResinLoad& load) {
  if (const auto bad = first(
          outside(resins, bed.resin.value), outside(cation_capacities, bed.cation_eq_per_litre),
          outside(anion_capacities, bed.anion_eq_per_litre), outside(utilisations, bed.utilisation),
          outside(loads, load.cation.value), outside(loads, load.anion.value))) {
    return *bad;
  }
  const double usable_litres = bed.resin.value * bed.utilisation;
  const Litres cation = of(usable_litres * bed.cation_eq_per_litre, load.cation);
  const Litres anion = of(usable_litres * bed.anion_eq_per_litre, load.anion);
  return ResinRun{cation, anion, std::min(cation, anion),
                  cation < anion ? ResinSide::cation : ResinSide::anion};
}

Answer<Litres> litres_left(double fresh_eq, double used_eq, MilliequivalentsPerLitre load) {
  if (const auto bad =
          first(outside(fresh, fresh_eq), outside(used, used_eq), outside(loads, load.value))) {
    return *bad;
  }
  return of(std::max(0.0, fresh_eq - used_eq), load);
}

Answer<double> equivalents_per_litre(double kilograins_per_cubic_foot) {
  if (const auto bad = outside(kilograins, kilograins_per_cubic_foot)) return *bad;
  return kilograins_per_cubic_foot / kilograins_per_equivalent;
}

}  // namespace tidewright::water
