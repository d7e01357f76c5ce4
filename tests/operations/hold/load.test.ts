import { afterAll, beforeAll, expect, it } from "vitest";
import { inScope } from "@/lib/data/in-scope";
import { execute } from "@/lib/operations/execute";
import { placeHoldOn } from "@/lib/operations/hold/place";
import { createRun } from "@/lib/operations/run/create";
import { refusalOf } from "../../support/front-desk";
import { fullRunInput } from "../../support/full-run";
import { benchClock, openRunBench, type RunBench } from "../../support/run-bench";

let bench: RunBench;
beforeAll(async () => {
  bench = await openRunBench();
});
afterAll(() => bench.close());

it("does not load what is on hold, names it at its place, and loads the others, with their custody", async () => {
  const input = await fullRunInput(bench);
  const at = input.places.findIndex(({ item }) => item.kind === "sensor");
  const item = input.places[at]!.item as { readonly tag: string };
  const { line } = await inScope({ kind: "laboratory" }, (tx) =>
    tx.sensor.findUniqueOrThrow({
      where: { tag: item.tag },
      include: { line: { include: { order: true } } },
    }),
  );
  const hold = { orderNumber: line.order.number, tag: item.tag, kind: "condition", reason: "wet" } as const;
  await execute(
    placeHoldOn,
    bench.technician,
    { ...hold, publicUrl: "https://laboratory.example" },
    benchClock,
  );

  const refusal = await refusalOf(execute(createRun, bench.technician, input, benchClock));
  expect(refusal).toMatchObject({ code: "rule", fields: { [`places.${at}.item`]: expect.any(String) } });
  expect(refusal.message).toContain(`${item.tag} is on hold: wet`);

  const others = { ...input, places: input.places.filter((_, index) => index !== at) };
  const { number } = await execute(createRun, bench.technician, others, benchClock);
  const moves = await inScope({ kind: "laboratory" }, (tx) =>
    tx.custodyEvent.findMany({ where: { kind: "to-furnace" } }),
  );
  expect(moves.map(({ toWhom }) => toWhom)).toEqual(Array(5).fill(number));
});
