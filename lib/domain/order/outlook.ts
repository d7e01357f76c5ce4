import { workingDaysBetween } from "./working-days";

/** What is still to be done for an order that was promised for a day. */
export type OpenWork = {
  readonly promisedOn: string;
  /** Ordered and not here. */
  readonly toCome: number;
  /** Here, and before or in the furnace. */
  readonly toMeasure: number;
  /** Of these, in no load yet. */
  readonly toLoad: number;
  /** Measured, and without certificate. */
  readonly toIssue: number;
  /** Measured by a provider or on site, and without certificate. */
  readonly elsewhere: number;
  /** The last day on which a furnace is taken for this order; null = none is taken. */
  readonly furnaceUntil: string | null;
  /** What takes the hours of a furnace that are kept for it: numbers of runs and characterisations. */
  readonly overlaps: readonly string[];
  /** A question or an offer without an answer, or a hold. */
  readonly isWaiting: boolean;
};

export type Outlook =
  | { readonly kind: "late"; readonly reasons: readonly string[] }
  | { readonly kind: "risk"; readonly reasons: readonly string[] }
  | { readonly kind: "fine"; readonly reasons: readonly [] };

/** Review, sign-off and certificate take the working day after the last reading. Common practice, no source. */
const finishingDays = 1;

const sensors = (count: number): string => `${count} sensor${count === 1 ? "" : "s"}`;

const leftText = (work: OpenWork): readonly string[] => [
  ...(work.toCome > 0 ? [`${sensors(work.toCome)} not here yet`] : []),
  ...(work.toMeasure > 0 ? [`${sensors(work.toMeasure)} to measure`] : []),
  ...(work.toIssue > 0 ? [`${sensors(work.toIssue)} without certificate`] : []),
  ...(work.elsewhere > 0 ? [`${sensors(work.elsewhere)} measured elsewhere, without certificate`] : []),
];

/** Working days that are needed from today on, if all goes well: loads one a day, and the finishing. */
const neededDays = (work: OpenWork, loadPlaces: number): number => {
  const unmeasured = work.toCome + work.toMeasure;
  const loads = Math.ceil(unmeasured / Math.max(1, loadPlaces));
  return unmeasured + work.toIssue + work.elsewhere === 0 ? 0 : loads + finishingDays;
};

/**
 * Late: the day is past and something is left. At risk: what is left needs more working days than there are, a furnace
 * is taken for it too late or not at all when it is time, the hours taken have passed without it or something else is in
 * the furnace then, or the customer is waited for and no day is to spare.
 */
export const outlookOf = (work: OpenWork, today: string, loadPlaces: number): Outlook => {
  const left = leftText(work);
  if (work.promisedOn < today) return { kind: "late", reasons: left.length > 0 ? left : ["not completed"] };
  const days = workingDaysBetween(today, work.promisedOn);
  const needed = neededDays(work, loadPlaces);
  const unmeasured = work.toCome + work.toMeasure;
  const reasons: string[] = [];
  if (days < needed) reasons.push(`${days} working days left, ${needed} needed`, ...left);
  if (unmeasured > 0 && work.furnaceUntil !== null && work.furnaceUntil >= today) {
    const after = workingDaysBetween(work.furnaceUntil, work.promisedOn);
    if (work.furnaceUntil > work.promisedOn || after < finishingDays)
      reasons.push(`the furnace is taken for it until ${work.furnaceUntil}`);
  }
  if (work.toCome + work.toLoad > 0 && work.furnaceUntil !== null && work.furnaceUntil < today)
    reasons.push(
      `its furnace hours ended on ${work.furnaceUntil}, ${sensors(work.toCome + work.toLoad)} not in a load: promise it anew`,
    );
  if (work.overlaps.length > 0)
    reasons.push(`${work.overlaps.join(", ")} in the furnace during the hours kept for it`);
  if (unmeasured > 0 && work.furnaceUntil === null && days <= needed + 1 && days >= needed)
    reasons.push("no furnace is taken for it");
  if (work.isWaiting && needed > 0 && days <= needed + 1) reasons.push("the customer is waited for");
  return reasons.length > 0 ? { kind: "risk", reasons } : { kind: "fine", reasons: [] };
};
