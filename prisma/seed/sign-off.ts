import { loadBundle } from "@/lib/data/certificate/load-bundle";
import { inScope } from "@/lib/data/in-scope";
import { loadReviewRun, type ReviewRun } from "@/lib/data/review/load-review-run";
import { sha256 } from "@/lib/data/sha256";
import { composeBundle } from "@/lib/domain/certificate/compose-bundle";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import { demand } from "@/lib/domain/refusal";
import { renderPending } from "@/lib/operations/certificate/render-pending";
import { signOff } from "@/lib/operations/certificate/sign-off";
import { type Cast, demoPassword } from "./people";
import { signatoryAt } from "./signing";
import type { Teller } from "./teller";

const loadReview = async (runNumber: string): Promise<ReviewRun> =>
  inScope({ kind: "laboratory" }, async (tx) => {
    const run = await tx.run.findUniqueOrThrow({ where: { number: runNumber }, select: { id: true } });
    const review = await loadReviewRun(tx, run.id);
    if (!review) throw new Error(`run ${runNumber} is not there to review`);
    return review;
  });

/** The version a form would carry. */
export const versionOf = async (runNumber: string): Promise<number> =>
  inScope({ kind: "laboratory" }, async (tx) => {
    const run = await tx.run.findUniqueOrThrow({ where: { number: runNumber }, select: { version: true } });
    return run.version;
  });

type Review = Pick<ReviewRun["sensors"][number], "id" | "customerId">;

/** Signs what `which` names, as one would who has read each draft. Returns the certificates' numbers. */
const sign = async (
  { tell, at }: Teller,
  { signatory, codeSecret }: Cast,
  runNumber: string,
  days: number,
  which: (sensor: Review) => boolean,
): Promise<readonly string[]> => {
  const review = await loadReview(runNumber);
  const items: { sensorId: string; reviewedHash: string }[] = [];
  for (const { id } of review.sensors.filter(which)) {
    const bundle = await inScope({ kind: "laboratory" }, (tx) => loadBundle(tx, review, [id]));
    const reviewed = demand(composeBundle(demand(bundle), null));
    items.push({
      sensorId: id,
      reviewedHash: Buffer.from(contentHash(reviewed, sha256)).toString("hex"),
    });
  }
  const evaluationId = review.evaluation?.id;
  if (!evaluationId) throw new Error(`run ${runNumber} has no evaluation`);
  const when = at(days, "10:15");
  const { actor, act } = await signatoryAt(signatory, demoPassword, codeSecret, when);
  const { certificates } = await tell(signOff, actor, when, {
    ...{ runId: review.run.id, evaluationId, items, act },
  });
  const failed = await renderPending(() => at(days, "10:16"));
  if (failed.length > 0) throw failed[0]?.error;
  return certificates.map(({ number }) => number);
};

/** The signatory signs one customer's sensors; the other customer's still wait in the queue. */
export const tellSignOff = (teller: Teller, cast: Cast, runNumber: string) =>
  sign(teller, cast, runNumber, 2, ({ customerId }) => customerId === cast.customers.brandt);

/** Every sensor of a run, `days` before today. */
export const signOffAll = (teller: Teller, cast: Cast, runNumber: string, days: number) =>
  sign(teller, cast, runNumber, days, () => true);
