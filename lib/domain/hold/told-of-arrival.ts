import type { HoldKind } from "./labels";

type ArrivalHold = {
  /** Empty: the whole order. */
  readonly tag: string;
  readonly kind: HoldKind;
  readonly questions: readonly { readonly answer: object | null }[];
  readonly release: object | null;
};

/**
 * What was found on a sensor's arrival was told to its customer, who answered, and the hold it stood on has ended
 * (ISO/IEC 17025:2017, 7.4.3). A hold ended without an answer says nothing of the customer.
 */
export const isToldOfArrival = (tag: string, holds: readonly ArrivalHold[]): boolean => {
  const own = holds.filter((hold) => hold.tag === tag && hold.kind === "condition");
  return (
    own.every(({ release }) => release !== null) &&
    own.some(({ questions }) => questions.some(({ answer }) => answer !== null))
  );
};
