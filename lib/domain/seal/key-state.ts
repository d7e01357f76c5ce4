import { type Ending, endingThatCounts } from "./ending";

export type DatedKey = {
  readonly notBefore: Date;
  readonly notAfter: Date;
  readonly endings: readonly Ending[];
};

/** Time enough to buy a certificate, or to restart at leisure. */
export const warningDays = 60;

const dayMs = 86_400_000;

export type KeyState =
  | { readonly kind: "in-force" }
  | { readonly kind: "ends-soon"; readonly days: number }
  | { readonly kind: "not-yet" }
  | { readonly kind: "expired" }
  | { readonly kind: "retired" | "revoked"; readonly from: Date };

/** How a key stands at a moment. */
export const keyState = ({ notBefore, notAfter, endings }: DatedKey, now: Date): KeyState => {
  const ending = endingThatCounts(endings.filter(({ effectiveAt }) => effectiveAt <= now));
  if (ending) return { kind: ending.kind === "revoked" ? "revoked" : "retired", from: ending.effectiveAt };
  if (now < notBefore) return { kind: "not-yet" };
  if (now > notAfter) return { kind: "expired" };
  const days = Math.floor((notAfter.getTime() - now.getTime()) / dayMs);
  return days < warningDays ? { kind: "ends-soon", days } : { kind: "in-force" };
};
