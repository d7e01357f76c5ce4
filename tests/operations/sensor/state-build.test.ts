import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { execute } from "@/lib/operations/execute";
import { passGate as passGateOperation } from "@/lib/operations/gate/pass";
import { createRun } from "@/lib/operations/run/create";
import { stateBuild } from "@/lib/operations/sensor/state-build";
import { sensorView } from "@/lib/views/sensor/sensor";
import { auditSentences, refusalOf } from "../../support/front-desk";
import { fullRunInput, gateClock } from "../../support/full-run";
import { gateOf, passGate } from "../../support/pass-gate";
import { benchClock, openRunBench, type RunBench } from "../../support/run-bench";

let bench: RunBench;
let run: string;
let tag: string;
beforeAll(async () => {
  bench = await openRunBench();
  const input = await fullRunInput(bench);
  run = (await execute(createRun, bench.technician, input, benchClock)).number;
  tag = input.places.flatMap(({ item }) => (item.kind === "sensor" ? [item.tag] : []))[0]!;
});
afterAll(() => bench.close());

const version = async () => (await sensorView(bench.technician, tag)).version;
const state = async (more: object, who = bench.technician) =>
  execute(
    stateBuild,
    who,
    { tag, version: await version(), reason: "looked at it on the bench", ...more },
    gateClock,
  );

describe("how a sensor is made", () => {
  it("is stated by whoever takes sensors in, each field refused at its place", async () => {
    expect((await refusalOf(state({ leadInsulation: "ptfe" }, bench.signatory))).code).toBe("not-permitted");
    expect((await refusalOf(state({ lengthMillimetre: "long", reason: "" }))).fields).toEqual({
      lengthMillimetre: expect.stringMatching(/millimetres/),
      reason: expect.stringMatching(/Say what was looked at/),
    });
    expect((await refusalOf(state({ leadInsulation: "ptfe", version: 1 }))).code).toBe("changed-meanwhile");
    expect((await refusalOf(state({ tag: "T-999999" }))).code).toBe("not-found");
  });

  it("stops its run at the gate: a PTFE lead near heat is refused, with the reason why, and no reason helps", async () => {
    await state({
      sheath: "mineral-insulated",
      sheathMillimetre: "3",
      leadInsulation: "ptfe",
      lengthMillimetre: "450",
    });
    const refusal = await refusalOf(execute(passGateOperation, bench.technician, { run }, gateClock));
    expect(refusal.message).toMatch(/does not start:.*PTFE or PFA holds 260 °C; above it gives off toxic/);
    const { verdict } = await gateOf(run, gateClock);
    expect(verdict).toBe("refused");
  });

  it("is mended on the bench, and the run starts", async () => {
    await state({
      sheath: "mineral-insulated",
      sheathMillimetre: "4.5",
      leadInsulation: "bare",
      lengthMillimetre: "450",
    });
    await passGate(bench, run, gateClock);
    expect(await auditSentences()).toEqual(
      expect.arrayContaining([
        expect.stringMatching(/Lead insulation: PTFE or PFA, now Bare tails.*looked at it/),
      ]),
    );
  });

  it("stays once the gate has looked at it", async () => {
    expect((await refusalOf(state({ leadInsulation: "ptfe" }))).message).toMatch(/gate is passed/);
  });
});
