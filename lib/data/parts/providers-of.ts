import type { Tx } from "../in-scope";

/** Names of the external providers that these sensors' lines go to, by their id. */
export const providersOf = async (
  tx: Tx,
  sensors: readonly { readonly line: { readonly providerId: string | null } }[],
): Promise<ReadonlyMap<string, string>> => {
  const ids = [...new Set(sensors.flatMap(({ line }) => line.providerId ?? []))];
  if (ids.length === 0) return new Map();
  const rows = await tx.provider.findMany({ where: { id: { in: ids } } });
  return new Map(rows.map(({ id, name }) => [id, name]));
};
