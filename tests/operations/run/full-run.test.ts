import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { certificateParts } from "@/lib/data/certificate/certificate-parts";
import { inScope } from "@/lib/data/in-scope";
import { loadReviewRun } from "@/lib/data/review/load-review-run";
import { loadEvidence } from "@/lib/data/run/load-evidence";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import { proposeWindows } from "@/lib/domain/evidence/propose-windows";
import { demand } from "@/lib/domain/refusal";
import { restoreEvidence } from "@/lib/domain/run/stored-evidence";
import { execute } from "@/lib/operations/execute";
import { returnRun } from "@/lib/operations/review/return";
import { acceptWindow } from "@/lib/operations/run/accept-window";
import { evaluateRun } from "@/lib/operations/run/evaluate";
import { exportEvidence } from "@/lib/operations/run/export-evidence";
import { recordRoom } from "@/lib/operations/run/record-room";
import { stateSensorSetpoint } from "@/lib/operations/run/state-sensor-setpoint";
import { submitRun } from "@/lib/operations/run/submit";
import { runRoomView } from "@/lib/views/run/run-room";
import { recordAmbient } from "../../support/ambient";
import { auditSentences, refusalOf } from "../../support/front-desk";
import { allPlaces, createFullRun, simulatedRun, uploadSeed, warmTips } from "../../support/full-run";
import { benchClock, inLaboratory, openRunBench, type RunBench } from "../../support/run-bench";

let bench: RunBench;
let run: string;
beforeAll(async () => {
  bench = await openRunBench();
  // A review is the laboratory's: with its name, and what it allows its performers.
  const laboratory = { name: "Invented Laboratory", addressLines: "1 Lane", contact: "lab@example.org" };
  await inLaboratory((tx) => tx.laboratory.create({ data: laboratory }));
  run = await createFullRun(bench);
});
afterAll(() => bench.close());

const evidenceNow = async () => (await inLaboratory((tx) => loadEvidence(tx, run))) ?? expect.fail("no run");
const row = () => inLaboratory((tx) => tx.run.findUniqueOrThrow({ where: { number: run } }));
const sensorStates = async () =>
  [...new Set((await evidenceNow()).sensors.map(({ state }) => state))].toSorted();
const submit = async (more = {}) =>
  execute(submitRun, bench.technician, { run, version: (await row()).version, ...more }, benchClock);

describe("a full run of two customers, from the load to the signatory", () => {
  it("is created with its setpoints ascending and its sensors loaded", async () => {
    expect(run).toBe("R-2026-0001");
    const { evidence } = await evidenceNow();
    expect(evidence.setpoints.map(({ nominalCelsius }) => nominalCelsius)).toEqual([
      300, 500, 700, 900, 1100,
    ]);
    expect(await sensorStates()).toEqual(["loaded"]);
  });

  it("cannot be evaluated before a window is accepted", async () => {
    const refusal = await refusalOf(execute(evaluateRun, bench.technician, { run }, benchClock));
    expect(refusal.message).toMatch(/Accept a stability window/);
  });

  it("takes the readings in two files, each reading to the last bit", async () => {
    const first = await uploadSeed(bench, run, 1, 0, 6000);
    const second = await uploadSeed(bench, run, 1, 6000);
    expect([first.block, second.block]).toEqual([1, 2]);
    const { evidence } = await evidenceNow();
    const sent = simulatedRun(1).evidence.scans;
    expect(evidence.scans.startedAt).toBe("2026-10-14T06:30:00.000Z");
    for (const channel of evidence.scans.channels) {
      const own = sent.channels.find((one) => one.channel === channel.channel);
      expect(channel.microvolts).toEqual(own?.microvolts);
      expect(channel.seconds).toEqual(own?.seconds.map((seconds) => Math.round(seconds * 1000) / 1000));
    }
    expect(await sensorStates()).toEqual(["measured"]);
    expect((await row()).state).toBe("measuring");
  });

  it("refuses the same file again, and readings that do not follow", async () => {
    const again = await refusalOf(uploadSeed(bench, run, 1, 6000));
    // Its times are there already, which is said first.
    expect(again.message).toMatch(/readings go to .* already|already stored, as block 2/);
    const overlap = await refusalOf(uploadSeed(bench, run, 1, 3000, 9000));
    expect(overlap.message).toMatch(/begins at .* Upload what follows/);
    expect(await inLaboratory((tx) => tx.scanBlock.count())).toBe(2);
  });

  it("accepts the proposed windows and stores what was seen", async () => {
    const { evidence } = await evidenceNow();
    for (const [index, { proposal }] of proposeWindows(evidence).entries()) {
      if (proposal.kind !== "proposed") throw new Error(proposal.reason);
      const { fromSeconds, toSeconds } = proposal.window;
      const done = await execute(
        acceptWindow,
        bench.technician,
        { run, setpoint: index + 1, fromSeconds, toSeconds },
        benchClock,
      );
      expect(done.origin).toBe("proposed");
    }
    const stored = await inLaboratory((tx) => tx.stabilityWindow.findMany());
    expect(stored).toHaveLength(5);
    expect(JSON.parse(stored[0]!.assessment)).toMatchObject({
      meets: true,
      reason: "",
      criterion: { minimumSeconds: 600 },
    });
  });

  it("lets a window be moved, and one that misses the criterion stand only with a reason", async () => {
    const window = (await evidenceNow()).evidence.windows[0]!;
    const moved = { run, setpoint: 1, fromSeconds: window.fromSeconds + 20, toSeconds: window.toSeconds };
    expect((await execute(acceptWindow, bench.technician, moved, benchClock)).origin).toBe("moved");
    const short = { run, setpoint: 1, fromSeconds: window.toSeconds - 120, toSeconds: window.toSeconds };
    const refusal = await refusalOf(execute(acceptWindow, bench.technician, short, benchClock));
    expect(refusal.message).toMatch(/2\.0 min long; at least 10\.0 min/);
    expect(refusal.fields).toHaveProperty("reason");
    const reason = "The furnace tripped afterwards; these two minutes are all there is.";
    await execute(acceptWindow, bench.technician, { ...short, reason }, benchClock);
    expect((await auditSentences()).at(-1)).toContain(`does not meet the criterion: ${reason}`);
    await execute(
      acceptWindow,
      bench.technician,
      { run, setpoint: 1, ...{ fromSeconds: window.fromSeconds, toSeconds: window.toSeconds } },
      benchClock,
    );
    expect((await evidenceNow()).evidence.windows[0]).toEqual(window);
  });

  it("refuses a window on readings that came in meanwhile", async () => {
    const window = (await evidenceNow()).evidence.windows[0]!;
    const refusal = await refusalOf(
      execute(
        acceptWindow,
        bench.technician,
        {
          run,
          setpoint: 1,
          fromSeconds: window.fromSeconds,
          toSeconds: window.toSeconds,
          blocksDigest: "0".repeat(64),
        },
        benchClock,
      ),
    );
    expect(refusal.code).toBe("changed-meanwhile");
  });

  it("cannot be submitted before it is evaluated, nor after something changed, nor without the tips", async () => {
    expect((await refusalOf(submit())).message).toMatch(/not evaluated yet/);
    const done = await execute(evaluateRun, bench.technician, { run }, benchClock);
    expect(done.sequence).toBe(1);
    expect(done.evaluation.points).toHaveLength(30);
    expect(await sensorStates()).toEqual(["evaluated"]);
    const refusal = await refusalOf(submit());
    expect(refusal.fields?.tipCheckReason).toMatch(/Warm the tips in place 1 \(not done\)/);
    await warmTips(bench, run, allPlaces);
    expect((await refusalOf(submit())).message).toMatch(/Something changed since the last evaluation/);
  });

  it("records the room by its instrument, corrected, and says where it is outside the procedure's limits", async () => {
    const at = { run, moment: "start" as const, instrument: "TH-9", celsius: 23.2 };
    const record = (more = {}) => execute(recordRoom, bench.technician, { ...at, ...more }, benchClock);
    expect((await refusalOf(record())).fields?.instrument).toMatch(/recorded under Standards/);
    await recordAmbient(bench, "TH-9");
    expect((await refusalOf(record({ percent: 40 }))).fields?.percent).toMatch(/does not speak of humidity/);
    expect(await record()).toMatchObject({ celsius: 23.1, outside: null });
    expect(await record({ moment: "end", celsius: 29 })).toMatchObject({
      outside: "28.9 °C, outside 18 °C to 28 °C",
    });
    const again = { moment: "end", celsius: 23.7 };
    expect((await refusalOf(record(again))).fields?.reason).toMatch(/recorded already/);
    expect(await record({ ...again, reason: "door was open" })).toMatchObject({ outside: null });
    expect((await auditSentences()).join("\n")).toContain("again: door was open");
    expect((await row()).ambientId).not.toBeNull();
    const { mayRecord, records } = await runRoomView(bench.technician, run);
    expect(mayRecord).toBe(true);
    const told = records.map((one) => `${one.moment} ${one.celsius} ${one.isCounted} ${one.reason}`.trim());
    expect(told).toEqual(["end 23.6 °C true door was open", "end 28.9 °C false", "start 23.1 °C true"]);
  });

  it("keeps a failed sensor in the run with its state and reason", async () => {
    const sensor = (await evidenceNow()).sensors[1]!.tag;
    const stated = { run, sensor, setpoint: 5, state: "invalid" as const };
    const refusal = await refusalOf(execute(stateSensorSetpoint, bench.technician, stated, benchClock));
    expect(refusal.fields).toHaveProperty("reason");
    await execute(
      stateSensorSetpoint,
      bench.technician,
      { ...stated, reason: "opened at 1040 °C" },
      benchClock,
    );
    const { evaluation, sequence } = await execute(evaluateRun, bench.technician, { run }, benchClock);
    expect(sequence).toBe(2);
    expect(
      evaluation.points.find((point) => point.sensor === sensor && point.setpoint === "1100 °C"),
    ).toEqual(expect.objectContaining({ state: "invalid", reason: "opened at 1040 °C" }));
    expect(await inLaboratory((tx) => tx.result.count())).toBe(60);
  });

  it("exports evidence that gives the same numbers, to the last bit", async () => {
    const { text } = await execute(exportEvidence, bench.signatory, { run }, benchClock);
    const outcome = evaluateEvidence(JSON.parse(text));
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
    const stored = await inLaboratory((tx) =>
      tx.evaluation.findFirstOrThrow({ where: { sequence: 2 }, include: { results: true } }),
    );
    const byKey = new Map(
      stored.results
        .map(({ point }) => JSON.parse(point))
        .map((point) => [`${point.sensor} ${point.setpoint}`, point]),
    );
    for (const point of outcome.evaluation.points)
      expect(JSON.parse(JSON.stringify(point))).toEqual(byKey.get(`${point.sensor} ${point.setpoint}`));
    const restored = restoreEvidence(stored.evidence, JSON.parse(text).scans.channels);
    expect(restored).toEqual(JSON.parse(text));
  });

  it("refuses a stale form, then goes to the signatory once", async () => {
    const stale = { run, version: (await row()).version - 1 };
    expect((await refusalOf(execute(submitRun, bench.technician, stale, benchClock))).code).toBe(
      "changed-meanwhile",
    );
    await submit();
    const { id: runId, state } = await row();
    expect(state).toBe("submitted");
    expect(await sensorStates()).toEqual(["in-review"]);
    expect((await refusalOf(submit())).code).toBe("wrong-state");
    const room = { run, moment: "end" as const, instrument: "TH-9", celsius: 23 };
    expect((await refusalOf(execute(recordRoom, bench.technician, room, benchClock))).code).toBe(
      "wrong-state",
    );
    const review = await inLaboratory((tx) => loadReviewRun(tx, runId));
    const parts = demand(certificateParts(review!, review!.sensors[0]!.id));
    expect(parts.run.room?.map(({ celsius }) => celsius)).toEqual([23.1, 23.6]);
    expect(review!.roomAgain).toEqual([{ moment: "end", times: 2, reason: "door was open" }]);
    const late = await refusalOf(uploadSeed(bench, run, 2));
    expect(late.message).toMatch(/submitted for review: nothing can be added/);
  });

  it("left an audit event for each step", async () => {
    const actions = (await auditSentences()).filter((sentence) => sentence.startsWith("run."));
    const count = (action: string) => actions.filter((sentence) => sentence.startsWith(`${action}:`)).length;
    expect({
      created: count("run.created"),
      tips: count("run.tip-check-recorded"),
      readings: count("run.readings-received"),
      windows: count("run.window-accepted"),
      states: count("run.sensor-stated"),
      evaluations: count("run.evaluated"),
      submissions: count("run.submitted"),
      exports: count("run.evidence-exported"),
    }).toEqual({
      created: 1,
      tips: 8,
      readings: 2,
      windows: 8,
      states: 1,
      evaluations: 2,
      submissions: 1,
      exports: 1,
    });
  });

  it("shows a customer its own channels and the laboratory's, nobody else's", async () => {
    const channels = await inScopeOf(bench.northern.customerId);
    expect(channels).toEqual(["101", "102", "103", "104", "108", "120"]);
  });

  it("counted once what it cost its references, also when it is handed over again", async () => {
    const uses = () => inLaboratory((tx) => tx.referenceUse.findMany({ orderBy: { equipmentId: "asc" } }));
    const counted = await uses();
    expect(counted).toHaveLength(2);
    for (const use of counted) {
      // The program holds 1100 °C last, and the furnace overshoots a little.
      expect(use.highestCelsius).toBeGreaterThan(1098);
      expect(use.highestCelsius).toBeLessThan(1110);
      expect(use.hoursAbove1000).toBeGreaterThan(0.5);
      expect(use.hoursInFurnace).toBeGreaterThan(use.hoursAbove1000);
      expect(use.immersionMillimetre).toBe(400);
    }
    const runId = (await row()).id;
    const evaluations = await inLaboratory((tx) =>
      tx.evaluation.findMany({ where: { runId }, orderBy: { sequence: "asc" } }),
    );
    const evaluationId = evaluations.at(-1)?.id ?? "";
    const reason = "Look at the windows once more.";
    await execute(returnRun, bench.signatory, { runId, evaluationId, reason }, benchClock);
    await submit();
    expect(await uses()).toEqual(counted);
    expect((await auditSentences()).filter((one) => one.startsWith("equipment.uses-counted"))).toHaveLength(
      1,
    );
  });
});

const inScopeOf = async (customerId: string): Promise<string[]> => {
  const rows = await inScope({ kind: "customer", customerId }, (tx) =>
    tx.scanBlockChannel.findMany({
      distinct: ["channel"],
      orderBy: { channel: "asc" },
      select: { channel: true },
    }),
  );
  return rows.map(({ channel }) => channel);
};
