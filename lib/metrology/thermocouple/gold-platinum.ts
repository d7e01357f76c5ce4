import type { ReferenceFunction } from "./reference-function";

/**
 * Gold against platinum, both pure. ASTM E1751-00, table 15, 0 °C to 1000 °C (the same function as IEC
 * 62460:2008,
 * from memory): E/µV = Σ cᵢ·tⁱ, t in °C, reference junction at 0 °C. Published in µV; here in mV as for the
 * others.
 */
export const goldPlatinum: ReferenceFunction = {
  letter: "Au/Pt",
  isNoble: true,
  isOxidisingInAir: false,
  source: "ASTM E1751-00, table 15; IEC 62460:2008",
  iecRange: null,
  pieces: [
    {
      fromCelsius: 0,
      toCelsius: 1000,
      millivolt: [
        0, 6.03619861e-3, 1.93672974e-5, -2.22998614e-8, 3.28711859e-11, -4.24206193e-14, 4.56927038e-17,
        -3.39430259e-20, 1.4298159e-23, -2.51672787e-27,
      ],
    },
  ],
  startValues: [],
};
