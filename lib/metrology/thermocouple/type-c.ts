import type { ReferenceFunction } from "./reference-function";

/**
 * Type C, W5Re/W26Re (tungsten-rhenium). The function of ASTM E230 and IEC 60584-1:2013, from 0 °C to 2315
 * °C:
 * E/mV = Σ cᵢ·tⁱ, t in °C, reference junction at 0 °C. The coefficients were taken from public copies, not
 * from the standards themselves; that the two pieces meet at 630.615 °C in value (11.206529 mV) and in slope
 * (19.5008 µV/°C) supports them. A join at 783 °C that circulates is wrong: there they differ by 49 µV.
 * No inverse is published here; tungsten oxidises in air.
 */
export const typeC: ReferenceFunction = {
  letter: "C",
  isNoble: false,
  isOxidisingInAir: true,
  source: "ASTM E230; IEC 60584-1:2013",
  iecRange: { fromCelsius: 0, toCelsius: 2315 },
  pieces: [
    {
      fromCelsius: 0,
      toCelsius: 630.615,
      millivolt: [
        0, 1.3406032e-2, 1.1924992e-5, -7.9806354e-9, -5.0787515e-12, 1.3164197e-14, -7.9197332e-18,
      ],
    },
    {
      fromCelsius: 630.615,
      toCelsius: 2315,
      millivolt: [
        4.0528823e-1, 1.1509355e-2, 1.5696453e-5, -1.3704412e-8, 5.2290873e-12, -9.2082758e-16, 4.5245112e-20,
      ],
    },
  ],
  startValues: [],
};
