import { ok, type Result, refuse } from "../refusal";

/** A hold that keeps a sensor from going on: open, or ended by "return unmeasured". */
export type StandingHold = {
  readonly holdId: string;
  readonly tag: string;
  readonly orderNumber: string;
  readonly reason: string;
  /** It stands on the whole order. */
  readonly isOfOrder: boolean;
  readonly isToBeReturned: boolean;
  /** The nonconforming work it belongs to, by its number: only there the work resumes. */
  readonly nonconformity: string | null;
};

const waysOn = (holds: readonly StandingHold[]): string => {
  const open = holds.filter(({ isToBeReturned }) => !isToBeReturned);
  const reports = [...new Set(open.flatMap(({ nonconformity }) => nonconformity ?? []))];
  return [
    ...(reports.length > 0
      ? [`The work resumes on the page of ${reports.join(", ")}, once that is authorised there`]
      : []),
    ...(open.some(({ nonconformity }) => nonconformity === null)
      ? ["Release the hold on the sensor's page"]
      : []),
  ].join(". ");
};

const sentence = (hold: StandingHold): string =>
  hold.isToBeReturned
    ? `${hold.tag} goes back to the customer unmeasured (${hold.reason})`
    : `${hold.tag} is on hold${hold.isOfOrder ? ` with its order ${hold.orderNumber}` : ""}: ${hold.reason}`;

/** 7.4.3, 7.10: what is on hold is neither loaded nor signed off; a refusal names each sensor, once. */
export const decideNotHeld = (
  holds: readonly StandingHold[],
  doing: "loaded" | "signed off",
  fieldOf?: (tag: string) => string,
): Result<null> => {
  const [first] = holds;
  if (!first) return ok(null);
  const tags = [...new Set(holds.map(({ tag }) => tag))];
  const words = tags.map((tag) => sentence(holds.find((hold) => hold.tag === tag)!)).join("; ");
  const remedy = holds.every(({ isToBeReturned }) => isToBeReturned)
    ? "Leave it out and hand it back."
    : `${waysOn(holds)}, or leave the sensor out; the others can go on.`;
  return refuse(
    "rule",
    `${words}. It cannot be ${doing}, and nothing was stored. ${remedy}`,
    fieldOf &&
      Object.fromEntries(tags.map((tag) => [fieldOf(tag), `${tag} is on hold. Choose another sensor.`])),
  );
};
