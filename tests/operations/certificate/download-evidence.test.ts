import { createHash, randomBytes, randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { loadEvidence } from "@/lib/data/run/load-evidence";
import { EvidenceFile } from "@/lib/domain/certificate/evidence-file/evidence-file";
import { proveReadings } from "@/lib/domain/certificate/evidence-file/prove-readings";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import { proposeWindows } from "@/lib/domain/evidence/propose-windows";
import type { Actor } from "@/lib/domain/staff/actor";
import { downloadEvidence } from "@/lib/operations/certificate/download-evidence";
import { execute } from "@/lib/operations/execute";
import { acceptWindow } from "@/lib/operations/run/accept-window";
import { evaluateRun } from "@/lib/operations/run/evaluate";
import { codeOf } from "../../support/code-of";
import { allPlaces, createFullRun, uploadSeed, warmTips } from "../../support/full-run";
import { benchClock, inLaboratory, openRunBench, type RunBench } from "../../support/run-bench";
import { signatureRow } from "../../support/signatory";

let bench: RunBench;
let run: string;
/** A certificate of one sensor of each of the two customers; what it says plays no part here. */
let signed: {
  readonly sensorId: string;
  readonly customerId: string;
  readonly token: string;
  readonly number: string;
}[];

const digest = async (parts: readonly Uint8Array[]) => {
  const hash = createHash("sha256");
  for (const part of parts) hash.update(part);
  return new Uint8Array(hash.digest());
};

const evaluate = async (): Promise<void> => {
  const { evidence } = (await inLaboratory((tx) => loadEvidence(tx, run)))!;
  for (const [index, { proposal }] of proposeWindows(evidence).entries()) {
    if (proposal.kind !== "proposed") throw new Error(proposal.reason);
    const { fromSeconds, toSeconds } = proposal.window;
    await execute(
      acceptWindow,
      bench.technician,
      { run, setpoint: index + 1, fromSeconds, toSeconds },
      benchClock,
    );
  }
  await execute(evaluateRun, bench.technician, { run }, benchClock);
};

const idOf = (actor: Actor): string => (actor.kind === "staff" ? actor.personId : "");

const certify = () =>
  inLaboratory(async (tx) => {
    const evaluation = await tx.evaluation.findFirstOrThrow({ include: { results: true } });
    const owners = new Map(evaluation.results.map(({ customerId, sensorId }) => [customerId, sensorId]));
    const rows = [];
    for (const [customerId, sensorId] of owners) {
      const sensor = await tx.sensor.findUniqueOrThrow({
        where: { id: sensorId },
        include: { line: { select: { orderId: true } } },
      });
      const number: string = `C-${rows.length + 1}`;
      const row = await tx.certificate.create({
        data: {
          ...{ number, customerId, sensorId, orderId: sensor.line.orderId, runId: evaluation.runId },
          ...{ evaluationId: evaluation.id, content: "{}", contentHash: new Uint8Array(32) },
          ...{ token: randomBytes(32).toString("base64url"), signedAt: benchClock() },
          signedById: idOf(bench.signatory),
        },
      });
      await signatureRow(tx, row, idOf(bench.technician));
      rows.push(row);
    }
    return rows;
  });

beforeAll(async () => {
  bench = await openRunBench();
  run = await createFullRun(bench);
  await warmTips(bench, run, allPlaces);
  // In two files, so that a channel's readings are joined from two blocks.
  await uploadSeed(bench, run, 1, 0, 6000);
  await uploadSeed(bench, run, 1, 6000);
  await evaluate();
  signed = await certify();
});
afterAll(() => bench.close());

const ask = (actor: Actor, token: string) => execute(downloadEvidence, actor, { token }, benchClock);
const customerOf = (at: number): Actor => {
  const { customerId } = signed[at]!;
  return { kind: "customer", personId: randomUUID(), name: "A buyer", roles: ["customer"], customerId };
};
const fileOf = async (at: number) => {
  const { bytes } = await ask(bench.technician, signed[at]!.token);
  return EvidenceFile.parse(JSON.parse(new TextDecoder().decode(bytes)));
};

describe("the evidence of a certificate", () => {
  it("goes to its customer and to staff, to nobody else, and the log says so", async () => {
    const own = await ask(customerOf(0), signed[0]!.token);
    expect(own.fileName).toBe(`${signed[0]!.number}-evidence.json`);
    expect(await codeOf(ask(customerOf(1), signed[0]!.token))).toBe("not-found");
    expect(await codeOf(ask(customerOf(0), "A".repeat(43)))).toBe("not-found");
    const events = await inLaboratory((tx) =>
      tx.auditEvent.findMany({ where: { action: "certificate.evidence-downloaded" } }),
    );
    const said = events.map(({ payload }) => JSON.parse(payload));
    expect(said).toEqual([
      {
        number: signed[0]!.number,
        sha256: createHash("sha256").update(own.bytes).digest("hex"),
        readings: said[0].readings,
      },
    ]);
    expect(said[0].readings).toBeGreaterThan(100);
  });

  it("gives the stored results again, to the bit, and is the same bytes each time", async () => {
    for (const [at, certificate] of signed.entries()) {
      const [part] = (await fileOf(at)).parts;
      const outcome = evaluateEvidence(part!.evidence);
      if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
      const stored = await inLaboratory((tx) =>
        tx.result.findMany({ where: { sensorId: certificate.sensorId } }),
      );
      const expected = stored.map(({ point }) => JSON.parse(point));
      expect(expected.length).toBeGreaterThan(0);
      expect(JSON.parse(JSON.stringify(outcome.evaluation.points))).toEqual(expect.arrayContaining(expected));
      expect(outcome.evaluation.points).toHaveLength(expected.length);
    }
    const twice = await Promise.all([1, 2].map(() => ask(bench.technician, signed[0]!.token)));
    expect(twice[0]!.bytes).toEqual(twice[1]!.bytes);
  });

  it("proves its readings by the blocks they came in, and shows nothing of the other customer's sensor", async () => {
    const file = await fileOf(0);
    const [part] = file.parts;
    expect(await proveReadings(part!, digest)).toBeNull();
    const other = await fileOf(1);
    const foreign = other.parts[0]!.evidence;
    const text = JSON.stringify(file);
    const [sensor] = foreign.sensors;
    const place = foreign.load.find(({ item }) => item.kind === "sensor");
    for (const word of [sensor!.id, sensor!.serial]) expect(text).not.toContain(`"${word}"`);
    expect(part!.evidence.scans.channels.map(({ channel }) => channel)).not.toContain(place!.channel);
  });

  it("names the first place where readings are not what came in", async () => {
    const change = async (work: (part: EvidenceFile["parts"][number]) => void) => {
      const [part] = (await fileOf(0)).parts;
      const copy = structuredClone(part!);
      work(copy);
      return proveReadings(copy, digest);
    };
    const [first] = (await fileOf(0)).parts[0]!.evidence.scans.channels;
    const { channel } = first!;
    expect(await change((part) => (part.evidence.scans.channels[0]!.microvolts[3]! += 1e-9))).toContain(
      `the readings of channel ${channel}`,
    );
    expect(await change((part) => part.evidence.scans.channels.shift())).toContain(
      `channel ${channel} of block`,
    );
    expect(
      await change((part) => {
        const own = part.evidence.scans.channels[0]!;
        own.seconds.push(1e6);
        own.microvolts.push(0);
        own.polarity.push(1);
      }),
    ).toContain("came in by no block");
    expect(await change((part) => part.blocks.pop())).not.toBeNull();
    expect(await change((part) => (part.blocksDigest = "0".repeat(64)))).toBe(
      "the blocks are not those that the evaluation saw",
    );
  });
});
