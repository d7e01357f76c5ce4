/** What became of a certificate (ISO/IEC 17025:2017, 7.8.8). Its file stays as it was, whatever this says. */
export type Standing =
  /** Signed off and numbered; its files are being made. */
  | { readonly kind: "pending" }
  | { readonly kind: "valid" }
  | {
      readonly kind: "amended" | "replaced";
      /** The number of the one that counts instead. */
      readonly successor: string;
      readonly reason: string;
      /** ISO 8601, UTC. */
      readonly at: string;
    }
  | { readonly kind: "withdrawn"; readonly reason: string; readonly at: string };

export const standingLabels: Readonly<Record<Standing["kind"], string>> = {
  pending: "Being made",
  valid: "Valid",
  amended: "Amended",
  replaced: "Replaced",
  withdrawn: "Withdrawn",
};

export const hasEnded = (
  standing: Standing,
): standing is Extract<Standing, { readonly kind: "amended" | "replaced" | "withdrawn" }> =>
  standing.kind !== "pending" && standing.kind !== "valid";

/** In one sentence, for whoever holds it. */
export const standingSentence = (number: string, standing: Standing): string => {
  switch (standing.kind) {
    case "pending":
      return `${number} is signed off; its document is being made.`;
    case "valid":
      return `${number} is valid.`;
    case "withdrawn":
      return `${number} is withdrawn since ${standing.at.slice(0, 10)}: its results are not to be used. Reason: ${standing.reason}`;
    default:
      return `${number} is ${standing.kind} by ${standing.successor} since ${standing.at.slice(0, 10)}: use ${standing.successor}. Reason: ${standing.reason}`;
  }
};
