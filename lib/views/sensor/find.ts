import { findBySerial, findByTag } from "@/lib/data/sensor/find-sensors";
import { scanned } from "@/lib/domain/sensor/scanned";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "../view";

/** The sensors that what was scanned or typed can mean: one, where it came from a label. */
export const findSensorView = (actor: Actor, typed: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const what = scanned(typed);
    const rows =
      what.kind === "tag"
        ? await findByTag(tx, what.tag)
        : what.kind === "serial"
          ? await findBySerial(tx, what.serial)
          : [];
    return {
      what,
      sensors: rows.map(({ tag, serial, typeLetter, state, line }) => ({
        tag,
        serial,
        typeLetter,
        state,
        order: line.order.number,
        customer: line.order.customer.name,
      })),
    };
  });
