import { z } from "zod";
import { loadAmended } from "@/lib/data/amendment/load-amended";
import { loadMarkBytes } from "@/lib/data/laboratory/load-mark";
import { renderCertificate } from "@/lib/documents/certificate/render-certificate";
import { eventOf } from "@/lib/domain/audit/define-event";
import { demand } from "@/lib/domain/refusal";
import { reviewEvents } from "@/lib/domain/review/events";
import type { Actor } from "@/lib/domain/staff/actor";
import { type Clock, execute } from "../execute";
import { defineOperation } from "../operation";
import { demandAsked } from "./demand-asked";

/** Who looked at which draft is recorded, as of a first certificate. */
export const openAmendmentDraft = defineOperation({
  name: "certificate/open-amendment-draft",
  permission: "review.read",
  input: z.strictObject({ amendmentId: z.uuid() }),
  perform: async ({ tx }, { amendmentId }) => {
    const { amendment, certificate } = await demandAsked(tx, amendmentId);
    const content = demand(demand(await loadAmended(tx, certificate, amendment)).compose(null));
    const { item, run } = content;
    return {
      value: { content, number: certificate.number, mark: await loadMarkBytes(tx, content) },
      events: [eventOf(reviewEvents.draftOpened, certificate.runId, { run: run.number, sensor: item.tag })],
    };
  },
});

/** The draft under its watermark, from the same content the hash is over. */
export const amendmentDraft = async (actor: Actor, amendmentId: string, clock: Clock) => {
  const { content, mark, number } = await execute(openAmendmentDraft, actor, { amendmentId }, clock);
  return { number, bytes: await renderCertificate(content, { draft: true, mark }) };
};
