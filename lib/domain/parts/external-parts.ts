import { isSameSetpoint } from "./same-setpoint";

/** Of a sensor whose line an external provider does: how far its certificate is here. */
export type ExternalFacts = {
  readonly provider: string;
  readonly isWaitingForSecond: boolean;
  /** By its custody log it is with them. */
  readonly isAway: boolean;
  /** Why the last record was rejected; null: it was not, or none is here. */
  readonly rejected: { readonly certificate: string; readonly reason: string } | null;
  /** The record that counts: its certificate, and the ordered setpoints it answers. */
  readonly report: { readonly certificate: string; readonly celsius: readonly number[] } | null;
};

type ExternalPart = {
  readonly state: "waiting" | "reported" | "not-reached";
  readonly run: null;
  readonly certificate: null;
  readonly by?: string;
};

export const externalPart = ({ provider, report }: ExternalFacts, celsius: number): ExternalPart => {
  const none = { run: null, certificate: null };
  if (report === null) return { state: "waiting", ...none };
  return report.celsius.some((one) => isSameSetpoint(one, celsius))
    ? { state: "reported", ...none, by: provider }
    : { state: "not-reached", ...none };
};

/** Whose turn it is while no hold keeps it. */
export const nextOfExternal = (external: ExternalFacts, state: string): string => {
  const { provider, report, rejected, isAway } = external;
  if (external.isWaitingForSecond)
    return `A second person holds the record against ${provider}'s certificate.`;
  if (report !== null && state === "issued")
    return `Measured by ${provider}, certificate ${report.certificate}: ${isAway ? "it is still there. Record that it came back, then send it back." : "send it back."}`;
  if (report === null && rejected !== null)
    return `The record of certificate ${rejected.certificate} was rejected (${rejected.reason.replace(/[.\s]+$/, "")}): record their certificate again on its page.`;
  if (isAway)
    return `${provider} measures it and has it: record their certificate on its page when it is here.`;
  return `${provider} measures it: send it there, then record their certificate on its page.`;
};
