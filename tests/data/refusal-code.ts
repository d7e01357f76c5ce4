import pg from "pg";

/** The SQLSTATE with which a statement is refused; undefined if it went through. */
export const refusalCode = async (client: pg.Client, sql: string): Promise<string | undefined> => {
  await client.query("BEGIN; SET LOCAL app.scope = 'laboratory'");
  try {
    await client.query(sql);
    return undefined;
  } catch (error) {
    if (error instanceof pg.DatabaseError) return error.code;
    throw error;
  } finally {
    await client.query("ROLLBACK");
  }
};

export const insufficientPrivilege = "42501";
