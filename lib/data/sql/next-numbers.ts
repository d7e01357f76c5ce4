import type { Tx } from "@/lib/data/in-scope";

/** Several numbers of a counter at once, in their order; its row stays locked until commit, as for one. */
export const nextNumberRows = async (tx: Tx, counter: string, count: number): Promise<readonly number[]> => {
  const rows = await tx.$queryRaw<{ taken: number }[]>`
    SELECT next_number(${counter}) AS taken FROM generate_series(1, ${count}::int)`;
  return rows.map(({ taken }) => taken).toSorted((left, right) => left - right);
};
