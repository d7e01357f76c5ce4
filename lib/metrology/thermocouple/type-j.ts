import type { ReferenceFunction } from "./reference-function";

/**
 * Type J. NIST Standard Reference Database 60 (ITS-90 Thermocouple Database), the functions of NIST
 * Monograph 175 (1993), identical to IEC 60584-1:2013 and ASTM E230: E/mV = Σ cᵢ·tⁱ, t in °C,
 * reference junction at 0 °C.
 * The pieces differ by 7.5e-5 µV at 760 °C; an emf in that gap belongs to 760 °C.
 */
export const typeJ: ReferenceFunction = {
  letter: "J",
  isNoble: false,
  isOxidisingInAir: false,
  source: "NIST SRD 60 / NIST Monograph 175; IEC 60584-1:2013",
  iecRange: { fromCelsius: -210, toCelsius: 1200 },
  pieces: [
    {
      fromCelsius: -210,
      toCelsius: 760,
      millivolt: [
        0, 5.0381187815e-2, 3.047583693e-5, -8.568106572e-8, 1.3228195295e-10, -1.7052958337e-13,
        2.0948090697e-16, -1.2538395336e-19, 1.5631725697e-23,
      ],
    },
    {
      fromCelsius: 760,
      toCelsius: 1200,
      millivolt: [
        2.9645625681e2, -1.4976127786, 3.1787103924e-3, -3.1847686701e-6, 1.5720819004e-9, -3.0691369056e-13,
      ],
    },
  ],
  // Published inverse polynomials, t/°C = Σ dᵢ·(E/mV)ⁱ: off by up to the stated error, so only start values.
  startValues: [
    // -210…0 °C; error -0.05 to 0.03 °C
    {
      fromMillivolt: -8.095,
      toMillivolt: 0,
      celsius: [
        0, 1.9528268e1, -1.2286185, -1.0752178, -5.9086933e-1, -1.7256713e-1, -2.8131513e-2, -2.396337e-3,
        -8.3823321e-5,
      ],
    },
    // 0…760 °C; error -0.04 to 0.04 °C
    {
      fromMillivolt: 0,
      toMillivolt: 42.919,
      celsius: [
        0, 1.978425e1, -2.001204e-1, 1.036969e-2, -2.549687e-4, 3.585153e-6, -5.344285e-8, 5.09989e-10,
      ],
    },
    // 760…1200 °C; error -0.04 to 0.03 °C
    {
      fromMillivolt: 42.919,
      toMillivolt: 69.553,
      celsius: [-3.11358187e3, 3.00543684e2, -9.9477323, 1.7027663e-1, -1.43033468e-3, 4.73886084e-6],
    },
  ],
};
