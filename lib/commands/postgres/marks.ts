import type pg from "pg";

/**
 * What start has done once to this database. Not part of the laboratory's records, so not in their schema: the owner
 * role keeps it beside the list of applied migrations.
 */
export type Mark = "demo-begun" | "demo-complete";

export async function readMarks(client: pg.Client): Promise<ReadonlySet<Mark>> {
  const { rows } = await client.query<{ found: string | null }>(
    "SELECT to_regclass('public._emfolio_marks') AS found",
  );
  if (rows[0]?.found == null) return new Set();
  const marks = await client.query<{ name: Mark }>("SELECT name FROM _emfolio_marks");
  return new Set(marks.rows.map((row) => row.name));
}

/** Call as the owner role. */
export async function setMark(client: pg.Client, mark: Mark): Promise<void> {
  await client.query(
    "CREATE TABLE IF NOT EXISTS _emfolio_marks (name text PRIMARY KEY, made_at timestamptz NOT NULL DEFAULT now())",
  );
  await client.query("INSERT INTO _emfolio_marks (name) VALUES ($1) ON CONFLICT DO NOTHING", [mark]);
}
