import { insertRun } from "@/lib/data/run/insert-run";
import { loadCandidates } from "@/lib/data/run/load-candidates";
import { setSensorState } from "@/lib/data/sensor/set-state";
import { canonical } from "@/lib/domain/audit/canonical";
import { eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { demand } from "@/lib/domain/refusal";
import { decideCreate } from "@/lib/domain/run/decide-create";
import { runEvents } from "@/lib/domain/run/events";
import { procedures } from "@/lib/domain/run/procedure-defaults";
import { CreateRunInput } from "@/lib/domain/run/schema";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** Plans a run: furnace, references, load and setpoints. From here on its sensors are loaded. */
export const createRun = defineOperation({
  name: "run/create",
  permission: "run.perform",
  input: CreateRunInput,
  perform: async ({ actor, now, tx }, input) => {
    const day = isoDay(now);
    const budget = input.budgetInputs ?? procedures[input.procedure];
    const candidates = await loadCandidates(tx, input, day, now);
    const { setpointsCelsius } = demand(decideCreate(input, candidates, budget, day));
    await setSensorState(
      tx,
      candidates.sensors.map(({ id }) => id),
      ["received"],
      "loaded",
    );
    const run = await insertRun(tx, {
      input,
      candidates,
      setpointsCelsius,
      budgetInputs: canonical(budget),
      performerId: personIdOf(actor),
      createdAt: now,
    });
    return {
      value: { number: run.number },
      events: [
        eventOf(runEvents.created, run.id, {
          run: run.number,
          configuration: candidates.configuration?.name ?? "",
          procedure: budget.procedure,
          sensors: candidates.sensors.map(({ tag }) => tag),
          references: candidates.references.map(({ tag }) => tag),
          setpointsCelsius: [...setpointsCelsius],
        }),
      ],
    };
  },
});
