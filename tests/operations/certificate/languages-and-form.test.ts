import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { hex } from "@/lib/data/hex";
import { inScope } from "@/lib/data/in-scope";
import { configurePublicUrl } from "@/lib/data/public-url";
import { sha256 } from "@/lib/data/sha256";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import { reviewedForm } from "@/lib/domain/certificate/reviewed-form";
import type { Actor } from "@/lib/domain/staff/actor";
import { fetchPage } from "@/lib/operations/certificate/read-as-page";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { codeOf } from "../../support/code-of";
import { type TestDatabase, testDatabase } from "../../support/database";
import { issueNow } from "../../support/issue-now";
import { contentOf } from "../../support/parts-seen";
import { reviewedHash, signClock, signRun } from "../../support/sign-run";

/* What an order line asks of its certificate's language and form, from the order to the page that says it. */

let database: TestDatabase;
let world: World;

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  configurePublicUrl("https://lab.example.test");
  world = await buildWorld();
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

const laboratory = { kind: "laboratory" } as const;
const signedFor = async (lineOptions: Readonly<Record<string, unknown>>) => {
  const built = await buildRun(world, { owners: ["north"], lineOptions });
  const reviewed = await reviewedHash(built.run.id, built.sensors[0]!.id);
  const [signed] = await signRun(world.people.signatory, built);
  return { ...signed!, reviewed, content: await contentOf(signed!.id) };
};

describe("a certificate in two languages", () => {
  it("is what was reviewed, names where it can be checked, and can be read as a page by whom it belongs to", async () => {
    const signed = await signedFor({ language: "en-de", evidence: true });
    const { content } = signed;
    expect(content.catalogue?.languages).toEqual(["en", "de"]);
    expect(content.authenticity?.address).toBe(`https://lab.example.test/authenticity/${signed.token}`);
    expect(hex(contentHash(reviewedForm(content), sha256))).toBe(signed.reviewed);
    const german = content.translations?.[0]?.texts ?? {};
    for (const said of [
      content.title,
      content.standards[0]?.description,
      content.thermalHistory?.[0],
      content.authorisedBy.meaning,
    ])
      expect(german[said ?? ""], said).toMatch(/\S/);

    const read = (actor: Actor, token: string) => fetchPage(actor, token, signClock);
    expect(await codeOf(read(world.people.north, signed.token))).toBe("wrong-state");
    await issueNow(signed.id);
    const { html, policy } = await read(world.people.north, signed.token);
    expect(html).toContain('<span lang="de" class="further">Kalibrierschein</span>');
    expect(html).toContain(`${signed.token}#${hex(contentHash(content, sha256))}`);
    expect(policy).toContain("default-src 'none'");
    expect(await codeOf(read(world.people.south, signed.token))).toBe("not-found");
    expect(await codeOf(read(world.people.signatory, "A".repeat(43)))).toBe("not-found");
    const downloads = await inScope(laboratory, (tx) =>
      tx.auditEvent.findMany({ where: { entityId: signed.id, action: "certificate.downloaded" } }),
    );
    expect(downloads.map(({ actorId, payload }) => [actorId, JSON.parse(payload)])).toEqual([
      [
        world.people.north.personId,
        {
          number: signed.number,
          sha256: hex(sha256(new TextEncoder().encode(html))),
          mediaType: "text/html",
        },
      ],
    ]);
  });
});

describe("a simplified certificate", () => {
  it("leaves out what was agreed, and never who, what, how sure, by which rule and on which standards", async () => {
    const agreement = { form: "simplified", formAgreement: "letter of 2026-02-20" };
    const full = (await signedFor({ coefficients: true, budget: true })).content;
    const { content } = await signedFor({ ...agreement, coefficients: true, budget: true });
    expect(full).toMatchObject({ budgets: expect.any(Array), thermalHistory: expect.any(Array) });
    expect(content).toMatchObject({
      form: "simplified",
      formStatement: expect.stringContaining("agreed with the customer: letter of 2026-02-20 (ISO/IEC 17025"),
      item: { checks: [], serial: expect.stringMatching(/\S/) },
      uncertaintyStatement: full.uncertaintyStatement,
      conformity: full.conformity,
      traceabilityStatement: full.traceabilityStatement,
      standards: full.standards,
      rows: full.rows,
    });
    for (const left of ["budgets", "function", "thermalHistory"]) expect(content).not.toHaveProperty(left);
    // What the figures mean stays: the scale, and the reference function.
    expect(content.conditions).toEqual(full.conditions.slice(0, 2));
    expect(full.conditions.length).toBeGreaterThan(3);
    expect(full.form).toBeUndefined();
  });
});
