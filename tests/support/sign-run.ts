import { randomUUID } from "node:crypto";
import { loadAmended } from "@/lib/data/amendment/load-amended";
import { loadBundle } from "@/lib/data/certificate/load-bundle";
import { hex } from "@/lib/data/hex";
import { inScope } from "@/lib/data/in-scope";
import { loadReviewRun } from "@/lib/data/review/load-review-run";
import { sha256 } from "@/lib/data/sha256";
import { composeBundle } from "@/lib/domain/certificate/compose-bundle";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import { demand } from "@/lib/domain/refusal";
import type { Actor } from "@/lib/domain/staff/actor";
import { signOff } from "@/lib/operations/certificate/sign-off";
import { execute } from "@/lib/operations/execute";
import { signingPassword } from "./signatory";

export const signClock = () => new Date("2026-03-05T10:00:00Z");

/** The hash the review page shows for one sensor, or for a lot. */
export const reviewedHash = (runId: string, ...sensorIds: readonly string[]): Promise<string> =>
  inScope({ kind: "laboratory" }, async (tx) => {
    const bundle = demand(await loadBundle(tx, (await loadReviewRun(tx, runId))!, sensorIds));
    return hex(contentHash(demand(composeBundle(bundle, null)), sha256));
  });

/** The hash the page of what was asked for shows. */
export const amendedHash = (amendmentId: string): Promise<string> =>
  inScope({ kind: "laboratory" }, async (tx) => {
    const amendment = await tx.amendment.findUniqueOrThrow({ where: { id: amendmentId } });
    const certificate = await tx.certificate.findUniqueOrThrow({ where: { id: amendment.certificateId } });
    const amended = demand(await loadAmended(tx, certificate, amendment));
    return hex(contentHash(demand(amended.compose(null)), sha256));
  });

type Built = {
  readonly run: { readonly id: string };
  readonly evaluation: { readonly id: string };
  readonly sensors: readonly { readonly id: string }[];
};

/** Of a form that was just shown, by somebody who has signed a moment ago: the password is enough. */
export const signingAct = () => ({ actId: randomUUID(), password: signingPassword, code: "" });

/** Each result of the run's last evaluation, opened by every signatory. */
export const openForSigners = (runId: string): Promise<void> =>
  inScope({ kind: "laboratory" }, async (tx) => {
    const signers = await tx.personRole.findMany({ where: { role: "signatory" } });
    const { id: evaluationId, results } = await tx.evaluation.findFirstOrThrow({
      where: { runId },
      orderBy: { sequence: "desc" },
      select: { id: true, results: { select: { sensorId: true, setpointId: true } } },
    });
    await tx.reviewOpening.createMany({
      data: signers.flatMap(({ personId: openedById }) =>
        results.map((result) => ({
          ...{ runId, evaluationId, openedById, openedAt: new Date("2026-03-05T09:00:00Z") },
          ...{ sensorId: result.sensorId, setpointId: result.setpointId },
        })),
      ),
      skipDuplicates: true,
    });
  });

/** What the sign-off form sends for these sensors. */
export const signOffInput = async (
  built: Built,
  sensors: readonly { readonly id: string }[] = built.sensors,
  evaluationId = built.evaluation.id,
) => {
  await openForSigners(built.run.id);
  return {
    runId: built.run.id,
    evaluationId,
    items: await Promise.all(
      sensors.map(async ({ id }) => ({ sensorId: id, reviewedHash: await reviewedHash(built.run.id, id) })),
    ),
    act: signingAct(),
  };
};

export const signRun = async (actor: Actor, built: Built) =>
  (await execute(signOff, actor, await signOffInput(built), signClock)).certificates;
