import { loadPeopleNames } from "@/lib/data/review/load-people-names";
import { type CustodyKind, custodyLabels, isInHouse } from "@/lib/domain/custody/labels";
import { whereabouts } from "@/lib/domain/custody/whereabouts";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer, found } from "../view";

/** One sensor from hand to hand, as its timeline is drawn, and where it is now. */
export const sensorCustodyView = (actor: Actor, tag: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const sensor = found(await tx.sensor.findUnique({ where: { tag }, select: { id: true, state: true } }));
    const rows = await tx.custodyEvent.findMany({ where: { sensorId: sensor.id }, orderBy: { id: "asc" } });
    const places = await tx.storagePlace.findMany({ select: { id: true, code: true, name: true } });
    const names = await loadPeopleNames(
      tx,
      rows.flatMap(({ recordedById }) => recordedById ?? []),
    );
    const steps = rows.map((row) => {
      const kind = row.kind as CustodyKind;
      const place = places.find(({ id }) => id === row.placeId);
      const at = row.happenedAt.toISOString();
      return {
        label: kind === "stored" ? `Put into ${place?.code} ${place?.name}` : custodyLabels[kind],
        day: at.slice(0, 10),
        at,
        from: row.fromWhom,
        to: place ? `${place.code} ${place.name}` : row.toWhom,
        condition: row.condition,
        by: row.recordedById ? (names.get(row.recordedById) ?? "") : "the platform",
        isOutside: !isInHouse(kind),
        where: whereabouts({
          kind,
          place: place ? `${place.code} ${place.name}` : "",
          fromWhom: row.fromWhom,
          toWhom: row.toWhom,
        }),
      };
    });
    return {
      tag,
      steps,
      where: steps.at(-1)?.where ?? null,
      places: places.map(({ code, name }) => ({ code, name })),
      mayMove: actor.kind === "staff" && may(actor.roles, "custody.record") && sensor.state !== "collected",
      mayDispose:
        actor.kind === "staff" &&
        may(actor.roles, "sensor.release") &&
        (sensor.state === "issued" || sensor.state === "received"),
    };
  });
