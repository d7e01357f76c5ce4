import type { Tx } from "../in-scope";

/** Person id → name, for those this scope may see. */
export const loadPeopleNames = async (
  tx: Tx,
  personIds: readonly string[],
): Promise<ReadonlyMap<string, string>> => {
  const rows = await tx.person.findMany({
    where: { id: { in: [...new Set(personIds)] } },
    select: { id: true, name: true },
  });
  return new Map(rows.map((row) => [row.id, row.name]));
};
