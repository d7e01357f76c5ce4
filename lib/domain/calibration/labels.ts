import type { Route } from "./types";

/** Routes of metrological traceability after ILAC-P10:07/2020, in our words. */
export const routeLabels: Readonly<Record<Route, string>> = {
  nmi: "National metrology institute",
  accredited: "Accredited calibration laboratory",
  "in-house": "In-house calibration",
  other: "Other route, with its own evidence",
};
