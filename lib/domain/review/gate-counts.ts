import type { StoredRow } from "../gate/stored-outcome";

/** How the gate was passed, in counts; null: the run began before runs had one. */
export const gateCounts = (rows: readonly Pick<StoredRow, "severity" | "given">[]) =>
  rows.length === 0
    ? null
    : {
        warnings: rows.filter(({ severity }) => severity === "warning").length,
        setAside: rows.filter(({ given }) => given !== null).length,
      };
