import { createHash, randomUUID } from "node:crypto";
import pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { configurePublicUrl } from "@/lib/data/public-url";
import { authenticityView } from "@/lib/views/authenticity";
import { type TestDatabase, testDatabase } from "@/tests/support/database";
import { insufficientPrivilege } from "./refusal-code";
import { type TwoCustomers, twoCustomers } from "./two-customers";

let database: TestDatabase;
let admin: pg.Client;
let runtime: pg.Client;
let world: TwoCustomers;

const tokenOf = (name: string): string => name.padEnd(43, "x");
const digest = (text: string): Buffer => createHash("sha256").update(text).digest();
const signedAt = "2026-03-02T09:00:00Z";
const endedAt = "2026-04-02T09:00:00Z";

const contentOf = (serial: string): string =>
  JSON.stringify({ item: { serial }, laboratory: { name: "As it was named then" }, secret: "1234.5 µV" });

/** A certificate of A's sensor, by name: its number, token and content hash follow from it. */
const addCertificate = async (name: string, isIssued = true, serial = "NX-2024-417"): Promise<string> => {
  await admin.query("BEGIN");
  const { rows } = await admin.query(
    `INSERT INTO certificate (number, customer_id, order_id, sensor_id, run_id, evaluation_id, content, content_hash,
                              token, signed_by_id, signed_at)
     VALUES ($1, $2, $3, $4, $5, $6, $11, $7, $8, $9, $10) RETURNING id`,
    [
      ...[`C-${name}`, world.a.customerId, world.a.orderId, world.a.sensorId, world.sharedRun.id],
      ...[world.sharedRun.evaluationId, digest(name), tokenOf(name), world.technicianId, signedAt],
      contentOf(serial),
    ],
  );
  // Signed as another one was, by an act of its own.
  await admin.query(
    `INSERT INTO signature SELECT (jsonb_populate_record(NULL::signature, to_jsonb(s) || jsonb_build_object(
       'id', gen_random_uuid(), 'certificate_id', c.id, 'content_hash', c.content_hash, 'act_id', c.number,
       'signed_at', c.signed_at))).*
       FROM certificate c, (SELECT * FROM signature WHERE customer_id = $2 LIMIT 1) s WHERE c.id = $1`,
    [rows[0].id, world.a.customerId],
  );
  await admin.query("COMMIT");
  if (isIssued)
    await admin.query(
      `INSERT INTO certificate_file (certificate_id, customer_id, media_type, bytes, sha256, renderer_version, rendered_at)
       VALUES ($1, $2, 'application/pdf', $3::bytea, sha256($3::bytea), '1', $4)`,
      [rows[0].id, world.a.customerId, Buffer.from(`%PDF ${name}`), signedAt],
    );
  return rows[0].id;
};

const end = (id: string, kind: string, successorId: string | null) =>
  admin.query(
    `INSERT INTO certificate_ending (certificate_id, customer_id, kind, reason, successor_id, decided_by_id, decided_at)
     VALUES ($1, $2, $3, 'the furnace had a draught', $4, $5, $6)`,
    [id, world.a.customerId, kind, successorId, world.technicianId, endedAt],
  );

const at = new Date("2026-05-01T10:00:00Z");
const ask = async (token: string, client: string = randomUUID()) => {
  const answer = await authenticityView(token, client, at);
  if (answer.kind !== "answered") throw new Error("too many");
  return answer.status;
};

/** The text of each statement that leaves for the server. */
const statementsOf = async (work: () => Promise<unknown>): Promise<string[]> => {
  const { query } = pg.Client.prototype;
  const texts: string[] = [];
  pg.Client.prototype.query = function told(this: pg.Client, ...given: unknown[]) {
    const [first] = given;
    texts.push(typeof first === "string" ? first : (first as { text: string }).text);
    return Reflect.apply(query, this, given);
  } as typeof query;
  await work().finally(() => {
    pg.Client.prototype.query = query;
  });
  return texts;
};

beforeAll(async () => {
  database = await testDatabase();
  admin = await connect(database.adminUrl);
  // How a certificate comes to its successor is tried elsewhere.
  await admin.query("ALTER TABLE certificate_ending DISABLE TRIGGER guard_certificate_successor");
  runtime = await connect(database.runtimeUrl);
  world = await twoCustomers(admin);
  // Another one than any certificate was signed with: the row follows no certificate.
  await admin.query("UPDATE sensor SET serial = 'NX-2024-999' WHERE id = $1", [world.a.sensorId]);
  configureDatabase(database.runtimeUrl);
  configurePublicUrl("https://calibration.example");
  await addCertificate("valid");
  await addCertificate("pending", false);
  await end(await addCertificate("amended"), "amended", await addCertificate("amendment"));
  await end(await addCertificate("replaced"), "replaced", await addCertificate("replacement"));
  await end(await addCertificate("withdrawn"), "withdrawn", null);
});

afterAll(async () => {
  await closeDatabase();
  await Promise.all([admin?.end(), runtime?.end()]);
  await database?.drop();
});

describe("what the public is told", () => {
  it("is how the certificate stands, and of what follows its number and address", async () => {
    const status = await ask(tokenOf("valid"));
    expect(status).toMatchObject({
      ...{ standing: "valid", number: "C-valid", issuedOn: "2026-03-02", serialEnd: "417" },
      ...{ endedOn: "", successor: null, predecessor: null },
      fileSha256: digest("%PDF valid").toString("hex"),
    });
    expect(await ask(tokenOf("pending"))).toMatchObject({ standing: "pending", fileSha256: "" });
    expect(await ask(tokenOf("withdrawn"))).toMatchObject({
      ...{ standing: "withdrawn", endedOn: "2026-04-02", successor: null },
    });
    for (const [earlier, later, kind] of [
      ["amended", "amendment", "amended"],
      ["replaced", "replacement", "replaced"],
    ] as const) {
      const address = (name: string) => `https://calibration.example/authenticity/${tokenOf(name)}`;
      const successor = { number: `C-${later}`, address: address(later) };
      const predecessor = { number: `C-${earlier}`, address: address(earlier) };
      expect(await ask(tokenOf(earlier))).toMatchObject({ standing: kind, successor });
      expect(await ask(tokenOf(later))).toMatchObject({ standing: "valid", predecessor });
    }
  });

  it("is never a reason, a result, a customer, the serial or the content hash", async () => {
    for (const name of ["valid", "withdrawn", "replaced"]) {
      const text = JSON.stringify(await ask(tokenOf(name)));
      for (const kept of ["draught", "1234.5", "NX-2024", world.a.customerId, digest(name).toString("hex")])
        expect([kept, text.includes(kept)]).toEqual([kept, false]);
    }
  });

  it("compares the content hash of whoever holds the paper, without giving it away", async () => {
    const token = tokenOf("valid");
    const proof = (hash: string) => digest(`${token}#${hash}`).toString("hex");
    const { contentProof } = await ask(token);
    expect(contentProof).toBe(proof(digest("valid").toString("hex")));
    expect(contentProof).not.toBe(proof(digest("other").toString("hex")));
  });

  it("is nothing for a number, a cut or a malformed token, nor for one that nothing has", async () => {
    const { rows } = await admin.query("SELECT name FROM laboratory");
    const [{ name: laboratory }] = rows;
    const nothing = {
      ...{ standing: "unknown", laboratory, number: "", issuedOn: "", serialEnd: "", endedOn: "" },
      ...{ successor: null, predecessor: null, fileSha256: "", contentProof: "", logHash: "" },
    };
    for (const token of [
      ...[tokenOf("none"), "C-valid", tokenOf("valid").slice(0, 42), `${tokenOf("valid")}x`],
      ...["", "\u0000", "' OR true --", tokenOf("valid").toUpperCase(), "%"],
    ])
      expect([token, await ask(token)]).toEqual([token, nothing]);
  });

  it("shows nothing of a short serial", async () => {
    await addCertificate("short", true, "S-417");
    expect((await ask(tokenOf("short"))).serialEnd).toBe("");
  });

  it("is the serial and the laboratory that were signed, whatever the rows say since", async () => {
    await end(
      await addCertificate("misread", true, "OB-2219"),
      "amended",
      await addCertificate("corrected", true, "OB-2219-X"),
    );
    const issuer = { laboratory: "As it was named then" };
    expect(await ask(tokenOf("misread"))).toMatchObject({ ...issuer, serialEnd: "219" });
    expect(await ask(tokenOf("corrected"))).toMatchObject({ ...issuer, serialEnd: "9-X" });
  });
});

describe("the only door", () => {
  it("answers one row for each question, known or not", async () => {
    for (const token of [tokenOf("valid"), tokenOf("none"), ""]) {
      const { rows } = await runtime.query("SELECT * FROM authenticity($1)", [token]);
      expect(rows).toHaveLength(1);
    }
  });

  it("takes the same statements for a known, an unknown and a malformed token", async () => {
    const asked: string[][] = [];
    for (const token of [tokenOf("valid"), tokenOf("none"), "no token"]) {
      const client = randomUUID();
      asked.push(await statementsOf(() => authenticityView(token, client, at)));
    }
    expect(asked[0]).toContain("SELECT * FROM authenticity($1)");
    expect(asked[1]).toEqual(asked[0]);
    expect(asked[2]).toEqual(asked[0]);
  });

  it("is open to the product's role alone, with its path fixed, and shows no table", async () => {
    const { rows } = await admin.query(
      `SELECT prosecdef, proconfig, has_function_privilege('emfolio_jobs', oid, 'EXECUTE') AS jobs,
              has_function_privilege('emfolio_runtime', oid, 'EXECUTE') AS runtime,
              pg_get_userbyid(proowner) AS owner
         FROM pg_proc WHERE proname = 'authenticity'`,
    );
    expect(rows).toEqual([
      {
        ...{ prosecdef: true, proconfig: ["search_path=pg_catalog, pg_temp"], jobs: false },
        ...{ runtime: true, owner: "emfolio_owner" },
      },
    ]);
    expect((await runtime.query("SELECT * FROM certificate")).rows).toEqual([]);
    const other = runtime.query("SET ROLE emfolio_owner");
    await expect(other).rejects.toMatchObject({ code: insufficientPrivilege });
  });

  it("lets one address ask thirty times a minute, whatever it asks for", async () => {
    const answers = [];
    for (const token of [tokenOf("valid"), tokenOf("none"), "x"])
      for (let time = 0; time < 11; time++) answers.push(await authenticityView(token, "192.0.2.7", at));
    expect(answers.slice(0, 30).every(({ kind }) => kind === "answered")).toBe(true);
    expect(answers.slice(30)).toEqual([30, 30, 30].map(() => ({ kind: "too-many", resetsInSeconds: 60 })));
    expect((await ask(tokenOf("valid"), "192.0.2.8")).standing).toBe("valid");
  });
});
