import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { readStoredRows } from "@/lib/domain/gate/stored-outcome";
import { execute } from "@/lib/operations/execute";
import { overrideGate } from "@/lib/operations/gate/override";
import { passGate } from "@/lib/operations/gate/pass";
import { recordBenchChecks } from "@/lib/operations/gate/record-bench-checks";
import { createRun } from "@/lib/operations/run/create";
import { auditSentences, refusalOf } from "../../support/front-desk";
import { fullRunInput, gateClock, uploadSeed } from "../../support/full-run";
import { inService, suspect } from "../../support/in-service";
import { checkBench, gateOf } from "../../support/pass-gate";
import { benchClock, inLaboratory, openRunBench, type RunBench } from "../../support/run-bench";

let bench: RunBench;
let run: string;
beforeAll(async () => {
  bench = await openRunBench();
  run = (await execute(createRun, bench.technician, await fullRunInput(bench), benchClock)).number;
});
afterAll(() => bench.close());

const start = (clock = gateClock) => execute(passGate, bench.technician, { run }, clock);
const codes = async (severity: string) =>
  (await gateOf(run, gateClock)).headings
    .flatMap(({ rows }) => rows)
    .filter((row) => row.severity === severity && row.given === null)
    .map(({ code }) => code);
const reason = "looked at by hand, channel by channel";
const set = (
  code: "tips-warmed" | "junction-by-thermometer" | "warm-up",
  subjects: string[],
  who = bench.signatory,
) => execute(overrideGate, who, { run, code, subjects, reason }, gateClock);

describe("a run before its gate", () => {
  it("takes no reading, whoever sends it", async () => {
    const refusal = await refusalOf(uploadSeed(bench, run, 1, 0, 100));
    expect(refusal).toMatchObject({
      code: "rule",
      message: expect.stringMatching(/has not passed its gate/),
    });
    expect(await inLaboratory((tx) => tx.scanBlock.count())).toBe(0);
  });

  it("does not start without its same-day checks, and names each of them", async () => {
    const refusal = await refusalOf(start());
    expect(refusal.code).toBe("rule");
    expect(refusal.message).toMatch(/shorted zero is not recorded today/);
    expect(refusal.message).toMatch(/this channel was not shorted/);
    expect(refusal.message).toMatch(/not checked by thermometer/);
    expect(refusal.message).toMatch(/was not warmed/);
    expect(await inLaboratory((tx) => tx.gateOutcome.count())).toBe(0);
  });

  it("is checked and started by a technician alone", async () => {
    for (const who of [bench.frontDesk, bench.northern.actor, bench.signatory])
      for (const attempt of [
        () => execute(passGate, who, { run }, gateClock),
        () => execute(recordBenchChecks, who, { run, warmUpHours: 2 }, gateClock),
      ])
        expect((await refusalOf(attempt())).code).toBe("not-permitted");
  });

  it("refuses checks of what is not in the load, and an empty form, each at its field", async () => {
    const check = (input: object) =>
      refusalOf(execute(recordBenchChecks, bench.technician, { run, ...input }, gateClock));
    expect((await check({ channels: [{ channel: "999", microvolt: 0 }] })).fields).toEqual({
      "channels.0.microvolt": "Channel 999 is not of this load.",
    });
    expect(
      (await check({ junctions: [{ junction: "ICE-99", thermometer: "PRT-01", thermometerCelsius: 0 }] }))
        .fields,
    ).toHaveProperty("junctions.0.thermometerCelsius");
    expect((await check({})).fields).toHaveProperty("warmUpHours");
    expect((await check({ shortedZeroMicrovolt: Number.NaN })).fields).toHaveProperty("shortedZeroMicrovolt");
    expect(await inLaboratory((tx) => tx.benchCheck.count())).toBe(0);
  });

  it("counts the last check of each kind, on its own day", async () => {
    await execute(recordBenchChecks, bench.technician, { run, shortedZeroMicrovolt: 5 }, gateClock);
    expect(await codes("overridable")).toContain("shorted-zero");
    await checkBench(bench, run, gateClock, false);
    expect(await codes("overridable")).toEqual(["junction-by-thermometer", "tips-warmed"]);
    const tomorrow = await gateOf(run, benchClock);
    expect(
      tomorrow.headings.flatMap(({ rows }) => rows).find(({ code }) => code === "warm-up")?.severity,
    ).toBe("overridable");
  });

  it("is refused a reason from whom the policy does not name, and for what is not said", async () => {
    const junction = ["ICE-01"];
    expect((await refusalOf(set("junction-by-thermometer", junction, bench.technician))).code).toBe(
      "not-permitted",
    );
    expect((await refusalOf(set("junction-by-thermometer", junction, bench.frontDesk))).code).toBe(
      "not-permitted",
    );
    expect((await refusalOf(set("warm-up", []))).code).toBe("wrong-state");
    expect(await inLaboratory((tx) => tx.gateOverride.count())).toBe(0);
  });

  it("takes no reason against equipment out of service", async () => {
    await suspect(bench.manager, bench.scannerId, gateClock);
    const refusal = await refusalOf(
      execute(
        overrideGate,
        bench.manager,
        { run, code: "scanner-in-date", subjects: ["SC-01"], reason },
        gateClock,
      ),
    );
    expect(refusal).toMatchObject({
      code: "rule",
      message: expect.stringMatching(/No reason sets this aside/),
    });
    expect((await refusalOf(start())).message).toMatch(/does not start: SC-01: SC-01 is suspect/);
    await inService(bench.manager, bench.scannerId, gateClock);
  });

  it("starts with one reason for many sensors, kept as it stood", async () => {
    const places = ["1", "2", "3", "4", "5", "6", "centre A", "centre B"];
    const tips = (await gateOf(run, gateClock)).headings
      .flatMap(({ rows }) => rows)
      .find(({ code }) => code === "tips-warmed");
    expect(tips?.subjects.toSorted()).toEqual(places);
    await set("tips-warmed", [...(tips?.subjects ?? [])], bench.technician);
    await set("junction-by-thermometer", ["ICE-01"]);
    await start();
    const outcome = await inLaboratory((tx) => tx.gateOutcome.findFirstOrThrow());
    expect(outcome.verdict).toBe("may-start");
    const rows = readStoredRows(outcome.rows).filter(({ given }) => given !== null);
    expect(
      rows.map(({ code, subjects, reachesCertificate }) => [code, subjects.length, reachesCertificate]),
    ).toEqual([
      ["junction-by-thermometer", 1, true],
      ["tips-warmed", 8, true],
    ]);
    expect(JSON.parse(outcome.policy)).toHaveProperty("warmUpHours.value", 1);
    const told = await auditSentences();
    expect(told.some((one) => one.includes(`let run ${run} start`))).toBe(true);
    expect(told.some((one) => one.includes("set aside “tips warmed”") && one.includes(reason))).toBe(true);
  });
});

describe("a run behind its gate", () => {
  it("takes its first reading", async () => {
    expect((await uploadSeed(bench, run, 1, 0, 100)).block).toBe(1);
  });

  it("asks the gate nothing more", async () => {
    for (const attempt of [() => start(), () => set("tips-warmed", ["1"])])
      expect((await refusalOf(attempt())).message).toMatch(/its gate lies behind it/);
    expect(
      (await refusalOf(execute(recordBenchChecks, bench.technician, { run, warmUpHours: 2 }, gateClock)))
        .code,
    ).toBe("wrong-state");
  });
});
