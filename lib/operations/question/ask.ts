import { z } from "zod";
import { loadHoldToEnd } from "@/lib/data/hold/load-hold";
import { askQuestion } from "@/lib/data/question/ask-question";
import { Choices, PublicUrl, QuestionText } from "@/lib/domain/question/schema";
import { Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** Asks the customer about a hold that stands already, such as one placed by the intake. */
export const askAboutHold = defineOperation({
  name: "question/ask",
  permission: "hold.place",
  input: z.strictObject({ holdId: z.uuid(), text: QuestionText, choices: Choices, publicUrl: PublicUrl }),
  perform: async ({ actor, now, tx }, { holdId, text, choices, publicUrl }) => {
    const hold = await loadHoldToEnd(tx, holdId);
    if (!hold)
      throw new Refused({ code: "not-found", message: "This hold is not here. Nothing was changed." });
    if (hold.isReleased || hold.hasOpenQuestion)
      throw new Refused({
        code: "wrong-state",
        message: hold.isReleased
          ? "This hold has ended already. Nothing was asked."
          : "A question of this hold is open already: wait for its answer. Nothing was asked.",
      });
    const { id, orderId, customerId, sensorId } = await tx.hold.findUniqueOrThrow({ where: { id: holdId } });
    const asked = await askQuestion(
      tx,
      {
        customerId,
        orderId,
        orderNumber: hold.orderNumber,
        sensor: sensorId ? { id: sensorId, tag: hold.tag } : null,
        holdId: id,
        text,
        choices,
        askedById: personIdOf(actor),
        askedAt: now,
      },
      publicUrl,
    );
    return { value: { questionId: asked.id, token: asked.token }, events: [asked.event] };
  },
});
