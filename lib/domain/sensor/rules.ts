import { countedSensors } from "../order/counted-sensors";
import type { OrderState } from "../order/transitions";
import { ok, type Result, refuse } from "../refusal";
import { type PastedSerial, serialKey } from "./serials";
import type { SensorState } from "./transitions";

type LineAtIntake = {
  readonly position: number;
  readonly quantity: number;
  /** Sensors of the whole order that are here or have been: one serial cannot stand on two lines. */
  readonly received: readonly {
    readonly serial: string;
    readonly tag: string;
    readonly position: number;
    /** It leaves its place to another. */
    readonly isReplaced?: boolean;
  }[];
};

/** Whether these serials may be taken in for the line: all of them, or none. */
export const decideReceipt = (
  orderState: OrderState,
  line: LineAtIntake,
  serials: readonly PastedSerial[],
): Result<"receive"> => {
  if (orderState !== "accepted")
    return refuse(
      "wrong-state",
      orderState === "recorded"
        ? "This order is not accepted yet. Accept it first, then take its sensors in. Nothing was stored."
        : `This order is ${orderState}: no sensors are taken in for it. Nothing was stored.`,
    );
  const known = new Map(line.received.map((sensor) => [serialKey(sensor.serial), sensor.tag]));
  const again = serials.flatMap(({ line: at, serial }) => {
    const tag = known.get(serialKey(serial));
    return tag ? [`line ${at}, “${serial}”, is already here as ${tag}`] : [];
  });
  if (again.length > 0)
    return refuse("invalid", "Some of these sensors were received before. Nothing was stored.", {
      serials: `Received before: ${again.join("; ")}. Take them out of the list.`,
    });
  const here = countedSensors(line.received.filter(({ position }) => position === line.position)).length;
  const room = line.quantity - here;
  if (serials.length > room)
    return refuse("invalid", "More sensors than ordered. Nothing was stored.", {
      serials: `Line ${line.position} orders ${line.quantity}, ${here} are here, so ${room} may come; ${serials.length} stand here. Take the others in on another line, or record an order for them.`,
    });
  return ok("receive");
};

/** Handed back with its certificate, or, from the shelf, without one and with a reason. */
export const decideCollection = (
  state: SensorState,
  reason: string,
): Result<{ readonly from: SensorState; readonly withoutCertificate: boolean }> => {
  if (state === "issued") return ok({ from: state, withoutCertificate: false });
  if (state === "received")
    return reason === ""
      ? refuse("rule", "This sensor has no certificate yet. Nothing was changed.", {
          reason: "Say why it leaves without a certificate.",
        })
      : ok({ from: state, withoutCertificate: true });
  return refuse(
    "wrong-state",
    state === "collected"
      ? "This sensor has been handed back already."
      : "This sensor is in the middle of its run. Finish it, or take it out of the run, then hand it back.",
  );
};
