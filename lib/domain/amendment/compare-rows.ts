import type { CertificateContent, CertificateRow } from "../certificate/content";

/** One result as the earlier certificate states it and as the one that follows would; null: it states none there. */
export type ComparedRow = {
  readonly key: string;
  /** "T-0012 at 400 °C" */
  readonly label: string;
  readonly earlier: CertificateRow | null;
  readonly later: CertificateRow | null;
  readonly isChanged: boolean;
};

type Stated = { readonly key: string; readonly label: string; readonly row: CertificateRow };

/** By sensor, set and setpoint; a second measurement of the same counts on. */
const stated = ({ item, rows, sets }: CertificateContent): readonly Stated[] => {
  const seen = new Map<string, number>();
  const all = sets ?? [{ item, rows, kind: "as-received" as const }];
  return all.flatMap(({ item: { tag }, kind, rows: own }) =>
    own.map((row) => {
      const base = `${tag} ${kind} ${row.setpoint}`;
      const count = (seen.get(base) ?? 0) + 1;
      seen.set(base, count);
      const set = kind === "after-anneal" ? ", after annealing" : "";
      return { key: `${base} ${count}`, label: `${tag} at ${row.setpoint}${set}`, row };
    }),
  );
};

/** What is printed of it; the figures that are only drawn may differ where no word does. */
const printed = (row: CertificateRow | null): string => JSON.stringify(row && { ...row, plot: null });

/** Each result of both, in the order of the earlier certificate; what only the new one states comes last. */
export const compareRows = (old: CertificateContent, next: CertificateContent): readonly ComparedRow[] => {
  const before = stated(old);
  const after = stated(next);
  const keys = new Map([...before, ...after].map(({ key, label }) => [key, label]));
  return [...keys].map(([key, label]) => {
    const earlier = before.find((one) => one.key === key)?.row ?? null;
    const later = after.find((one) => one.key === key)?.row ?? null;
    return {
      ...{ key, label, earlier, later },
      isChanged: printed(earlier) !== printed(later),
    };
  });
};
