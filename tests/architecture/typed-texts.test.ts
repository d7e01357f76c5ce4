import { expect, it } from "vitest";
import { z } from "zod";
import { WorkRequest } from "@/lib/domain/machine/wire/work-request";

/*
 * What people and programs type is what it looks like: every text that an operation takes refuses characters that cannot be
 * seen or that turn the direction of reading, unless it is only compared and never kept.
 */

type Schema = z.core.$ZodType;
type Field = { readonly at: string; readonly schema: Schema };

/** What a field's text may hold besides; all but one kind of field refuses each of these for the hidden sign alone. */
const hidden = ["\u202e", "a\u202e", "ab\u202ec", "abcdef\u200bgh", "1\u200b", "a\u202eb@example.org"];

const inner = (schema: Schema): Schema | null => {
  const def = schema._zod.def as { readonly innerType?: Schema };
  return def.innerType ?? null;
};

const asOne = (schema: Schema, parts: readonly Field[], at: string): readonly Field[] =>
  parts.length === 1 && parts[0]?.at === at ? [{ at, schema }] : parts;

/** Each text of a schema, by its place. A pipe of texts is one text: what comes out of it is what is kept. */
const textsOf = (schema: Schema, at: string): readonly Field[] => {
  const def = schema._zod.def as z.core.$ZodTypes["_zod"]["def"];
  const unwrapped = inner(schema);
  // What is asked of a text with a default is asked of the wrapper.
  if (unwrapped) return asOne(schema, textsOf(unwrapped, at), at);
  switch (def.type) {
    case "object":
      return Object.entries(def.shape).flatMap(([key, value]) => textsOf(value as Schema, `${at}.${key}`));
    case "array":
      return textsOf(def.element as Schema, `${at}[]`);
    case "record":
      return textsOf(def.valueType as Schema, `${at}{}`);
    case "union":
      return def.options.flatMap((option) => textsOf(option as Schema, at));
    case "intersection":
      return [...textsOf(def.left as Schema, at), ...textsOf(def.right as Schema, at)];
    case "tuple":
      return def.items.flatMap((item, index) => textsOf(item as Schema, `${at}[${index}]`));
    case "pipe":
      return asOne(schema, textsOf(def.in as Schema, at), at);
    case "string":
      return [{ at, schema }];
    default:
      return [];
  }
};

const keepsHidden = ({ schema }: Field): boolean =>
  hidden.some((text) => {
    const read = z.safeParse(schema, text);
    return read.success && typeof read.data === "string" && /[\u202e\u200b]/.test(read.data);
  });

/** Compared with what there is, never kept: a text that holds a hidden sign names nothing. */
const names =
  /[.](number|run|runNumber|tag|tags\[\]|sensor|orderNumber|placeCode|quotation|subjectName|subjects\[\]|choice|nonconformity|procedure|junction|thermometer|instrument|token|id)$/;
/** Secrets are compared byte for byte; nobody reads them. */
const secrets = /[.](password|passwordAgain|oldPassword|code|key)$/;
/** Read as a number of money; of a place and a channel of the run; of a roll with a sensor here. */
const readAs =
  /^(price\/record[.]amount|gate\/record-bench-checks[.]channels\[\][.]channel|run\/type-readings[.](first|second)\[\][.]channel|run\/record-tip-check[.]place|order[.]agree-roll[.](lot|roll))$/;
/** What a file is called elsewhere, and what machines say of themselves. */
const fromOutside =
  /[.]fileName$|^(mail\/record-attempt|certificate\/(note-attempt|issue)|seal\/take-up|account\/link-outside|calibration\/receive-digital|staff\/refuse-sign-in)[.]/;
/** Stored rows of these are read back by the schema they came in by, which must not refuse what it once took. */
const readBack =
  /^(calibration\/record|equipment\/(change|record|record-entry)|furnace\/record-[a-z]+|procedure\/change-draft)[.]/;
const isExempt = (at: string): boolean =>
  [names, secrets, readAs, fromOutside, readBack].some((pattern) => pattern.test(at));

const modules = import.meta.glob<Record<string, unknown>>("../../lib/operations/**/*.ts", { eager: true });
const inputs = Object.values(modules)
  .flatMap((module) => Object.values(module))
  .flatMap((value) => {
    const { name, input } = (value ?? {}) as { readonly name?: unknown; readonly input?: unknown };
    return typeof name === "string" && input instanceof z.ZodType ? [{ name, input }] : [];
  });

it("finds a text that keeps one, wherever it lies", () => {
  const schema = z.object({
    a: z.string().trim().default(""),
    b: z.array(z.object({ c: z.string().transform((text) => text.trim()) })),
    d: z.enum(["x"]),
    e: z.string().regex(/^\w*$/),
  });
  const found = textsOf(schema, "").filter(keepsHidden);
  expect(found.map(({ at }) => at)).toEqual([".a", ".b[].c"]);
});

it("is so of every text of every operation", () => {
  expect(inputs.length).toBeGreaterThan(100);
  const found = [...inputs, { name: "WorkRequest", input: WorkRequest }].flatMap(({ name, input }) =>
    textsOf(input, name)
      .filter((field) => !isExempt(field.at) && keepsHidden(field))
      .map(({ at }) => at),
  );
  expect([...new Set(found)].toSorted()).toEqual([]);
});
