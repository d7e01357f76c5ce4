import { afterAll, beforeAll, expect, it } from "vitest";
import { waitWords } from "@/app/(lab)/runs/wait-words";
import { runWindowsView } from "@/lib/views/run/run-windows";
import { createFullRun, uploadSeed } from "../../support/full-run";
import { openRunBench, type RunBench } from "../../support/run-bench";

let bench: RunBench;
beforeAll(async () => {
  bench = await openRunBench();
});
afterAll(() => bench.close());

it("while the furnace settles, the page says what is missing and when it will be there, and keeps its word", async () => {
  const run = await createFullRun(bench);
  let read = 0;
  const readUntil = async (seconds: number) => {
    await uploadSeed(bench, run, 1, read, seconds);
    read = seconds;
    const [first] = (await runWindowsView(bench.technician, run)).setpoints;
    if (!first) throw new Error("the run has no setpoint");
    return { ...first, words: first.wait && waitWords(first.wait) };
  };

  const ramping = await readUntil(1500);
  expect([ramping.proposal.kind, ramping.wait]).toEqual(["none", null]);

  const early = await readUntil(2100);
  expect(early.words).toEqual({
    headline: "Not stable yet",
    interval: "Too early to say: less than five minutes near the setpoint have been read.",
  });
  expect(early.wait?.latest.reasons[0]).toMatch(/min long; at least 10.0 min are asked for/);

  const promised: { readonly from: number; readonly to: number }[] = [];
  for (const seconds of [2400, 3000, 3600]) {
    const { wait, words } = await readUntil(seconds);
    expect(words?.headline).toMatch(/^Stable in about \d+ min$/);
    expect(words?.interval).toMatch(/with 90 % probability between \d+ and \d+ min\.$/);
    expect(wait?.latest.reasons.join(" ")).toMatch(/The references drift by/);
    if (wait?.forecast.kind !== "expected") throw new Error("no time was said");
    promised.push({ from: wait.forecast.time.fromSeconds, to: wait.forecast.time.toSeconds });
  }

  let settled = 3600;
  for (; settled < 4500; ) {
    settled += 60;
    const { proposal, wait } = await readUntil(settled);
    if (proposal.kind === "none") continue;
    expect(wait).toBeNull();
    break;
  }
  for (const { from, to } of promised) {
    // Looked at once a minute: the furnace was stable at some time of the last one.
    expect(settled).toBeGreaterThanOrEqual(from);
    expect(settled - 60).toBeLessThanOrEqual(to);
  }
});
