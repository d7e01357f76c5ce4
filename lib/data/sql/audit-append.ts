import type { Tx } from "@/lib/data/in-scope";

/** Appends one event under the locked head of the chain and returns its place in it. */
export const auditAppend = async (
  tx: Tx,
  actorId: string,
  action: string,
  entityKind: string,
  entityId: string,
  payload: string,
): Promise<bigint> => {
  const rows = await tx.$queryRaw<{ sequence: bigint }[]>`
    SELECT audit_append(${actorId}, ${action}, ${entityKind}, ${entityId}, ${payload}) AS sequence`;
  return rows[0]!.sequence;
};
