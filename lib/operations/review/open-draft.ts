import { z } from "zod";
import type { Tx } from "@/lib/data/in-scope";
import { loadMarkBytes } from "@/lib/data/laboratory/load-mark";
import { loadOpenLot } from "@/lib/data/review/load-open-lot";
import { loadReviewRun, type ReviewRun } from "@/lib/data/review/load-review-run";
import { reviewedContent } from "@/lib/data/review/reviewed-content";
import { renderCertificate } from "@/lib/documents/certificate/render-certificate";
import { eventOf } from "@/lib/domain/audit/define-event";
import { demand, Refused } from "@/lib/domain/refusal";
import { reviewEvents } from "@/lib/domain/review/events";
import type { Actor } from "@/lib/domain/staff/actor";
import { type Clock, execute } from "../execute";
import { defineOperation } from "../operation";

const OpenDraftInput = z.union([
  z.strictObject({ runNumber: z.string().max(40), tag: z.string().max(40) }),
  /** Of the lot: all sensors of this order line that are open in the run, as one certificate. */
  z.strictObject({ runNumber: z.string().max(40), lineId: z.uuid() }),
]);

/** The sensors that the certificate speaks of; none where there is no such draft. */
const sensorsOf = async (
  tx: Tx,
  review: ReviewRun,
  input: z.output<typeof OpenDraftInput>,
): Promise<readonly { readonly id: string; readonly tag: string }[]> =>
  "tag" in input
    ? review.sensors.filter(({ tag }) => tag === input.tag)
    : ((await loadOpenLot(tx, review, input.lineId))?.sensors ?? []);

/** Who looked at which draft is recorded, like a download. Works as soon as the run is evaluated. */
export const openDraft = defineOperation({
  name: "review/open-draft",
  permission: "review.read",
  input: OpenDraftInput,
  perform: async ({ tx }, input) => {
    const run = await tx.run.findUnique({ where: { number: input.runNumber }, select: { id: true } });
    const review = run ? await loadReviewRun(tx, run.id) : null;
    const sensors = review ? await sensorsOf(tx, review, input) : [];
    if (!review || sensors.length === 0)
      throw new Refused({ code: "not-found", message: "This draft is not here." });
    const ids = sensors.map(({ id }) => id);
    const { content } = demand(await reviewedContent(tx, review, ids));
    const sensor = sensors.map(({ tag }) => tag).join(", ");
    return {
      value: { content, mark: await loadMarkBytes(tx, content) },
      events: [eventOf(reviewEvents.draftOpened, review.run.id, { run: review.run.number, sensor })],
    };
  },
});

/** The draft under its watermark. Rendered outside the transaction, from the same content the hash is over. */
export const draftDocument = async (
  actor: Actor,
  input: z.input<typeof openDraft.input>,
  clock: Clock,
): Promise<Uint8Array> => {
  const { content, mark } = await execute(openDraft, actor, input, clock);
  return renderCertificate(content, { draft: true, mark });
};
