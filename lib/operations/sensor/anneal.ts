import { setStanding } from "@/lib/data/parts/set-standing";
import { lockSensors } from "@/lib/data/sql/lock-sensors";
import { eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { readLineOptions } from "@/lib/domain/order/options";
import { decideAnneal } from "@/lib/domain/parts/decide-anneal";
import { partsEvents } from "@/lib/domain/parts/events";
import { AnnealInput } from "@/lib/domain/parts/schema";
import { demand, Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** The laboratory annealed a sensor: what was done to it stands on its certificate (ISO/IEC 17025 7.8.4.1 d). */
export const annealSensor = defineOperation({
  name: "sensor/anneal",
  permission: "run.perform",
  input: AnnealInput,
  perform: async ({ actor, now, tx }, input) => {
    const sensor = await tx.sensor.findUnique({ where: { tag: input.sensor }, include: { line: true } });
    if (!sensor) throw new Refused({ code: "not-found", message: `There is no sensor ${input.sensor}.` });
    const [locked] = await lockSensors(tx, [sensor.id]);
    demand(
      decideAnneal({
        sensor: sensor.tag,
        state: locked?.state ?? sensor.state,
        options: readLineOptions(sensor.line.options),
        hasReceivedSet: (await setStanding(tx, [sensor])).get(sensor.id)?.hasReceivedSet ?? false,
        performedOn: input.performedOn,
        today: isoDay(now),
      }),
    );
    const { celsius, hours, manner, performedOn } = input;
    await tx.sensorAnneal.create({
      data: {
        sensorId: sensor.id,
        customerId: sensor.customerId,
        celsius,
        hours,
        manner,
        performedOn: new Date(`${performedOn}T00:00:00Z`),
        performedById: personIdOf(actor),
        recordedAt: now,
      },
    });
    return {
      value: { tag: sensor.tag },
      events: [
        eventOf(partsEvents.annealed, sensor.id, { sensor: sensor.tag, celsius, hours, manner, performedOn }),
      ],
    };
  },
});
