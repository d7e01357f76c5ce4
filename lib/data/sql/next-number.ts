import type { Tx } from "@/lib/data/in-scope";

/** Takes the next number of a counter; its row stays locked until commit, and a rollback gives the number back. */
export const nextNumberRow = async (tx: Tx, counter: string): Promise<number> => {
  const rows = await tx.$queryRaw<{ taken: number }[]>`SELECT next_number(${counter}) AS taken`;
  return rows[0]!.taken;
};
