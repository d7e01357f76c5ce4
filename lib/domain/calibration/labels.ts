import type { Acceptance } from "./acceptance";
import type { ParentKind, ParentRoute } from "./parent";
import type { Route } from "./types";

/** Routes of metrological traceability after ILAC-P10:07/2020, in our words. */
export const routeLabels: Readonly<Record<Route, string>> = {
  nmi: "National metrology institute",
  accredited: "Accredited calibration laboratory",
  "in-house": "In-house calibration",
  other: "Other route, with its own evidence",
};

export const acceptanceLabels: Readonly<Record<Acceptance, string>> = {
  waiting: "Waits for acceptance",
  accepted: "Accepted",
  rejected: "Rejected: not to be used",
};

export const parentKindLabels: Readonly<Record<ParentKind, string>> = {
  "laboratory-standard": "Standard of the issuer",
  "national-standard": "National standard",
  "fixed-point": "Fixed point",
  si: "SI unit",
};

export const parentRouteLabels: Readonly<Record<ParentRoute, string>> = {
  ...routeLabels,
  realisation: "Realisation of the unit",
};
