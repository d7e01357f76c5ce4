import type { ReferenceFunction } from "./reference-function";

/**
 * Type R. NIST Standard Reference Database 60 (ITS-90 Thermocouple Database), the functions of NIST
 * Monograph 175 (1993), identical to IEC 60584-1:2013 and ASTM E230: E/mV = Σ cᵢ·tⁱ, t in °C,
 * reference junction at 0 °C.
 */
export const typeR: ReferenceFunction = {
  letter: "R",
  isNoble: true,
  isOxidisingInAir: false,
  source: "NIST SRD 60 / NIST Monograph 175; IEC 60584-1:2013",
  iecRange: { fromCelsius: -50, toCelsius: 1768.1 },
  pieces: [
    {
      fromCelsius: -50,
      toCelsius: 1064.18,
      millivolt: [
        0, 5.28961729765e-3, 1.39166589782e-5, -2.38855693017e-8, 3.56916001063e-11, -4.62347666298e-14,
        5.00777441034e-17, -3.73105886191e-20, 1.57716482367e-23, -2.81038625251e-27,
      ],
    },
    {
      fromCelsius: 1064.18,
      toCelsius: 1664.5,
      millivolt: [
        2.95157925316, -2.52061251332e-3, 1.59564501865e-5, -7.64085947576e-9, 2.05305291024e-12,
        -2.93359668173e-16,
      ],
    },
    {
      fromCelsius: 1664.5,
      toCelsius: 1768.1,
      millivolt: [
        1.52232118209e2, -2.68819888545e-1, 1.71280280471e-4, -3.45895706453e-8, -9.34633971046e-15,
      ],
    },
  ],
  // Published inverse polynomials, t/°C = Σ dᵢ·(E/mV)ⁱ: off by up to the stated error, so only start values.
  startValues: [
    // -50…250 °C; error -0.02 to 0.02 °C
    {
      fromMillivolt: -0.226,
      toMillivolt: 1.923,
      celsius: [
        0, 1.889138e2, -9.383529e1, 1.3068619e2, -2.270358e2, 3.5145659e2, -3.89539e2, 2.8239471e2,
        -1.2607281e2, 3.1353611e1, -3.3187769,
      ],
    },
    // 250…1200 °C; error -0.005 to 0.005 °C
    {
      fromMillivolt: 1.923,
      toMillivolt: 13.228,
      celsius: [
        1.334584505e1, 1.472644573e2, -1.844024844e1, 4.031129726, -6.24942836e-1, 6.468412046e-2,
        -4.458750426e-3, 1.994710149e-4, -5.31340179e-6, 6.481976217e-8,
      ],
    },
    // 1064…1664.5 °C; error -0.0005 to 0.001 °C
    {
      fromMillivolt: 11.361,
      toMillivolt: 19.739,
      celsius: [-8.199599416e1, 1.553962042e2, -8.342197663, 4.279433549e-1, -1.19157791e-2, 1.492290091e-4],
    },
    // 1664.5…1768.1 °C; error -0.001 to 0.002 °C
    {
      fromMillivolt: 19.739,
      toMillivolt: 21.103,
      celsius: [3.406177836e4, -7.023729171e3, 5.582903813e2, -1.952394635e1, 2.560740231e-1],
    },
  ],
};
