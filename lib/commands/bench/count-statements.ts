import pg from "pg";

/** Every statement that leaves this process for the server, transaction and scope included. */
export const countStatements = async (work: () => Promise<unknown>): Promise<number> => {
  const { query } = pg.Client.prototype;
  let count = 0;
  pg.Client.prototype.query = function counted(this: pg.Client, ...given: unknown[]) {
    count += 1;
    return Reflect.apply(query, this, given);
  } as typeof query;
  try {
    await work();
  } finally {
    pg.Client.prototype.query = query;
  }
  return count;
};
