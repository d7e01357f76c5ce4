import { loadGatePlan } from "@/lib/data/gate/load-gate-plan";
import { demandRun } from "@/lib/data/run/demand-run";
import { eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { benchRows } from "@/lib/domain/gate/bench-figures";
import { decideBenchChecks } from "@/lib/domain/gate/decide-bench-checks";
import { gateEvents } from "@/lib/domain/gate/events";
import { RecordBenchChecksInput } from "@/lib/domain/gate/schema";
import { demand } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** The bench on the day of the run: warm-up, zeros, voltage point, junctions. A later check follows; both stay. */
export const recordBenchChecks = defineOperation({
  name: "gate/record-bench-checks",
  permission: "run.perform",
  input: RecordBenchChecksInput,
  perform: async ({ actor, now, tx }, input) => {
    const run = await demandRun(tx, input.run);
    const { plan } = await loadGatePlan(tx, run, isoDay(now));
    const statedOf = demand(decideBenchChecks(run, plan.places, input));
    const rows = benchRows(input, statedOf);
    await tx.benchCheck.createMany({
      data: rows.map((row) => ({
        ...row,
        runId: run.id,
        checkedById: personIdOf(actor),
        checkedAt: now,
      })),
    });
    return {
      value: { checks: rows.length },
      events: [
        eventOf(gateEvents.benchChecked, run.id, {
          run: run.number,
          kinds: [...new Set(rows.map(({ kind }) => kind))],
          checks: rows.length,
        }),
      ],
    };
  },
});
