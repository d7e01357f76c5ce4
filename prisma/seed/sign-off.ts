import { loadBundle } from "@/lib/data/certificate/load-bundle";
import { inScope } from "@/lib/data/in-scope";
import { loadOpened } from "@/lib/data/review/load-opened";
import { loadReviewRun, type ReviewRun } from "@/lib/data/review/load-review-run";
import { sha256 } from "@/lib/data/sha256";
import { composeBundle } from "@/lib/domain/certificate/compose-bundle";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import { demand } from "@/lib/domain/refusal";
import { openedState } from "@/lib/domain/review/decide-opened";
import { signOff } from "@/lib/operations/certificate/sign-off";
import { openResult } from "@/lib/operations/review/open-result";
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

/** What stands out of these sensors, and what the lot names. */
const tellOpening = async (
  { tell }: Teller,
  { signatory }: Cast,
  review: ReviewRun,
  { when, sensorIds }: { readonly when: Date; readonly sensorIds: ReadonlySet<string> },
): Promise<void> => {
  const opened = await inScope({ kind: "laboratory" }, (tx) => loadOpened(tx, review, signatory.personId));
  const { unopened } = openedState({ ...opened, sha256 });
  const { evaluation } = review;
  for (const { sensorId, setpointId, point } of evaluation?.results ?? [])
    if (
      sensorIds.has(sensorId) &&
      unopened.some(({ sensor, setpoint }) => sensor === point.sensor && setpoint === point.setpoint)
    )
      await tell(openResult, signatory, when, {
        ...{ runId: review.run.id, evaluationId: evaluation?.id ?? "", sensorId, setpointId },
      });
};

/** Signs what `which` names, as one would who has read each draft. Returns the certificates' numbers. */
const sign = async (
  teller: Teller,
  cast: Cast,
  runNumber: string,
  days: number,
  which: (sensor: Review) => boolean,
): Promise<readonly string[]> => {
  const { tell, at } = teller;
  const { signatory, codeSecret } = cast;
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
  const sensorIds = new Set(items.map(({ sensorId }) => sensorId));
  await tellOpening(teller, cast, review, { when: at(days, "10:05"), sensorIds });
  const when = at(days, "10:15");
  const { actor, act } = await signatoryAt(signatory, demoPassword, codeSecret, when);
  const { certificates } = await tell(signOff, actor, when, {
    ...{ runId: review.run.id, evaluationId, items, act },
  });
  return certificates.map(({ number }) => number);
};

/** The signatory signs one customer's sensors; the other customer's still wait in the queue. */
export const tellSignOff = (teller: Teller, cast: Cast, runNumber: string) =>
  sign(teller, cast, runNumber, 2, ({ customerId }) => customerId === cast.customers.brandt);

/** Every sensor of a run, `days` before today. */
export const signOffAll = (teller: Teller, cast: Cast, runNumber: string, days: number) =>
  sign(teller, cast, runNumber, days, () => true);
