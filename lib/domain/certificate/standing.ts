/** It ended before its document was made, which is never made any more: there is nothing to fetch. */
type Unmade = { readonly isUnmade?: true };

/** What became of a certificate (ISO/IEC 17025:2017, 7.8.8). Its file stays as it was, whatever this says. */
export type Standing =
  /** Signed off and numbered; its files are being made. */
  | { readonly kind: "pending" }
  | { readonly kind: "valid" }
  | (Unmade & {
      readonly kind: "amended" | "replaced";
      /** The number of the one that counts instead. */
      readonly successor: string;
      /** Of its address; left out where this scope does not see it. */
      readonly successorToken?: string;
      readonly reason: string;
      /** ISO 8601, UTC. */
      readonly at: string;
    })
  | (Unmade & { readonly kind: "withdrawn"; readonly reason: string; readonly at: string });

export const standingLabels: Readonly<Record<Standing["kind"], string>> = {
  pending: "Being made",
  valid: "Valid",
  amended: "Amended",
  replaced: "Replaced",
  withdrawn: "Withdrawn",
};

type Ended = Extract<Standing, { readonly kind: "amended" | "replaced" | "withdrawn" }>;

export const hasEnded = (standing: Standing): standing is Ended =>
  standing.kind !== "pending" && standing.kind !== "valid";

/** Whether its document can be fetched. */
export const hasDocument = (standing: Standing): boolean =>
  standing.kind !== "pending" && !(hasEnded(standing) && standing.isUnmade);

/** What became of it in one sentence, cut where the number of the one that counts instead stands: there it can be a link. */
export const endingParts = (
  number: string,
  standing: Ended,
): { readonly before: string; readonly successor: string; readonly after: string } => {
  const since = standing.at.slice(0, 10);
  const reason = ` Reason: ${standing.reason}`;
  if (standing.kind === "withdrawn") {
    const before = `${number} is withdrawn since ${since}: its results are not to be used.${reason}`;
    return { before, successor: "", after: "" };
  }
  const { successor } = standing;
  const before = `${number} is ${standing.kind} by ${successor} since ${since}: use `;
  return { before, successor, after: `.${reason}` };
};

/** In one sentence, for whoever holds it. */
export const standingSentence = (number: string, standing: Standing): string => {
  if (standing.kind === "pending") return `${number} is signed off; its document is being made.`;
  if (standing.kind === "valid") return `${number} is valid.`;
  const { before, successor, after } = endingParts(number, standing);
  return `${before}${successor}${after}`;
};
