export const activities = ["sign-off", "opinion"] as const;
export type Activity = (typeof activities)[number];
export const activityLabels: Readonly<Record<Activity, string>> = {
  "sign-off": "Sign off results",
  opinion: "State opinions and interpretations",
};

export const scopes = ["inside", "any"] as const;
export type AuthorisedScope = (typeof scopes)[number];
export const scopeLabels: Readonly<Record<AuthorisedScope, string>> = {
  inside: "Inside the laboratory’s scope only",
  any: "Inside and outside the scope",
};

/** What a person may do for the laboratory, explicitly (ISO/IEC 17025 6.2.6). Days as YYYY-MM-DD, in UTC. */
export type Authorisation = {
  readonly id: string;
  readonly activity: Activity;
  /** "KNS"; empty: every type. */
  readonly typeLetters: string;
  readonly fromCelsius: number;
  readonly toCelsius: number;
  readonly scope: AuthorisedScope;
  /** null: every procedure. */
  readonly procedureId: string | null;
  readonly validFrom: string;
  /** The last day; null: until it is withdrawn. */
  readonly validUntil: string | null;
  readonly withdrawnAt: Date | null;
};

export type AuthorisationState = "in-force" | "not-yet" | "ended" | "withdrawn";

/** Days count by UTC, as on certificates. */
export const authorisationState = (
  { validFrom, validUntil, withdrawnAt }: Pick<Authorisation, "validFrom" | "validUntil" | "withdrawnAt">,
  at: Date,
): AuthorisationState => {
  const today = at.toISOString().slice(0, 10);
  if (withdrawnAt !== null && withdrawnAt <= at) return "withdrawn";
  if (today < validFrom) return "not-yet";
  return validUntil !== null && validUntil < today ? "ended" : "in-force";
};
