import { inScope } from "@/lib/data/in-scope";
import { loadReviewRun } from "@/lib/data/review/load-review-run";
import { type Actor, actorIdOf } from "@/lib/domain/staff/actor";

/** Each result of the run's last evaluation, written down as opened by this person: the sign-off asks for some of them. */
export const openResults = (
  actor: Actor,
  runId: string,
  openedAt = new Date("2026-03-05T09:00:00Z"),
): Promise<void> =>
  inScope({ kind: "laboratory" }, async (tx) => {
    const { evaluation } = (await loadReviewRun(tx, runId))!;
    await tx.reviewOpening.createMany({
      data: evaluation!.results.map(({ sensorId, setpointId }) => ({
        runId,
        evaluationId: evaluation!.id,
        sensorId,
        setpointId,
        openedById: actorIdOf(actor),
        openedAt,
      })),
      skipDuplicates: true,
    });
  });
