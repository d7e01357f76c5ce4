import type { ReferenceFunction } from "./reference-function";

/**
 * Type E. NIST Standard Reference Database 60 (ITS-90 Thermocouple Database), the functions of NIST
 * Monograph 175 (1993), identical to IEC 60584-1:2013 and ASTM E230: E/mV = Σ cᵢ·tⁱ, t in °C,
 * reference junction at 0 °C.
 * Below about -200 °C the terms of the polynomial grow to more than 1 V and cancel: Horner's scheme
 * keeps about 1e-8 µV there.
 */
export const typeE: ReferenceFunction = {
  letter: "E",
  isNoble: false,
  isOxidisingInAir: false,
  source: "NIST SRD 60 / NIST Monograph 175; IEC 60584-1:2013",
  iecRange: { fromCelsius: -270, toCelsius: 1000 },
  pieces: [
    {
      fromCelsius: -270,
      toCelsius: 0,
      millivolt: [
        0, 5.8665508708e-2, 4.5410977124e-5, -7.7998048686e-7, -2.5800160843e-8, -5.9452583057e-10,
        -9.3214058667e-12, -1.0287605534e-13, -8.0370123621e-16, -4.3979497391e-18, -1.6414776355e-20,
        -3.9673619516e-23, -5.5827328721e-26, -3.4657842013e-29,
      ],
    },
    {
      fromCelsius: 0,
      toCelsius: 1000,
      millivolt: [
        0, 5.866550871e-2, 4.5032275582e-5, 2.8908407212e-8, -3.3056896652e-10, 6.502440327e-13,
        -1.9197495504e-16, -1.2536600497e-18, 2.1489217569e-21, -1.4388041782e-24, 3.5960899481e-28,
      ],
    },
  ],
  // Published inverse polynomials, t/°C = Σ dᵢ·(E/mV)ⁱ: off by up to the stated error, so only start values.
  startValues: [
    // -200…0 °C; error -0.01 to 0.03 °C
    {
      fromMillivolt: -8.825,
      toMillivolt: 0,
      celsius: [
        0, 1.6977288e1, -4.351497e-1, -1.5859697e-1, -9.2502871e-2, -2.6084314e-2, -4.1360199e-3,
        -3.403403e-4, -1.156489e-5,
      ],
    },
    // 0…1000 °C; error -0.02 to 0.02 °C
    {
      fromMillivolt: 0,
      toMillivolt: 76.373,
      celsius: [
        0, 1.7057035e1, -2.3301759e-1, 6.5435585e-3, -7.3562749e-5, -1.7896001e-6, 8.4036165e-8,
        -1.3735879e-9, 1.0629823e-11, -3.2447087e-14,
      ],
    },
  ],
};
