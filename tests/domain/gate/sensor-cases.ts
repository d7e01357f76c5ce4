import { asWire, clearance, type GateCase, lead, mims, places, typeT, upTo, wire } from "./changed-plan";
import { reference, unstated, withBuild, withConfiguration, withSensor } from "./plan-of";

const everyFahrenheit250 = {
  largestIntervalCelsius: 1250 / 9,
  use: { fromCelsius: 320, toCelsius: 450 },
  orderedCelsius: [],
};

export const sensorCases: readonly GateCase[] = [
  // Range
  { says: "type-range refuse T-1; wire-limit overridable T-1", plan: typeT(401) },
  { says: "wire-limit overridable T-1", plan: typeT(400) },
  { says: "furnace-range refuse", plan: withConfiguration({ maximumCelsius: 599 }) },
  { says: "furnace-range refuse", plan: withConfiguration({ minimumCelsius: 301 }) },
  {
    says: "reference-range refuse REF-1",
    plan: { references: [{ ...reference, range: { fromCelsius: 300, toCelsius: 599 } }] },
  },
  {
    says: "reference-range refuse REF-1",
    plan: { references: [{ ...reference, range: { fromCelsius: 301, toCelsius: 600 } }] },
  },
  {
    says: "class-range warning T-1",
    plan: {
      ...upTo(1001, mims(4.5)),
      sensors: upTo(1001, mims(4.5)).sensors!.map((one) => ({
        ...one,
        tolerance: { standard: "IEC 60584-1:2013", class: "1" } as const,
      })),
    },
    fine: {
      ...upTo(1000, mims(4.5)),
      sensors: upTo(1000, mims(4.5)).sensors!.map((one) => ({
        ...one,
        tolerance: { standard: "IEC 60584-1:2013", class: "1" } as const,
      })),
    },
  },
  // Setpoints and exposure
  { says: "range-of-use overridable T-1", plan: withSensor({ use: { fromCelsius: 299, toCelsius: 600 } }) },
  { says: "range-of-use overridable T-1", plan: withSensor({ use: { fromCelsius: 300, toCelsius: 601 } }) },
  { says: "range-of-use-not-stated warning T-1", plan: withSensor({ use: null }) },
  { says: "largest-interval overridable T-1", plan: withSensor({ largestIntervalCelsius: 99.9 }) },
  {
    says: "largest-interval overridable T-1",
    plan: { ...withSensor(everyFahrenheit250), setpointsCelsius: [2840 / 9, 4095 / 9] },
    // 600 and 850 °F: apart by what was agreed, but for the last bit of a float64.
    fine: { ...withSensor(everyFahrenheit250), setpointsCelsius: [2840 / 9, 4090 / 9] },
  },
  {
    says: "largest-interval-not-stated warning T-1",
    plan: { ...withSensor({ largestIntervalCelsius: null }), setpointsCelsius: [300, 400.1, 500, 600] },
    fine: withSensor({ largestIntervalCelsius: null }),
  },
  {
    says: "exposure refuse T-1",
    plan: withSensor({ maximumCelsius: 599 }),
    fine: withSensor({ maximumCelsius: 600, orderedCelsius: [300] }),
  },
  { says: "exposure refuse T-1", plan: withSensor({ orderedCelsius: [300, 400] }) },
  {
    says: "after-exposure overridable T-1",
    plan: withSensor({ history: { highestCelsius: 501, deepestMillimetre: null } }),
    fine: withSensor({ history: { highestCelsius: 300, deepestMillimetre: null } }),
  },
  {
    says: "after-exposure overridable T-1",
    plan: asWire("E", { history: { highestCelsius: 700, deepestMillimetre: null } }),
    fine: asWire("N", { history: { highestCelsius: 700, deepestMillimetre: null } }),
  },
  // Materials
  { says: "lead-near-heat refuse T-1", plan: lead("ptfe", 499), fine: lead("ptfe", 500) },
  { says: "lead-near-heat refuse T-1", plan: lead("pvc", 399), fine: lead("silica", 399) },
  {
    says: "lead-near-heat refuse T-1; length-not-stated warning T-1",
    plan: withSensor({
      build: { sheath: "mineral-insulated", sheathMillimetre: 3, leadInsulation: "ptfe", isUsed: false },
    }),
  },
  { says: "lead-not-stated warning T-1", plan: unstated("leadInsulation") },
  { says: "wire-limit overridable T-1", plan: upTo(871, wire("K", 0.5)), fine: upTo(870, wire("K", 0.5)) },
  { says: "wire-limit overridable T-1", plan: upTo(761, wire("K", 0.2)), fine: upTo(760, wire("K", 0.25)) },
  { says: "limit-not-known warning T-1", plan: wire("K", 0.2), fine: wire("K", 0.25) },
  { says: "wire-not-stated warning T-1", plan: withBuild({ sheath: "tube", sheathMaterial: "alumina" }) },
  { says: "sheath-limit overridable T-1", plan: upTo(1071, mims(3)), fine: upTo(1070, mims(3)) },
  { says: "sheath-limit overridable T-1", plan: upTo(921, mims(2.8)), fine: upTo(920, mims(2.8)) },
  { says: "limit-not-known warning T-1", plan: mims(3, "J") },
  { says: "sheath-limit overridable T-1", plan: upTo(701, mims(0.4)) },
  { says: "limit-not-known warning T-1", plan: upTo(700, mims(0.4)) },
  {
    says: "sheath-limit overridable T-1",
    plan: upTo(871, withBuild({ sheathMaterial: "stainless-steel" })),
    fine: upTo(870, withBuild({ sheathMaterial: "stainless-steel" })),
  },
  { says: "sheath-fumes refuse T-1", plan: withBuild({ sheathMaterial: "fluoropolymer" }) },
  { says: "sheath-not-stated warning T-1", plan: unstated("sheath", "sheathMillimetre") },
  { says: "sheath-not-stated warning T-1", plan: unstated("sheathMillimetre") },
  {
    says: "platinum-unsheathed refuse REF-1",
    plan: { references: [{ ...reference, protection: "bare-wire" }] },
  },
  { says: "oxidises-in-air refuse T-1", plan: asWire("C") },
  // Immersion and fit
  {
    says: "immersion overridable T-1",
    plan: places(1, { immersionMillimetre: 389 }),
    fine: places(1, { immersionMillimetre: 390 }),
  },
  { says: "immersion overridable REF-1", plan: places(0, { immersionMillimetre: 300 }) },
  { says: "immersion-not-stated warning T-1", plan: places(1, { immersionMillimetre: null }) },
  {
    says: "short-sensor overridable T-1",
    plan: { ...lead("silica", 389), ...places(1, { immersionMillimetre: 380 }) },
    fine: lead("silica", 390),
  },
  {
    says: "length-not-stated warning T-1",
    plan: withSensor({
      build: { sheath: "mineral-insulated", sheathMillimetre: 3, leadInsulation: "bare", isUsed: false },
    }),
  },
  {
    says: "shallower-than-used overridable T-1",
    plan: withSensor({ history: { highestCelsius: null, deepestMillimetre: 401 } }),
    fine: withSensor({ history: { highestCelsius: null, deepestMillimetre: 400 } }),
  },
  { says: "immersion-in-diameters warning T-1", plan: mims(27), fine: mims(26) },
  { says: "bore-too-narrow refuse T-1", plan: clearance(2.9), fine: clearance(3) },
  { says: "bore-clearance overridable T-1", plan: clearance(3.6), fine: clearance(3.5) },
  { says: "bore-clearance overridable T-1", plan: upTo(661, clearance(4.1)), fine: upTo(661, clearance(4)) },
  {
    says: "bore-too-narrow refuse",
    plan: withConfiguration({ kind: "bare-tube", tubeMillimetre: 2.9 }),
    fine: withConfiguration({ kind: "bare-tube", tubeMillimetre: 3 }),
  },
];
