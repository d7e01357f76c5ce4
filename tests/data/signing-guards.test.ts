import { randomBytes, randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import type { Tx } from "@/lib/data/in-scope";
import { buildRun } from "../support/build-run";
import { buildWorld, type World } from "../support/build-world";
import { type TestDatabase, testDatabase } from "../support/database";
import { signClock, signRun } from "../support/sign-run";
import { authorisationRow, inLaboratory, personSessionRow } from "../support/signatory";
import { copiedCertificate } from "./copied-certificate";

let database: TestDatabase;
let world: World;
let signed: Awaited<ReturnType<typeof firstSignature>>;

const firstSignature = async () => {
  const [certificate] = await signRun(world.people.signatory, await buildRun(world, { owners: ["north"] }));
  return inLaboratory((tx) => tx.signature.findUniqueOrThrow({ where: { certificateId: certificate!.id } }));
};

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
  signed = await firstSignature();
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

/** A certificate with no signature yet, as the first one but for number and address. */
const unsigned = async (tx: Tx): Promise<string> => {
  const { id: _, ...row } = await tx.certificate.findUniqueOrThrow({ where: { id: signed.certificateId } });
  const fresh = {
    number: `C-2026-9${randomUUID().slice(0, 3)}`,
    token: randomBytes(32).toString("base64url"),
  };
  return (await tx.certificate.create({ data: { ...row, ...fresh }, select: { id: true } })).id;
};

type Change = Partial<typeof signed>;
const insert = (change: (tx: Tx) => Change | Promise<Change>) =>
  inLaboratory(async (tx) => {
    const { id: _, ...row } = signed;
    const actId = randomUUID();
    const certificateId = await unsigned(tx);
    await tx.signature.create({ data: { ...row, certificateId, actId, ...(await change(tx)) } });
  });

describe("the last word on a signature is the database's", () => {
  it("takes one like the first, by another act", async () => {
    await expect(insert(() => ({}))).resolves.toBeUndefined();
  });

  it("refuses another content, and another person than the certificate names", async () => {
    const other = Uint8Array.from(signed.contentHash).fill(7);
    await expect(insert(() => ({ contentHash: other }))).rejects.toThrow(/not of the certificate's content/);
    const { personId } = world.people.technician;
    await expect(insert(() => ({ personId }))).rejects.toThrow(/not of the certificate's content/);
  });

  it.each<[string, object]>([
    ["over", { validUntil: new Date("2026-03-04") }],
    ["not begun", { validFrom: new Date("2026-03-06") }],
    ["for opinions", { activity: "opinion" }],
  ])("refuses an authorisation that is %s", async (_, changes) => {
    const { signatory, quality } = world.people;
    await expect(
      insert(async (tx) => ({
        authorisationId: (await authorisationRow(tx, signatory.personId, quality.personId, changes)).id,
      })),
    ).rejects.toThrow(/no authorisation in force/);
  });

  it("refuses an authorisation that was withdrawn, or is another person's", async () => {
    const { signatory, technician, quality } = world.people;
    await expect(
      insert(async (tx) => {
        const { id } = await authorisationRow(tx, signatory.personId, quality.personId);
        const withdrawn = { reason: "left", withdrawnById: quality.personId, withdrawnAt: signClock() };
        await tx.authorisationWithdrawal.create({ data: { authorisationId: id, ...withdrawn } });
        return { authorisationId: id };
      }),
    ).rejects.toThrow(/no authorisation in force/);
    await expect(
      insert(async (tx) => ({
        authorisationId: (await authorisationRow(tx, technician.personId, quality.personId)).id,
      })),
    ).rejects.toThrow(/no authorisation in force/);
  });

  it("refuses another person's session of signing, and an act that was carried out at another moment", async () => {
    const { personId } = world.people.technician;
    await expect(
      insert(async (tx) => ({
        signingSessionId: (await tx.signingSession.findFirstOrThrow({ where: { personId } })).id,
      })),
    ).rejects.toThrow(/another person's/);
    const signedAt = new Date(signClock().getTime() + 1000);
    await expect(insert(() => ({ actId: signed.actId, signedAt }))).rejects.toThrow(
      /Unique constraint failed/,
    );
  });
});

describe("a certificate", () => {
  it("is not kept without its signature", async () => {
    await expect(inLaboratory(unsigned)).rejects.toThrow(/is not signed/);
    expect(await inLaboratory((tx) => tx.certificate.count())).toBe(
      await inLaboratory((tx) => tx.signature.count()),
    );
  });

  it("is not kept with a signature of another moment", async () => {
    const signedAt = new Date(signClock().getTime() + 1000);
    await expect(insert(() => ({ signedAt }))).rejects.toThrow(/is not signed/);
  });

  it("is not kept unsigned by whoever quiets the other triggers of the database", async () => {
    const admin = await connect(database.adminUrl);
    try {
      await admin.query("BEGIN; SET LOCAL session_replication_role = replica");
      await admin.query(
        copiedCertificate(
          `'{"number":"C-U"}' || jsonb_build_object('id', gen_random_uuid(), 'token', repeat('u', 43))`,
          "LIMIT 1",
        ),
      );
      await expect(admin.query("COMMIT")).rejects.toMatchObject({
        code: "23514",
        message: /C-U is not signed/,
      });
    } finally {
      await admin.end();
    }
  });
});

describe("a session of signing", () => {
  const open = (personId: string, personSessionId: string) =>
    inLaboratory((tx) =>
      tx.signingSession.create({
        data: { personId, personSessionId, openedAt: signClock(), lastSignedAt: signClock() },
      }),
    );

  it("belongs to a full sign-in of the same person", async () => {
    const { signatory, technician } = world.people;
    const bench = await inLaboratory((tx) => personSessionRow(tx, signatory.personId, "bench"));
    for (const [person, session] of [
      [signatory.personId, bench],
      [signatory.personId, technician.sessionId],
    ] as const)
      await expect(open(person, session)).rejects.toThrow(/a full sign-in of the same person/);
  });

  it("does not move, and once ended does not go on", async () => {
    const { signatory } = world.people;
    const other = await inLaboratory((tx) => personSessionRow(tx, signatory.personId));
    const { id } = await open(signatory.personId, signatory.sessionId);
    const change = (data: object) => inLaboratory((tx) => tx.signingSession.update({ where: { id }, data }));
    await expect(change({ personSessionId: other })).rejects.toThrow(/stays whose and when/);
    await expect(change({ openedAt: new Date("2026-03-05T09:00:00Z") })).rejects.toThrow(
      /stays whose and when/,
    );
    await change({ endedAt: signClock() });
    await expect(change({ endedAt: null })).rejects.toThrow(/has ended/);
  });
});
