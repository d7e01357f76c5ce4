import type { ReferenceFunction } from "./reference-function";

/**
 * Type S. NIST Standard Reference Database 60 (ITS-90 Thermocouple Database), the functions of NIST
 * Monograph 175 (1993), identical to IEC 60584-1:2013 and ASTM E230: E/mV = Σ cᵢ·tⁱ, t in °C,
 * reference junction at 0 °C.
 */
export const typeS: ReferenceFunction = {
  letter: "S",
  isNoble: true,
  isOxidisingInAir: false,
  source: "NIST SRD 60 / NIST Monograph 175; IEC 60584-1:2013",
  iecRange: { fromCelsius: -50, toCelsius: 1768.1 },
  pieces: [
    {
      fromCelsius: -50,
      toCelsius: 1064.18,
      millivolt: [
        0, 5.40313308631e-3, 1.2593428974e-5, -2.32477968689e-8, 3.22028823036e-11, -3.31465196389e-14,
        2.55744251786e-17, -1.25068871393e-20, 2.71443176145e-24,
      ],
    },
    {
      fromCelsius: 1064.18,
      toCelsius: 1664.5,
      millivolt: [1.32900444085, 3.34509311344e-3, 6.54805192818e-6, -1.64856259209e-9, 1.29989605174e-14],
    },
    {
      fromCelsius: 1664.5,
      toCelsius: 1768.1,
      millivolt: [
        1.46628232636e2, -2.58430516752e-1, 1.63693574641e-4, -3.30439046987e-8, -9.43223690612e-15,
      ],
    },
  ],
  // Published inverse polynomials, t/°C = Σ dᵢ·(E/mV)ⁱ: off by up to the stated error, so only start values.
  startValues: [
    // -50…250 °C; error -0.02 to 0.02 °C
    {
      fromMillivolt: -0.235,
      toMillivolt: 1.874,
      celsius: [
        0, 1.8494946e2, -8.00504062e1, 1.0223743e2, -1.52248592e2, 1.88821343e2, -1.59085941e2, 8.2302788e1,
        -2.34181944e1, 2.7978626,
      ],
    },
    // 250…1200 °C; error -0.01 to 0.01 °C
    {
      fromMillivolt: 1.874,
      toMillivolt: 11.95,
      celsius: [
        1.291507177e1, 1.466298863e2, -1.534713402e1, 3.145945973, -4.163257839e-1, 3.187963771e-2,
        -1.2916375e-3, 2.183475087e-5, -1.447379511e-7, 8.211272125e-9,
      ],
    },
    // 1064…1664.5 °C; error -0.0002 to 0.0002 °C
    {
      fromMillivolt: 10.332,
      toMillivolt: 17.536,
      celsius: [-8.087801117e1, 1.621573104e2, -8.536869453, 4.719686976e-1, -1.441693666e-2, 2.08161889e-4],
    },
    // 1664.5…1768.1 °C; error -0.002 to 0.002 °C
    {
      fromMillivolt: 17.536,
      toMillivolt: 18.693,
      celsius: [5.333875126e4, -1.235892298e4, 1.092657613e3, -4.265693686e1, 6.24720542e-1],
    },
  ],
};
