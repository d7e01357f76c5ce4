/**
 * W_r at defining fixed points of the ITS-90, T in kelvin. Source: H. Preston-Thomas, The International Temperature Scale of 1990,
 * Metrologia 27 (1990) 3, table 1.
 */
export const publishedRatios: readonly (readonly [point: string, kelvin: number, ratio: string])[] = [
  ["e-H2", 13.8033, "0.00119007"],
  ["Ne", 24.5561, "0.00844974"],
  ["O2", 54.3584, "0.09171804"],
  ["Ar", 83.8058, "0.21585975"],
  ["Hg", 234.3156, "0.84414211"],
  ["H2O", 273.16, "1.00000000"],
  ["Ga", 302.9146, "1.11813889"],
  ["In", 429.7485, "1.60980185"],
  ["Sn", 505.078, "1.89279768"],
  ["Zn", 692.677, "2.56891730"],
  ["Al", 933.473, "3.37600860"],
  ["Ag", 1234.93, "4.28642053"],
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
