import { earlierResults } from "@/lib/data/parts/earlier-results";
import { demandRun } from "@/lib/data/run/demand-run";
import { eventOf } from "@/lib/domain/audit/define-event";
import { readLineOptions } from "@/lib/domain/order/options";
import { decideRepeat } from "@/lib/domain/parts/decide-repeat";
import { partsEvents } from "@/lib/domain/parts/events";
import { AuthoriseRepeatInput } from "@/lib/domain/parts/schema";
import { demand } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/**
 * A sensor is measured once more: why, and by the rule of its order which of the two will count, said before the first
 * reading so that nobody chooses by the result (ISO/IEC 17025 7.7, 7.10). Both measurements stay.
 */
export const authoriseRepeat = defineOperation({
  name: "run/authorise-repeat",
  permission: "run.authorise-repeat",
  input: AuthoriseRepeatInput,
  perform: async ({ actor, now, tx }, input) => {
    const run = await demandRun(tx, input.run);
    const sensor = await tx.sensor.findUnique({ where: { tag: input.sensor }, include: { line: true } });
    const earlier = (await earlierResults(tx, run)).find(({ tag }) => tag === input.sensor);
    const blocks = await tx.scanBlock.count({ where: { runId: run.id } });
    const earlierRun = demand(
      decideRepeat({
        run: { number: run.number, state: run.state, hasReadings: blocks > 0 },
        sensor: input.sensor,
        isLoaded: sensor !== null && run.places.some(({ sensorId }) => sensorId === sensor.id),
        earlierRun: earlier?.earlierRun ?? null,
        isAuthorised: earlier?.isAuthorised ?? false,
      }),
    );
    if (!sensor || !earlier) throw new Error("a repeat of nothing passed decideRepeat");
    const { countingRule } = readLineOptions(sensor.line.options);
    await tx.repeatMeasurement.create({
      data: {
        sensorId: sensor.id,
        customerId: sensor.customerId,
        earlierRunId: earlier.earlierRunId,
        runId: run.id,
        countingRule,
        reason: input.reason,
        authorisedById: personIdOf(actor),
        authorisedAt: now,
      },
    });
    return {
      value: { sensor: sensor.tag, earlierRun, countingRule },
      events: [
        eventOf(partsEvents.repeatAuthorised, run.id, {
          run: run.number,
          earlierRun,
          sensor: sensor.tag,
          countingRule,
          reason: input.reason,
        }),
      ],
    };
  },
});
