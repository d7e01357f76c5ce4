import { describe, expect, it } from "vitest";
import { impurities } from "./metrology-rules";
import type { Source } from "./source";
import * as rules from "./source-rules";

const source = (text: string, file = "lib/metrology/number/x.ts"): Source => ({ file, text });

describe("the engine's purity", () => {
  it.each([
    "const y = Math.exp(1);",
    "const y = 2 ** 3;",
    "let y = 2; y **= 3;",
    "const { pow } = Math;",
    'const y = Math["pow"](2, 3);',
    "const t = Date.now();",
    "const t = new Date(0);",
    "console.log(1);",
    "const s = (1).toLocaleString();",
    'const b = "a".localeCompare("b");',
    "const r = globalThis.Math;",
    "const e = process.env;",
  ])("refuses %s", (text) => expect(impurities(source(text))).toHaveLength(1));

  it.each([
    "const y = Math.sqrt(2);",
    "// Math.exp, ** and Date\nconst s = 'Date ** Math.pow';",
    "const o = { Date: 1 }; o.Date;",
  ])("lets %s stand", (text) => expect(impurities(source(text))).toEqual([]));
});

describe("the rules of the house", () => {
  it.each([
    [rules.tooLong, source("x\n".repeat(301))],
    [rules.tooLong, source("x\n".repeat(111), "app/(lab)/page.tsx")],
    [rules.barrels, source("export const a = 1;", "lib/domain/order/index.ts")],
    [rules.barrels, source('export { a } from "./a";\nexport { b } from "./b";')],
    [rules.barrels, source('export const c = 1;\nexport * from "./b";')],
    [rules.homelessFolders, source("", "lib/domain/utils/x.ts")],
    [rules.environmentReads, source("const p = process.env.PORT;", "lib/views/x.ts")],
    [rules.rawSql, source('import pg from "pg";', "lib/data/order/x.ts")],
    [rules.rawSql, source("tx.$queryRaw`SELECT 1`;", "lib/operations/order/x.ts")],
    [rules.misnamedClients, source('"use client";\nexport const X = 1;', "app/x.tsx")],
    [rules.misnamedClients, source('// why\n"use client";\nexport const X = 1;', "app/x.tsx")],
    [rules.misnamedClients, source("export const X = 1;", "app/x.client.tsx")],
    [rules.oddNames, source("", "lib/domain/orderLine.ts")],
    [rules.silencedTests, source('it.skip("x", () => {});', "tests/x.test.ts")],
    [rules.silencedTests, source('describe.only("x", () => {});', "tests/x.test.ts")],
    [rules.enums, source("enum State { A }")],
  ])("%o refuses %o", (rule, faulty) => expect(rule(faulty)).toHaveLength(1));

  it.each([
    [rules.barrels, source('import { a } from "./a";\nexport { b } from "./b";\nexport const c = a;')],
    [rules.environmentReads, source("const p = process.env.PORT;", "lib/commands/x.ts")],
    [rules.environmentReads, source("// process.env is read in lib/web/env.ts", "lib/views/x.ts")],
    [rules.rawSql, source("tx.$queryRaw`SELECT 1`;", "lib/data/sql/x.ts")],
    [rules.misnamedClients, source('"use client";', "app/x.client.tsx")],
    [rules.oddNames, source("", "tests/domain/order-line.test.ts")],
    [rules.silencedTests, source('it.skipIf(folder === undefined)("x", () => {});', "tests/x.test.ts")],
  ])("%o lets %o stand", (rule, sound) => expect(rule(sound)).toEqual([]));
});
