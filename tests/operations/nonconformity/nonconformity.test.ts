import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { readFigures } from "@/lib/domain/nonconformity/figures";
import type { Actor } from "@/lib/domain/staff/actor";
import { signOff } from "@/lib/operations/certificate/sign-off";
import { setEquipmentState } from "@/lib/operations/equipment/set-state";
import { execute } from "@/lib/operations/execute";
import { releaseHold } from "@/lib/operations/hold/release";
import { closeNonconformity } from "@/lib/operations/nonconformity/close";
import { complain } from "@/lib/operations/nonconformity/complain";
import { enterNonconformity } from "@/lib/operations/nonconformity/enter";
import { holdWork } from "@/lib/operations/nonconformity/hold-work";
import { openNonconformity } from "@/lib/operations/nonconformity/open";
import { reopenNonconformity } from "@/lib/operations/nonconformity/reopen";
import { resumeWork } from "@/lib/operations/nonconformity/resume";
import { stateEffect } from "@/lib/operations/nonconformity/state-effect";
import { tellCustomers } from "@/lib/operations/nonconformity/tell-customers";
import { sensorHoldsView } from "@/lib/views/hold/holds-on";
import { nonconformityView } from "@/lib/views/nonconformity/nonconformity";
import { nonconformitiesOnView } from "@/lib/views/nonconformity/on-subject";
import { reviewQueueView } from "@/lib/views/review-queue";
import { reviewRunView } from "@/lib/views/review-run";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { type TestDatabase, testDatabase } from "../../support/database";
import { refusalOf } from "../../support/front-desk";
import { inService, suspect } from "../../support/in-service";
import { signClock, signingAct, signOffInput, signRun } from "../../support/sign-run";

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
const publicUrl = "https://laboratory.example";
const stored = (number: string) =>
  inScope(laboratory, (tx) =>
    tx.nonconformity.findUniqueOrThrow({
      where: { number },
      include: { entries: { orderBy: { id: "asc" } } },
    }),
  );
/** As a form sends it: with the version that was seen. */
const which = async (number: string, text = "as found (invented)") => ({
  number,
  version: (await stored(number)).version,
  text,
});
const enter = async (
  actor: Actor,
  number: string,
  kind: "note" | "correction" | "cause" | "corrective-action",
) => execute(enterNonconformity, actor, { ...(await which(number)), kind }, signClock);
const examine = async (number: string) =>
  execute(stateEffect, world.people.signatory, await which(number), signClock);
const close = async (actor: Actor, number: string) =>
  execute(closeNonconformity, actor, await which(number), signClock);
const open = (
  subjectKind: "equipment" | "run" | "order",
  subjectName: string,
  actor: Actor = world.people.technician,
) =>
  execute(
    openNonconformity,
    actor,
    { kind: "nonconforming-work", subjectKind, subjectName, title: "Found", description: "It was found." },
    signClock,
  );

describe("nonconforming work", () => {
  it("lists what stands on the equipment by its class, tells each customer once, and is closed by another", async () => {
    const built = await buildRun(world, { owners: ["north", "south"] });
    const certificates = await signRun(world.people.signatory, built);
    const { number } = await open("equipment", "V-1");

    expect((await refusalOf(enter(world.people.technician, number, "correction"))).code).toBe("rule");
    const effect = { ...(await which(number)), deltaCelsius: 500 };
    expect((await refusalOf(execute(stateEffect, world.people.desk, effect, signClock))).code).toBe(
      "not-permitted",
    );
    await execute(stateEffect, world.people.signatory, effect, signClock);
    const { state, entries } = await stored(number);
    expect(state).toBe("examined");
    const figures = readFigures(entries[0]!.figures);
    expect(figures.certificates?.map((one) => one.number).toSorted()).toEqual(
      certificates.map((one) => one.number).toSorted(),
    );
    expect(figures.certificates?.map(({ impact }) => impact)).toEqual(["recall", "recall"]);

    const tell = {
      ...(await which(number, "The voltmeter read wrong; new certificates follow.")),
      publicUrl,
    };
    await execute(tellCustomers, world.people.quality, tell, signClock);
    const mails = await inScope(laboratory, (tx) =>
      tx.mailMessage.findMany({ where: { kind: "nonconformity" } }),
    );
    expect(mails).toHaveLength(2);
    for (const order of built.orders)
      expect(mails.filter(({ body }) => body.includes(order.number))).toHaveLength(1);

    for (const kind of ["correction", "cause"] as const) await enter(world.people.signatory, number, kind);
    expect((await refusalOf(close(world.people.quality, number))).message).toContain("corrective action");
    await enter(world.people.signatory, number, "corrective-action");
    expect((await refusalOf(close(world.people.signatory, number))).code).toBe("rule");
    expect((await refusalOf(close(world.people.technician, number))).code).toBe("rule");
    await close(world.people.quality, number);
    expect((await stored(number)).state).toBe("closed");
    expect((await refusalOf(enter(world.people.signatory, number, "cause"))).code).toBe("wrong-state");
    await execute(reopenNonconformity, world.people.signatory, await which(number), signClock);
    expect((await stored(number)).state).toBe("open");
    await examine(number);
  });

  it("is not written over by two at once", async () => {
    const { number } = await open("equipment", "X-1");
    const seen = { ...(await which(number)), kind: "note" as const };
    await execute(enterNonconformity, world.people.technician, seen, signClock);
    expect((await refusalOf(execute(enterNonconformity, world.people.desk, seen, signClock))).code).toBe(
      "changed-meanwhile",
    );
    await examine(number);
  });

  it("stops unissued work until somebody authorises that it resumes", async () => {
    const built = await buildRun(world, { owners: ["north"] });
    const { number } = await open("run", built.run.number);
    await execute(holdWork, world.people.technician, await which(number), signClock);
    const sign = async () => execute(signOff, world.people.signatory, await signOffInput(built), signClock);
    expect((await refusalOf(sign())).message).toContain(number);
    expect((await refusalOf(execute(holdWork, world.people.desk, await which(number), signClock))).code).toBe(
      "rule",
    );

    const { tag } = built.sensors[0]!;
    const { holds } = await sensorHoldsView(world.people.quality, tag);
    expect(holds).toMatchObject([{ nonconformity: number, isInReview: true, release: null }]);
    const back = { holdId: holds[0]!.id, outcome: "return-unmeasured", reason: "by mistake" } as const;
    const refused = await refusalOf(execute(releaseHold, world.people.quality, back, signClock));
    expect(refused.fields?.outcome).toContain(`on the page of ${number}`);
    const [shown] = (await reviewRunView(world.people.signatory, built.run.number)).sensors;
    expect(shown).toMatchObject({ reviewedHash: null, obstacle: "" });
    expect(shown?.holds).toEqual([{ words: "On hold, see", name: number, href: `/quality/${number}` }]);

    const resume = async (actor: Actor) => execute(resumeWork, actor, await which(number), signClock);
    expect((await refusalOf(resume(world.people.quality))).code).toBe("rule");
    await execute(stateEffect, world.people.quality, await which(number), signClock);
    await enter(world.people.quality, number, "correction");
    expect((await refusalOf(resume(world.people.desk))).code).toBe("not-permitted");
    await resume(world.people.quality);
    expect((await sign()).certificates).toHaveLength(1);
  });

  it("needs a thing that is there", async () => {
    expect((await refusalOf(open("order", "O-none"))).fields).toHaveProperty("subjectName");
  });
});

describe("a complaint", () => {
  const about = (subjectName: string) => ({
    subjectKind: "order" as const,
    subjectName,
    title: "Late",
    description: "Promised for Monday.",
    publicUrl,
  });

  it("is of something of one's own, acknowledged, answered, and closed by somebody who did not do the work", async () => {
    const built = await buildRun(world, { owners: ["north"] });
    await signRun(world.people.signatory, built);
    const order = built.orders[0]!.number;
    expect(
      (await refusalOf(execute(complain, world.people.south, about(order), signClock))).fields,
    ).toHaveProperty("subjectName");
    const { number } = await execute(complain, world.people.north, about(order), signClock);
    const mails = () =>
      inScope(laboratory, (tx) => tx.mailMessage.findMany({ where: { kind: "complaint" } }));
    // Whoever complains has an account; the address on record hears of it too.
    const subject = `We have your complaint, ${number}`;
    expect((await mails()).map((mail) => mail.subject)).toEqual([subject, subject]);
    expect((await mails()).map(({ personId }) => personId !== null).toSorted()).toEqual([false, true]);

    await execute(stateEffect, world.people.quality, await which(number), signClock);
    for (const kind of ["correction", "cause", "corrective-action"] as const)
      await enter(world.people.desk, number, kind);
    expect((await refusalOf(close(world.people.quality, number))).message).toContain(
      "answer to the customer",
    );
    const tell = { ...(await which(number, "You are right.")), publicUrl };
    await execute(tellCustomers, world.people.quality, tell, signClock);
    expect((await mails()).map(({ body }) => body).join()).not.toContain("You are right.");
    // The signatory signed the certificate that is complained of.
    expect((await refusalOf(close(world.people.signatory, number))).code).toBe("rule");
    await close(world.people.quality, number);

    const seen = await inScope({ kind: "customer", customerId: world.north.id }, (tx) =>
      tx.nonconformity.findMany({ include: { entries: true } }),
    );
    expect(seen.map((one) => [one.number, one.entries.map(({ text }) => text)])).toEqual([
      [number, ["You are right."]],
    ]);
    expect(
      await inScope({ kind: "customer", customerId: world.south.id }, (tx) => tx.nonconformity.count()),
    ).toBe(0);
  });

  it("recorded by the desk is of something of a customer's", async () => {
    const input = {
      kind: "complaint" as const,
      subjectKind: "laboratory" as const,
      title: "t",
      description: "d",
    };
    expect(
      (await refusalOf(execute(openNonconformity, world.people.desk, input, signClock))).fields,
    ).toHaveProperty("subjectKind");
    const { id, name } = await inScope(laboratory, (tx) =>
      tx.customer.findUniqueOrThrow({ where: { id: world.north.id } }),
    );
    const found = { ...input, subjectKind: "customer" as const, subjectName: name };
    const { number } = await execute(openNonconformity, world.people.desk, found, signClock);
    expect(await stored(number)).toMatchObject({ subjectId: id, subjectName: name, customerId: id });
    const on = await nonconformitiesOnView(world.people.desk, "customer", name);
    expect(on).toMatchObject({ mayOpen: true, rows: [{ number }] });
    // Who examines it sees what stands on it: the certificates of that customer, and no other's.
    await examine(number);
    const [{ figures = "{}" } = {}] = (await stored(number)).entries.filter(({ kind }) => kind === "effect");
    const own = await inScope(laboratory, (tx) => tx.certificate.count({ where: { customerId: id } }));
    expect(JSON.parse(figures).certificates ?? []).toHaveLength(own);
  });
});

describe("equipment in doubt", () => {
  it("opens by itself with equipment in doubt, listing what stands on it", async () => {
    const { id, version } = world.references[1];
    const change = { id, version, state: "suspect" as const, reason: "fell to the floor" };
    await execute(setEquipmentState, world.people.quality, change, signClock);
    const opened = await inScope(laboratory, (tx) =>
      tx.nonconformity.findFirstOrThrow({ where: { subjectId: id }, include: { entries: true } }),
    );
    expect(opened).toMatchObject({
      state: "open",
      title: "R-S2 is in doubt",
      description: "fell to the floor",
    });
    expect(readFigures(opened.entries[0]!.figures).certificates?.length).toBeGreaterThan(0);
    await examine(opened.number);
    await inService(world.people.quality, id, signClock);
  });

  it("stops each signature on what stands on it, until somebody examined that", async () => {
    const { signatory, quality } = world.people;
    const built = await buildRun(world, { owners: ["north"] });
    const input = await signOffInput(built);
    // After the submission, and after the signatory's page was loaded.
    await suspect(quality, world.voltmeter.id, signClock);
    const { number } = await inScope(laboratory, (tx) =>
      tx.nonconformity.findFirstOrThrow({ where: { subjectId: world.voltmeter.id, state: "open" } }),
    );
    const sign = () => execute(signOff, signatory, { ...input, act: signingAct() }, signClock);
    const refused = await refusalOf(sign());
    expect(refused).toMatchObject({ code: "rule", message: expect.stringContaining("V-1 is in doubt") });
    expect(refused.message).toContain(`record in ${number} what that does`);
    const queued = (await reviewQueueView(signatory)).waiting.find((one) => one.number === built.run.number);
    expect(queued?.gravest).toContain("V-1 is in doubt");
    const page = await reviewRunView(signatory, built.run.number);
    expect(page.exceptions[0]).toMatchObject({ kind: "in-doubt", href: `/quality/${number}` });
    expect(page.doubtObstacle).toBe(refused.message);

    // Back in service it is sound again; what it did before is not examined by that.
    await inService(quality, world.voltmeter.id, signClock);
    expect((await refusalOf(sign())).message).toContain("V-1 is in doubt");
    await examine(number);
    const { certificates } = await sign();
    expect(certificates).toHaveLength(1);
    const { entries } = await nonconformityView(quality, number);
    expect(entries.at(-1)?.signedSince).toEqual(certificates.map((one) => one.number));
  });
});
