import { afterAll, beforeAll, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { execute } from "@/lib/operations/execute";
import { comment } from "@/lib/operations/review/comment";
import { openResult } from "@/lib/operations/review/open-result";
import { reviewQueueView } from "@/lib/views/review-queue";
import { reviewResultView } from "@/lib/views/review-result";
import { reviewRunView } from "@/lib/views/review-run";
import { buildRun } from "../support/build-run";
import { buildWorld, type World } from "../support/build-world";
import { type TestDatabase, testDatabase } from "../support/database";
import { openResults } from "../support/open-results";
import { signRun } from "../support/sign-run";

let database: TestDatabase;
let world: World;
let quiet: Awaited<ReturnType<typeof buildRun>>;
/** The same six sensors again: two of them in each other's place. */
let swapped: Awaited<ReturnType<typeof buildRun>>;
const laboratory = { kind: "laboratory" } as const;
const clock = () => new Date("2026-06-03T09:00:00Z");
const six = Array.from({ length: 6 }, () => "north" as const);
/** What each sensor is, °C of error; U is 1.27 °C. */
const errors = [0.2, 0.4, 2.9, 0.3, 0.5, 0.1];

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
  const measured = (of: readonly number[]) => ({
    owners: six,
    decisionRule: "none" as const,
    change: (point: Parameters<NonNullable<Parameters<typeof buildRun>[1]["change"]>>[0], index: number) => {
      if (point.state !== "measured") return point;
      const error = of[index]!;
      return {
        ...point,
        errorCelsius: error,
        printed: {
          ...point.printed,
          errorCelsius: error.toFixed(1),
          correctionCelsius: (-error).toFixed(1),
        },
      };
    },
  });
  const first = await buildRun(world, measured(errors));
  await openResults(world.people.signatory, first.run.id);
  await signRun(world.people.signatory, first);
  const [a, b, c, ...rest] = errors as [number, number, number, ...number[]];
  swapped = await buildRun(world, {
    ...measured([a, c, b, ...rest]),
    createdAt: new Date("2026-06-02T08:00:00Z"),
  });
  await inScope(laboratory, async (tx) => {
    for (const [index, { id }] of swapped.sensors.entries())
      await tx.sensor.update({ where: { id }, data: { serial: first.sensors[index]!.serial } });
  });
  quiet = await buildRun(world, { owners: ["south"], decisionRule: "none" });
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

it("puts the run with the gravest exception first in the queue, with what it is", async () => {
  const { waiting } = await reviewQueueView(world.people.signatory);
  expect(waiting.map(({ number }) => number)).toEqual([swapped.run.number, quiet.run.number]);
  const [, second, third] = swapped.sensors;
  expect(waiting[0]!.gravest).toMatch(new RegExp(`^${second!.tag} and ${third!.tag}: look swapped`));
  expect(waiting[1]).toMatchObject({ exceptions: 0, openRemarks: 0 });
});

it("shows each value beside its last calibration, and counts what this person opened", async () => {
  const { signatory } = world.people;
  const before = await reviewRunView(signatory, swapped.run.number);
  // Two sensors at two setpoints are named, and one of the eight others is drawn.
  expect(before.duty).toMatchObject({ mustOpen: 5, opened: 0 });
  expect(before.duty.next).toMatch(new RegExp(`^/review/${swapped.run.number}/T-\\d+/\\d$`));
  const cells = before.sensors.map(({ cells: own }) => own[0]!);
  expect(cells.map(({ difference }) => difference?.celsius)).toEqual([
    "0.0",
    "+2.5",
    "-2.5",
    "0.0",
    "0.0",
    "0.0",
  ]);
  expect(cells[1]).toMatchObject({
    opening: "exception",
    difference: { isBeyondU: true, earlierCelsius: "0.4", expandedCelsius: "1.8" },
  });

  const [, , third] = swapped.sensors;
  const page = await reviewResultView(signatory, swapped.run.number, third!.tag, 1);
  expect(page.duty).toMatchObject({ records: true, isOpened: false, opened: 0, mustOpen: 5 });
  expect(page.duty.because[0]).toContain("look swapped");
  await execute(openResult, signatory, page.duty.ids, clock);
  await execute(
    comment,
    signatory,
    { ...page.duty.ids, place: "error", text: "Exchanged in the load?" },
    clock,
  );

  const after = await reviewResultView(signatory, swapped.run.number, third!.tag, 1);
  expect(after.duty).toMatchObject({ isOpened: true, opened: 1 });
  expect(after.duty.nextToOpen).not.toBeNull();
  expect(after.duty.nextToOpen).not.toBe(`/review/${swapped.run.number}/${third!.tag}/1`);
  expect(after.duty.remarks).toMatchObject([{ place: "error", text: "Exchanged in the load?" }]);
  const run = await reviewRunView(signatory, swapped.run.number);
  expect(run.sensors[2]).toMatchObject({
    openRemarks: 1,
    cells: [{ opening: "opened", openRemarks: 1 }, {}],
  });
  expect((await reviewQueueView(signatory)).waiting[0]).toMatchObject({ openRemarks: 1 });
  // Another reader has opened nothing.
  const other = await reviewRunView(world.people.technician, swapped.run.number);
  expect(other.duty.opened).toBe(0);
});

it("says where nothing is on record", async () => {
  const { tag } = quiet.sensors[0]!;
  const page = await reviewResultView(world.people.signatory, quiet.run.number, tag, 1);
  expect(page.duty.difference).toBeNull();
  expect(page.duty.because).toEqual([]);
});
