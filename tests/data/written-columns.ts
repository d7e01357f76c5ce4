import type pg from "pg";

/** The columns of a table that a row is written with: all but those the database makes from others. */
export const writtenColumns = async (admin: pg.Client, table: string): Promise<string> => {
  const { rows } = await admin.query<{ names: string }>(
    `SELECT string_agg(quote_ident(column_name), ', ') AS names FROM information_schema.columns
       WHERE table_schema = 'public' AND table_name = $1 AND is_generated = 'NEVER'`,
    [table],
  );
  return rows[0]!.names;
};
