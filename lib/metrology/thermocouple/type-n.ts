import type { ReferenceFunction } from "./reference-function";

/**
 * Type N. NIST Standard Reference Database 60 (ITS-90 Thermocouple Database), the functions of NIST
 * Monograph 175 (1993), identical to IEC 60584-1:2013 and ASTM E230: E/mV = Σ cᵢ·tⁱ, t in °C,
 * reference junction at 0 °C.
 * The Seebeck coefficient jumps at 0 °C: 26.159 µV/°C below, 25.929 µV/°C above.
 */
export const typeN: ReferenceFunction = {
  letter: "N",
  isNoble: false,
  isOxidisingInAir: false,
  source: "NIST SRD 60 / NIST Monograph 175; IEC 60584-1:2013",
  iecRange: { fromCelsius: -270, toCelsius: 1300 },
  pieces: [
    {
      fromCelsius: -270,
      toCelsius: 0,
      millivolt: [
        0, 2.6159105962e-2, 1.0957484228e-5, -9.3841111554e-8, -4.6412039759e-11, -2.6303357716e-12,
        -2.2653438003e-14, -7.6089300791e-17, -9.3419667835e-20,
      ],
    },
    {
      fromCelsius: 0,
      toCelsius: 1300,
      millivolt: [
        0, 2.5929394601e-2, 1.571014188e-5, 4.3825627237e-8, -2.5261169794e-10, 6.4311819339e-13,
        -1.0063471519e-15, 9.9745338992e-19, -6.0863245607e-22, 2.0849229339e-25, -3.0682196151e-29,
      ],
    },
  ],
  // Published inverse polynomials, t/°C = Σ dᵢ·(E/mV)ⁱ: off by up to the stated error, so only start values.
  startValues: [
    // -200…0 °C; error -0.02 to 0.03 °C
    {
      fromMillivolt: -3.99,
      toMillivolt: 0,
      celsius: [
        0, 3.8436847e1, 1.1010485, 5.2229312, 7.2060525, 5.8488586, 2.7754916, 7.7075166e-1, 1.1582665e-1,
        7.3138868e-3,
      ],
    },
    // 0…600 °C; error -0.02 to 0.03 °C
    {
      fromMillivolt: 0,
      toMillivolt: 20.613,
      celsius: [0, 3.86896e1, -1.08267, 4.70205e-2, -2.12169e-6, -1.17272e-4, 5.3928e-6, -7.98156e-8],
    },
    // 600…1300 °C; error -0.04 to 0.02 °C
    {
      fromMillivolt: 20.613,
      toMillivolt: 47.513,
      celsius: [1.972485e1, 3.300943e1, -3.915159e-1, 9.855391e-3, -1.274371e-4, 7.767022e-7],
    },
  ],
};
