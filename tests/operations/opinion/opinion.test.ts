import { afterAll, beforeAll, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import type { Actor } from "@/lib/domain/staff/actor";
import { signOff } from "@/lib/operations/certificate/sign-off";
import { execute } from "@/lib/operations/execute";
import { takeOpinionBack } from "@/lib/operations/opinion/take-back";
import { writeOpinion } from "@/lib/operations/opinion/write";
import { opinionsView } from "@/lib/views/opinions";
import { refusal } from "../../support/accounts";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { codeOf } from "../../support/code-of";
import { type TestDatabase, testDatabase } from "../../support/database";
import { signClock, signOffInput } from "../../support/sign-run";
import { authorisationRow, inLaboratory } from "../../support/signatory";

let database: TestDatabase;
let world: World;
type Built = Awaited<ReturnType<typeof buildRun>>;

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
  await inLaboratory((tx) =>
    authorisationRow(tx, world.people.signatory.personId, world.people.quality.personId, {
      ...{ activity: "opinion", typeLetters: "K" },
    }),
  );
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

const placeOf = (built: Built, index = 0) => ({
  runId: built.run.id,
  evaluationId: built.evaluation.id,
  sensorId: built.sensors[index]!.id,
});
const words = {
  text: "The error falls as it does where chromium is lost at the hot end.",
  basis: "The two points, and the laboratory's records of this type.",
};
const write = (actor: Actor, built: Built, change: object = {}) =>
  execute(writeOpinion, actor, { ...placeOf(built), ...words, ...change }, signClock);

it("stands on the certificate of its sensor alone, with its basis, whose it is and the day", async () => {
  const { signatory } = world.people;
  const built = await buildRun(world, { owners: ["north", "south"] });
  const before = await signOffInput(built);
  await write(signatory, built);
  expect((await opinionsView(signatory, built.run.number, signClock())).sensors[0]).toMatchObject({
    isOpen: true,
    opinion: { ...words, by: "Sam Signer" },
  });
  // What was on the signatory's screen is not what would be printed any more.
  expect(await codeOf(execute(signOff, signatory, before, signClock))).toBe("changed-meanwhile");
  const { certificates } = await execute(signOff, signatory, await signOffInput(built), signClock);
  const contents = await inLaboratory((tx) =>
    Promise.all(
      certificates.map(async ({ id }) =>
        JSON.parse((await tx.certificate.findUniqueOrThrow({ where: { id } })).content),
      ),
    ),
  );
  expect(contents.map(({ opinions }) => opinions)).toEqual([
    [{ ...words, by: "Sam Signer", on: "2026-03-05" }],
    undefined,
  ]);
  expect(await codeOf(write(signatory, built, { text: "Something else." }))).toBe("wrong-state");
});

it("is written by nobody without an authorisation for it, of that type", async () => {
  const { signatory, technician, quality, desk } = world.people;
  const built = await buildRun(world, { owners: ["north"] });
  expect(await codeOf(write(desk, built))).toBe("not-permitted");
  for (const actor of [technician, quality])
    expect(await refusal(write(actor, built))).toMatchObject({
      code: "rule",
      message: expect.stringContaining("state opinions on"),
    });
  const other = await buildRun(world, { owners: ["north"], typeLetter: "N" });
  expect(await refusal(write(signatory, other))).toMatchObject({
    code: "rule",
    message: expect.stringMatching(/of type N.*is for K.*Nothing was written/),
  });
  expect(await codeOf(write({ ...signatory, session: "bench" } as Actor, built))).toBe("not-permitted");
  expect((await opinionsView(technician, built.run.number, signClock())).mayWrite).toBe(false);
  expect(await inLaboratory((tx) => tx.opinion.count({ where: { runId: built.run.id } }))).toBe(0);
});

it("needs words and a basis, is not said twice, and is taken back with a reason", async () => {
  const { signatory } = world.people;
  const built = await buildRun(world, { owners: ["north"] });
  for (const field of ["text", "basis"])
    expect(await refusal(write(signatory, built, { [field]: " " }))).toMatchObject({
      fields: { [field]: expect.any(String) },
    });
  const takeBack = () =>
    execute(
      takeOpinionBack,
      signatory,
      { ...placeOf(built), reason: "It rested on the wrong records." },
      signClock,
    );
  expect(await codeOf(takeBack())).toBe("wrong-state");
  const before = await signOffInput(built);
  await write(signatory, built);
  expect(await codeOf(write(signatory, built))).toBe("rule");
  await takeBack();
  // As if it had not been written, and still on record.
  await execute(signOff, signatory, before, signClock);
  const rows = await inLaboratory((tx) => tx.opinion.findMany({ where: { runId: built.run.id } }));
  expect(rows.map(({ text }) => text)).toEqual([words.text, ""]);
});

it("and the database takes none without the author's own authorisation in force", async () => {
  const { signatory, technician, quality } = world.people;
  const built = await buildRun(world, { owners: ["north"] });
  const over = { activity: "opinion", validUntil: new Date("2026-03-04") };
  const [own, ended] = await inLaboratory(async (tx) => [
    await tx.authorisation.findFirstOrThrow({
      where: { personId: signatory.personId, activity: "opinion" },
    }),
    await authorisationRow(tx, signatory.personId, quality.personId, over),
  ]);
  const insert = (authorId: string, authorisationId: string) =>
    inLaboratory((tx) =>
      tx.opinion.create({
        data: {
          ...{ runId: built.run.id, sensorId: built.sensors[0]!.id, customerId: world.north.id },
          ...{ ...words, authorisationId, authorId, writtenAt: signClock() },
        },
      }),
    );
  for (const [author, authorisation] of [
    [technician.personId, own!.id],
    [signatory.personId, ended!.id],
  ] as const)
    await expect(insert(author, authorisation)).rejects.toThrow(/no authorisation for opinions in force/);
  await insert(signatory.personId, own!.id);
});
