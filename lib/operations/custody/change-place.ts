import { demandSaved } from "@/lib/data/versioned";
import { eventOf } from "@/lib/domain/audit/define-event";
import { custodyEvents } from "@/lib/domain/custody/events";
import { ChangePlaceInput } from "@/lib/domain/custody/schema";
import { Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

/** What a place is called, what it is like, and whether it is still used. Its code stays: it is on labels and in the log. */
export const changePlace = defineOperation({
  name: "custody/change-place",
  permission: "storage.configure",
  input: ChangePlaceInput,
  perform: async ({ tx }, { id, version, ...change }) => {
    const place = await tx.storagePlace.findUnique({ where: { id }, select: { code: true } });
    if (!place) throw new Refused({ code: "not-found", message: "This place is not here." });
    demandSaved(
      await tx.storagePlace.updateMany({
        where: { id, version },
        data: { ...change, version: { increment: 1 } },
      }),
    );
    const { code } = place;
    return { value: { code }, events: [eventOf(custodyEvents.placeChanged, id, { code, ...change })] };
  },
});
