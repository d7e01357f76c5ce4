type Sensor = {
  readonly state: string;
  readonly isHeld: boolean;
  readonly isGoingBack: boolean;
  readonly isReplaced: boolean;
  /** Every replaced sensor of the order has another one still awaited in its place. */
  readonly isAwaited: boolean;
};

/** Where a sensor is with which the work does not go on, said to its owner; null: it goes on. */
export const plainAside = (orderState: string, sensor: Sensor): string | null => {
  const { state, isAwaited, isGoingBack, isHeld, isReplaced } = sensor;
  // A cancelled order keeps nothing, whatever was asked of it.
  if (orderState === "cancelled")
    return state === "received" ? "Not measured, goes back to you: the order was cancelled" : null;
  const other = isAwaited ? "we wait for another sensor in its place" : "another sensor takes its place";
  if (isReplaced && state === "collected") return `Handed back unmeasured; ${other}`;
  if (isHeld) return "Stands still until something is settled";
  if (isReplaced) return `Not measured, goes back to you; ${other}`;
  return isGoingBack ? "Not measured, goes back to you" : null;
};
