import { loadGatePlan } from "@/lib/data/gate/load-gate-plan";
import { planDigest } from "@/lib/data/gate/plan-digest";
import { demandSettled } from "@/lib/data/order/demand-settled";
import { demandUndisturbed } from "@/lib/data/order/demand-undisturbed";
import { demandRun } from "@/lib/data/run/demand-run";
import { canonical } from "@/lib/domain/audit/canonical";
import { eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { assessGate } from "@/lib/domain/gate/assess-gate";
import { decideStart } from "@/lib/domain/gate/decide-start";
import { gateEvents } from "@/lib/domain/gate/events";
import { PassGateInput } from "@/lib/domain/gate/schema";
import { storedRows } from "@/lib/domain/gate/stored-outcome";
import { demand } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** The run may start: every rule looked at once more on the day, and kept as it stood with the policy of the day. */
export const passGate = defineOperation({
  name: "gate/pass",
  permission: "run.perform",
  input: PassGateInput,
  perform: async ({ actor, now, tx }, input) => {
    const run = await demandRun(tx, input.run);
    await demandUndisturbed(tx, run);
    await demandSettled(tx, run);
    const { plan, policy, reasons } = await loadGatePlan(tx, run, isoDay(now));
    const assessment = assessGate(plan, policy, reasons);
    demand(decideStart(run, assessment));
    const rows = storedRows(assessment);
    await tx.gateOutcome.create({
      data: {
        runId: run.id,
        verdict: assessment.verdict,
        rows: canonical(rows),
        policy: canonical(policy),
        planDigest: planDigest(run),
        assessedById: personIdOf(actor),
        assessedAt: now,
      },
    });
    return {
      value: { number: run.number },
      events: [
        eventOf(gateEvents.passed, run.id, {
          run: run.number,
          policy: policy.title,
          warnings: rows.filter(({ severity }) => severity === "warning").length,
          reasons: rows.filter(({ given }) => given !== null).length,
        }),
      ],
    };
  },
});
