import type pg from "pg";

/** Whatever waits for a second person's yes has it. */
export const acceptAll = async (admin: pg.Client, personId: string): Promise<void> => {
  for (const noun of ["calibration", "characterisation"]) {
    const [column, value] = noun === "calibration" ? [", checks", ", '{}'"] : ["", ""];
    await admin.query(
      `INSERT INTO ${noun}_decision (${noun}_id, decision, decided_by_id, decided_at${column})
       SELECT id, 'accepted', $1, greatest(now(), recorded_at)${value} FROM ${noun} AS it
        WHERE NOT EXISTS (SELECT FROM ${noun}_decision d WHERE d.${noun}_id = it.id)`,
      [personId],
    );
  }
};
