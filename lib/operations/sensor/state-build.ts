import { standsBehindGate } from "@/lib/data/gate/stands-behind-gate";
import { readSensor } from "@/lib/data/sensor/read-sensor";
import { demandSaved } from "@/lib/data/versioned";
import { canonical } from "@/lib/domain/audit/canonical";
import { eventOf } from "@/lib/domain/audit/define-event";
import { demand, Refused } from "@/lib/domain/refusal";
import { readBuild } from "@/lib/domain/sensor/build";
import { buildOf } from "@/lib/domain/sensor/build-draft";
import { decideBuild } from "@/lib/domain/sensor/decide-build";
import { sensorEvents } from "@/lib/domain/sensor/events";
import { StateBuildInput } from "@/lib/domain/sensor/schema";
import type { SensorState } from "@/lib/domain/sensor/transitions";
import { defineOperation } from "../operation";

/** How a sensor is made, looked at once more: a lead replaced, a length measured; with the reason. */
export const stateBuild = defineOperation({
  name: "sensor.state-build",
  permission: "sensor.receive",
  input: StateBuildInput,
  perform: async ({ tx }, { tag, reason, version, ...draft }) => {
    const sensor = await readSensor(tx, tag);
    if (!sensor) throw new Refused({ code: "not-found", message: `There is no sensor ${tag}.` });
    const build = buildOf(draft);
    const changed = demand(
      decideBuild(
        {
          tag,
          state: sensor.state as SensorState,
          hasPassedGate: await standsBehindGate(tx, sensor.id),
        },
        readBuild(sensor.build),
        build,
      ),
    );
    demandSaved(
      await tx.sensor.updateMany({
        where: { id: sensor.id, version },
        data: { build: canonical(build), version: { increment: 1 } },
      }),
    );
    return {
      value: { tag },
      events: [eventOf(sensorEvents.buildStated, sensor.id, { tag, changed: [...changed], reason })],
    };
  },
});
