import type { CharacterisationPlan } from "@/lib/domain/furnace/characterisation-plan";
import type { SurveyedFurnace } from "@/lib/station/simulation/simulate-survey";

/** An invented plan, and the furnace it is measured in. */
export const plan: CharacterisationPlan = {
  temperatures: [400, 1000],
  fromMillimetre: 370,
  toMillimetre: 430,
  windowMinutes: 15,
  probe: "REF-02",
  probeType: "S",
  monitor: "REF-01",
  monitorType: "S",
  probeInhomogeneityPercent: 0.02,
  meterMicrovolt: 0.2,
};

export const furnaceAt = (celsius: number): SurveyedFurnace => ({
  celsius,
  bestMillimetre: 400,
  fallCelsius: 0.4,
  places: { centre: 0, "1": 0.2, "2": -0.15, "3": 0.05 },
  driftCelsius: 0.2,
  noiseMicrovolt: 0.1,
});
