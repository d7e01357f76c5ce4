import { demandGatePassed } from "@/lib/data/gate/demand-gate-passed";
import { demandUndisturbed } from "@/lib/data/order/demand-undisturbed";
import { demandRepeatsAuthorised } from "@/lib/data/parts/demand-repeats-authorised";
import { demandReceivedBefore } from "@/lib/data/run/demand-received-before";
import { demandRun } from "@/lib/data/run/demand-run";
import { loadLastSeconds } from "@/lib/data/run/load-last-seconds";
import { storeBlock } from "@/lib/data/run/store-block";
import { sha256 } from "@/lib/data/sha256";
import { eventOf } from "@/lib/domain/audit/define-event";
import { demand, Refused } from "@/lib/domain/refusal";
import { runEvents } from "@/lib/domain/run/events";
import { placeBlock } from "@/lib/domain/run/place-block";
import { ReceiveReadingsInput } from "@/lib/domain/run/schema";
import { demandOpen } from "@/lib/domain/run/states";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { type ReadingsFile, readReadingsCsv } from "@/lib/files/readings-csv";
import { describeProblem } from "@/lib/files/readings-problem";
import { defineOperation } from "../operation";

const hex = (bytes: Uint8Array): string => Buffer.from(bytes).toString("hex");

const demandFile = (bytes: Uint8Array, channels: readonly string[]): ReadingsFile => {
  const outcome = readReadingsCsv(bytes, channels);
  if (outcome.ok) return outcome.file;
  const said = describeProblem(outcome.problem);
  throw new Refused({ code: "invalid", message: `${said} Nothing was stored.`, fields: { file: said } });
};

/** Takes a readings file in: the whole of it as one block of scans, or nothing. */
export const receiveReadings = defineOperation({
  name: "run/receive-readings",
  permission: "run.perform",
  input: ReceiveReadingsInput,
  perform: async ({ actor, now, tx }, input) => {
    const run = await demandRun(tx, input.run);
    demand(demandOpen(run));
    await demandUndisturbed(tx, run);
    const file = demandFile(
      input.bytes,
      run.places.map(({ channel }) => channel),
    );
    const placed = demand(
      placeBlock(
        file,
        { startedAt: run.startedAt, lastSeconds: await loadLastSeconds(tx, run.id) },
        input.startedAt ? new Date(input.startedAt) : null,
        now,
      ),
    );
    await demandReceivedBefore(tx, run, placed.startedAt);
    await demandGatePassed(tx, run, placed.startedAt);
    await demandRepeatsAuthorised(tx, run);
    const digest = sha256(input.bytes);
    const block = await storeBlock(tx, {
      run,
      placed,
      source: "file",
      fileName: input.fileName,
      sourceSha256: digest,
      receivedById: personIdOf(actor),
      receivedAt: now,
    });
    return {
      value: {
        block: block.sequence,
        readings: block.readingCount,
        channels: file.channels.length,
        findings: file.findings,
      },
      events: [
        eventOf(runEvents.readingsReceived, run.id, {
          run: run.number,
          block: block.sequence,
          source: "file" as const,
          fileName: input.fileName,
          readings: block.readingCount,
          sha256: hex(digest),
          root: hex(block.root),
        }),
      ],
    };
  },
});
