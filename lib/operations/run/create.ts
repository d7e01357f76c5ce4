import { insertCustodyEvent } from "@/lib/data/custody/insert-custody-event";
import { holdsOf } from "@/lib/data/hold/holds-of";
import { demandCurrentRevision } from "@/lib/data/procedure/demand-current-revision";
import { insertRun } from "@/lib/data/run/insert-run";
import { loadCandidates } from "@/lib/data/run/load-candidates";
import { setSensorState } from "@/lib/data/sensor/set-state";
import { eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { decideNotHeld } from "@/lib/domain/hold/decide-not-held";
import { demand } from "@/lib/domain/refusal";
import { readBudgetInputs } from "@/lib/domain/run/budget-inputs";
import { decideCreate } from "@/lib/domain/run/decide-create";
import { runEvents } from "@/lib/domain/run/events";
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
    const revision = await demandCurrentRevision(tx, input.procedure);
    const budget = readBudgetInputs(revision.budgetInputs);
    const candidates = await loadCandidates(tx, input, day, now);
    const { setpointsCelsius } = demand(decideCreate(input, candidates, budget, day));
    const loaded = candidates.sensors.map(({ id }) => id);
    const placeOf = (tag: string) =>
      `places.${input.places.findIndex(({ item }) => item.kind === "sensor" && item.tag === tag)}.item`;
    demand(decideNotHeld(await holdsOf(tx, loaded), "loaded", placeOf));
    await setSensorState(tx, loaded, ["received"], "loaded");
    const run = await insertRun(tx, {
      input,
      candidates,
      setpointsCelsius,
      procedureRevisionId: revision.id,
      budgetInputs: revision.budgetInputs,
      performerId: personIdOf(actor),
      createdAt: now,
    });
    await insertCustodyEvent(tx, {
      sensorIds: loaded,
      kind: "to-furnace",
      toWhom: run.number,
      runId: run.id,
      recordedById: personIdOf(actor),
      happenedAt: now,
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
