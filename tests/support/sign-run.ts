import { certificateParts } from "@/lib/data/certificate/certificate-parts";
import { hex } from "@/lib/data/hex";
import { inScope } from "@/lib/data/in-scope";
import { loadReviewRun } from "@/lib/data/review/load-review-run";
import { sha256 } from "@/lib/data/sha256";
import { composeCertificate } from "@/lib/domain/certificate/compose-certificate";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import { demand } from "@/lib/domain/refusal";
import type { Actor } from "@/lib/domain/staff/actor";
import { signOff } from "@/lib/operations/certificate/sign-off";
import { execute } from "@/lib/operations/execute";

export const signClock = () => new Date("2026-03-05T10:00:00Z");

/** The hash the review page shows for one sensor. */
export const reviewedHash = (runId: string, sensorId: string): Promise<string> =>
  inScope({ kind: "laboratory" }, async (tx) => {
    const parts = demand(certificateParts((await loadReviewRun(tx, runId))!, sensorId));
    return hex(contentHash(demand(composeCertificate(parts, null)), sha256));
  });

type Built = {
  readonly run: { readonly id: string };
  readonly evaluation: { readonly id: string };
  readonly sensors: readonly { readonly id: string }[];
};

/** What the sign-off form sends for these sensors. */
export const signOffInput = async (
  built: Built,
  sensors: readonly { readonly id: string }[] = built.sensors,
  evaluationId = built.evaluation.id,
) => ({
  runId: built.run.id,
  evaluationId,
  items: await Promise.all(
    sensors.map(async ({ id }) => ({ sensorId: id, reviewedHash: await reviewedHash(built.run.id, id) })),
  ),
});

export const signRun = async (actor: Actor, built: Built) =>
  (await execute(signOff, actor, await signOffInput(built), signClock)).certificates;
