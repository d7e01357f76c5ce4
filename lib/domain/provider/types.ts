import type { EquipmentKind } from "../equipment/types";

export const providerRoutes = ["nmi", "accredited", "other"] as const;
export type ProviderRoute = (typeof providerRoutes)[number];

export const providerStates = ["candidate", "approved", "suspended"] as const;
export type ProviderState = (typeof providerStates)[number];

/** For what it is approved: a kind of equipment, and where it matters a range of temperature, in words. */
export type ProviderScope = readonly { readonly kind: EquipmentKind; readonly range: string }[];

/** Who calibrates for the laboratory, ISO/IEC 17025 6.6. */
export type Provider = {
  readonly id: string;
  readonly name: string;
  readonly route: ProviderRoute;
  readonly accreditation: string;
  readonly accreditationBody: string;
  readonly state: ProviderState;
  /** ISO dates; null until it was approved once. */
  readonly approvedFrom: string | null;
  readonly approvedUntil: string | null;
  readonly scope: ProviderScope;
  readonly note: string;
  readonly version: number;
};
