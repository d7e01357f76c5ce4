import type { ReferenceFunction } from "./reference-function";

/**
 * Type T. NIST Standard Reference Database 60 (ITS-90 Thermocouple Database), the functions of NIST
 * Monograph 175 (1993), identical to IEC 60584-1:2013 and ASTM E230: E/mV = Σ cᵢ·tⁱ, t in °C,
 * reference junction at 0 °C.
 * Below about -200 °C the terms of the polynomial grow to almost 9 V and cancel: Horner's scheme
 * keeps about 1e-8 µV there, too little below -250 °C, where the Seebeck coefficient falls to 1 µV/°C.
 */
export const typeT: ReferenceFunction = {
  letter: "T",
  isNoble: false,
  isOxidisingInAir: false,
  source: "NIST SRD 60 / NIST Monograph 175; IEC 60584-1:2013",
  iecRange: { fromCelsius: -270, toCelsius: 400 },
  pieces: [
    {
      fromCelsius: -270,
      toCelsius: 0,
      compensatedBelowCelsius: -250,
      millivolt: [
        0, 3.8748106364e-2, 4.4194434347e-5, 1.1844323105e-7, 2.0032973554e-8, 9.0138019559e-10,
        2.2651156593e-11, 3.6071154205e-13, 3.8493939883e-15, 2.8213521925e-17, 1.4251594779e-19,
        4.8768662286e-22, 1.079553927e-24, 1.3945027062e-27, 7.9795153927e-31,
      ],
    },
    {
      fromCelsius: 0,
      toCelsius: 400,
      millivolt: [
        0, 3.8748106364e-2, 3.329222788e-5, 2.0618243404e-7, -2.1882256846e-9, 1.0996880928e-11,
        -3.0815758772e-14, 4.547913529e-17, -2.7512901673e-20,
      ],
    },
  ],
  // Published inverse polynomials, t/°C = Σ dᵢ·(E/mV)ⁱ: off by up to the stated error, so only start values.
  startValues: [
    // -200…0 °C; error -0.02 to 0.04 °C
    {
      fromMillivolt: -5.603,
      toMillivolt: 0,
      celsius: [
        0, 2.5949192e1, -2.1316967e-1, 7.9018692e-1, 4.2527777e-1, 1.3304473e-1, 2.0241446e-2, 1.2668171e-3,
      ],
    },
    // 0…400 °C; error -0.03 to 0.03 °C
    {
      fromMillivolt: 0,
      toMillivolt: 20.872,
      celsius: [0, 2.5928e1, -7.602961e-1, 4.637791e-2, -2.165394e-3, 6.048144e-5, -7.293422e-7],
    },
  ],
};
