import type { ReferenceFunction } from "./reference-function";

/**
 * Type B. NIST Standard Reference Database 60 (ITS-90 Thermocouple Database), the functions of NIST Monograph
 * 175 (1993), identical to IEC 60584-1:2013 and ASTM E230: E/mV = Σ cᵢ·tⁱ, t in °C,
 * reference junction at 0 °C.
 * Not monotonic: E falls from 0 °C to a minimum of -2.585 µV near 21.0 °C and is 0 again near 42.1 °C. No
 * inverse is published below 250 °C (0.291 mV), and none is given here. At 0 to 50 °C the emf stays within 3
 * µV, so the temperature of the reference junctions hardly matters. The pieces meet at 630.615 °C within
 * 2.2e-6 µV.
 */
export const typeB: ReferenceFunction = {
  letter: "B",
  isNoble: true,
  isOxidisingInAir: false,
  source: "NIST SRD 60 / NIST Monograph 175; IEC 60584-1:2013",
  iecRange: { fromCelsius: 0, toCelsius: 1820 },
  inverseFromCelsius: 250,
  pieces: [
    {
      fromCelsius: 0,
      toCelsius: 630.615,
      millivolt: [
        0, -2.4650818346e-4, 5.9040421171e-6, -1.3257931636e-9, 1.5668291901e-12, -1.694452924e-15,
        6.2990347094e-19,
      ],
    },
    {
      fromCelsius: 630.615,
      toCelsius: 1820,
      millivolt: [
        -3.8938168621, 2.857174747e-2, -8.4885104785e-5, 1.5785280164e-7, -1.6835344864e-10, 1.1109794013e-13,
        -4.4515431033e-17, 9.8975640821e-21, -9.3791330289e-25,
      ],
    },
  ],
  // Published inverse polynomials, t/°C = Σ dᵢ·(E/mV)ⁱ: off by up to the stated error, so only start values.
  startValues: [
    // 250…700 °C; error -0.02 to 0.03 °C
    {
      fromMillivolt: 0.291,
      toMillivolt: 2.431,
      celsius: [
        9.8423321e1, 6.99715e2, -8.4765304e2, 1.0052644e3, -8.3345952e2, 4.5508542e2, -1.5523037e2,
        2.988675e1, -2.474286,
      ],
    },
    // 700…1820 °C; error -0.01 to 0.02 °C
    {
      fromMillivolt: 2.431,
      toMillivolt: 13.82,
      celsius: [
        2.1315071e2, 2.8510504e2, -5.2742887e1, 9.9160804, -1.2965303, 1.119587e-1, -6.0625199e-3,
        1.8661696e-4, -2.4878585e-6,
      ],
    },
  ],
};
