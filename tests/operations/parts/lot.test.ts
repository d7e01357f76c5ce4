import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { hex } from "@/lib/data/hex";
import { inScope } from "@/lib/data/in-scope";
import { loadImpact } from "@/lib/data/nonconformity/load-impact";
import { sha256 } from "@/lib/data/sha256";
import { certificatePage } from "@/lib/data/sql/certificate-page";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import { readCertificateQuery } from "@/lib/domain/certificate/list-query";
import { signOff } from "@/lib/operations/certificate/sign-off";
import { withdrawCertificate } from "@/lib/operations/certificate/withdraw";
import { execute } from "@/lib/operations/execute";
import { agreeRoll } from "@/lib/operations/order/agree-roll";
import { letSensorGo } from "@/lib/operations/review/let-sensor-go";
import { openDraft } from "@/lib/operations/review/open-draft";
import { certificateListView } from "@/lib/views/certificate-list";
import { storageView } from "@/lib/views/custody/storage";
import { orderPartsView } from "@/lib/views/order/parts";
import { reviewRunView } from "@/lib/views/review-run";
import { tracePageView } from "@/lib/views/trace-page";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { type TestDatabase, testDatabase } from "../../support/database";
import { issueAllNow } from "../../support/issue-now";
import { contentOf, rederived, runState, shift, stateOf } from "../../support/parts-seen";
import { openForSigners, reviewedHash, signClock, signingAct, signOffInput } from "../../support/sign-run";

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

describe("one certificate for a lot", () => {
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
    // Each sensor has its chain, one link away from the one it is filed under.
    const chainOf = (of: string | null) =>
      tracePageView(world.people.desk, certificates[0]!.number, { celsius: null, on: "2026-03-06", of });
    const first = await chainOf(null);
    expect(first.parts.map(({ tag, isChosen }) => [tag, isChosen])).toEqual(
      built.sensors.map(({ tag }, at) => [tag, at === 0]),
    );
    const third = await chainOf("3");
    expect((await chainOf(third.item.tag)).item).toEqual(third.item);
    expect(third.item.tag).toBe(built.sensors[2]!.tag);
    expect(third.results[0]?.errorCelsius).not.toBe(first.results[0]?.errorCelsius);
    const { certificates: listed } = await certificateListView(
      world.people.desk,
      readCertificateQuery({ q: built.sensors[2]!.tag }),
    );
    expect(listed).toMatchObject([{ serial: built.sensors[0]!.serial, others: 2 }]);
    // By any of its words, gathered first or read in the list's own order.
    const { serial, tag } = built.sensors[1]!;
    const words = [serial, serial.slice(1, -1), tag, certificates[0]!.number, built.orders[0]!.number];
    for (const q of [...words, listed[0]!.customer.slice(1, 6), "no such word"]) {
      const names = await inScope({ kind: "laboratory" }, async (tx) => {
        const gathered = await certificatePage(tx, { q }, { kind: "first" });
        expect(await certificatePage(tx, { q }, { kind: "first" }, 0), q).toEqual(gathered);
        return gathered.map(({ name }) => name);
      });
      expect(names.includes(certificates[0]!.number), q).toBe(q !== "no such word");
    }
    // Each of the lot is kept too long once, whichever the certificate is filed under.
    const later = new Date(signClock().getTime() + 40 * 86_400_000);
    const { kept } = await storageView(world.people.desk, later);
    const number = built.orders[0]!.number;
    expect(kept.filter(({ orderNumber }) => orderNumber === number).map(({ tag }) => tag)).toEqual(
      built.sensors.map(({ tag }) => tag),
    );
    // What is found on any of its sensors, or on its run, reaches the certificate, whichever it is filed under.
    for (const subject of [
      { kind: "sensor", id: built.sensors[2]!.id },
      { kind: "run", id: built.run.id },
    ] as const) {
      const impact = await inScope({ kind: "laboratory" }, (tx) =>
        loadImpact(tx, subject, { from: "", until: "", deltaCelsius: null }),
      );
      expect(impact.certificates?.map((one) => one.number)).toEqual([certificates[0]!.number]);
    }
    // A withdrawal is seen at every sensor and setpoint it spoke of, with the way to it.
    await issueAllNow();
    const reason = "Another lot was in the furnace.";
    const because = { certificateId: certificates[0]!.id, reason, forGood: true as const };
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

describe("a lot of rolls, for a customer audited by them", () => {
  const ends = (built: Built, given: readonly ("first" | "second")[]) =>
    inScope({ kind: "laboratory" }, async (tx) => {
      await tx.order.update({
        where: { id: built.orders[0]!.id },
        data: { ruleSet: "audited-heat-treatment" },
      });
      for (const [at, { id }] of built.sensors.entries())
        await tx.sensor.update({
          where: { id },
          data: { build: JSON.stringify({ lot: "L7", roll: String(at >> 1), end: given[at] }) },
        });
    });
  const perLot = { lineOptions: { report: "per-lot" }, owners: ["south", "south", "south"] as const };

  it("is seen before it is signed: the draft is the lot's own, and its hash is the one signed", async () => {
    const built = await buildRun(world, { ...perLot, owners: ["south", "south"] });
    await ends(built, ["first", "second"]);
    const review = await reviewRunView(world.people.signatory, built.run.number);
    const [lot] = review.lots;
    expect(lot).toMatchObject({ obstacle: "", leftOut: [], part: "one certificate for the lot of 2" });
    expect(review.sensors.map(({ reviewedHash, draftHash }) => [reviewedHash, draftHash])).toEqual([
      [null, null],
      [null, null],
    ]);
    const draft = await execute(
      openDraft,
      world.people.signatory,
      { runNumber: built.run.number, lineId: lot!.lineId },
      signClock,
    );
    expect(draft.content.rolls?.of[0]?.rows).toHaveLength(2);
    expect(hex(contentHash(draft.content, sha256))).toBe(lot!.draftHash);
    // Nothing of a lot is signed for singly.
    await expect(
      execute(signOff, world.people.signatory, await signOffInput(built), signClock),
    ).rejects.toMatchObject({ refusal: { message: expect.stringContaining("would not be on it") } });
    const [signed] = (await signLot(built)).certificates;
    const { reviewedHash: kept } = await inScope({ kind: "laboratory" }, (tx) =>
      tx.signature.findFirstOrThrow({ where: { certificateId: signed!.id } }),
    );
    expect(hex(kept)).toBe(lot!.draftHash);
  });

  it("with one end of a roll is stopped, in words, until the customer agrees; the certificate says it", async () => {
    const built = await buildRun(world, perLot);
    await ends(built, ["first", "second", "first"]);
    const lotNow = async () => (await reviewRunView(world.people.signatory, built.run.number)).lots[0];
    expect((await lotNow())?.obstacle).toContain("roll 1");
    await expect(signLot(built)).rejects.toMatchObject(refused("rule"));
    const { number } = built.orders[0]!;
    const agreed = { number, lot: "L7", roll: "1", agreedWith: "Lee Buyer", text: "mail of 2 March" };
    await expect(
      execute(agreeRoll, world.people.desk, { ...agreed, roll: "0" }, signClock),
    ).rejects.toMatchObject(refused("rule"));
    await expect(execute(agreeRoll, world.people.technician, agreed, signClock)).rejects.toMatchObject(
      refused("not-permitted"),
    );
    await execute(agreeRoll, world.people.desk, agreed, signClock);
    expect((await lotNow())?.obstacle).toBe("");
    const { certificates } = await signLot(built);
    const { deviations, rolls } = await contentOf(certificates[0]!.id);
    expect(deviations).toContainEqual(expect.stringContaining("this end alone is reported"));
    expect(rolls?.of.map(({ roll }) => roll)).toEqual(["Lot L7, roll 0"]);
  });

  it("of which one sensor goes to another run is told as a part, and names what it covers", async () => {
    const built = await buildRun(world, perLot);
    const left = { runId: built.run.id, evaluationId: built.evaluation.id, sensorId: built.sensors[1]!.id };
    const why = { results: "put-back" as const, reason: "The plug was loose." };
    await execute(letSensorGo, world.people.signatory, { ...left, ...why }, signClock);
    const { lots } = await reviewRunView(world.people.signatory, built.run.number);
    expect(lots).toMatchObject([
      {
        part: "part 1 of the lot: 2 of 3 sensors",
        tags: [built.sensors[0]!.tag, built.sensors[2]!.tag],
        obstacle: "",
      },
    ]);
  });
});
