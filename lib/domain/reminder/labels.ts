import type { DueKind } from "./types";

export const dueKindLabels: Readonly<Record<DueKind, string>> = {
  calibration: "Calibration",
  "intermediate-check": "Intermediate check",
  maintenance: "Maintenance",
  characterisation: "Characterisation",
};
