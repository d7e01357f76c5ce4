import type { RemarkStanding } from "@/lib/domain/review/decide-settled";
import type { Tx } from "../in-scope";
import { loadPeopleNames } from "./load-people-names";
import type { ReviewRun } from "./load-review-run";

export type Remark = RemarkStanding & {
  readonly id: string;
  readonly sensorId: string | null;
  readonly setpointId: string | null;
  readonly place: string;
  /** Of which evaluation: it stays at its number when the run is evaluated again. */
  readonly evaluation: number;
  readonly by: string;
  readonly byId: string;
  readonly at: string;
  readonly answers: readonly {
    readonly id: string;
    readonly text: string;
    readonly by: string;
    readonly at: string;
    readonly settles: boolean;
  }[];
};

/** Every remark made in the review of a run, of whichever evaluation, with what was said to it; the oldest first. */
export const loadRemarks = async (tx: Tx, { run, sensors }: ReviewRun): Promise<readonly Remark[]> => {
  const rows = await tx.reviewComment.findMany({ where: { runId: run.id }, orderBy: { id: "asc" } });
  if (rows.length === 0) return [];
  const names = await loadPeopleNames(
    tx,
    rows.map(({ writtenById }) => writtenById),
  );
  const evaluations = await tx.evaluation.findMany({
    where: { runId: run.id },
    select: { id: true, sequence: true },
  });
  return rows
    .filter(({ answersId }) => answersId === null)
    .map((row) => {
      const answers = rows.filter(({ answersId }) => answersId === row.id);
      const setpoint = run.setpoints.find(({ id }) => id === row.setpointId);
      return {
        id: String(row.id),
        sensorId: row.sensorId,
        setpointId: row.setpointId,
        sensor: sensors.find(({ id }) => id === row.sensorId)?.tag ?? null,
        setpoint: setpoint ? `${Number(setpoint.celsius.toFixed(2))} °C` : null,
        place: row.place,
        evaluation: evaluations.find(({ id }) => id === row.evaluationId)?.sequence ?? 0,
        text: row.text,
        by: names.get(row.writtenById) ?? "",
        byId: row.writtenById,
        at: row.writtenAt.toISOString(),
        isSettled: answers.some(({ settles }) => settles),
        answers: answers.map((answer) => ({
          id: String(answer.id),
          text: answer.text,
          by: names.get(answer.writtenById) ?? "",
          at: answer.writtenAt.toISOString(),
          settles: answer.settles,
        })),
      };
    });
};
