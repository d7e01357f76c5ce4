import type { EntryFigures } from "./figures";
import { isToBeTold } from "./impact";

type Concerned = { readonly customerId: string; readonly orderNumber: string };

/** Each customer once, with the orders that are concerned: by the last effect that was stated, and by what stands still. */
export const whomToTell = (
  effect: EntryFigures | null,
  held: readonly Concerned[],
): readonly { readonly customerId: string; readonly orders: readonly string[] }[] => {
  const concerned: readonly Concerned[] = [
    ...(effect?.certificates ?? []).filter(({ impact }) => isToBeTold(impact)),
    ...held,
  ];
  return [...new Set(concerned.map(({ customerId }) => customerId))].map((customerId) => ({
    customerId,
    orders: [
      ...new Set(
        concerned.flatMap((one) => (one.customerId === customerId ? [one.orderNumber] : [])).toSorted(),
      ),
    ],
  }));
};
