import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { signOff } from "@/lib/operations/certificate/sign-off";
import { withdrawCertificate } from "@/lib/operations/certificate/withdraw";
import { execute } from "@/lib/operations/execute";
import { storageView } from "@/lib/views/custody/storage";
import { orderPartsView } from "@/lib/views/order/parts";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { type TestDatabase, testDatabase } from "../../support/database";
import { issueAllNow } from "../../support/issue-now";
import { contentOf, rederived, runState, shift, stateOf } from "../../support/parts-seen";
import { openForSigners, reviewedHash, signClock, signingAct } from "../../support/sign-run";

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

type Built = Awaited<ReturnType<typeof buildRun>>;
const refused = (code: string) => ({ refusal: { code } });

describe("one certificate for a lot", () => {
  const signLot = async (built: Built) => {
    const [first, ...others] = built.sensors.map(({ id }) => id);
    const item = {
      sensorId: first!,
      others,
      reviewedHash: await reviewedHash(built.run.id, first!, ...others),
    };
    await openForSigners(built.run.id);
    return execute(
      signOff,
      world.people.signatory,
      { runId: built.run.id, evaluationId: built.evaluation.id, items: [item], act: signingAct() },
      signClock,
    );
  };

  it("speaks of every sensor with average and spread, has every chain, and derives again", async () => {
    const built = await buildRun(world, {
      owners: ["south", "south", "south"],
      lineOptions: { report: "per-lot", budget: true, evidence: true },
      change: (point, index) => shift(index * 0.3)(point, index),
    });
    const { certificates } = await signLot(built);
    expect(certificates).toHaveLength(1);
    const content = await contentOf(certificates[0]!.id);
    expect(content.sets?.map(({ item }) => item.serial)).toEqual(built.sensors.map(({ serial }) => serial));
    expect(content.lot?.rows[0]).toMatchObject({
      items: 3,
      averageErrorCelsius: "0.8",
      smallestErrorCelsius: "0.5",
      largestErrorCelsius: "1.1",
      halfRangeCelsius: "0.3",
    });
    expect(content.budgets).toHaveLength(6);
    for (const { id } of built.sensors) expect(await stateOf(id)).toBe("issued");
    expect(await runState(built.run.id)).toBe("signed-off");
    expect(await rederived()).toMatch(/composed anew/);
    const [line] = await orderPartsView(world.people.desk, built.orders[0]!.number);
    expect(line!.sensors.flatMap(({ rows }) => rows[0]!.cells.map(({ certificate }) => certificate))).toEqual(
      Array.from({ length: 6 }, () => certificates[0]!.number),
    );
    // Each of the lot is kept too long once, whichever the certificate is filed under.
    const later = new Date(signClock().getTime() + 40 * 86_400_000);
    const { kept } = await storageView(world.people.desk, later);
    const number = built.orders[0]!.number;
    expect(kept.filter(({ orderNumber }) => orderNumber === number).map(({ tag }) => tag)).toEqual(
      built.sensors.map(({ tag }) => tag),
    );
    // A withdrawal is seen at every sensor and setpoint it spoke of, with the way to it.
    await issueAllNow();
    const because = { certificateId: certificates[0]!.id, reason: "Another lot was in the furnace." };
    await execute(withdrawCertificate, world.people.quality, because, signClock);
    const [ended] = await orderPartsView(world.people.desk, number);
    expect(ended!.sensors.flatMap(({ rows }) => rows[0]!.cells)).toEqual(
      Array.from({ length: 6 }, () =>
        expect.objectContaining({ state: "withdrawn", certificate: certificates[0]!.number }),
      ),
    );
  });

  it("is refused where the order asks for one each, and of two lines", async () => {
    const built = await buildRun(world, { owners: ["south", "south"] });
    await expect(signLot(built)).rejects.toMatchObject(refused("rule"));
    const mixed = await buildRun(world, { owners: ["south", "north"], lineOptions: { report: "per-lot" } });
    await expect(signLot(mixed)).rejects.toMatchObject(refused("rule"));
    expect(await stateOf(mixed.sensors[0]!.id)).toBe("in-review");
  });
});
