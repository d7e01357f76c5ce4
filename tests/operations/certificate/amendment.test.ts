import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { loadStanding } from "@/lib/data/certificate/standing";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { hex } from "@/lib/data/hex";
import { inScope } from "@/lib/data/in-scope";
import { configurePublicUrl } from "@/lib/data/public-url";
import { sha256 } from "@/lib/data/sha256";
import { CertificateContent } from "@/lib/domain/certificate/content";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import { reviewedForm } from "@/lib/domain/certificate/reviewed-form";
import type { Actor } from "@/lib/domain/staff/actor";
import { askAmendment } from "@/lib/operations/certificate/ask-amendment";
import { fetchDocuments } from "@/lib/operations/certificate/download";
import { dropAmendment } from "@/lib/operations/certificate/drop-amendment";
import { signOffAmendment } from "@/lib/operations/certificate/sign-off-amendment";
import { withdrawCertificate } from "@/lib/operations/certificate/withdraw";
import { execute } from "@/lib/operations/execute";
import { stateEffect } from "@/lib/operations/nonconformity/state-effect";
import { reviewResultView } from "@/lib/views/review-result";
import { addEvaluation, buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { codeOf } from "../../support/code-of";
import { type TestDatabase, testDatabase } from "../../support/database";
import { inService, suspect } from "../../support/in-service";
import { issueAllNow } from "../../support/issue-now";
import { contentOf, rederived } from "../../support/parts-seen";
import { amendedHash, signClock, signingAct, signRun } from "../../support/sign-run";
import { signedWithWorkingStandard } from "../../support/working-standard";
import { openNew } from "./open-new";

let database: TestDatabase;
let world: World;
let built: Awaited<ReturnType<typeof buildRun>>;
type Signed = Awaited<ReturnType<typeof signRun>>[number];
let signed: readonly Signed[];
const laboratory = { kind: "laboratory" } as const;
const reason = "The customer's name was misspelt on the earlier certificate.";

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
  built = await buildRun(world, { owners: Array.from({ length: 6 }, () => "north" as const) });
  signed = await signRun(world.people.signatory, built);
  await issueAllNow();
});
afterAll(async () => {
  await closeDatabase();
  await database?.drop();
});

type Corrections = Parameters<typeof execute<typeof askAmendment.input, unknown>>[2]["corrections"];
const ask = (
  actor: Actor,
  { id: certificateId }: { readonly id: string },
  corrections: Corrections = { customerName: "Northern Furnaces (corrected)" },
  kind: "amendment" | "replacement" = "amendment",
) => execute(askAmendment, actor, { certificateId, kind, reason, corrections }, signClock);

const sign = async (actor: Actor, amendmentId: string) =>
  execute(
    signOffAmendment,
    actor,
    { amendmentId, reviewedHash: await amendedHash(amendmentId), act: signingAct() },
    signClock,
  );
const standingOf = (id: string) => inScope(laboratory, (tx) => loadStanding(tx, id));
const rowOf = (number: string) =>
  inScope(laboratory, (tx) => tx.certificate.findUniqueOrThrow({ where: { number } }));

describe("an amendment", () => {
  it("is a new document that cites the old one by number, hash and reason, and changes what was named", async () => {
    const old = signed[0]!;
    const { quality, signatory } = world.people;
    const before = await contentOf(old.id);
    const file = async () => {
      const [document] = await fetchDocuments(world.people.north, [old.token], signClock);
      return { sha256: hex(sha256(document!.bytes)), standing: document!.standing.kind };
    };
    const { sha256: digest } = await file();
    const { id } = await ask(quality, old, {
      customerName: "Northern Furnaces (corrected)",
      serial: "N-CORRECTED",
      remark: "The serial number was read from the label at the tail.",
    });
    const { number } = await sign(signatory, id);
    const row = await rowOf(number);
    const after = await contentOf(row.id);
    expect(after.amends).toEqual({
      ...{ kind: "amendment", changes: Array(3).fill(expect.anything()) },
      number: old.number,
      contentHash: hex(contentHash(before, sha256)),
      reason,
    });
    const { amends: _, ...said } = reviewedForm(after);
    expect(said).toEqual({
      ...reviewedForm(before),
      customer: { ...before.customer, name: "Northern Furnaces (corrected)" },
      item: { ...before.item, serial: "N-CORRECTED" },
      statements: [
        ...before.statements,
        "Remark on this change, no opinion or interpretation of the results: The serial number was read from the label at the tail.",
      ],
    });
    expect(await standingOf(old.id)).toEqual({
      ...{ kind: "amended", successor: number, successorToken: row.token, reason },
      at: signClock().toISOString(),
    });
    expect(await standingOf(row.id)).toEqual({ kind: "pending" });
    // The chain beside a result is that of the certificate in force.
    const page = await reviewResultView(signatory, built.run.number, after.item.tag, 1);
    expect(page.certificate).toBe(number);
    // Its file stays as it was.
    expect(await file()).toEqual({ sha256: digest, standing: "amended" });
    const signature = await inScope(laboratory, (tx) =>
      tx.signature.findUniqueOrThrow({ where: { certificateId: row.id } }),
    );
    expect(hex(signature.contentHash)).toBe(hex(contentHash(after, sha256)));
    await issueAllNow();
    expect(await standingOf(row.id)).toEqual({ kind: "valid" });
  });

  it("is signed by a signatory who did not ask for it, and by nobody else", async () => {
    const { signatory, quality, technician, desk } = world.people;
    const { id } = await ask(signatory, signed[1]!);
    await expect(sign(signatory, id)).rejects.toThrow("You asked for this yourself");
    expect(await codeOf(sign(quality, id))).toBe("not-permitted");
    expect(await codeOf(ask(desk, signed[2]!))).toBe("not-permitted");
    expect(await codeOf(ask(world.people.north, signed[2]!))).toBe("not-permitted");
    expect(await standingOf(signed[1]!.id)).toEqual({ kind: "valid" });
    // Words only: the results, which he measured, were reviewed already.
    expect(await sign(technician, id)).toMatchObject({ amends: signed[1]!.number });
  });

  it("is asked for once at a time, of a certificate that stands, and changes something", async () => {
    const old = signed[2]!;
    const { quality, signatory } = world.people;
    const { customer } = await contentOf(old.id);
    await expect(ask(quality, old, {})).rejects.toThrow("An amendment corrects something");
    await expect(ask(quality, old, { customerName: customer.name })).rejects.toThrow("says this already");
    const { id } = await ask(quality, old);
    await expect(ask(signatory, old)).rejects.toThrow("waits for a signatory");
    await expect(
      inScope(laboratory, (tx) =>
        tx.amendment.create({
          data: {
            ...{ certificateId: old.id, customerId: world.north.id, kind: "amendment", reason },
            ...{ corrections: "{}", askedById: quality.personId, askedAt: signClock() },
          },
        }),
      ),
    ).rejects.toThrow("asked for this certificate already");
    const why = "The name was right; the customer wrote again.";
    await execute(dropAmendment, quality, { amendmentId: id, reason: why }, signClock);
    await expect(sign(signatory, id)).rejects.toThrow("decided already");
    expect(await standingOf(old.id)).toEqual({ kind: "valid" });
    await expect(ask(quality, signed[0]!)).rejects.toThrow("is amended by");
  });

  it("signs what was on the screen, once", async () => {
    const { quality, signatory } = world.people;
    const { id } = await ask(quality, signed[2]!, { purchaseOrder: "PO-CORRECTED-1" });
    const input = { amendmentId: id, reviewedHash: "0".repeat(64), act: signingAct() };
    expect(await codeOf(execute(signOffAmendment, signatory, input, signClock))).toBe("changed-meanwhile");
    const right = { amendmentId: id, reviewedHash: await amendedHash(id) };
    const wrong = { ...right, act: { ...signingAct(), password: "not this one" } };
    expect(await codeOf(execute(signOffAmendment, signatory, wrong, signClock))).toBe("invalid");
    expect(await standingOf(signed[2]!.id)).toEqual({ kind: "valid" });
    // What its results stand on came into doubt, and nobody has examined them for it.
    await suspect(quality, world.voltmeter.id, signClock);
    await inService(quality, world.voltmeter.id, signClock);
    await expect(sign(signatory, id)).rejects.toThrow("V-1 is in doubt");
    const { number, version } = await inScope(laboratory, (tx) => tx.nonconformity.findFirstOrThrow());
    await execute(
      stateEffect,
      quality,
      { number, version, text: "No effect on them (invented)." },
      signClock,
    );
    const both = await Promise.allSettled([sign(signatory, id), sign(signatory, id)]);
    expect(both.map(({ status }) => status).toSorted()).toEqual(["fulfilled", "rejected"]);
    expect(await inScope(laboratory, (tx) => tx.certificateEnding.count())).toBe(3);
  });
});

describe("a replacement", () => {
  it("states the results of a later evaluation, signed by somebody who did not measure them", async () => {
    const old = signed[3]!;
    const { quality, signatory, technician } = world.people;
    const before = await contentOf(old.id);
    const { id } = await ask(quality, old, {}, "replacement");
    await expect(sign(signatory, id)).rejects.toThrow("was not evaluated again");
    await inScope(laboratory, (tx) => addEvaluation(tx, world, built.run.id, 2, { owners: ["north"] }));
    await expect(sign(signatory, id)).rejects.toThrow(/You have not opened .* at/);
    await openNew({ world, runId: built.run.id, amendmentId: id, sign: () => sign(signatory, id) });
    await expect(sign(technician, id)).rejects.toThrow("You measured or evaluated this run yourself");
    const { number } = await sign(signatory, id);
    const row = await rowOf(number);
    const after = await contentOf(row.id);
    expect(after.evidence.evaluation).toBe(2);
    expect(after.rows.map(({ errorCelsius }) => errorCelsius)).not.toEqual(
      before.rows.map(({ errorCelsius }) => errorCelsius),
    );
    expect(after.amends).toMatchObject({ kind: "replacement", number: old.number });
    expect(await standingOf(old.id)).toMatchObject({ kind: "replaced", successor: number });
  });
});

describe("a withdrawal", () => {
  const withdraw = (actor: Actor, { id: certificateId }: Signed) =>
    execute(
      withdrawCertificate,
      actor,
      { certificateId, reason: "Another sensor was in the furnace at its place.", forGood: true },
      signClock,
    );

  it("ends it with its reason, once, and drops what was asked for it", async () => {
    const { quality, signatory, desk } = world.people;
    const { id } = await ask(signatory, signed[4]!);
    expect(await codeOf(withdraw(desk, signed[4]!))).toBe("not-permitted");
    const unticked = { certificateId: signed[4]!.id, reason: "short", forGood: false as unknown as true };
    const refused = await execute(withdrawCertificate, quality, unticked, signClock).catch((error) => error);
    expect(refused.refusal.fields).toMatchObject({
      forGood: expect.stringContaining("for good"),
      reason: expect.stringContaining("the customer reads it in the portal"),
    });
    expect(await standingOf(signed[4]!.id)).not.toMatchObject({ kind: "withdrawn" });
    await withdraw(quality, signed[4]!);
    expect(await standingOf(signed[4]!.id)).toMatchObject({ kind: "withdrawn", reason: /Another sensor/ });
    await expect(withdraw(quality, signed[4]!)).rejects.toThrow("is withdrawn since 2026-03-05");
    await expect(sign(world.people.technician, id)).rejects.toThrow("decided already");
    expect(await fetchDocuments(world.people.north, [signed[4]!.token], signClock)).toHaveLength(1);
  });

  it("tells the customer by letter, and puts in doubt what it had calibrated", async () => {
    const { own, equipment } = await signedWithWorkingStandard(world);
    await issueAllNow();
    configurePublicUrl("https://calibration.example");
    await withdraw(world.people.quality, own);
    const { letters, findings } = await inScope(laboratory, async (tx) => ({
      letters: await tx.mailMessage.findMany({ where: { kind: "certificate-withdrawn" } }),
      findings: await tx.nonconformity.findMany({ where: { subjectId: equipment.id } }),
    }));
    expect(letters.length).toBeGreaterThan(0);
    for (const { body, subject } of letters) {
      expect(body).toMatch(/https:\/\/calibration\.example\/portal\/orders\/O-/);
      // Neither which one nor why goes by mail.
      expect(`${subject} ${body}`).not.toContain(own.number);
      expect(body).not.toContain("Another sensor");
    }
    expect(findings).toMatchObject([
      { title: `${equipment.tag} is in doubt`, description: expect.stringContaining(own.number) },
    ]);
  });

  it("is not for what is still being made", async () => {
    const run = await buildRun(world, { owners: ["north"] });
    const [pending] = await signRun(world.people.signatory, run);
    await expect(withdraw(world.people.quality, pending!)).rejects.toThrow("still being made");
    await expect(ask(world.people.quality, pending!)).rejects.toThrow("still being made");
  });
});

describe("the database", () => {
  const ending = (fields: object) =>
    inScope(laboratory, (tx) =>
      tx.certificateEnding.create({
        data: {
          ...{ certificateId: signed[5]!.id, customerId: world.north.id, kind: "amended", reason },
          ...{ decidedById: world.people.signatory.personId, decidedAt: signClock() },
          ...fields,
        } as never,
      }),
    );

  it("takes no successor that does not name what it follows, and no signature of who asked", async () => {
    const [other] = await signRun(world.people.signatory, await buildRun(world, { owners: ["north"] }));
    await expect(ending({ successorId: other!.id })).rejects.toThrow("does not name the one it follows");
    const { id } = await ask(world.people.signatory, signed[5]!);
    await expect(
      inScope(laboratory, (tx) =>
        tx.amendmentDecision.create({
          data: {
            ...{ amendmentId: id, customerId: world.north.id, outcome: "signed-off" },
            ...{ decidedById: world.people.signatory.personId, decidedAt: signClock() },
          },
        }),
      ),
    ).rejects.toThrow("who asked for an amendment does not sign it");
  });
});

it("derives again, with each ending as the log tells", async () => {
  await rederived();
  const contents = await inScope(laboratory, (tx) => tx.certificate.findMany({ select: { content: true } }));
  for (const { content } of contents)
    expect(CertificateContent.safeParse(JSON.parse(content)).success).toBe(true);
});
