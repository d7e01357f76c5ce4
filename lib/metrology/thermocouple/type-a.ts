import type { ReferenceFunction } from "./reference-function";

/**
 * Type A, W5Re/W20Re (tungsten-rhenium). GOST R 8.585-2001, type A-1, from 0 °C to 2500 °C: E/mV = Σ cᵢ·tⁱ, t
 * in °C, reference junction at 0 °C. IEC 60584-1:2013 takes the same polynomial over. UNSETTLED: the constant
 * term,
 * 0.7156 µV at 0 °C, stands in the GOST table of coefficients and is kept here; whether IEC keeps it or sets
 * it to 0 is to be checked against a copy of the standard before it matters (0.06 °C at 0 °C, where S is
 * 11.95 µV/°C).
 * Tungsten oxidises in air.
 */
export const typeA: ReferenceFunction = {
  letter: "A",
  isNoble: false,
  isOxidisingInAir: true,
  source: "GOST R 8.585-2001, type A-1; IEC 60584-1:2013",
  iecRange: { fromCelsius: 0, toCelsius: 2500 },
  pieces: [
    {
      fromCelsius: 0,
      toCelsius: 2500,
      millivolt: [
        7.1564735e-4, 1.1951905e-2, 1.6672625e-5, -2.8287807e-8, 2.8397839e-11, -1.8505007e-14, 7.3632123e-18,
        -1.6148878e-21, 1.4901679e-25,
      ],
    },
  ],
  // GOST R 8.585-2001: off by up to 1 °C, so only a start value.
  startValues: [
    {
      fromMillivolt: 0,
      toMillivolt: 33.64,
      celsius: [
        9.643027e-1, 7.9495086e1, -4.999031, 6.341776e-1, -4.7440967e-2, 2.1811337e-3, -5.8324228e-5,
        8.2433725e-7, -4.592848e-9,
      ],
    },
  ],
};
