import type { CertificateContent } from "./content";

/** How many sensors a certificate speaks of beside the one it is filed under: those of its lot. */
export const itemsBeside = ({ item, sets }: Pick<CertificateContent, "item" | "sets">): number =>
  new Set(sets?.map((set) => set.item.tag) ?? [item.tag]).size - 1;

/** "4711 and 9 more": a lot is named by the serial of its first sensor. */
export const andMore = (name: string, beside: number): string =>
  beside > 0 ? `${name} and ${beside} more` : name;
