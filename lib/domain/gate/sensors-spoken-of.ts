import { type NamedPlace, nameOf } from "./name-of";
import type { StoredRow } from "./stored-outcome";

export type PlaceOnJunction = NamedPlace & { readonly kind: string; readonly junction: string };

/**
 * The sensors, by tag, that a row of the gate speaks of; null = all of them: what is said of the whole run, of a
 * reference or of an instrument.
 */
export const sensorsSpokenOf = (
  { code, subjects }: Pick<StoredRow, "code" | "subjects">,
  places: readonly PlaceOnJunction[],
): ReadonlySet<string> | null => {
  const sensors = places.filter(({ kind }) => kind === "sensor");
  const tags = new Set<string>();
  for (const subject of subjects) {
    const own = sensors.filter((place) => nameOf(code, place) === subject || place.junction === subject);
    if (own.length === 0) return null;
    for (const { tag } of own) if (tag !== null) tags.add(tag);
  }
  return tags.size > 0 ? tags : null;
};
