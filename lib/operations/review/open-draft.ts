import { z } from "zod";
import { loadBundle } from "@/lib/data/certificate/load-bundle";
import { loadMarkBytes } from "@/lib/data/laboratory/load-mark";
import { loadReviewRun } from "@/lib/data/review/load-review-run";
import { renderCertificate } from "@/lib/documents/certificate/render-certificate";
import { eventOf } from "@/lib/domain/audit/define-event";
import { composeBundle } from "@/lib/domain/certificate/compose-bundle";
import { demand, Refused } from "@/lib/domain/refusal";
import { reviewEvents } from "@/lib/domain/review/events";
import type { Actor } from "@/lib/domain/staff/actor";
import { type Clock, execute } from "../execute";
import { defineOperation } from "../operation";

/** Who looked at which draft is recorded, like a download. Works as soon as the run is evaluated. */
export const openDraft = defineOperation({
  name: "review/open-draft",
  permission: "review.read",
  input: z.strictObject({ runNumber: z.string().max(40), tag: z.string().max(40) }),
  perform: async ({ tx }, input) => {
    const run = await tx.run.findUnique({ where: { number: input.runNumber }, select: { id: true } });
    const review = run ? await loadReviewRun(tx, run.id) : null;
    const sensor = review?.sensors.find(({ tag }) => tag === input.tag);
    if (!review || !sensor) throw new Refused({ code: "not-found", message: "This draft is not here." });
    const content = demand(composeBundle(demand(await loadBundle(tx, review, [sensor.id])), null));
    return {
      value: { content, mark: await loadMarkBytes(tx, content) },
      events: [
        eventOf(reviewEvents.draftOpened, review.run.id, { run: review.run.number, sensor: sensor.tag }),
      ],
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
