import { insertCustodyEvent } from "@/lib/data/custody/insert-custody-event";
import { whereaboutsOf } from "@/lib/data/custody/whereabouts-of";
import { providersOf } from "@/lib/data/parts/providers-of";
import { eventOf } from "@/lib/domain/audit/define-event";
import { decideMove } from "@/lib/domain/custody/decide-move";
import { custodyEvents } from "@/lib/domain/custody/events";
import { MoveInput } from "@/lib/domain/custody/schema";
import { demand } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** Where sensors went, by their scanned labels: onto a shelf, out of the furnace, to a provider and back. */
export const moveSensors = defineOperation({
  name: "custody/move",
  permission: "custody.record",
  input: MoveInput,
  perform: async ({ actor, now, tx }, { tags, kind, placeCode, whom, condition }) => {
    const sensors = await tx.sensor.findMany({
      where: { tag: { in: tags } },
      select: { id: true, tag: true, state: true, line: { select: { providerId: true } } },
      orderBy: { tag: "asc" },
    });
    const place = kind === "stored" ? await tx.storagePlace.findUnique({ where: { code: placeCode } }) : null;
    const ids = sensors.map(({ id }) => id);
    const last = await whereaboutsOf(tx, ids);
    const providers = await providersOf(tx, sensors);
    const standing = sensors.map(({ id, tag, state, line }) => ({
      tag,
      provider: providers.get(line.providerId ?? "") ?? null,
      last: last.get(id)?.kind ?? null,
      isGone: state === "collected",
    }));
    demand(decideMove(standing, tags, { kind, place, whom }));
    await insertCustodyEvent(tx, {
      sensorIds: ids,
      kind,
      ...(place ? { placeId: place.id } : {}),
      ...(kind === "to-provider" ? { toWhom: whom } : {}),
      ...(kind === "from-provider" ? { fromWhom: whom } : {}),
      condition,
      recordedById: personIdOf(actor),
      happenedAt: now,
    });
    const moved = sensors.map(({ tag }) => tag);
    const note = [whom, condition].filter((one) => one !== "").join("; ");
    const payload = { tags: moved, kind, place: place?.code ?? "", note };
    return {
      value: { moved: moved.length },
      events: [eventOf(custodyEvents.moved, place?.id ?? ids[0]!, payload)],
    };
  },
});
