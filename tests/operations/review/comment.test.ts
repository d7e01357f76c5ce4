import { afterAll, beforeAll, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { loadRemarks } from "@/lib/data/review/load-remarks";
import { loadReviewRun } from "@/lib/data/review/load-review-run";
import { decideSettled } from "@/lib/domain/review/decide-settled";
import type { Actor } from "@/lib/domain/staff/actor";
import { execute } from "@/lib/operations/execute";
import { answerComment } from "@/lib/operations/review/answer-comment";
import { comment } from "@/lib/operations/review/comment";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { type TestDatabase, testDatabase } from "../../support/database";
import { openResults } from "../../support/open-results";
import { signRun } from "../../support/sign-run";

let database: TestDatabase;
let world: World;
let built: Awaited<ReturnType<typeof buildRun>>;
const laboratory = { kind: "laboratory" } as const;
const clock = () => new Date("2026-03-05T09:00:00Z");

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
  built = await buildRun(world, { owners: ["north", "north"] });
  await openResults(world.people.signatory, built.run.id);
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

const at = async (sensor = 0) => {
  const { id: sensorId } = built.sensors[sensor]!;
  const setpoint = await inScope(laboratory, (tx) =>
    tx.runSetpoint.findFirstOrThrow({ where: { runId: built.run.id, position: 1 } }),
  );
  return { runId: built.run.id, evaluationId: built.evaluation.id, sensorId, setpointId: setpoint.id };
};
const say = async (actor: Actor, more: Record<string, unknown> = {}) =>
  execute(
    comment,
    actor,
    { ...(await at()), place: "error", text: "Far from 2025?", ...more } as never,
    clock,
  );
const answer = (actor: Actor, commentId: string, settles: boolean) =>
  execute(answerComment, actor, { commentId, text: "It was annealed meanwhile.", settles }, clock);
const remarks = () =>
  inScope(laboratory, async (tx) => loadRemarks(tx, (await loadReviewRun(tx, built.run.id))!));

it("stays at its number until somebody settles it, and stops its sensor alone", async () => {
  const { signatory, technician } = world.people;
  const tag = built.sensors[0]!.tag;
  const { id } = await say(signatory);
  expect(await remarks()).toMatchObject([
    { id, sensor: tag, setpoint: "600 °C", place: "error", evaluation: 1, isSettled: false, answers: [] },
  ]);
  await expect(signRun(signatory, { ...built, sensors: [built.sensors[0]!] })).rejects.toMatchObject({
    refusal: { code: "rule", message: expect.stringContaining("Far from 2025?") },
  });
  expect(decideSettled(await remarks(), [built.sensors[1]!.tag])).toMatchObject({ ok: true });
  // Whoever measured answers; that it is settled is for who asked, or who may sign.
  const measured = { ...technician, roles: ["technician"] } as Actor;
  await answer(measured, id, false);
  await expect(answer(measured, id, true)).rejects.toMatchObject({
    refusal: { code: "rule", message: expect.stringContaining("or a signatory") },
  });
  expect(decideSettled(await remarks(), [tag])).toMatchObject({ ok: false });
  await answer(signatory, id, true);
  expect(await remarks()).toMatchObject([
    { isSettled: true, answers: [{ by: "Toni Bench", settles: false }, { settles: true }] },
  ]);
  await expect(answer(technician, id, true)).rejects.toMatchObject({ refusal: { code: "wrong-state" } });
  const actions = await inScope(laboratory, (tx) =>
    tx.auditEvent.findMany({
      where: { entityId: built.run.id, action: { startsWith: "review." } },
      orderBy: { sequence: "asc" },
      select: { action: true },
    }),
  );
  expect(actions.map(({ action }) => action)).toEqual([
    "review.commented",
    "review.answered",
    "review.answered",
  ]);
});

it("refuses what is not there, an old evaluation, an answer to an answer, and who has no part in it", async () => {
  const { signatory, desk } = world.people;
  const elsewhere = crypto.randomUUID();
  await expect(say(desk)).rejects.toMatchObject({ refusal: { code: "not-permitted" } });
  await expect(say(signatory, { place: "weather" })).rejects.toMatchObject({ refusal: { code: "invalid" } });
  await expect(say(signatory, { sensorId: null })).rejects.toMatchObject({ refusal: { code: "invalid" } });
  await expect(say(signatory, { sensorId: elsewhere })).rejects.toMatchObject({
    refusal: { code: "not-found" },
  });
  await expect(say(signatory, { evaluationId: elsewhere })).rejects.toMatchObject({
    refusal: { code: "changed-meanwhile" },
  });
  const { id } = await say(signatory);
  await answer(signatory, id, false);
  const [{ answers } = { answers: [] }] = (await remarks()).filter((one) => one.id === id);
  await expect(answer(signatory, answers[0]!.id, true)).rejects.toMatchObject({
    refusal: { code: "invalid" },
  });
  await expect(answer(signatory, "999999", true)).rejects.toMatchObject({ refusal: { code: "not-found" } });
  await answer(signatory, id, true);
});

it("takes no remark on what is signed for", async () => {
  const { signatory } = world.people;
  await signRun(signatory, { ...built, sensors: [built.sensors[0]!] });
  await expect(say(signatory)).rejects.toMatchObject({ refusal: { code: "wrong-state" } });
  const { id } = await say(signatory, { sensorId: null, setpointId: null });
  await expect(signRun(signatory, { ...built, sensors: [built.sensors[1]!] })).rejects.toMatchObject({
    refusal: { message: expect.stringContaining("remark on the run") },
  });
  await answer(signatory, id, true);
  await signRun(signatory, { ...built, sensors: [built.sensors[1]!] });
});
