import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { execute } from "@/lib/operations/execute";
import { receiveReadings } from "@/lib/operations/run/receive-readings";
import { recordTipCheck } from "@/lib/operations/run/record-tip-check";
import { refusalOf } from "../../support/front-desk";
import { bytesOf, createFullRun } from "../../support/full-run";
import { benchClock, inLaboratory, openRunBench, type RunBench } from "../../support/run-bench";

let bench: RunBench;
let run: string;
beforeAll(async () => {
  bench = await openRunBench();
  run = await createFullRun(bench);
});
afterAll(() => bench.close());

const send = (text: string, more: { startedAt?: string } = {}) =>
  execute(
    receiveReadings,
    bench.technician,
    { run, fileName: "scan.csv", bytes: bytesOf(text), ...more },
    benchClock,
  );
const blocks = () => inLaboratory((tx) => tx.scanBlock.count());

describe("a readings file", () => {
  it("that is refused leaves nothing behind: no block, no state, no audit event", async () => {
    const before = await inLaboratory((tx) => tx.auditEvent.count());
    const refusal = await refusalOf(send("time_s,channel,emf_uV\n0,101,1000\n10,101,open\n"));
    expect(refusal.message).toMatch(/^Line 3, column emf_uV: "open" is not a number.*Nothing was stored\.$/);
    expect(refusal.fields?.file).toMatch(/^Line 3/);
    expect(await blocks()).toBe(0);
    const row = await inLaboratory((tx) => tx.run.findUniqueOrThrow({ where: { number: run } }));
    expect(row).toMatchObject({ state: "planned", startedAt: null, version: 1 });
    expect(await inLaboratory((tx) => tx.auditEvent.count())).toBe(before);
  });

  it("is refused to anybody but a technician, and for a run that is not there", async () => {
    const bytes = bytesOf("time_s,101 [uV]\n0,1\n");
    const input = { run, fileName: null, bytes };
    expect((await refusalOf(execute(receiveReadings, bench.frontDesk, input, benchClock))).code).toBe(
      "not-permitted",
    );
    expect(
      (await refusalOf(execute(receiveReadings, bench.technician, { ...input, run: "R-1" }, benchClock)))
        .code,
    ).toBe("not-found");
  });

  it("whose clock lies in the future is refused", async () => {
    const refusal = await refusalOf(send("time,101 [uV]\n2026-10-15T11:00:00Z,1\n"));
    expect(refusal.message).toMatch(/lie in the future.*time zone/);
    expect(await blocks()).toBe(0);
  });

  it("that would have begun before the sensors came is refused, with both times", async () => {
    const refusal = await refusalOf(send("time,101 [uV]\n2025-10-15T06:00:00Z,1\n"));
    expect(refusal.code).toBe("rule");
    expect(refusal.message).toMatch(
      /2025-10-15T06:00:00.000Z, but received were: T-\d+ on 2026-.*recorder’s clock/,
    );
    expect(await blocks()).toBe(0);
  });

  it("in seconds begins when it is said to, and its gaps and absent channels are told", async () => {
    const text = `time_s,101 [mV]\n${[0, 10, 20, 30, 40, 400].map((at) => `${at},1.001`).join("\n")}\n`;
    const done = await send(text, { startedAt: "2026-10-15T08:00:00+02:00" });
    expect(done.findings).toEqual([
      "Channel 101 has a gap of 360.0 s at 40 s; its usual interval is 10.0 s.",
      "The file has no reading of channel 102, 103, 104, 105, 106, 107, 108, 120.",
    ]);
    const row = await inLaboratory((tx) => tx.run.findUniqueOrThrow({ where: { number: run } }));
    expect(row.startedAt?.toISOString()).toBe("2026-10-15T06:00:00.000Z");
  });

  it("that follows in moments is set on the run's clock, to the microsecond", async () => {
    await send(
      "time,channel,emf_uV\n2026-10-15T08:10:00.000001+02:00,101,1001\n2026-10-15T06:10:01Z,102,5\n",
    );
    const channels = await inLaboratory((tx) =>
      tx.scanBlockChannel.findMany({ where: { block: { sequence: 2 } }, orderBy: { channel: "asc" } }),
    );
    const seconds = channels.map(({ times }) => Buffer.from(times).readDoubleLE(0));
    expect(seconds).toEqual([600.000001, 601]);
    expect(channels[0]!.customerId).toBeNull();
    expect(channels[1]!.customerId).toBe(bench.northern.customerId);
  });

  it("that was stored is refused a second time, under any name", async () => {
    const refusal = await refusalOf(
      send("time,channel,emf_uV\n2026-10-15T08:10:00.000001+02:00,101,1001\n2026-10-15T06:10:01Z,102,5\n"),
    );
    expect(refusal.message).toMatch(/already/);
    const before = await refusalOf(send("time,101 [uV]\n2026-10-15T05:59:59Z,1\n"));
    expect(before.message).toMatch(/Upload what follows|before the run's first reading/);
    expect(await blocks()).toBe(2);
  });
});

describe("a tip check", () => {
  const warm = (place: string, riseMicrovolt: number, onlyThisChannel = true) =>
    execute(recordTipCheck, bench.technician, { run, place, riseMicrovolt, onlyThisChannel }, benchClock);

  it("passes from 20 µV on this channel alone, and the last one counts", async () => {
    expect((await warm("1", 19.9)).state).toBe("too-small");
    expect((await warm("1", 120, false)).state).toBe("other-channels-moved");
    expect((await warm("1", 20)).state).toBe("passed");
    expect(await inLaboratory((tx) => tx.tipCheck.count())).toBe(3);
  });

  it("is refused where nothing can be warmed", async () => {
    expect((await refusalOf(warm("shorted", 50))).fields?.place).toMatch(/a sensor or a reference/);
    expect((await refusalOf(warm("99", 50))).fields).toHaveProperty("place");
  });
});
