import type { Hours } from "./first-gap";

type Kept = Hours & { readonly orderId: string | null; readonly order: string | null };
type Placed = {
  readonly work: { readonly number: string; readonly orders: readonly string[] };
  readonly hours: Hours;
};

const overlap = (one: Hours, other: Hours): boolean =>
  one.furnaceId === other.furnaceId && one.startsAt < other.endsAt && other.startsAt < one.endsAt;

/**
 * What lies in the hours kept for an order, by the order's id: numbers of the runs and characterisations that do. A run
 * with sensors of the order itself takes nothing from it.
 */
export const takenOver = (
  reserved: readonly Kept[],
  placed: readonly Placed[],
): ReadonlyMap<string, readonly string[]> => {
  const over = new Map<string, readonly string[]>();
  for (const slot of reserved) {
    if (slot.orderId === null) continue;
    const works = placed
      .filter(({ hours, work }) => overlap(slot, hours) && !work.orders.includes(slot.order ?? ""))
      .map(({ work }) => work.number);
    const all = [...new Set([...(over.get(slot.orderId) ?? []), ...works])];
    if (all.length > 0) over.set(slot.orderId, all);
  }
  return over;
};
