/** Resistance in Ω of a platinum thermometer of 100 Ω at t in °C. Source: IEC 60751:2008, the function of the standard (four decimals). */
export const iec60751Resistances: readonly (readonly [celsius: number, ohm: string])[] = [
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
