import { afterAll, beforeAll, expect, it } from "vitest";
import { defaultGatePolicy } from "@/lib/domain/gate/default-policy";
import { neverOverridable } from "@/lib/domain/gate/never-overridable";
import { execute } from "@/lib/operations/execute";
import { passGate } from "@/lib/operations/gate/pass";
import { changeDraft } from "@/lib/operations/procedure/change-draft";
import { draftRevision } from "@/lib/operations/procedure/draft-revision";
import { makeCurrent } from "@/lib/operations/procedure/make-current";
import { createRun } from "@/lib/operations/run/create";
import { refusalOf } from "../../support/front-desk";
import { fullRunInput, gateClock } from "../../support/full-run";
import { checkBench, gateOf } from "../../support/pass-gate";
import { benchClock, openRunBench, type RunBench } from "../../support/run-bench";

let bench: RunBench;
beforeAll(async () => {
  bench = await openRunBench();
});
afterAll(() => bench.close());

const row = async (run: string, code: string) =>
  (await gateOf(run, gateClock)).headings
    .flatMap(({ rows }) => rows)
    .find((one) => one.code === code && one.severity !== "ok");

it("a procedure's own figures count at the gate of the runs that follow it, and a withdrawn one starts nothing", async () => {
  const input = await fullRunInput(bench);
  const sensors = input.places.filter(({ item }) => item.kind === "sensor");
  const others = input.places.filter(({ item }) => item.kind !== "sensor");
  const planned = async (some: typeof sensors) =>
    (await execute(createRun, bench.technician, { ...input, places: [...others, ...some] }, benchClock))
      .number;
  const before = await planned(sensors.slice(0, 2));

  const { id } = await execute(draftRevision, bench.manager, { key: "demonstration" }, benchClock);
  const [forbidden] = neverOverridable;
  const overrides = [{ code: forbidden, by: ["quality-manager"], reachesCertificate: true }];
  const refusal = await refusalOf(
    execute(
      changeDraft,
      bench.manager,
      {
        id,
        version: 1,
        policyText: JSON.stringify({ overrides: [...defaultGatePolicy.overrides, ...overrides] }),
      },
      benchClock,
    ),
  );
  expect(refusal.fields?.policyText).toMatch(/No reason sets type-range aside/);
  await execute(
    changeDraft,
    bench.manager,
    {
      id,
      version: 1,
      policyText: JSON.stringify({ warmUpHours: { value: 3, source: "our own drift test (invented)" } }),
      change: "A longer warm-up.",
      verification: "Ten mornings (invented).",
    },
    benchClock,
  );
  await execute(makeCurrent, bench.signatory, { id, version: 2 }, benchClock);

  // Checked after two hours: enough by the gate as it comes, too little by this revision.
  const after = await planned(sensors.slice(2, 4));
  for (const run of [before, after]) await checkBench(bench, run, gateClock);
  expect(await row(before, "warm-up")).toBeUndefined();
  expect(await row(after, "warm-up")).toMatchObject({
    reason: expect.stringMatching(/for 2 h; at least 3 h/),
    source: "our own drift test (invented)",
  });
  expect(await row(before, "procedure-current")).toMatchObject({ severity: "refuse" });
  expect((await refusalOf(execute(passGate, bench.technician, { run: before }, gateClock))).message).toMatch(
    /Demonstration, revision 1 is withdrawn/,
  );
  expect(await row(after, "procedure-current")).toBeUndefined();
});
