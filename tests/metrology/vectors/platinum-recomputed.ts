/** Resistance in Ω of a platinum thermometer of 100 Ω at t in °C. Recomputed from the function of IEC 60751:2008 by an
 * independent program, to four decimals. */
export const resistancesToFourDecimals: readonly (readonly [celsius: number, ohm: string])[] = [
  [-200, "18.5201"],
  [-100, "60.2558"],
  [-50, "80.3063"],
  [0, "100.0000"],
  [100, "138.5055"],
  [200, "175.8560"],
  [300, "212.0515"],
  [400, "247.0920"],
  [500, "280.9775"],
  [600, "313.7080"],
  [850, "390.4811"],
];

/**
 * An invented thermometer, R = 25.5 Ω at 273.16 K, a = −2.9e-4, b = −2.3e-5, c = 5e-6: its resistance in Ω at t in °C,
 * computed by an independent program from the ITS-90. Not a published example.
 */
export const inventedThermometer = {
  tripleOhm: 25.5,
  a: -2.9e-4,
  b: -2.3e-5,
  c: 5e-6,
  ohm: [
    [0.01, 25.49999974507392],
    [100, 35.51272030948753],
    [231.928, 48.25936408802947],
    [300, 54.633403275915164],
    [419.527, 65.49484175129798],
    [500, 72.56827646606415],
    [600, 81.08324251676609],
    [660.323, 86.0690539230243],
  ],
} as const;
