import { loadInhomogeneityTests } from "@/lib/data/furnace/inhomogeneity-store";
import { isoDay } from "@/lib/domain/calibration/due";
import { decisionState } from "@/lib/domain/furnace/decision-state";
import type { InhomogeneityEvaluation } from "@/lib/domain/furnace/inhomogeneity-test";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer } from "./view";

/** Every test of a thermocouple's inhomogeneity, newest first, and whether another person accepted it. */
export const inhomogeneityTestsView = (actor: Actor) =>
  answer(actor, "laboratory.read", async (tx) => {
    const person = actor.kind === "system" ? null : actor;
    const rows = await loadInhomogeneityTests(tx);
    return {
      mayRecord: person !== null && may(person.roles, "furnace.record"),
      tests: rows.map(({ decisions, tag, ...row }) => {
        const state = decisionState(decisions);
        return {
          id: row.id,
          tag,
          page: row.sensorId ? `/sensors/${tag}` : `/standards/${row.equipmentId}`,
          performedOn: isoDay(row.performedOn),
          celsius: row.celsius,
          evaluation: JSON.parse(row.evaluation) as InhomogeneityEvaluation,
          state,
          reason: decisions.at(-1)?.reason ?? "",
          mayDecide:
            state === "waiting" &&
            person !== null &&
            may(person.roles, "furnace.accept") &&
            row.recordedById !== person.personId,
        };
      }),
    };
  });

export type InhomogeneityTestView = Awaited<ReturnType<typeof inhomogeneityTestsView>>["tests"][number];
