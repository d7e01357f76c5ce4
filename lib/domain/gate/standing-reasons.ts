import type { GivenReason } from "./assessment";

/** Which bench check a code speaks of: a check made again takes the reason away that was given before it. */
const kindOf: Readonly<Record<string, string>> = {
  "warm-up": "warm-up",
  "shorted-zero": "shorted-zero",
  "channel-zero": "channel-zero",
  "voltage-point": "voltage-point",
  "junction-by-thermometer": "junction-thermometer",
};

type Checked = { readonly kind: string; readonly channel: string; readonly checkedAt: Date };

/**
 * Reasons that still stand on a day. One against a same-day check stands on its own day alone, and only until the
 * check is made again: it spoke of the figure that was there.
 */
export const standingReasons = (
  given: readonly GivenReason[],
  checks: readonly Checked[],
  day: string,
): readonly GivenReason[] =>
  given.filter(({ code, subject, saidAt }) => {
    const kind = kindOf[code];
    if (kind === undefined && code !== "tips-warmed") return true;
    if (saidAt.toISOString().slice(0, 10) !== day) return false;
    return !checks.some(
      (check) => check.kind === kind && check.channel === subject && check.checkedAt > saidAt,
    );
  });
