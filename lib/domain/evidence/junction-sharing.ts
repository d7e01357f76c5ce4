import type { Junction } from "./bench";

type AtJunction = { readonly junction: Junction } | undefined;

/** One junction, or two of one block: an error of the block's thermometer acts on both alike. */
export function sharesJunction(one: AtJunction, other: AtJunction): boolean {
  if (!one || !other) return false;
  if (one.junction.id === other.junction.id) return true;
  return one.junction.block !== undefined && one.junction.block === other.junction.block;
}
