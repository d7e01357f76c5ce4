import type { Provider } from "./types";

/** Approved now, for the kind, and on the day the calibration was performed. A suspension counts for all its certificates. */
export const isApprovedFor = (
  provider: Pick<Provider, "state" | "approvedFrom" | "approvedUntil" | "scope"> | null,
  kind: string,
  performedOn: string,
): boolean =>
  provider?.state === "approved" &&
  provider.approvedFrom !== null &&
  provider.approvedUntil !== null &&
  provider.approvedFrom <= performedOn &&
  performedOn <= provider.approvedUntil &&
  provider.scope.some((one) => one.kind === kind);
