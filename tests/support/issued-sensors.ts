import { inScope } from "@/lib/data/in-scope";
import { setSensorState } from "@/lib/data/sensor/set-state";
import type { SensorState } from "@/lib/domain/sensor/transitions";

const steps: readonly SensorState[] = ["received", "loaded", "measured", "evaluated", "in-review", "issued"];

/** Takes sensors along their thread, step by step, to a state; without the run that would stand behind it. */
export const moveSensorsTo = (tags: readonly string[], to: SensorState): Promise<void> =>
  inScope({ kind: "laboratory" }, async (tx) => {
    const rows = await tx.sensor.findMany({ where: { tag: { in: [...tags] } }, select: { id: true } });
    const ids = rows.map(({ id }) => id);
    for (const [at, state] of steps.slice(0, steps.indexOf(to)).entries())
      await setSensorState(tx, ids, [state], steps[at + 1] as SensorState);
  });
