import { commonPractice, laboratoryPolicy } from "./finding";
import type { GatePolicy, OverrideRule } from "./policy";

/**
 * What the gate asks until the laboratory says otherwise. Figures of bought standards that stand here from memory say
 * so in their source: the laboratory holds them against its own copy, then confirms them as its own.
 */

const ours = (value: number) => ({ value, source: laboratoryPolicy });

const e230 = "ASTM E230/E230M, suggested upper temperature limits, protected, closed-end tube";
const e608 = "ASTM E608/E608M, from memory: to be confirmed against the laboratory's own copy";
const insulation = "the lower of the figures published for this material; sources differ";
const byAlloy = "from memory, maker's data vary: to be confirmed for the sheath in hand";
const bores = "DAkkS-DKD-R 5-4, Annex B (block calibrators)";

const sizes = (types: readonly string[], pairs: readonly (readonly [number, number])[]) =>
  pairs.map(([diameterMillimetre, maximumCelsius]) => ({
    types: [...types],
    diameterMillimetre,
    maximumCelsius,
  }));

/** AWG 8, 14, 20, 24, 28 and 30. */
const wire: GatePolicy["wire"] = {
  source: e230,
  rows: [
    ...sizes(
      ["K", "N"],
      [
        [3.26, 1260],
        [1.63, 1090],
        [0.81, 980],
        [0.51, 870],
        [0.33, 870],
        [0.25, 760],
      ],
    ),
    ...sizes(
      ["J"],
      [
        [3.26, 760],
        [1.63, 590],
        [0.81, 480],
        [0.51, 370],
        [0.33, 370],
        [0.25, 320],
      ],
    ),
    ...sizes(
      ["E"],
      [
        [3.26, 870],
        [1.63, 650],
        [0.81, 540],
        [0.51, 430],
        [0.33, 430],
        [0.25, 370],
      ],
    ),
    ...sizes(
      ["T"],
      [
        [1.63, 370],
        [0.81, 260],
        [0.51, 200],
        [0.33, 200],
        [0.25, 150],
      ],
    ),
    ...sizes(["R", "S"], [[0.51, 1480]]),
    ...sizes(["B"], [[0.51, 1700]]),
    ...sizes(["C"], [[0.51, 2315]]),
  ],
};

const mineralInsulated: GatePolicy["mineralInsulated"] = {
  source: e608,
  rows: sizes(
    ["K", "N"],
    [
      [0.5, 700],
      [1.5, 920],
      [3, 1070],
      [4.5, 1150],
    ],
  ),
};

const toxicFluorine = "toxic fluorine compounds, from about 265 °C";

const leadInsulations: GatePolicy["leadInsulations"] = {
  pvc: { maximumCelsius: 105, fumes: "hydrogen chloride and other irritant fumes", source: insulation },
  nylon: { maximumCelsius: 121, fumes: "irritant fumes", source: insulation },
  fep: { maximumCelsius: 200, fumes: toxicFluorine, source: insulation },
  ptfe: { maximumCelsius: 260, fumes: toxicFluorine, source: insulation },
  polyimide: { maximumCelsius: 260, fumes: "irritant fumes", source: insulation },
  fibreglass: { maximumCelsius: 480, fumes: "", source: insulation },
  silica: { maximumCelsius: 760, fumes: "", source: insulation },
  "ceramic-fibre": { maximumCelsius: 1204, fumes: "", source: insulation },
};

const sheathMaterials: GatePolicy["sheathMaterials"] = {
  "stainless-steel": { maximumCelsius: 870, fumes: "", source: byAlloy },
  "nickel-chromium": { maximumCelsius: 1150, fumes: "", source: byAlloy },
  alumina: { maximumCelsius: 1600, fumes: "", source: byAlloy },
  fluoropolymer: { maximumCelsius: 200, fumes: toxicFluorine, source: insulation },
};

const rule = (
  code: OverrideRule["code"],
  by: OverrideRule["by"],
  reachesCertificate: boolean,
): OverrideRule => ({ code, by, reachesCertificate });
const bench: OverrideRule["by"] = ["technician", "signatory", "quality-manager"];
const seniors: OverrideRule["by"] = ["signatory", "quality-manager"];

const overrides: readonly OverrideRule[] = [
  rule("range-of-use", seniors, true),
  rule("largest-interval", seniors, true),
  rule("after-exposure", seniors, true),
  rule("wire-limit", seniors, true),
  rule("sheath-limit", seniors, true),
  rule("immersion", seniors, true),
  rule("short-sensor", seniors, true),
  rule("shallower-than-used", seniors, true),
  rule("bore-clearance", bench, false),
  rule("channel-in-another-run", bench, false),
  rule("furnace-in-another-run", bench, false),
  rule("ascending-order", seniors, true),
  rule("used-base-metal", seniors, true),
  rule("junction-thermometer-in-date", seniors, true),
  rule("warm-up", seniors, true),
  rule("shorted-zero", seniors, true),
  rule("channel-zero", seniors, true),
  rule("voltage-point", seniors, true),
  rule("junction-by-thermometer", seniors, true),
  rule("tips-warmed", bench, true),
];

export const defaultGatePolicy: GatePolicy = {
  title: "The laboratory's gate, first edition",
  warmUpHours: ours(1),
  shortedZeroMicrovolt: ours(1),
  nobleChannelMicrovolt: ours(1),
  baseChannelMicrovolt: ours(2),
  voltagePointMicrovolt: ours(2),
  junctionCelsius: ours(0.03),
  tipRiseMicrovolt: ours(20),
  immersionShortfallMillimetre: ours(10),
  leadClearMillimetre: ours(100),
  immersionDiameters: { value: 15, source: `${bores}: immersion at least 15 outer diameters` },
  boreClearance: { belowCelsius: 660, belowMillimetre: 0.5, aboveMillimetre: 1, source: bores },
  wire,
  mineralInsulated,
  sheathMaterials,
  leadInsulations,
  afterExposure: {
    types: ["K", "E"],
    fromCelsius: 250,
    toCelsius: 550,
    source: "short-range ordering in nickel-chromium: ORNL/TM-4862; the limits are common practice",
  },
  interpolationIntervalCelsius: {
    value: 100,
    source:
      "BIPM, Techniques for Approximating the International Temperature Scale of 1990, Table 18.7: points every 100 K",
  },
  room: { fromCelsius: 18, toCelsius: 28, fromPercent: 20, toPercent: 70, source: commonPractice },
  overrides: [...overrides],
};
