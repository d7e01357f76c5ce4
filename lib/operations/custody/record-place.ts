import { refuseDuplicate } from "@/lib/data/refuse-duplicate";
import { eventOf } from "@/lib/domain/audit/define-event";
import { custodyEvents } from "@/lib/domain/custody/events";
import { RecordPlaceInput } from "@/lib/domain/custody/schema";
import { defineOperation } from "../operation";

/** A shelf, drawer or cabinet that sensors wait in. */
export const recordPlace = defineOperation({
  name: "custody/record-place",
  permission: "storage.configure",
  input: RecordPlaceInput,
  perform: async ({ tx }, place) => {
    const stored = tx.storagePlace.create({ data: place, select: { id: true } });
    const { id } = await refuseDuplicate(stored, "code", "There is a place with this code already.");
    return { value: { code: place.code }, events: [eventOf(custodyEvents.placeRecorded, id, place)] };
  },
});
