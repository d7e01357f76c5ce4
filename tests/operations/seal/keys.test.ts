import { readdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import type pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { checkFile } from "@/lib/documents/authenticity/check-file";
import { makeKey } from "@/lib/documents/seal/make-key";
import { execute } from "@/lib/operations/execute";
import { retireKey } from "@/lib/operations/seal/retire";
import { revokeKey } from "@/lib/operations/seal/revoke";
import { installationKeys, makeSealer } from "@/lib/operations/seal/sealer";
import { sealKeysPageView } from "@/lib/views/seal/keys";
import { sealKeysView } from "@/lib/views/seal-keys";
import { unsealed } from "../../documents/seal/sealed";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { codeOf } from "../../support/code-of";
import { type TestDatabase, testDatabase } from "../../support/database";
import { refusalOf } from "../../support/front-desk";
import { issueKey, packKey } from "../../support/issued-key";
import { hasOpenssl, withoutOpenssl } from "../../support/outside-tools";
import { signRun } from "../../support/sign-run";
import { temporaryFolder } from "../../support/temporary-folder";
import { testKeys } from "../../support/test-keys";

const folder = temporaryFolder();
const own = testKeys(path.join(folder, "keys"));
let now = new Date("2026-03-02T09:00:00.000Z");
const clock = () => now;
const later = (days: number) => {
  now = new Date(now.getTime() + 86_400_000 * days);
};

let database: TestDatabase;
let admin: pg.Client;
let world: World;
let pdf: Uint8Array;
beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  admin = await connect(database.adminUrl);
  pdf = await unsealed();
});
afterAll(async () => {
  await closeDatabase();
  await admin?.end();
  await database.drop();
});

const page = () => sealKeysPageView(world.people.quality, now);
const standing = async () =>
  (await page()).keys.map(({ purpose, origin, state }) => `${purpose} ${origin} ${state.kind}`);
const keyInUse = async () => {
  const { inUse } = await page();
  if (!inUse) throw new Error("no key seals");
  return inUse;
};
const actions = async (): Promise<string[]> => {
  const { rows } = await admin.query(
    "SELECT action FROM audit_event WHERE action LIKE 'seal-key.%' ORDER BY action",
  );
  return rows.map((row: { action: string }) => row.action);
};

describe("keys of the laboratory's own", () => {
  it("wait for a name, then are made, listed and told once, and hold no secret in the database", async () => {
    expect(await installationKeys(own, clock)).toBeNull();
    world = await buildWorld();
    const opened = await installationKeys(own, clock);
    await installationKeys(own, clock);
    expect(opened?.origin).toBe("self-issued");
    expect((await standing()).toSorted()).toEqual([
      "seal self-issued in-force",
      "timestamp self-issued in-force",
    ]);
    expect(await actions()).toEqual(["seal-key.taken-up", "seal-key.taken-up"]);
    expect(readdirSync(own.folder).toSorted()).toEqual(["seal-key.p12", "timestamp-key.p12"]);
  });

  it("seal documents that pass against the published list", async () => {
    const { bytes, fingerprint } = await makeSealer(own, clock)(pdf);
    const keys = await sealKeysView(now);
    expect(await checkFile(bytes, { keys, now })).toMatchObject({ verdict: "total-passed", fingerprint });
    expect(keys.keys.every(({ origin }) => origin === "self-issued")).toBe(true);
  });

  it("are exchanged for others before they end, and what the old one sealed stays good", async () => {
    const before = await makeSealer(own, clock)(pdf);
    later(3 * 365 - 30);
    expect((await page()).inUse?.state).toMatchObject({ kind: "ends-soon" });
    const after = await makeSealer(own, clock)(pdf);
    expect(after.fingerprint).not.toBe(before.fingerprint);
    expect((await standing()).toSorted()).toEqual([
      "seal self-issued in-force",
      "seal self-issued retired",
      "timestamp self-issued in-force",
      "timestamp self-issued retired",
    ]);
    const keys = await sealKeysView(now);
    for (const { bytes } of [before, after])
      expect((await checkFile(bytes, { keys, now })).verdict).toBe("total-passed");
  });
});

describe("a key that is to be used no more", () => {
  it("is ended by the quality manager alone, with a reason", async () => {
    const { id } = await keyInUse();
    const input = { id, reason: "Renewed" };
    for (const actor of [world.people.signatory, world.people.technician])
      expect(await codeOf(execute(retireKey, actor, input, clock))).toBe("not-permitted");
    const atTheBench = { ...world.people.quality, session: "bench" } as typeof world.people.quality;
    expect(await codeOf(execute(retireKey, atTheBench, input, clock))).toBe("not-permitted");
    const unsaid = await refusalOf(execute(retireKey, world.people.quality, { id, reason: " " }, clock));
    expect(unsaid.fields).toHaveProperty("reason");
    expect(await codeOf(sealKeysPageView(world.people.signatory, now))).toBe("not-permitted");
  });

  it("is retired once, and the laboratory makes itself another", async () => {
    const { id, fingerprint } = await keyInUse();
    later(1);
    await execute(retireKey, world.people.quality, { id, reason: "Renewed" }, clock);
    expect(await codeOf(execute(retireKey, world.people.quality, { id, reason: "Again" }, clock))).toBe(
      "wrong-state",
    );
    expect((await makeSealer(own, clock)(pdf)).fingerprint).not.toBe(fingerprint);
  });

  it("is revoked from a moment on, after it was retired too, and the list says so at once", async () => {
    const sealer = makeSealer(own, clock);
    const early = await sealer(pdf);
    later(10);
    const late = await sealer(pdf);
    const { id } = await keyInUse();
    const from = new Date(now.getTime() - 86_400_000);
    const revoke = (effectiveAt: Date) =>
      execute(revokeKey, world.people.quality, { id, reason: "The machine was stolen", effectiveAt }, clock);
    await execute(retireKey, world.people.quality, { id, reason: "Renewed" }, clock);
    expect((await refusalOf(revoke(new Date(now.getTime() + 1000)))).fields).toHaveProperty("effectiveAt");
    expect((await refusalOf(revoke(new Date(Number.NaN)))).fields).toHaveProperty("effectiveAt");
    await revoke(from);
    expect(await codeOf(revoke(from))).toBe("wrong-state");
    const keys = await sealKeysView(now);
    const verdicts = await Promise.all([early, late].map(({ bytes }) => checkFile(bytes, { keys, now })));
    expect(verdicts.map(({ verdict, indication }) => `${verdict} ${indication}`)).toEqual([
      "total-passed PASSED",
      "total-failed REVOKED",
    ]);
    expect(verdicts[1]?.reason).toContain("The machine was stolen");
  });
});

describe("a key of the site's", () => {
  const file = path.join(folder, "site.p12");
  const site = { ...own, given: { file, passphrase: "theirs" } };

  it("takes the place of the one before, which stays on the list as retired", async () => {
    const { fingerprint } = await keyInUse().catch(async () => makeSealer(own, clock)(pdf));
    writeFileSync(file, await makeKey({ purpose: "seal", name: "Bought", at: now, passphrase: "theirs" }));
    const sealed = await makeSealer(site, clock)(pdf);
    expect(sealed.fingerprint).not.toBe(fingerprint);
    const { keys } = await page();
    expect(keys.find((one) => one.fingerprint === sealed.fingerprint)).toMatchObject({ origin: "file" });
    expect(keys.find((one) => one.fingerprint === fingerprint)).toMatchObject({
      state: { kind: "retired" },
      reason: "Another key was taken up in its place.",
    });
  });

  it("seals nothing once it has ended or was retired: the remedy is another file", async () => {
    const { id } = await keyInUse();
    const then = now;
    later(4 * 365);
    expect((await refusalOf(makeSealer(site, clock)(pdf))).message).toContain("SEAL_KEY_FILE");
    now = new Date(then.getTime() + 1000);
    await execute(retireKey, world.people.quality, { id, reason: "Renewed" }, clock);
    const { message } = await refusalOf(makeSealer(site, clock)(pdf));
    expect(message).toContain("was retired from");
    expect(message).toContain("SEAL_KEY_FILE");
  });

  it.skipIf(!hasOpenssl)(
    `that an authority issued seals with what stands above it as it was listed, however its file is packed${hasOpenssl ? "" : `: ${withoutOpenssl}`}`,
    async () => {
      issueKey(folder);
      const issued = { ...own, given: { file: path.join(folder, "leaf.p12"), passphrase: "theirs" } };
      // In force by openssl's clock, from the second it was made.
      const seal = makeSealer(issued, () => new Date(Date.now() + 60_000));
      packKey(folder, "leaf.p12", ["middle.pem"], "theirs");
      const before = await seal(pdf);
      packKey(folder, "leaf.p12", [], "theirs");
      const after = await seal(pdf);
      const given = { keys: await sealKeysView(new Date()), now: new Date(Date.now() + 60_000) };
      expect(given.keys.keys.find((one) => one.fingerprint === after.fingerprint)?.chain).toHaveLength(1);
      for (const { bytes } of [before, after])
        expect((await checkFile(bytes, given)).verdict).toBe("total-passed");
    },
  );

  it("says what is wrong with its file", async () => {
    const missing = { ...own, given: { file: path.join(folder, "none.p12"), passphrase: "" } };
    await expect(makeSealer(missing, clock)(pdf)).rejects.toThrow("SEAL_KEY_FILE");
    await expect(makeSealer({ ...own, passphrase: "another secret" }, clock)(pdf)).rejects.toThrow(
      "AUTH_SECRET",
    );
  });
});

describe("the database", () => {
  it("takes a sealed document only under a key that is listed, in force and not ended", async () => {
    const [signed] = await signRun(world.people.signatory, await buildRun(world, { owners: ["north"] }));
    const store = async (fingerprint: string, renderedAt: Date) => {
      await admin.query("BEGIN");
      const stored = await admin
        .query(
          `INSERT INTO certificate_file (certificate_id, customer_id, media_type, bytes, sha256, renderer_version,
             unsealed_sha256, seal_fingerprint, rendered_at)
           SELECT id, customer_id, 'application/pdf', 'x', sha256('x'), '1', sha256('x'), $2, $3
             FROM certificate WHERE id = $1`,
          [signed?.id, fingerprint, renderedAt],
        )
        .then(
          () => "stored",
          (error: Error) => error.message,
        );
      await admin.query("ROLLBACK");
      return stored;
    };
    const { keys } = await page();
    const ended = keys.find(({ purpose, state }) => purpose === "seal" && state.kind === "retired");
    const telling = keys.find(({ purpose }) => purpose === "timestamp");
    const { fingerprint } = await makeSealer(testKeys(path.join(folder, "anew")), clock)(pdf);
    const refused = "this document is sealed by no key that the laboratory seals with";
    const tried: [string | undefined, Date][] = [
      [fingerprint, now],
      [fingerprint, new Date(now.getTime() + 4 * 365 * 86_400_000)],
      [ended?.fingerprint, now],
      [telling?.fingerprint, now],
      ["f".repeat(64), now],
    ];
    const told = [];
    for (const [which = "", at] of tried) told.push(await store(which, at));
    expect(told).toEqual(["stored", refused, refused, refused, refused]);
  });

  it("lets nobody but a person revoke, and no outside authority seal", async () => {
    const { keys } = await page();
    const insert = (columns: string, values: string) =>
      admin.query(`INSERT INTO seal_key_ending (${columns}) VALUES (${values})`);
    await expect(
      insert(
        "seal_key_id, kind, reason, effective_at, recorded_at",
        `'${keys[0]?.id}', 'revoked', 'x', now(), now()`,
      ),
    ).rejects.toThrow("seal_key_ending_revoked_by_a_person");
    await expect(
      admin.query(
        `INSERT INTO seal_key (fingerprint, algorithm, subject, certificate_der, chain_der, not_before, not_after,
           origin, purpose, taken_up_at)
         VALUES (encode(sha256('x'), 'hex'), 'a', 's', 'x', '', now(), now() + interval '1 day', 'authority', 'seal', now())`,
      ),
    ).rejects.toThrow("seal_key_authority_tells_the_time");
  });
});
