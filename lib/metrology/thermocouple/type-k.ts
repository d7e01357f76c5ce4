import type { ReferenceFunction } from "./reference-function";

/**
 * Type K. NIST Standard Reference Database 60 (ITS-90 Thermocouple Database), the functions of NIST Monograph
 * 175 (1993), identical to IEC 60584-1:2013 and ASTM E230: E/mV = Σ cᵢ·tⁱ, t in °C,
 * reference junction at 0 °C.
 * Above 0 °C a Gaussian term a0·exp[a1·(t − a2)²] is added. IEC 60584-1:2013 uses the function to 1300 °C
 * only.
 */
export const typeK: ReferenceFunction = {
  letter: "K",
  isNoble: false,
  isOxidisingInAir: false,
  source: "NIST SRD 60 / NIST Monograph 175; IEC 60584-1:2013",
  iecRange: { fromCelsius: -270, toCelsius: 1300 },
  pieces: [
    {
      fromCelsius: -270,
      toCelsius: 0,
      millivolt: [
        0, 3.9450128025e-2, 2.3622373598e-5, -3.2858906784e-7, -4.9904828777e-9, -6.7509059173e-11,
        -5.7410327428e-13, -3.1088872894e-15, -1.0451609365e-17, -1.9889266878e-20, -1.6322697486e-23,
      ],
    },
    {
      fromCelsius: 0,
      toCelsius: 1372,
      millivolt: [
        -1.7600413686e-2, 3.8921204975e-2, 1.8558770032e-5, -9.9457592874e-8, 3.1840945719e-10,
        -5.6072844889e-13, 5.6075059059e-16, -3.2020720003e-19, 9.7151147152e-23, -1.2104721275e-26,
      ],
      gaussian: { millivolt: 0.1185976, perSquareCelsius: -1.183432e-4, centreCelsius: 126.9686 },
    },
  ],
  // Published inverse polynomials, t/°C = Σ dᵢ·(E/mV)ⁱ: off by up to the stated error, so only start values.
  startValues: [
    // -200…0 °C; error -0.02 to 0.04 °C
    {
      fromMillivolt: -5.891,
      toMillivolt: 0,
      celsius: [
        0, 2.5173462e1, -1.1662878, -1.0833638, -8.977354e-1, -3.7342377e-1, -8.6632643e-2, -1.0450598e-2,
        -5.1920577e-4,
      ],
    },
    // 0…500 °C; error -0.05 to 0.04 °C
    {
      fromMillivolt: 0,
      toMillivolt: 20.644,
      celsius: [
        0, 2.508355e1, 7.860106e-2, -2.503131e-1, 8.31527e-2, -1.228034e-2, 9.804036e-4, -4.41303e-5,
        1.057734e-6, -1.052755e-8,
      ],
    },
    // 500…1372 °C; error -0.05 to 0.06 °C
    {
      fromMillivolt: 20.644,
      toMillivolt: 54.886,
      celsius: [-1.318058e2, 4.830222e1, -1.646031, 5.464731e-2, -9.650715e-4, 8.802193e-6, -3.11081e-8],
    },
  ],
};
