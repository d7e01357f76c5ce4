import type { Tx } from "../in-scope";
import { loadPeopleNames } from "../review/load-people-names";

export type StandingOpinion = {
  readonly text: string;
  readonly basis: string;
  /** Whose, by name. */
  readonly by: string;
  readonly authorId: string;
  readonly writtenAt: Date;
};

/** Sensor id → the opinion that stands in this run: the last one written, unless it was taken back. */
export const opinionsOf = async (tx: Tx, runId: string): Promise<ReadonlyMap<string, StandingOpinion>> => {
  const rows = await tx.opinion.findMany({ where: { runId }, orderBy: { id: "asc" } });
  const last = [...new Map(rows.map((row) => [row.sensorId, row])).values()].filter(
    ({ text }) => text !== "",
  );
  const names = await loadPeopleNames(
    tx,
    last.map(({ authorId }) => authorId),
  );
  return new Map(
    last.map(({ sensorId, text, basis, authorId, writtenAt }) => [
      sensorId,
      { text, basis, by: names.get(authorId) ?? "", authorId, writtenAt },
    ]),
  );
};

/** `text` empty: what was written before is taken back, and `basis` says why. */
export const insertOpinion = (
  tx: Tx,
  opinion: {
    readonly runId: string;
    readonly sensorId: string;
    readonly customerId: string;
    readonly text: string;
    readonly basis: string;
    readonly authorisationId: string;
    readonly authorId: string;
    readonly writtenAt: Date;
  },
) => tx.opinion.create({ data: opinion });
