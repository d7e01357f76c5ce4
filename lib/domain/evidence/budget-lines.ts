export type LineMeaning = {
  /** The quantity in the trade's words. */
  readonly label: string;
  readonly symbol: string;
  /** Lines that cover the same thing: counting both would count it twice. */
  readonly excludes?: readonly string[];
};

/** The default budget of the trade: every line of both stages. One that is absent in truth stands at zero. */
export const budgetLines = {
  "reference.repeatability": { label: "Reference repeatability", symbol: "t_S" },
  "reference.calibration": { label: "Reference calibration", symbol: "δt_S" },
  "voltmeter.calibration@reference": { label: "Voltmeter calibration", symbol: "δV_iS1" },
  "voltmeter.drift@reference": { label: "Voltmeter drift since its calibration", symbol: "δV_iS3" },
  "voltmeter.resolution@reference": { label: "Voltmeter resolution", symbol: "δV_iS2" },
  "scanner.parasitic@reference": { label: "Scanner parasitic emf", symbol: "δV_R" },
  "heater.pickup@reference": { label: "Heater pick-up", symbol: "δV_PS" },
  "junction@reference": { label: "Reference junction temperature", symbol: "δt_0S" },
  "junction.spread@reference": { label: "Spread of the junction block", symbol: "δt_0S2" },
  "reference.drift": { label: "Reference drift since its calibration", symbol: "δt_D" },
  "reference.interpolation": { label: "Interpolation of the reference's certificate", symbol: "δt_SI" },
  "reference.inhomogeneity": { label: "Reference inhomogeneity", symbol: "δt_H" },
  "furnace.uniformity": {
    label: "Furnace non-uniformity",
    symbol: "δt_F",
    excludes: ["furnace.axial", "furnace.radial", "furnace.gradient"],
  },
  "furnace.axial": {
    label: "Axial non-uniformity",
    symbol: "δt_FA",
    excludes: ["furnace.uniformity", "furnace.gradient", "sensor.immersion"],
  },
  "furnace.radial": {
    label: "Radial non-uniformity",
    symbol: "δt_FR",
    excludes: ["furnace.uniformity", "furnace.gradient"],
  },
  "furnace.gradient": {
    label: "Corrected gradient between places",
    symbol: "δt_FG",
    excludes: ["furnace.uniformity", "furnace.axial", "furnace.radial"],
  },
  "furnace.stability": { label: "Stability within the window", symbol: "δt_FS" },
  "sensor.repeatability": { label: "Sensor repeatability", symbol: "V_iX" },
  "voltmeter.calibration@sensor": { label: "Voltmeter calibration", symbol: "δV_iX1" },
  "voltmeter.drift@sensor": { label: "Voltmeter drift since its calibration", symbol: "δV_iX3" },
  "voltmeter.resolution@sensor": { label: "Voltmeter resolution", symbol: "δV_iX2" },
  "scanner.parasitic@sensor": { label: "Scanner parasitic emf", symbol: "δV_R" },
  "heater.pickup@sensor": { label: "Heater pick-up", symbol: "δV_PX" },
  "sensor.lead": { label: "Extension or compensating lead", symbol: "δV_LX" },
  "furnace.temperature": { label: "Furnace temperature", symbol: "δt_X" },
  "junction@sensor": { label: "Reference junction temperature", symbol: "δt_0X" },
  "junction.spread@sensor": { label: "Spread of the junction block", symbol: "δt_0X2" },
  "sensor.inhomogeneity": { label: "Sensor inhomogeneity", symbol: "δV_HX" },
  "sensor.immersion": { label: "Immersion", symbol: "δt_IX", excludes: ["furnace.axial"] },
  "sensor.shunting": { label: "Insulation shunting", symbol: "δV_SX" },
  "sensor.hysteresis": { label: "Hysteresis", symbol: "δV_YX" },
  shared: { label: "Shared voltmeter and junction", symbol: "2·cov" },
} as const satisfies Readonly<Record<string, LineMeaning>>;

export type LineKey = keyof typeof budgetLines;

/** What stands already behind another line of the budget. */
export function excludedBy(key: LineKey): readonly string[] {
  const meaning: LineMeaning = budgetLines[key];
  return meaning.excludes ?? [];
}
