import { describe, expect, it } from "vitest";
import { checkDcc } from "@/lib/documents/dcc/check-dcc";
import { writeDcc } from "@/lib/documents/dcc/write-dcc";
import { draws } from "@/tests/files/dcc/draws";
import { faultyMutations } from "@/tests/files/dcc/faulty-mutations";
import { schema } from "@/tests/files/dcc/read-fixture";
import { everyContent, hash } from "./every-content";
import { ownMutations } from "./own-mutations";

const written = (name: string): string => writeDcc(everyContent[name] ?? expect.fail(name), hash);

/** The faults come into what we write ourselves, in turn. */
const bases: readonly string[] = [
  written("one sensor, every row with its statement"),
  written("in and outside the scope, external results"),
  written("a replacement that can be checked"),
];

type Made = { readonly kind: string; readonly what: string; readonly xml: string };
type Make = (base: string, seed: number) => Omit<Made, "kind">;

/** Thirteen kinds that break the file, the grammar or a value; nine that break its sense. */
const kinds: readonly (readonly [string, Make])[] = [
  ...Object.entries(faultyMutations).map(([kind, mutation]): readonly [string, Make] => [
    kind,
    (base, seed) => {
      const mutant = mutation(base, draws(seed));
      return { xml: new TextDecoder().decode(mutant.bytes), what: mutant.what };
    },
  ]),
  ...Object.entries(ownMutations).map(([kind, mutation]): readonly [string, Make] => [
    kind,
    (base, seed) => mutation(base, draws(seed)),
  ]),
];

const each = 5;

const mutants = ((): readonly Made[] => {
  const known = new Set(bases);
  return kinds.flatMap(([kind, make], number) =>
    Array.from({ length: each }, (_, index): Made => {
      const base = bases[index % bases.length] ?? "";
      for (let attempt = 0; attempt < 100; attempt += 1) {
        const made = make(base, (number + 300) * 10_000 + index * 100 + attempt);
        if (known.has(made.xml)) continue;
        known.add(made.xml);
        return { kind, ...made };
      }
      throw new Error(`No new mutant was found for ${index} of: ${kind}`);
    }),
  );
})();

it("are over a hundred, of 22 kinds, and differ from each other and from what is sound", () => {
  expect(kinds).toHaveLength(22);
  expect(new Set(mutants.map(({ xml }) => xml)).size).toBe(22 * each);
  for (const base of bases) expect(checkDcc(base, schema)).toEqual([]);
});

describe.each([
  ["by our own rules alone", undefined],
  ["with the schema too, where it is at hand", schema],
])("every mutant of our own certificates is rejected, %s", (_, files) => {
  it.each(kinds.map(([kind]) => kind))("%s", (kind) => {
    const made = mutants.filter((mutant) => mutant.kind === kind);
    expect(made).toHaveLength(each);
    for (const { xml, what } of made) expect(checkDcc(xml, files), what).not.toEqual([]);
  });
});
