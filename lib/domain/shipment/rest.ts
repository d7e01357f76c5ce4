/** What of an order is not sent back yet, and how many of these are finished, with their certificates. */
export type ShipmentRest = {
  readonly remaining: number;
  readonly finished: number;
  /** So many of what remains are not here: others are awaited in the place of what is not measured. Left out: none. */
  readonly awaited?: number;
  /** So many more of what remains have never come. Left out: none, or not said yet when the note was made. */
  readonly missing?: number;
};

const follow = (count: number): string => (count === 1 ? "it follows" : "they follow");
const are = (count: number): string => (count === 1 ? "is" : "are");

/** For the customer: what is promised of the others is only what is still to be done. */
const inTheirPlace = (awaited: number): string =>
  awaited === 1
    ? "another sensor in the place of the one that is not measured"
    : `${awaited} other sensors in the place of those that are not measured`;

const here = ({ remaining, finished, awaited = 0, missing = 0 }: ShipmentRest): ShipmentRest => ({
  remaining: remaining - awaited - missing,
  finished,
});

const notCome = (missing: number): string =>
  missing === 1 ? "1 has not reached us." : `${missing} have not reached us.`;

/** What lies here, where it is not all that is left: “the other ones” would speak of what never came too. */
const stillHere = ({ remaining, finished }: ShipmentRest): string => {
  if (remaining === 0) return "Nothing of this order is left with us.";
  const many = `${remaining} of this order ${are(remaining)} still with us`;
  const they = remaining === 1 ? "follows" : "follow";
  if (finished >= remaining) return `${many}, finished already, and ${they} with another delivery.`;
  if (finished === 0) return `${many} and ${they} when finished.`;
  return `${many}: ${finished} ${are(finished)} finished already and ${finished === 1 ? "follows" : "follow"} with another delivery; the others when finished.`;
};

export const restForCustomer = (rest: ShipmentRest): string => {
  const { remaining, finished, awaited = 0, missing = 0 } = rest;
  if (missing > 0) {
    const others = awaited > 0 ? ` The order waits for ${inTheirPlace(awaited)}.` : "";
    return `${stillHere(here(rest))} ${notCome(missing)}${others}`;
  }
  if (awaited > 0) return `${restForCustomer(here(rest))} The order waits for ${inTheirPlace(awaited)}.`;
  if (remaining === 0) return "Nothing of this order is left with us.";
  if (finished >= remaining)
    return remaining === 1
      ? "The last one of this order is finished too and follows with another delivery."
      : `The other ${remaining} of this order are finished too and follow with another delivery.`;
  if (finished === 0)
    return remaining === 1
      ? "The other one of this order follows when it is finished."
      : `The other ${remaining} of this order follow when they are finished.`;
  return `Of the others of this order, ${finished} ${are(finished)} finished too and ${finished === 1 ? "follows" : "follow"} with another delivery; the rest when they are finished.`;
};

/** As it stands under "Still with us" on the delivery note. */
export const restOnNote = (rest: ShipmentRest): string => {
  const { remaining, finished, awaited = 0, missing = 0 } = rest;
  if (missing > 0) {
    const others = awaited > 0 ? ` Awaited: ${inTheirPlace(awaited)}.` : "";
    return `${restOnNote(here(rest))} ${notCome(missing)}${others}`;
  }
  if (awaited > 0) return `${restOnNote(here(rest))} Awaited: ${inTheirPlace(awaited)}.`;
  if (remaining === 0) return "Nothing of this order.";
  const many = `${remaining} of this order`;
  if (finished >= remaining) return `${many}, finished already; ${follow(remaining)} with another delivery.`;
  if (finished === 0) return `${many}; ${follow(remaining)} when finished.`;
  return `${many}: ${finished} ${are(finished)} finished already and ${finished === 1 ? "follows" : "follow"} with another delivery; the others when finished.`;
};
