import { expect } from "vitest";
import { inScope } from "@/lib/data/in-scope";
import { execute } from "@/lib/operations/execute";
import { answerComment } from "@/lib/operations/review/answer-comment";
import { comment } from "@/lib/operations/review/comment";
import { openResult } from "@/lib/operations/review/open-result";
import type { World } from "../../support/build-world";
import { signClock } from "../../support/sign-run";

const laboratory = { kind: "laboratory" } as const;

type ToOpen = {
  readonly world: World;
  readonly runId: string;
  readonly amendmentId: string;
  readonly sign: () => Promise<unknown>;
};

/**
 * As the pages send it: of the sensor whose results are new, and of no other, though all of the run was evaluated. A
 * remark keeps it from being signed until it is answered.
 */
export const openNew = async ({ world, runId, amendmentId, sign }: ToOpen): Promise<void> => {
  const { signatory } = world.people;
  const { evaluation, mine } = await inScope(laboratory, async (tx) => {
    const asked = await tx.amendment.findUniqueOrThrow({ where: { id: amendmentId } });
    const old = await tx.certificate.findUniqueOrThrow({ where: { id: asked.certificateId } });
    const last = await tx.evaluation.findFirstOrThrow({
      where: { runId: old.runId },
      orderBy: { sequence: "desc" },
      include: { results: true },
    });
    return { evaluation: last, mine: old.sensorId };
  });
  const open = (result: { readonly sensorId: string; readonly setpointId: string }) =>
    execute(
      openResult,
      signatory,
      {
        ...{ runId, evaluationId: evaluation.id },
        ...{ sensorId: result.sensorId, setpointId: result.setpointId },
      },
      signClock,
    );
  const other = evaluation.results.find(({ sensorId }) => sensorId !== mine);
  if (other) await expect(open(other)).rejects.toThrow("This run is signed off already");
  const place = { runId, evaluationId: evaluation.id, sensorId: mine };
  for (const result of evaluation.results.filter(({ sensorId }) => sensorId === mine)) await open(result);
  const [first] = evaluation.results.filter(({ sensorId }) => sensorId === mine);
  const said = { ...place, setpointId: first!.setpointId, place: "error" as const, text: "Look again." };
  const remark = await execute(comment, signatory, said, signClock);
  await expect(sign()).rejects.toThrow("A remark on");
  const answer = { commentId: remark.id, text: "It is as it should be.", settles: true };
  await execute(answerComment, signatory, answer, signClock);
};
