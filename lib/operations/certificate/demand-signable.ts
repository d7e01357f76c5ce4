import { hex } from "@/lib/data/hex";
import type { Tx } from "@/lib/data/in-scope";
import { loadOpenLot } from "@/lib/data/review/load-open-lot";
import type { ReviewRun } from "@/lib/data/review/load-review-run";
import { reviewedContent } from "@/lib/data/review/reviewed-content";
import { loadRollsOf } from "@/lib/data/roll/load-rolls";
import { sha256 } from "@/lib/data/sha256";
import type { CertificateBundle } from "@/lib/domain/certificate/bundle";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import { decideWholeLot } from "@/lib/domain/certificate/open-lots";
import { decideRollEnds } from "@/lib/domain/order/decide-roll-ends";
import { readLineOptions } from "@/lib/domain/order/options";
import { decideOneLot } from "@/lib/domain/parts/decide-one-lot";
import { demand, Refused } from "@/lib/domain/refusal";

/** One certificate to be signed for: as the form sends it. */
export type Item = {
  readonly sensorId: string;
  readonly others: readonly string[];
  readonly reviewedHash: string;
};

export const sensorsOnIt = ({ sensorId, others }: Item): readonly string[] => [sensorId, ...others];

/** One certificate for several sensors only where the order asks for it: those of one line, and then all of them here. */
const demandOneLot = async (tx: Tx, review: ReviewRun, item: Item): Promise<void> => {
  const ids = sensorsOnIt(item);
  const lines = ids.map((id) => review.sensors.find((sensor) => sensor.id === id)?.line);
  const [first] = lines;
  const report = first ? readLineOptions(first.options).report : "per-sensor";
  const lineIds = lines.map((line) => line?.id ?? null);
  if (ids.length > 1) demand(decideOneLot(lineIds, report));
  const lot = first ? await loadOpenLot(tx, review, first.id) : null;
  if (lot) demand(decideWholeLot(lot.sensors, ids));
  if (first) demand(decideRollEnds(await loadRollsOf(tx, first.order), ids, report));
};

/** What was on the signatory's screen has to be what is there now, byte for byte. */
const demandReviewed = async (tx: Tx, review: ReviewRun, item: Item) => {
  const { bundle, content } = demand(await reviewedContent(tx, review, sensorsOnIt(item)));
  if (hex(contentHash(content, sha256)) !== item.reviewedHash)
    throw new Refused({
      code: "changed-meanwhile",
      message: `What the certificate of ${bundle.filedUnder.parts.sensor.tag} would say has changed since you opened it. Nothing was signed off; reload and look again.`,
    });
  return bundle;
};

const demandUnsigned = (review: ReviewRun, item: Item): void => {
  const signed = review.certificates.find(({ sensorId }) => sensorsOnIt(item).includes(sensorId));
  if (!signed) return;
  const { tag } = review.sensors.find(({ id }) => id === signed.sensorId) ?? { tag: "It" };
  throw new Refused({
    code: "wrong-state",
    message: `${tag} already has its certificate from this run: ${signed.number}.`,
  });
};

/** What the certificate is composed from, if it is not signed yet and says what was on the signatory's screen. */
export const demandSignable = async (tx: Tx, review: ReviewRun, item: Item): Promise<CertificateBundle> => {
  demandUnsigned(review, item);
  await demandOneLot(tx, review, item);
  return demandReviewed(tx, review, item);
};
