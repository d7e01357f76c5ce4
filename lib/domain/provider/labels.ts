import type { ProviderRoute, ProviderState } from "./types";

export const providerRouteLabels: Readonly<Record<ProviderRoute, string>> = {
  nmi: "National metrology institute",
  accredited: "Accredited calibration laboratory",
  other: "Other, with its own evidence",
};

export const providerStateLabels: Readonly<Record<ProviderState, string>> = {
  candidate: "Not approved yet",
  approved: "Approved",
  suspended: "Suspended",
};
