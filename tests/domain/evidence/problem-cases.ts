// biome-ignore lint/suspicious/noExplicitAny: the tests break the file in ways its type forbids
export type Loose = any;

/** What is spoilt, how, the path that must be named, and a word of the message. */
export const problemCases: readonly (readonly [
  name: string,
  spoil: (e: Loose) => void,
  path: string,
  says: RegExp,
])[] = [
  ["a wrong format", (e) => (e.format = "other"), "format", /emfolio-evidence/],
  ["a later version", (e) => (e.version = 3), "version", /1 and 2/],
  ["a field that is missing", (e) => delete e.voltmeter.drift, "voltmeter.drift", /missing/],
  ["a misspelt field", (e) => (e.voltmeter.drfit = 1), "voltmeter", /Unknown field drfit/],
  ["no deviation", (e) => (e.references[0].correction.points = []), "references[0].correction.points", /./],
  ["a type without function", (e) => (e.sensors[1].type = "Q"), "sensors[1].type", /./],
  [
    "text for a number",
    (e) => (e.scans.channels[1].microvolts[5] = "7,5"),
    "scans.channels[1].microvolts[5]",
    /number/,
  ],
  ["NaN", (e) => (e.scans.channels[0].microvolts[2] = Number.NaN), "scans.channels[0].microvolts[2]", /./],
  [
    "infinity",
    (e) => (e.scans.channels[2].seconds[3] = Number.POSITIVE_INFINITY),
    "scans.channels[2].seconds[3]",
    /./,
  ],
  ["a polarity of 0", (e) => (e.scans.channels[0].polarity[1] = 0), "scans.channels[0].polarity[1]", /./],
  ["a negative uncertainty", (e) => (e.scanner.parasitic.halfWidth = -1), "scanner.parasitic.halfWidth", /./],
  [
    "a coverage factor of 0",
    (e) => (e.references[0].calibrationUncertainty.coverageFactor = 0),
    "references[0].calibrationUncertainty.coverageFactor",
    /./,
  ],
  [
    "an impossible date",
    (e) => (e.voltmeter.calibration.performedOn = "2026-02-30"),
    "voltmeter.calibration.performedOn",
    /./,
  ],

  ["a sensor twice", (e) => (e.sensors[1].id = "X1"), "sensors[1].id", /X1 stands already in sensors\[0\]/],
  ["a place twice", (e) => (e.load[2].place = "1"), "load[2].place", /already in load\[0\]/],
  ["a channel twice in the load", (e) => (e.load[2].channel = "101"), "load[2].channel", /already/],
  ["an item in two places", (e) => (e.load[2].item = { ...e.load[1].item }), "load[2].item", /sensor X1/],
  [
    "a channel twice in the scans",
    (e) => (e.scans.channels[2].channel = "101"),
    "scans.channels[2].channel",
    /already/,
  ],
  [
    "two windows for one setpoint",
    (e) => e.windows.push({ ...e.windows[0] }),
    "windows[1].setpoint",
    /already/,
  ],
  [
    "two states for one point",
    (e) => (e.states = [1, 2].map(() => ({ sensor: "X1", setpoint: "600", state: "invalid", reason: "r" }))),
    "states[1].sensor",
    /X1 at setpoint 600/,
  ],
  ["an unknown junction", (e) => (e.load[0].junction = "Z"), "load[0].junction", /no junction Z; known: J/],
  [
    "an unknown sensor in the load",
    (e) => (e.load[1].item.id = "Z"),
    "load[1].item.id",
    /no sensor Z; known: X1, X2, X3/,
  ],
  ["an unknown reference in the load", (e) => (e.load[0].item.id = "Z"), "load[0].item.id", /no reference Z/],
  ["a sensor without a place", (e) => e.load.splice(1, 1), "sensors[0].id", /no place in the load/],
  [
    "a channel that is not in the load",
    (e) => (e.scans.channels[3].channel = "999"),
    "scans.channels[3].channel",
    /999 is not in the load/,
  ],
  [
    "a window for an unknown setpoint",
    (e) => (e.windows[0].setpoint = "700"),
    "windows[0].setpoint",
    /no setpoint 700; known: 600/,
  ],
  [
    "a state for an unknown sensor",
    (e) => (e.states = [{ sensor: "Z", setpoint: "600", state: "invalid", reason: "r" }]),
    "states[0].sensor",
    /no sensor Z/,
  ],
  [
    "a state for an unknown setpoint",
    (e) => (e.states = [{ sensor: "X1", setpoint: "1", state: "invalid", reason: "r" }]),
    "states[0].setpoint",
    /no setpoint 1/,
  ],

  [
    "arrays of different length",
    (e) => e.scans.channels[1].microvolts.pop(),
    "scans.channels[1]",
    /90 times, 89 readings and 90 polarities/,
  ],
  [
    "a time that goes back",
    (e) => (e.scans.channels[1].seconds[7] = 3),
    "scans.channels[1].seconds[7]",
    /follows 61 s/,
  ],
  [
    "a time that repeats",
    (e) => (e.scans.channels[1].seconds[7] = 61),
    "scans.channels[1].seconds[7]",
    /61 s stands twice/,
  ],
  [
    "a window that ends before it begins",
    (e) => (e.windows[0] = { setpoint: "600", fromSeconds: 500, toSeconds: 400 }),
    "windows[0].toSeconds",
    /before it begins/,
  ],
  [
    "a window that misses a channel",
    (e) => (e.windows[0] = { setpoint: "600", fromSeconds: 890, toSeconds: 893 }),
    "scans.channels[4]",
    /105 has no reading between 890 s and 893 s/,
  ],
  [
    "a window before the run",
    (e) => (e.windows[0] = { setpoint: "600", fromSeconds: -9, toSeconds: -5 }),
    "scans.channels[0]",
    /no reading/,
  ],
  [
    "a needed channel without readings",
    (e) => e.scans.channels.splice(2, 1),
    "load[2].channel",
    /103 is in the load but has no readings/,
  ],

  [
    "points of a certificate out of order",
    (e) => e.references[0].correction.points.reverse(),
    "references[0].correction.points[1].celsius",
    /rising order/,
  ],
  [
    "corrections that repeat",
    (e) => (e.voltmeter.corrections = [1, 1].map((microvolt) => ({ microvolt, correctionMicrovolt: 0 }))),
    "voltmeter.corrections[1].microvolt",
    /rising order/,
  ],
  [
    "a single point without its reach",
    (e) => e.references[1].correction.points.pop(),
    "references[1].correction.singlePointReachCelsius",
    /how far it reaches/,
  ],
  [
    "given sensitivities that are not given",
    (e) => (e.sensitivities = "given"),
    "sensors[0].givenSensitivity",
    /X1 gives none/,
  ],

  [
    "a uniformity in µV",
    (e) => (e.configuration.characterisation.uniformity.unit = "microvolt"),
    "configuration.characterisation.uniformity.unit",
    /give it in celsius/,
  ],
  [
    "a junction's relative uncertainty",
    (e) => (e.junctions[0].uncertainty.unit = "relative"),
    "junctions[0].uncertainty.unit",
    /celsius or microvolt/,
  ],
  [
    "a voltmeter's uncertainty in °C",
    (e) => (e.voltmeter.drift.unit = "celsius"),
    "voltmeter.drift.unit",
    /microvolt or relative/,
  ],
  [
    "a relative parasitic emf",
    (e) => (e.scanner.parasitic.unit = "relative"),
    "scanner.parasitic.unit",
    /give it in microvolt/,
  ],

  [
    "platinum bare beside base metal",
    (e) => (e.references[0].protection = "bare-wire"),
    "references[0].protection",
    /beside base metal \(type K, sensor X1\)/,
  ],
  [
    "a platinum sensor bare beside base metal",
    (e) => (e.sensors[2].protection = "metal-sheath"),
    "sensors[2].protection",
    /alumina sheath/,
  ],

  [
    "a furnace far from the nominal",
    (e) => (e.setpoints[0].nominalCelsius = 606),
    "windows[0]",
    /600\.00 °C.*nominal 606 °C.*5 °C/,
  ],
  [
    "a reference beyond its certificate",
    (e) => (e.references[0].correction.points[1].celsius = 590),
    "references[0].correction",
    /R1 reads 600\.00 °C.*250 °C to 590 °C/,
  ],
  [
    "a reference beyond the reach of its point",
    (e) =>
      (e.references[1] = {
        ...e.references[1],
        correction: {
          kind: "points",
          points: [{ celsius: 590, deviationMicrovolt: 0 }],
          singlePointReachCelsius: 5,
        },
      }),
    "references[1].correction",
    /590 °C and 5 °C each side/,
  ],
  [
    "an emf no reference can give",
    (e) => e.scans.channels[0].microvolts.fill(90_000),
    "scans.channels[0]",
    /has no temperature/,
  ],
];
