import { nameField, oneOf, type Query, readQuery, textField, uuidField } from "../list/query";
import { sensorStates } from "./transitions";

/** here: all that have not been handed back. */
export const sensorFilters = ["here", ...sensorStates, "all"] as const;
export type SensorFilter = (typeof sensorFilters)[number];

export const sensorOnly = ["load", "provider", "provider-check", "hand-back", "late", "held"] as const;
export type SensorOnly = (typeof sensorOnly)[number];
export const sensorOnlyLabels: Readonly<Record<SensorOnly, string>> = {
  load: "To load",
  provider: "For a provider to measure",
  "provider-check": "Provider’s certificate to check",
  "hand-back": "To hand back",
  late: "Of late orders",
  held: "On hold",
};

const fields = {
  show: oneOf(sensorFilters),
  only: oneOf(sensorOnly),
  customer: uuidField,
  type: /^[A-Z]$/,
  find: textField,
  after: nameField,
  before: nameField,
} as const;

export type SensorQuery = Query<typeof fields>;

export const readSensorQuery = (given: Parameters<typeof readQuery>[1]): SensorQuery =>
  readQuery(fields, given);

export const shownSensors = (query: SensorQuery): SensorFilter =>
  sensorFilters.find((name) => name === query.show) ?? "here";
