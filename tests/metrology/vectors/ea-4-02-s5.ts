import { publishedValues } from "./published-value";

const document = "EA-4/02, supplement 1, S5: calibration of a type N thermocouple at 1000 °C";
const provenance = "read";

/** Inputs of the example. Its text is not at hand; these stand in the transcription of the budgets. */
export const eaS5Inputs = {
  /** °C/µV, of the references at 1000 °C and at 0 °C, and of the thermocouple. */
  CS: 0.077,
  CS0: 0.189,
  CX: 0.026,
  CX0: 0.039,
} as const;

/** Budget of the furnace's temperature, °C. Signs as the model gives them. */
export const eaS5Furnace = publishedValues(
  "EA-4/02 S5, furnace and thermocouple",
  { document, readAt: "http://www.metrodata.de/examples/s05_1_en.html and S05_1.smu", provenance },
  {
    tS: ["budget of t_X, row t_S, °C", "0.10"],
    calibration: ["budget of t_X, row δt_S, °C", "0.15"],
    voltmeter: ["budget of t_X, row δV_iS1, °C", "0.077"],
    resolution: ["budget of t_X, row δV_iS2, °C", "0.022"],
    scanner: ["budget of t_X, row δV_R, °C", "0.089"],
    junction: ["budget of t_X, row δt_0S, °C", "-0.024"],
    drift: ["budget of t_X, row δt_D, °C", "0.173"],
    uniformity: ["budget of t_X, row δt_F, °C", "0.577"],
    combinedTX: ["budget of t_X, u(t_X), °C", "0.641"],
    combinedTXFull: ["S05_1.smu: u(t_X) in full, °C", "0.640870516811861"],
    expandedTX: ["budget of t_X, U at k = 2, °C", "1.3"],
  },
);

/** Budget of the thermocouple's emf, µV. */
export const eaS5Emf = publishedValues(
  "EA-4/02 S5, furnace and thermocouple",
  { document, readAt: "http://www.metrodata.de/examples/s05_2_en.html and S05_2.smu", provenance },
  {
    indication: ["budget of V_X, row V_iX, µV", "1.60"],
    emfVoltmeter: ["budget of V_X, row δV_iX1, µV", "1.00"],
    emfResolution: ["budget of V_X, row δV_iX2, µV", "0.29"],
    emfScanner: ["budget of V_X, row δV_R, µV", "1.15"],
    cable: ["budget of V_X, row δV_LX, µV", "2.9"],
    temperature: [
      "budget of V_X, row δt_X, µV",
      "24.5",
      { absolute: 0.16, reason: "printed 24.5 where 0.641 °C over 0.026 °C/µV is 24.65: rounded on the way" },
    ],
    emfJunction: ["budget of V_X, row δt_0X, µV", "-1.48"],
    combinedVX: ["budget of V_X, u(V_X), µV", "25.0"],
    combinedVXFull: ["S05_2.smu: u(V_X) with u(t_X) = 0.641 °C, µV", "24.9662506362208"],
    expandedVX: ["result, U of V_X at k = 2, µV", "50"],
  },
);

/** The sentence of the result and the sign it needs: not in the transcription that was read. */
export const eaS5Remembered = publishedValues(
  "EA-4/02 S5, furnace and thermocouple",
  { document, readAt: "", provenance: "from-memory" },
  {
    reported: ["result: reported emf, µV", "36230"],
    computed: ["budget of V_X: V_X, µV", "36229"],
  },
);
