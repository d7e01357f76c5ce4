import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { CertificateContent } from "@/lib/domain/certificate/content";
import { signOff } from "@/lib/operations/certificate/sign-off";
import { execute } from "@/lib/operations/execute";
import { placeHoldOn } from "@/lib/operations/hold/place";
import { releaseHold } from "@/lib/operations/hold/release";
import { storageView } from "@/lib/views/custody/storage";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { type TestDatabase, testDatabase } from "../../support/database";
import { refusalOf } from "../../support/front-desk";
import { signClock, signOffInput } from "../../support/sign-run";

let database: TestDatabase;
let world: World;
beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

const laboratory = { kind: "laboratory" } as const;
const signed = (runId: string) =>
  inScope(laboratory, (tx) => tx.certificate.findMany({ where: { runId }, orderBy: { number: "asc" } }));

describe("a sensor on hold", () => {
  it("is not signed off; the others of its run are, and it is with its disclaimer once the hold ends", async () => {
    const built = await buildRun(world, { owners: ["north", "south"] });
    const [one, other] = built.sensors;
    const order = built.orders.find(({ customerId }) => customerId === world.north.id)!;
    const stopped = [one!, other!].find(({ customerId }) => customerId === world.north.id)!;
    const going = [one!, other!].find(({ customerId }) => customerId !== world.north.id)!;
    const hold = {
      orderNumber: order.number,
      tag: stopped.tag,
      kind: "condition",
      reason: "kinked",
    } as const;
    const { holdId } = await execute(
      placeHoldOn,
      world.people.technician,
      { ...hold, publicUrl: "https://laboratory.example" },
      signClock,
    );
    const sign = async (sensors: readonly { readonly id: string }[]) =>
      execute(signOff, world.people.signatory, await signOffInput(built, sensors), signClock);

    const refusal = await refusalOf(sign([stopped, going]));
    expect(refusal.code).toBe("rule");
    expect(refusal.message).toContain(`${stopped.tag} is on hold: kinked`);
    expect(await signed(built.run.id)).toEqual([]);

    await sign([going]);
    const release = { holdId, outcome: "go-on-with-disclaimer", reason: "they insist" } as const;
    const disclaimer = "The sheath was kinked; the customer asked for the calibration all the same.";
    await execute(releaseHold, world.people.signatory, { ...release, disclaimer }, signClock);
    await sign([stopped]);
    const contents = (await signed(built.run.id)).map(({ content }) =>
      CertificateContent.parse(JSON.parse(content)),
    );
    expect(contents.map(({ item, deviations }) => [item.tag, deviations.includes(disclaimer)])).toEqual([
      [going.tag, false],
      [stopped.tag, true],
    ]);
  });
});

it("is listed where it was kept too long after its certificate", async () => {
  const built = await buildRun(world, { owners: ["north"] });
  await execute(signOff, world.people.signatory, await signOffInput(built), signClock);
  const after = (days: number) => new Date(signClock().getTime() + days * 86_400_000);
  const keptAfter = async (days: number) =>
    (await storageView(world.people.desk, after(days))).kept.filter(
      ({ tag }) => tag === built.sensors[0]!.tag,
    );
  expect(await keptAfter(29)).toEqual([]);
  expect(await keptAfter(31)).toMatchObject([{ days: 31, where: "not known" }]);
});
