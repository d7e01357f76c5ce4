import type { ReferenceFunction } from "./reference-function";

/**
 * Platinum against palladium, both pure. ASTM E1751-00, table 17, 0 °C to 1500 °C (the same function as IEC
 * 62460:2008, from memory): E/µV = Σ cᵢ·tⁱ, t in °C, reference junction at 0 °C. Published in µV; here in mV
 * as for the others.
 */
export const platinumPalladium: ReferenceFunction = {
  letter: "Pt/Pd",
  isNoble: true,
  isOxidisingInAir: false,
  source: "ASTM E1751-00, table 17; IEC 62460:2008",
  iecRange: null,
  pieces: [
    {
      fromCelsius: 0,
      toCelsius: 660.323,
      millivolt: [
        0, 5.296958e-3, 4.610494e-6, -9.602271e-9, 2.992243e-11, -2.012523e-14, -1.268514e-17, 2.257823e-20,
        -8.510068e-24,
      ],
    },
    {
      fromCelsius: 660.323,
      toCelsius: 1500,
      millivolt: [
        -4.977137e-1, 1.0182545e-2, -1.5793515e-5, 3.63617e-8, -2.6901509e-11, 9.5627366e-15, -1.3570737e-18,
      ],
    },
  ],
  startValues: [],
};
