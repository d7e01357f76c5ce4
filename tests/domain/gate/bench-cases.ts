import { channels, type GateCase, junction, late, otherRun, places, quiet, tip } from "./changed-plan";
import {
  plan,
  reference,
  sensor,
  unstated,
  withBench,
  withBuild,
  withConfiguration,
  withSensor,
} from "./plan-of";

export const benchCases: readonly GateCase[] = [
  // Load and channels
  {
    says: "place-twice refuse 1",
    plan: {
      places: [plan.places[0]!, { ...plan.places[1]!, place: "1" }, plan.places[2]!],
      configuration: { ...plan.configuration, bores: [] },
    },
  },
  { says: "channel-twice refuse 102; channel-zero overridable 102", plan: places(2, { channel: "102" }) },
  {
    says: "too-many-places refuse",
    plan: withConfiguration({ places: 1 }),
    fine: withConfiguration({ places: 2 }),
  },
  {
    says: "no-sensor refuse",
    plan: { sensors: [], places: plan.places.filter(({ kind }) => kind !== "sensor") },
  },
  {
    says: "no-reference refuse",
    plan: { references: [], places: plan.places.filter(({ kind }) => kind !== "reference") },
  },
  {
    says: "junction-temperature refuse 2",
    plan: { places: [plan.places[0]!, { ...plan.places[1]!, junctionCelsius: 0.5 }] },
  },
  { says: "channel-in-another-run overridable 102", plan: otherRun({ scanner: "SC-1" }), fine: otherRun({}) },
  {
    says: "furnace-in-another-run overridable R-0",
    plan: otherRun({ configurationId: "block" }),
    fine: otherRun({ scanner: "SC-1", channels: ["199"] }),
  },
  // Order and metal
  { says: "order-not-accepted refuse T-1", plan: withSensor({ orderState: "cancelled" }) },
  { says: "subcontracted refuse T-1", plan: withSensor({ providerName: "Invented Metrology" }) },
  {
    says: "ascending-order overridable T-1",
    plan: { ...withSensor({ type: "N" }), setpointsCelsius: [300, 500, 400, 600] },
    fine: {
      ...withSensor({
        type: "S",
        protection: "alumina-sheath",
        build: { ...sensor.build, sheath: "tube", sheathMaterial: "alumina", wireMillimetre: 0.5 },
        tolerance: null,
      }),
      setpointsCelsius: [300, 500, 400, 600],
      ...quiet,
    },
  },
  { says: "used-base-metal overridable T-1", plan: withBuild({ isUsed: true }) },
  { says: "use-not-stated warning T-1", plan: unstated("isUsed") },
  // Equipment in date: due on the day is still in date
  {
    says: "characterisation-in-date refuse",
    plan: withConfiguration({ characterisation: { performedOn: "2026-03-10", validUntil: "2026-10-14" } }),
  },
  { says: "characterisation-in-date refuse", plan: withConfiguration({ characterisation: null }) },
  {
    says: "furnace-in-service refuse",
    plan: withConfiguration({ furnaceProblem: "FUR-1 is under repair. Choose another." }),
  },
  {
    says: "reference-in-date warning REF-1",
    plan: {
      references: [
        {
          ...reference,
          service: [{ ground: "check-overdue", message: "Its check was due.", blocks: false }],
        },
      ],
    },
  },
  {
    says: "reference-in-date refuse REF-1",
    plan: {
      references: [
        { ...reference, service: [{ ground: "check-overdue", message: "Its check was due.", blocks: true }] },
      ],
    },
  },
  { says: "reference-in-date refuse REF-1", plan: { references: [{ ...reference, calibration: late }] } },
  { says: "reference-in-date refuse REF-1", plan: { references: [{ ...reference, state: "suspect" }] } },
  { says: "voltmeter-in-date refuse VM-1", plan: { voltmeter: { ...plan.voltmeter!, calibration: late } } },
  { says: "voltmeter-in-date refuse", plan: { voltmeter: null } },
  { says: "scanner-in-date refuse SC-1", plan: { scanner: { ...plan.scanner!, state: "retired" } } },
  {
    says: "lead-in-date refuse L-1",
    plan: { leads: [{ ...plan.junctions[0]!, tag: "L-1", kind: "lead", state: "suspect" }] },
  },
  {
    says: "junction-in-date refuse ICE-1",
    plan: { junctions: [{ ...plan.junctions[0]!, calibration: late }] },
  },
  {
    says: "junction-thermometer-in-date overridable PRT-1",
    plan: { junctionThermometers: [{ ...plan.junctionThermometers[0]!, calibration: late }] },
  },
  {
    says: "junction-thermometer-in-date overridable PRT-1",
    plan: { junctionThermometers: [{ ...plan.junctionThermometers[0]!, calibration: null }] },
  },
  {
    says: "junction-thermometer-in-date overridable PRT-1",
    plan: { junctionThermometers: [{ ...plan.junctionThermometers[0]!, state: "suspect" }] },
  },
  { says: "junction-thermometer-in-date overridable PRT-1", plan: { junctionThermometers: [] } },
  {
    says: "procedure-current refuse",
    plan: { procedure: { name: "Comparison, revision 1", state: "withdrawn" } },
    fine: { procedure: null },
  },
  // Same-day checks
  { says: "warm-up overridable", plan: withBench({ warmUpHours: 0.99 }) },
  { says: "warm-up overridable", plan: withBench({ warmUpHours: null }) },
  {
    says: "shorted-zero overridable",
    plan: withBench({ shortedZeroMicrovolt: -1.01 }),
    fine: withBench({ shortedZeroMicrovolt: 1 }),
  },
  { says: "shorted-zero overridable", plan: withBench({ shortedZeroMicrovolt: null }) },
  { says: "channel-zero overridable 101", plan: channels("101", -1.01), fine: channels("101", -1) },
  { says: "channel-zero overridable 102", plan: channels("102", 2.01), fine: channels("102", 2) },
  { says: "channel-zero overridable 103", plan: channels("103", 1.01) },
  { says: "channel-zero overridable 103", plan: withBench({ channels: plan.bench.channels.slice(0, 2) }) },
  {
    says: "voltage-point overridable",
    plan: withBench({ voltagePoint: { appliedMicrovolt: 10500.2, readMicrovolt: 10502.21 } }),
  },
  { says: "voltage-point overridable", plan: withBench({ voltagePoint: null }) },
  { says: "junction-by-thermometer overridable ICE-1", plan: junction(-0.031), fine: junction(-0.03) },
  { says: "junction-by-thermometer overridable ICE-1", plan: withBench({ junctions: [] }) },
  { says: "tips-warmed overridable 2", plan: tip(19.9), fine: tip(20) },
  { says: "tips-warmed overridable 2", plan: { tips: [plan.tips[0]!, { place: "2", check: null }] } },
  { says: "wiring-in-doubt refuse 2", plan: tip(90, false) },
];
