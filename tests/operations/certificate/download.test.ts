import { unzipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { hex } from "@/lib/data/hex";
import { inScope } from "@/lib/data/in-scope";
import { sha256 } from "@/lib/data/sha256";
import { checkDcc } from "@/lib/documents/dcc/check-dcc";
import { Refused } from "@/lib/domain/refusal";
import type { Actor } from "@/lib/domain/staff/actor";
import { downloadCertificates, fetchDocuments } from "@/lib/operations/certificate/download";
import { fetchTogether } from "@/lib/operations/certificate/download-together";
import { signOff } from "@/lib/operations/certificate/sign-off";
import { execute } from "@/lib/operations/execute";
import { draftDocument, openDraft } from "@/lib/operations/review/open-draft";
import { certificateListView } from "@/lib/views/certificate-list";
import { certificatePageView } from "@/lib/views/certificate-page";
import { portalCertificatesView } from "@/lib/views/portal-certificates";
import { reviewQueueView } from "@/lib/views/review-queue";
import { reviewResultView } from "@/lib/views/review-result";
import { reviewRunView } from "@/lib/views/review-run";
import { tracePageView } from "@/lib/views/trace-page";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { type TestDatabase, testDatabase } from "../../support/database";
import { issueAllNow, issueNow } from "../../support/issue-now";
import { pdfPages } from "../../support/pdf-text";
import { reviewedHash, signClock, signOffInput, signRun } from "../../support/sign-run";

let database: TestDatabase;
let world: World;
let built: Awaited<ReturnType<typeof buildRun>>;
/** One of North's, one of South's. */
let signed: Awaited<ReturnType<typeof signRun>>;
const laboratory = { kind: "laboratory" } as const;

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
  built = await buildRun(world, { owners: ["north", "south"] });
  signed = await signRun(world.people.signatory, built);
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

const codeOf = (work: Promise<unknown>): Promise<string> =>
  work.then(
    () => "answered",
    (error) => (error instanceof Refused ? error.refusal.code : String(error)),
  );
const files = (certificateId: string) =>
  inScope(laboratory, (tx) => tx.certificateFile.findMany({ where: { certificateId } }));
const pdfs = async (certificateId: string) =>
  (await files(certificateId)).filter(({ mediaType }) => mediaType === "application/pdf");
const text = async (bytes: Uint8Array) => (await pdfPages(bytes)).join("\n");

describe("the document", () => {
  it("is made once, outside the sign-off, however many ask at the same time", async () => {
    const [north] = signed;
    expect(await files(north!.id)).toEqual([]);
    await Promise.all(Array.from({ length: 4 }, () => issueNow(north!.id)));
    const [file, ...others] = await pdfs(north!.id);
    expect(others).toEqual([]);
    expect(await files(north!.id)).toHaveLength(2);
    expect(hex(file!.sha256)).toBe(hex(sha256(file!.bytes)));
    const events = await inScope(laboratory, (tx) =>
      tx.auditEvent.findMany({ where: { entityId: north!.id, action: "certificate.issued" } }),
    );
    expect(events).toHaveLength(1);
    expect(JSON.parse(events[0]!.payload).sha256).toBe(hex(file!.sha256));
    expect(events[0]!.actorId).toBe("system:issuer");
  });

  it("is refused as being made until it is stored, and gives the same bytes ever after", async () => {
    const south = signed[1]!;
    const ask = () => fetchDocuments(world.people.south, [south.token], signClock);
    await expect(ask()).rejects.toThrow("still being made");
    // To everybody else it is not there, made or not.
    expect(await codeOf(fetchDocuments(world.people.north, [south.token], signClock))).toBe("not-found");
    await issueAllNow();
    const [first] = await ask();
    const [second] = await fetchDocuments(world.people.signatory, [south.token], signClock);
    expect(hex(sha256(first!.bytes))).toBe(hex(sha256(second!.bytes)));
    expect(await text(first!.bytes)).toContain(south.number);
    const downloads = await inScope(laboratory, (tx) =>
      tx.auditEvent.findMany({
        where: { entityId: south.id, action: "certificate.downloaded" },
        orderBy: { sequence: "asc" },
      }),
    );
    expect(downloads.map(({ actorId }) => actorId)).toEqual([
      world.people.south.personId,
      world.people.signatory.personId,
    ]);
  });

  it("is not there for another customer, alone or among their own, nor under a made-up token", async () => {
    const [north, south] = signed;
    const fetch = (actor: Actor, tokens: string[]) => codeOf(fetchDocuments(actor, tokens, signClock));
    expect(await fetch(world.people.north, [north!.token])).toBe("answered");
    expect(await fetch(world.people.north, [south!.token])).toBe("not-found");
    expect(await fetch(world.people.north, [north!.token, south!.token])).toBe("not-found");
    expect(await fetch(world.people.north, ["A".repeat(43)])).toBe("not-found");
    expect(await codeOf(fetchTogether(world.people.south, [north!.token], signClock))).toBe("not-found");
    expect(
      await codeOf(execute(downloadCertificates, world.people.north, { tokens: ["x' or true"] }, signClock)),
    ).toBe("invalid");
  });

  it("is there for machines too, alone, whole, under the same rules and told in the log", async () => {
    const [north, south] = signed;
    const [dcc] = await fetchDocuments(world.people.north, [north!.token], signClock, "dcc");
    const xml = new TextDecoder().decode(dcc!.bytes);
    expect(checkDcc(xml)).toEqual([]);
    expect(xml).toContain(`<dcc:uniqueIdentifier>${north!.number}</dcc:uniqueIdentifier>`);
    const stored = (await files(north!.id)).find(({ mediaType }) => mediaType === "application/xml");
    expect(hex(sha256(dcc!.bytes))).toBe(hex(stored!.sha256));
    expect(await codeOf(fetchDocuments(world.people.north, [south!.token], signClock, "dcc"))).toBe(
      "not-found",
    );
    const last = await inScope(laboratory, (tx) =>
      tx.auditEvent.findFirst({
        where: { entityId: north!.id, action: "certificate.downloaded" },
        orderBy: { sequence: "desc" },
      }),
    );
    expect(JSON.parse(last!.payload)).toMatchObject({ number: north!.number, mediaType: "application/xml" });
    expect((await certificatePageView(world.people.signatory, north!.number)).hasDcc).toBe(true);
  });

  it("comes together with others in one ZIP", async () => {
    const zip = await fetchTogether(
      world.people.signatory,
      signed.map(({ token }) => token),
      signClock,
    );
    const entries = unzipSync(zip);
    expect(Object.keys(entries).sort()).toEqual(
      signed.flatMap(({ number }) => [`${number}.pdf`, `${number}.xml`]).sort(),
    );
    for (const { id, number } of signed)
      expect(hex(sha256(entries[`${number}.pdf`]!))).toBe(hex((await pdfs(id))[0]!.sha256));
  });
});

describe("the draft", () => {
  it("is for staff, under its watermark, and says what the hash is over", async () => {
    const run = await buildRun(world, { owners: ["north"] });
    const input = { runNumber: run.run.number, tag: run.sensors[0]!.tag };
    const words = await text(await draftDocument(world.people.signatory, input, signClock));
    expect(words).toMatch(/draft/i);
    expect(words).toContain(run.sensors[0]!.serial);
    expect(words).not.toMatch(/C-2026-\d{4}/);
    expect(await codeOf(execute(openDraft, world.people.north, input, signClock))).toBe("not-permitted");
    const page = await reviewRunView(world.people.signatory, run.run.number);
    expect(page.sensors[0]!.reviewedHash).toBe(await reviewedHash(run.run.id, run.sensors[0]!.id));
  });
});

const today = { celsius: null, on: "2026-03-06" };

describe("who may see what", () => {
  it("shows a customer their own certificates only, and no page of the laboratory", async () => {
    const { certificates: own } = await portalCertificatesView(world.people.north);
    expect(own.map(({ number }) => number)).toEqual([signed[0]!.number]);
    const number = signed[0]!.number;
    for (const work of [
      reviewQueueView(world.people.north),
      reviewRunView(world.people.north, built.run.number),
      reviewResultView(world.people.north, built.run.number, built.sensors[0]!.tag, 1),
      certificateListView(world.people.north, {}),
      certificatePageView(world.people.north, number),
      tracePageView(world.people.north, number, today),
    ])
      expect(await codeOf(work)).toBe("not-permitted");
    expect(await codeOf(portalCertificatesView(world.people.signatory))).toBe("not-permitted");
  });

  it("answers staff, and unknown numbers with not found", async () => {
    const staff = world.people.signatory;
    expect(await codeOf(reviewRunView(staff, "R-none"))).toBe("not-found");
    expect(await codeOf(reviewResultView(staff, built.run.number, "T-none", 1))).toBe("not-found");
    expect(await codeOf(reviewResultView(staff, built.run.number, built.sensors[0]!.tag, 99))).toBe(
      "not-found",
    );
    expect(await codeOf(certificatePageView(staff, "C-2026-9999"))).toBe("not-found");
    expect(await codeOf(tracePageView(staff, "C-2026-9999", today))).toBe("not-found");
    expect(
      (await certificateListView(staff, { q: built.sensors[1]!.serial })).certificates.map(({ tag }) => tag),
    ).toEqual([built.sensors[1]!.tag]);
    const result = await reviewResultView(staff, built.run.number, built.sensors[0]!.tag, 1);
    expect(result.neighbours).toMatchObject({ place: 1, of: 4, previous: null });
    expect(result.dominant).toBe("Reference calibration");
  });

  it("puts a failing run before a run in which nothing stands out", async () => {
    const quiet = await buildRun(world, { owners: ["north"] });
    const failing = await buildRun(world, {
      owners: ["south", "south"],
      change: (point) =>
        point.state === "measured"
          ? {
              ...point,
              errorCelsius: 9,
              printed: { ...point.printed, errorCelsius: "9.0", correctionCelsius: "-9.0" },
              conformity: { ...point.conformity, state: "fail" },
            }
          : point,
    });
    const { waiting } = await reviewQueueView(world.people.signatory);
    const numbers = waiting.map(({ number }) => number);
    expect(numbers.indexOf(failing.run.number)).toBeLessThan(numbers.indexOf(quiet.run.number));
    expect(waiting[0]).toMatchObject({ number: failing.run.number, exceptions: 4 });
    // What is signed off is settled: only the other sensor's results still stand out.
    const input = await signOffInput(failing, [failing.sensors[0]!]);
    await execute(signOff, world.people.signatory, input, signClock);
    const page = await reviewRunView(world.people.signatory, failing.run.number);
    expect(page.exceptions.map(({ href }) => href)).toEqual(
      [1, 2].map((at) => `/review/${failing.run.number}/${failing.sensors[1]!.tag}/${at}`),
    );
  });
});
