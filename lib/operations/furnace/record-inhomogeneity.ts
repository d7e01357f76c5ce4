import { insertInhomogeneityTest } from "@/lib/data/furnace/inhomogeneity-store";
import { loadTested } from "@/lib/data/furnace/load-tested";
import { canonical } from "@/lib/domain/audit/canonical";
import { eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { furnaceEvents } from "@/lib/domain/furnace/events";
import { evaluateInhomogeneity } from "@/lib/domain/furnace/inhomogeneity-test";
import { RecordInhomogeneityInput } from "@/lib/domain/furnace/schema";
import { demand, Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { engineVersion } from "@/lib/metrology/engine-version";
import { defineOperation } from "../operation";

const invalid = (fields: Record<string, string>): Refused =>
  new Refused({ code: "invalid", message: "Nothing was stored; what you typed is still here.", fields });

/** A sensor or a reference moved through a gradient. Accepted, it replaces the assumed rule in runs made from then on. */
export const recordInhomogeneity = defineOperation({
  name: "furnace/record-inhomogeneity",
  permission: "furnace.record",
  input: RecordInhomogeneityInput,
  perform: async ({ actor, now, tx }, { tag, performedOn, readings }) => {
    const tested = await loadTested(tx, tag);
    if (!tested)
      throw invalid({ tag: `There is no sensor and no reference thermocouple ${tag}. Correct the tag.` });
    if (performedOn > isoDay(now)) throw invalid({ performedOn: "This day has not come yet." });
    const evaluation = demand(evaluateInhomogeneity(tested.type, readings));
    const { id } = await insertInhomogeneityTest(tx, {
      sensorId: tested.sensorId,
      customerId: tested.customerId,
      equipmentId: tested.equipmentId,
      celsius: readings.celsius,
      performedOn,
      readings: canonical(readings),
      evaluation: canonical(evaluation),
      engineVersion,
      recordedById: personIdOf(actor),
      recordedAt: now,
    });
    const { method, relativeHalfWidth } = evaluation;
    return {
      value: { id },
      events: [
        eventOf(furnaceEvents.inhomogeneityTested, id, {
          tag,
          celsius: readings.celsius,
          method,
          relativeHalfWidth,
          engineVersion,
        }),
      ],
    };
  },
});
