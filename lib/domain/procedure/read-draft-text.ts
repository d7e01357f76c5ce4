import type { z } from "zod";
import { canonical } from "../audit/canonical";
import { ok, type Result, refuse } from "../refusal";

const placeOf = (path: readonly PropertyKey[]): string =>
  path.reduce<string>((written, key) => {
    if (typeof key === "number") return `${written}[${key}]`;
    return written === "" ? String(key) : `${written}.${String(key)}`;
  }, "");

const named = (error: z.ZodError): string =>
  error.issues
    .slice(0, 8)
    .map(({ path, message }) => `${placeOf(path) || "the whole"}: ${message.replace(/\.$/, "")}`)
    .join("; ");

/** JSON as a person typed it, judged whole; each fault with its place, at the field it was typed in. */
export const readDraftText = <S extends z.ZodType>(
  schema: S,
  text: string,
  field: string,
): Result<{ readonly value: z.output<S>; readonly text: string }> => {
  const nothing = "The draft was not changed. What you typed is still here.";
  let typed: unknown;
  try {
    typed = JSON.parse(text);
  } catch (error) {
    return refuse("invalid", nothing, { [field]: `This is not JSON: ${(error as Error).message}.` });
  }
  const read = schema.safeParse(typed);
  if (!read.success) return refuse("invalid", nothing, { [field]: `${named(read.error)}.` });
  return ok({ value: read.data, text: canonical(read.data) });
};
