import { describe, expect, it } from "vitest";
import type { DccCertificate } from "@/lib/domain/calibration/dcc-certificate";
import type { DccSchemaFiles } from "@/lib/files/dcc/dcc-schema";
import { readDcc } from "@/lib/files/dcc/read-dcc";
import { draws } from "./draws";
import { faultyMutations } from "./faulty-mutations";
import type { Mutant, Mutation } from "./mutant";
import { neutralMutations } from "./neutral-mutations";
import { certificateOf, demonstration, fixture, schema } from "./read-fixture";

const decode = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

const bases: readonly string[] = [
  decode(demonstration()),
  decode(fixture("dcc-3.0.0.xml")),
  decode(fixture("dcc-3.1.2.xml")),
  decode(fixture("dcc-3.2.1.xml")),
];

const each = 10;

/** Ten mutants of a class, over the certificates in turn; drawn anew where a draw changed nothing or came before. */
const mutantsOf = (
  mutation: Mutation,
  number: number,
): readonly { readonly base: string; readonly mutant: Mutant }[] => {
  const made = new Set(bases);
  return Array.from({ length: each }, (_, index) => {
    const base = bases[index % bases.length] ?? "";
    for (let attempt = 0; attempt < 100; attempt += 1) {
      const mutant = mutation(base, draws(number * 100_000 + index * 100 + attempt));
      const text = decode(mutant.bytes);
      if (made.has(text)) continue;
      made.add(text);
      return { base, mutant };
    }
    return expect.fail(`No new mutant was found for ${index} of class ${number}.`);
  });
};

/** Lines move when white space does; all else must be the same. */
const contentOf = (certificate: DccCertificate): string =>
  JSON.stringify(certificate, (key, value) => (key === "line" ? undefined : value));

const readWhole = (base: string, mutant: Mutant, files: DccSchemaFiles | undefined): void => {
  const before = certificateOf(readDcc(new TextEncoder().encode(base), files));
  const after = certificateOf(readDcc(mutant.bytes, files));
  expect(contentOf(after), mutant.what).toBe(contentOf(before));
};

const isAt = (path: string, wanted: string): boolean =>
  wanted.endsWith("*") ? path.startsWith(wanted.slice(0, -1).replace(/\[\d+\]$/, "")) : path === wanted;

const refusedThere = (
  mutant: Extract<Mutant, { expect: "refused" }>,
  files: DccSchemaFiles | undefined,
): void => {
  const outcome = readDcc(mutant.bytes, files);
  if (outcome.ok) expect.fail(`${mutant.what}: read, and should have been refused.`);
  const told = `${mutant.what}\n${JSON.stringify(outcome.problems, null, 1)}`;
  const found = outcome.problems.find(
    ({ code, path }) =>
      mutant.codes.includes(code) &&
      (mutant.paths === null || mutant.paths.some((wanted) => isAt(path, wanted))),
  );
  expect(found, told).toBeDefined();
  for (const problem of outcome.problems) {
    expect(problem.line, told).toBeGreaterThan(0);
    expect(problem.message, told).toMatch(/[.)]$/);
  }
};

const faults = Object.entries(faultyMutations);
const neutrals = Object.entries(neutralMutations);

describe.each([
  ["by our own rules alone", undefined],
  ["with the schema too, where it is at hand", schema],
])("200 mutants, %s", (_, files) => {
  it.each(neutrals.map(([name, mutation], index) => [name, mutation, index] as const))(
    "read whole: %s",
    (_name, mutation, number) => {
      for (const { base, mutant } of mutantsOf(mutation, number)) {
        expect(mutant.expect).toBe("neutral");
        expect(decode(mutant.bytes)).not.toBe(base);
        readWhole(base, mutant, files);
      }
    },
  );

  it.each(faults.map(([name, mutation], index) => [name, mutation, index + 100] as const))(
    "refused with the place: %s",
    (_name, mutation, number) => {
      for (const { mutant } of mutantsOf(mutation, number)) {
        if (mutant.expect !== "refused") expect.fail("A fault must be refused.");
        refusedThere(mutant, files);
      }
    },
  );
});

it("are 200, and differ from each other", () => {
  const all = [
    ...neutrals.map(([, mutation], index) => mutantsOf(mutation, index)),
    ...faults.map(([, mutation], index) => mutantsOf(mutation, index + 100)),
  ].flat();
  expect(all).toHaveLength(200);
  const texts = new Set(all.map(({ mutant }) => Buffer.from(mutant.bytes).toString("base64")));
  expect(texts.size).toBe(200);
});

it("a mutant made twice is the same mutant", () => {
  const make = () => mutantsOf(faults[0]?.[1] ?? expect.fail(), 7).map(({ mutant }) => mutant.what);
  expect(make()).toEqual(make());
});
