import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { loadStanding } from "@/lib/data/certificate/standing";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { configurePublicUrl } from "@/lib/data/public-url";
import { sha256 } from "@/lib/data/sha256";
import { authenticityRow } from "@/lib/data/sql/authenticity";
import type { Actor } from "@/lib/domain/staff/actor";
import { askAmendment } from "@/lib/operations/certificate/ask-amendment";
import { fetchDocuments } from "@/lib/operations/certificate/download";
import { issueCertificate } from "@/lib/operations/certificate/issue";
import { issueSteps } from "@/lib/operations/certificate/issue-steps";
import { signOffAmendment } from "@/lib/operations/certificate/sign-off-amendment";
import { withdrawCertificate } from "@/lib/operations/certificate/withdraw";
import { execute } from "@/lib/operations/execute";
import { certificatePageView } from "@/lib/views/certificate-page";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { codeOf } from "../../support/code-of";
import { type TestDatabase, testDatabase } from "../../support/database";
import { issueAllNow, testSeal } from "../../support/issue-now";
import { amendedHash, signClock, signingAct, signRun } from "../../support/sign-run";

/** A signed certificate whose document cannot be made does not stay without an answer. */

let database: TestDatabase;
let world: World;
type Signed = Awaited<ReturnType<typeof signRun>>[number];
const laboratory = { kind: "laboratory" } as const;

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  configurePublicUrl("https://calibration.example");
  world = await buildWorld();
});
afterAll(async () => {
  Reflect.deleteProperty(globalThis, "emfolioPublicUrl");
  await closeDatabase();
  await database?.drop();
});

const withdraw = (actor: Actor, { id: certificateId }: Signed) =>
  execute(
    withdrawCertificate,
    actor,
    {
      certificateId,
      reason: "Its document cannot be made: the customer's name has a sign of its own.",
      forGood: true,
    },
    signClock,
  );
const idOf = async (number: string) =>
  (await inScope(laboratory, (tx) => tx.certificate.findUniqueOrThrow({ where: { number } }))).id;
const standingOf = (id: string) => inScope(laboratory, (tx) => loadStanding(tx, id));

/** Two of one run, of which the first could not be rendered. */
const stuckCertificates = async () => {
  const pair = await signRun(world.people.signatory, await buildRun(world, { owners: ["north", "north"] }));
  const render = async (): Promise<never> => {
    throw new Error("the document's font has no such glyph");
  };
  const steps = { ...issueSteps(testSeal), render };
  await expect(issueCertificate(pair[0]!.id, steps, signClock)).rejects.toThrow("no such glyph");
  return pair;
};

/** Past the operation that stores files. */
const lateFile = ({ id: certificateId }: Signed) =>
  inScope(laboratory, (tx) =>
    tx.certificateFile.create({
      data: {
        ...{ certificateId, customerId: world.north.id, mediaType: "application/xml", rendererVersion: "1" },
        ...{
          bytes: Uint8Array.of(1),
          sha256: Uint8Array.from(sha256(Uint8Array.of(1))),
          renderedAt: signClock(),
        },
      },
    }),
  );

describe("what could not be made", () => {
  it("can be withdrawn: its number stays, its standing is public, and none is made of it any more", async () => {
    const { quality } = world.people;
    const [stuck, other] = await stuckCertificates();
    await withdraw(quality, stuck!);
    expect(await standingOf(stuck!.id)).toMatchObject({ kind: "withdrawn", isUnmade: true });
    const shown = await inScope(laboratory, (tx) => authenticityRow(tx, stuck!.token));
    expect(shown).toMatchObject({ standing: "withdrawn", number: stuck!.number });
    await issueAllNow();
    expect(await standingOf(stuck!.id)).toMatchObject({ kind: "withdrawn", isUnmade: true });
    expect(await codeOf(fetchDocuments(world.people.north, [stuck!.token], signClock))).toBe("not-found");
    await expect(lateFile(stuck!)).rejects.toThrow("no document is made of it any more");
    const letters = await inScope(laboratory, (tx) =>
      tx.mailMessage.findMany({ where: { subject: { endsWith: "will not be issued" } } }),
    );
    expect(letters.length).toBeGreaterThan(0);
    expect(await standingOf(other!.id)).toEqual({ kind: "valid" });
  });

  it("can be followed by one that says it otherwise", async () => {
    const [stuck] = await stuckCertificates();
    const page = await certificatePageView(world.people.quality, stuck!.number);
    expect(page).toMatchObject({ mayAmend: true, mayWithdraw: true, attempts: [{ step: "Render" }] });
    const asked = {
      ...{ certificateId: stuck!.id, kind: "amendment" as const },
      ...{ reason: "Its document could not be made.", corrections: { customerName: "Northern Furnaces" } },
    };
    const { id } = await execute(askAmendment, world.people.quality, asked, signClock);
    const input = { amendmentId: id, reviewedHash: await amendedHash(id), act: signingAct() };
    const { number } = await execute(signOffAmendment, world.people.signatory, input, signClock);
    await issueAllNow();
    expect(await standingOf(stuck!.id)).toMatchObject({ kind: "amended", successor: number, isUnmade: true });
    expect(await standingOf(await idOf(number))).toEqual({ kind: "valid" });
  });
});
