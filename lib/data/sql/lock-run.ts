import type { Tx } from "../in-scope";

export type LockedRun = {
  readonly id: string;
  readonly number: string;
  readonly state: string;
  readonly version: number;
};

/** Locks a run until the transaction ends: submitting, returning, signing off and storing documents take turns. */
export const lockRun = async (tx: Tx, runId: string): Promise<LockedRun | null> => {
  const rows = await tx.$queryRaw<LockedRun[]>`
    select id::text as id, number, state, version from run where id = ${runId}::uuid for update`;
  return rows[0] ?? null;
};
