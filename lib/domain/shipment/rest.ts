/** What of an order is not sent back yet, and how many of these are finished, with their certificates. */
export type ShipmentRest = { readonly remaining: number; readonly finished: number };

const follow = (count: number): string => (count === 1 ? "it follows" : "they follow");
const are = (count: number): string => (count === 1 ? "is" : "are");

/** For the customer: what is promised of the others is only what is still to be done. */
export const restForCustomer = ({ remaining, finished }: ShipmentRest): string => {
  if (remaining === 0) return "Nothing of this order is left with us.";
  if (finished >= remaining)
    return remaining === 1
      ? "The last one of this order is finished too and follows with another delivery."
      : `The other ${remaining} of this order are finished too and follow with another delivery.`;
  if (finished === 0) return "The others of this order follow when they are finished.";
  return `Of the others of this order, ${finished} ${are(finished)} finished too and ${finished === 1 ? "follows" : "follow"} with another delivery; the rest when they are finished.`;
};

/** As it stands under "Still with us" on the delivery note. */
export const restOnNote = ({ remaining, finished }: ShipmentRest): string => {
  if (remaining === 0) return "Nothing of this order.";
  const many = `${remaining} of this order`;
  if (finished >= remaining) return `${many}, finished already; ${follow(remaining)} with another delivery.`;
  if (finished === 0) return `${many}; ${follow(remaining)} when finished.`;
  return `${many}: ${finished} ${are(finished)} finished already and ${finished === 1 ? "follows" : "follow"} with another delivery; the others when finished.`;
};
