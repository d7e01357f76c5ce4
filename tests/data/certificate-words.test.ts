import type pg from "pg";
import { afterAll, beforeAll, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { type TestDatabase, testDatabase } from "@/tests/support/database";
import { copiedCertificate } from "./copied-certificate";
import { refusalCode } from "./refusal-code";
import { type TwoCustomers, twoCustomers } from "./two-customers";

/** The last defence of what a certificate names: a language it has no texts in, a simplified form nobody agreed to. */

let database: TestDatabase;
let admin: pg.Client;
let runtime: pg.Client;
let world: TwoCustomers;

beforeAll(async () => {
  database = await testDatabase();
  admin = await connect(database.adminUrl);
  world = await twoCustomers(admin);
  runtime = await connect(database.runtimeUrl);
});
afterAll(async () => {
  await runtime?.end();
  await admin?.end();
  await database?.drop();
});

const check = "23514"; // check_violation
let made = 0;
const stored = (content: object) => {
  made += 1;
  const more = JSON.stringify({
    number: `C-W-${made}`,
    token: String(made).padStart(43, "w"),
    content: JSON.stringify(content),
  });
  return refusalCode(
    runtime,
    copiedCertificate(
      `'${more}'::jsonb || jsonb_build_object('id', gen_random_uuid())`,
      `WHERE c.sensor_id = '${world.a.sensorId}' LIMIT 1`,
    ),
  );
};
const german = { language: "de", texts: { Uncertainty: "Messunsicherheit" } };

it("takes English alone, and two languages with the texts of the second", async () => {
  expect(await stored({})).toBeUndefined();
  expect(await stored({ catalogue: { languages: ["en"] } })).toBeUndefined();
  expect(await stored({ catalogue: { languages: ["en", "de"] }, translations: [german] })).toBeUndefined();
});

it("refuses a language without its texts", async () => {
  const catalogue = { languages: ["en", "de"] };
  expect(await stored({ catalogue })).toBe(check);
  expect(await stored({ catalogue, translations: [{ ...german, texts: {} }] })).toBe(check);
  expect(await stored({ catalogue, translations: [{ ...german, language: "fr" }] })).toBe(check);
});

it("refuses a simplified form without its agreement", async () => {
  expect(await stored({ form: "simplified" })).toBe(check);
  expect(await stored({ form: "simplified", formStatement: "" })).toBe(check);
  expect(await stored({ form: "simplified", formStatement: "As agreed." })).toBeUndefined();
  expect(await stored({ form: "full" })).toBeUndefined();
});
