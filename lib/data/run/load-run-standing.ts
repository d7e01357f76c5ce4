import type { Tx } from "../in-scope";

const lastPer = <T>(rows: readonly T[], key: (row: T) => string): readonly T[] => [
  ...new Map(rows.map((row) => [key(row), row])).values(),
];

/** What was said of a run so far, the last word of each: tip checks, windows, states of sensors. */
export const loadRunStanding = async (tx: Tx, runId: string) => {
  const ordered = { where: { runId }, orderBy: { id: "asc" } } as const;
  const tips = await tx.tipCheck.findMany(ordered);
  const windows = await tx.stabilityWindow.findMany(ordered);
  const states = await tx.sensorSetpointState.findMany(ordered);
  return {
    tips: lastPer(tips, (row) => row.loadPlaceId),
    windows: lastPer(windows, (row) => row.setpointId),
    states: lastPer(states, (row) => `${row.sensorId} ${row.setpointId}`),
  };
};

export type RunStanding = Awaited<ReturnType<typeof loadRunStanding>>;
