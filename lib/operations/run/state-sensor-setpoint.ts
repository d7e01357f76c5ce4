import { demandEvaluable } from "@/lib/data/run/demand-evaluable";
import { demandRun, demandSetpoint } from "@/lib/data/run/demand-run";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { runEvents } from "@/lib/domain/run/events";
import { StateSensorSetpointInput } from "@/lib/domain/run/schema";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** A sensor that fails stays in the run; a person says its state at each setpoint, with the reason. */
export const stateSensorSetpoint = defineOperation({
  name: "run/state-sensor-setpoint",
  permission: "run.perform",
  input: StateSensorSetpointInput,
  perform: async ({ actor, now, tx }, input) => {
    const run = await demandRun(tx, input.run);
    await demandEvaluable(tx, run);
    const setpoint = demandSetpoint(run, input.setpoint);
    const sensor = await tx.sensor.findUnique({ where: { tag: input.sensor } });
    const place = sensor && run.places.find(({ sensorId }) => sensorId === sensor.id);
    if (!sensor || !place)
      throw new Refused({
        code: "not-found",
        message: `Sensor ${input.sensor} is not in run ${run.number}.`,
      });
    if (input.state !== "measured" && input.reason.length < 3)
      throw new Refused({
        code: "invalid",
        message: "Nothing was stored.",
        fields: { reason: "Say why, in a few words; it stands on the certificate." },
      });
    await tx.sensorSetpointState.create({
      data: {
        runId: run.id,
        sensorId: sensor.id,
        customerId: sensor.customerId,
        setpointId: setpoint.id,
        state: input.state,
        reason: input.reason,
        saidById: personIdOf(actor),
        saidAt: now,
      },
    });
    return {
      value: { sensor: sensor.tag, state: input.state },
      events: [
        eventOf(runEvents.sensorStated, run.id, {
          run: run.number,
          sensor: sensor.tag,
          setpointCelsius: setpoint.celsius,
          state: input.state,
          reason: input.reason,
        }),
      ],
    };
  },
});
