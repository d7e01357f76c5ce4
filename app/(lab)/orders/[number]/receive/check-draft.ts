import { pastedSerials, serialKey } from "@/lib/domain/sensor/serials";
import type { FormState } from "@/lib/web/form-state";

/** What one sensor of a paste differs in; empty means as for all. */
export type CheckDraft = {
  readonly condition: string;
  readonly conditionNote: string;
  readonly loopResistanceOhm: string;
  readonly insulationMegaohm: string;
  readonly polarity: string;
  readonly typeCheck: string;
  readonly grounding: string;
  readonly end: string;
};

export type CheckField = keyof CheckDraft;
export type CheckDrafts = Readonly<Record<string, CheckDraft>>;

export const checkFields = [
  "loopResistanceOhm",
  "insulationMegaohm",
  "polarity",
  "typeCheck",
  "grounding",
  "end",
  "condition",
  "conditionNote",
] as const satisfies readonly CheckField[];

export const noDraft: CheckDraft = {
  condition: "",
  conditionNote: "",
  loopResistanceOhm: "",
  insulationMegaohm: "",
  polarity: "",
  typeCheck: "",
  grounding: "",
  end: "",
};

/** The one end that every sensor of a paste is said to be, by its own row or for all; "" where they differ or one says none. */
export const oneEndOf = (keys: readonly string[], drafts: CheckDrafts, endOfAll: string): string => {
  const ends = new Set(keys.map((key) => drafts[key]?.end || endOfAll));
  const [only = ""] = ends;
  return ends.size === 1 ? only : "";
};

const textOf = (values: Readonly<Record<string, string | string[]>>, name: string): string => {
  const value = values[name];
  return (Array.isArray(value) ? value[0] : value) ?? "";
};

export const keptSerials = (state: FormState): string =>
  state.status === "refused" ? textOf(state.values, "serials") : "";

/** What was set sensor by sensor before a refusal, by serial, so that it stays with its sensor when lines move. */
export const keptDrafts = (state: FormState): CheckDrafts => {
  if (state.status !== "refused") return {};
  const { values } = state;
  return Object.fromEntries(
    pastedSerials(keptSerials(state)).map(({ serial }, index) => [
      serialKey(serial),
      Object.fromEntries(
        checkFields.map((field) => [field, textOf(values, `each.${index}.${field}`)]),
      ) as CheckDraft,
    ]),
  );
};
