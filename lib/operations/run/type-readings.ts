import { demandGatePassed } from "@/lib/data/gate/demand-gate-passed";
import { demandUndisturbed } from "@/lib/data/order/demand-undisturbed";
import { demandRepeatsAuthorised } from "@/lib/data/parts/demand-repeats-authorised";
import { demandReceivedBefore } from "@/lib/data/run/demand-received-before";
import { demandRun } from "@/lib/data/run/demand-run";
import { loadLastSeconds } from "@/lib/data/run/load-last-seconds";
import { storeBlock } from "@/lib/data/run/store-block";
import { sha256 } from "@/lib/data/sha256";
import { canonical } from "@/lib/domain/audit/canonical";
import { eventOf } from "@/lib/domain/audit/define-event";
import { demand } from "@/lib/domain/refusal";
import { compareEntries } from "@/lib/domain/run/compare-entries";
import { runEvents } from "@/lib/domain/run/events";
import { placeBlock } from "@/lib/domain/run/place-block";
import { TypeReadingsInput } from "@/lib/domain/run/schema";
import { demandOpen } from "@/lib/domain/run/states";
import { typedBlock } from "@/lib/domain/run/typed-block";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

const hex = (bytes: Uint8Array): string => Buffer.from(bytes).toString("hex");

/** Readings from a paper record: typed twice, marked as typed for good. */
export const typeReadings = defineOperation({
  name: "run/type-readings",
  permission: "run.perform",
  input: TypeReadingsInput,
  perform: async ({ actor, now, tx }, input) => {
    const run = await demandRun(tx, input.run);
    demand(demandOpen(run));
    await demandUndisturbed(tx, run);
    const readings = demand(compareEntries(input.first, input.second));
    const draft = demand(
      typedBlock(
        readings,
        run.places.map(({ channel }) => channel),
      ),
    );
    const placed = demand(
      placeBlock(
        draft,
        { startedAt: run.startedAt, lastSeconds: await loadLastSeconds(tx, run.id) },
        input.startedAt ? new Date(input.startedAt) : null,
        now,
      ),
    );
    await demandReceivedBefore(tx, run, placed.startedAt);
    await demandGatePassed(tx, run, placed.startedAt);
    await demandRepeatsAuthorised(tx, run);
    const digest = sha256(new TextEncoder().encode(canonical(readings)));
    const block = await storeBlock(tx, {
      run,
      placed,
      source: "typed",
      fileName: null,
      sourceSha256: digest,
      receivedById: personIdOf(actor),
      receivedAt: now,
    });
    return {
      value: { block: block.sequence, readings: block.readingCount },
      events: [
        eventOf(runEvents.readingsReceived, run.id, {
          run: run.number,
          block: block.sequence,
          source: "typed",
          fileName: null,
          readings: block.readingCount,
          sha256: hex(digest),
          root: hex(block.root),
        }),
      ],
    };
  },
});
