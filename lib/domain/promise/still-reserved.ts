/** Hours kept for an order, in milliseconds. */
export type Reservation = {
  readonly startsAt: number;
  /** null: hours of no order. */
  readonly orderId: string | null;
  /** Measurements they are for; null = not told. */
  readonly sensors: number | null;
  /** Measurements the whole order still waits for a furnace with. */
  readonly owed: number;
};

/**
 * What is still reserved. An order's sensors that are in a run, or were in one, take that run's hours: of the order's
 * own, the earliest are used up, as far as the later ones are enough for what still waits.
 */
export const stillReserved = <One extends Reservation>(reservations: readonly One[]): readonly One[] => {
  const covered = new Map<string, number>();
  const isKept = ({ orderId, owed, sensors }: One): boolean => {
    if (orderId === null) return true;
    const before = covered.get(orderId) ?? 0;
    // Hours for nobody knows how many cover nothing for sure, and are kept while anything waits.
    covered.set(orderId, before + (sensors ?? 0));
    return before < owed;
  };
  return reservations
    .toSorted((left, right) => right.startsAt - left.startsAt)
    .filter(isKept)
    .toReversed();
};
