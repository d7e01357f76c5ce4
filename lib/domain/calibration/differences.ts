import { ok, type Result, refuse } from "../refusal";
import { type Said, saidPoints } from "./dcc-says";
import type { CalibrationInput } from "./schema";

/** Where a person confirmed another value than the digital certificate says; kept with the calibration. */
export type Difference = {
  readonly field: string;
  readonly label: string;
  readonly said: string;
  readonly confirmed: string;
  readonly reason: string;
  readonly path: string;
  readonly line: number;
};

const at = (input: unknown, path: string): unknown =>
  path
    .split(".")
    .reduce<unknown>(
      (value, key) =>
        typeof value === "object" && value !== null ? (value as Record<string, unknown>)[key] : undefined,
      input,
    );

const inLine = (value: unknown): string =>
  value === undefined || value === null ? "" : String(value).replaceAll(/\s+/g, " ").trim();

const isSame = (said: Said["value"], confirmed: unknown): boolean =>
  typeof said === "number" ? said === confirmed : inLine(said) === inLine(confirmed);

/** One reason for all lines of a table: they were changed for one reason, or the file should not be trusted. */
export const reasonKey = (field: string): string => {
  const table = saidPoints.find((name) => field.startsWith(`${name}.`));
  return table ?? field;
};

/** A table of another length is a difference too, told once. */
const lengthDifferences = (
  said: readonly Said[],
  input: CalibrationInput,
): readonly Omit<Difference, "reason">[] =>
  saidPoints.flatMap((table) => {
    const own = said.filter(({ field }) => field.startsWith(`${table}.`));
    const first = own[0];
    const rows = at(input, table);
    if (!first || !Array.isArray(rows)) return [];
    const lines = new Set(own.map(({ field }) => field.slice(table.length + 1).split(".")[0])).size;
    return rows.length <= lines
      ? []
      : [
          {
            field: table,
            label: "Lines of the table",
            said: String(lines),
            confirmed: String(rows.length),
            ...first.place,
          },
        ];
  });

/** Every value that is not the file's needs its reason; without one the record is refused at that very field. */
export const decideDifferences = (
  said: readonly Said[],
  input: CalibrationInput,
): Result<readonly Difference[]> => {
  const differing = [
    ...said
      .filter(({ field, value }) => !isSame(value, at(input, field)))
      .map(({ field, label, written, place }) => ({
        field,
        label,
        said: written,
        confirmed: inLine(at(input, field)),
        ...place,
      })),
    ...lengthDifferences(said, input),
  ];
  const fields: Record<string, string> = {};
  for (const one of differing)
    if (!input.reasons[reasonKey(one.field)])
      fields[`reasons.${reasonKey(one.field)}`] =
        `${one.label}: the file says ${one.said} (line ${one.line}), you confirm ${one.confirmed || "nothing"}. Say why, or take the file's value.`;
  if (Object.keys(fields).length > 0)
    return refuse("rule", "Some values differ from the digital certificate. Nothing was stored.", fields);
  return ok(differing.map((one) => ({ ...one, reason: input.reasons[reasonKey(one.field)] ?? "" })));
};
