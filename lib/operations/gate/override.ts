import { loadGatePlan } from "@/lib/data/gate/load-gate-plan";
import { demandRun } from "@/lib/data/run/demand-run";
import { eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { assessGate } from "@/lib/domain/gate/assess-gate";
import { decideOverride } from "@/lib/domain/gate/decide-override";
import { demandBeforeStart } from "@/lib/domain/gate/decide-start";
import { gateEvents } from "@/lib/domain/gate/events";
import { OverrideGateInput } from "@/lib/domain/gate/schema";
import { demand } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** A reason against a row of the gate, by whom the policy allows it; one reason may stand for many sensors. */
export const overrideGate = defineOperation({
  name: "gate/override",
  permission: "gate.override",
  input: OverrideGateInput,
  perform: async ({ actor, now, tx }, input) => {
    const run = await demandRun(tx, input.run);
    demand(demandBeforeStart(run));
    const { plan, policy, reasons } = await loadGatePlan(tx, run, isoDay(now));
    const roles = actor.kind === "system" ? [] : actor.roles;
    const decided = demand(decideOverride(assessGate(plan, policy, reasons), input, roles));
    const { code, reason, reachesCertificate } = decided;
    const subjects = decided.subjects.length === 0 ? [""] : decided.subjects;
    await tx.gateOverride.createMany({
      data: subjects.map((subject) => ({
        runId: run.id,
        code,
        subject,
        reason,
        reachesCertificate,
        saidById: personIdOf(actor),
        saidAt: now,
      })),
    });
    return {
      value: { code, reachesCertificate },
      events: [
        eventOf(gateEvents.overridden, run.id, {
          run: run.number,
          code,
          subjects: [...decided.subjects],
          reason,
          reachesCertificate,
        }),
      ],
    };
  },
});
