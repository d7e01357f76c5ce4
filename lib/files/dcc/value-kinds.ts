import { isDecimal } from "./decimal-text";
import { countryCodes, languageCodes } from "./iso-codes";
import { siUnit } from "./si-unit";
import { listMembers } from "./xml-element";

/** null when the value holds; else what is wrong and what would be right, after the value itself. */
type Check = (written: string) => string | null;

const matching =
  (shape: RegExp, message: string): Check =>
  (written) =>
    shape.test(written) ? null : message;

const oneOf = (...words: readonly string[]): Check => {
  const known = new Set(words);
  return (written) => (known.has(written) ? null : `is not one of ${words.join(", ")}.`);
};

const days = (year: number, month: number): number => {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
};

const date: Check = (written) => {
  const match = /^(\d{4})-(\d\d)-(\d\d)(?:Z|[+-]\d\d:\d\d)?$/.exec(written);
  const [year, month, day] = [1, 2, 3].map((group) => Number(match?.[group] ?? 0)) as [
    number,
    number,
    number,
  ];
  const exists = match !== null && month >= 1 && month <= 12 && day >= 1 && day <= days(year, month);
  return exists ? null : "is no date of the calendar; dates are written like 2026-03-31.";
};

const dateTime: Check = (written) => {
  const match = /^(.{10})T([01]\d|2[0-3]):[0-5]\d:[0-5]\d(?:\.\d+)?(?:Z|[+-]\d\d:\d\d)?$/.exec(written);
  return match && date(match[1] ?? "") === null
    ? null
    : "is no moment; moments are written like 2026-03-31T14:05:00Z.";
};

const decimal: Check = (written) => {
  if (isDecimal(written)) return null;
  return written.includes(",")
    ? "is written with a comma; the D-SI writes decimals with a point and groups no thousands."
    : "is no decimal number; numbers are written like 12.345 or 1.2e-5.";
};

const size: Check = (written) => {
  const wrong = decimal(written);
  if (wrong !== null) return wrong;
  return written.startsWith("-") ? "is negative; an uncertainty has a size and no sign." : null;
};

// The schema's pattern for k has no exponent and begins with a digit from 1 to 9.
const factor = matching(
  /^(?:\+?[1-9]\d*(?:\.\d*)?|NaN)$/,
  "is no coverage factor; k is 1 or more, written like 2 or 2.28.",
);
const probability = matching(
  /^(?:\+?(?:0?\.\d+|0\.?|1(?:\.0*)?)|NaN)$/,
  "is no probability; it lies from 0 to 1, so that 95 % is written 0.95.",
);
const boolean = oneOf("true", "false", "1", "0");
const integer = matching(/^[+-]?\d+$/, "is no whole number.");
const conformity = oneOf("pass", "fail", "conditionalPass", "conditionalFail", "noPass", "noFail");

const unit: Check = (written) => {
  const parsed = siUnit(written);
  return parsed.ok ? null : `is no unit read here: ${parsed.message}`;
};

const words = /^\S+(?:\s+\S+)*$/;

const single: Readonly<Record<string, Check>> = {
  word: matching(words, "is empty or has blanks around it; write the words alone."),
  identifier: matching(words, "is empty or has blanks around it; write the words alone."),
  content: matching(/\S/, "holds no words."),
  label: () => null,
  uri: matching(/^\S+$/, "is no address; it is empty or has blanks in it."),
  base64: matching(/^[A-Za-z0-9+/=\s]*$/, "is not base64."),
  duration: matching(
    /^-?P(?=.)(?:\d+Y)?(?:\d+M)?(?:\d+D)?(?:T(?=.)(?:\d+H)?(?:\d+M)?(?:\d+(?:\.\d+)?S)?)?$/,
    "is no period; periods are written like P1Y6M.",
  ),
  country: (written) =>
    countryCodes.has(written) ? null : "is no country code of ISO 3166-1, such as DE or GB.",
  language: (written) =>
    languageCodes.has(written) ? null : "is no language code of ISO 639-1, such as en or de.",
  software: oneOf("application", "bios", "driver", "editor", "firmware", "library", "os", "other"),
  location: oneOf("laboratory", "customer", "laboratoryBranch", "customerBranch", "other"),
  issuer: oneOf("manufacturer", "calibrationLaboratory", "customer", "owner", "other"),
  change: oneOf("amended", "substituted"),
  status: oneOf("beforeAdjustment", "afterAdjustment", "beforeRepair", "afterRepair"),
  date,
  dateTime,
  boolean,
  conformity,
  decimal,
  size,
  factor,
  probability,
  integer,
  unit,
};

const lists: Readonly<Record<string, Check>> = {
  words: () => null,
  booleans: boolean,
  conformities: conformity,
  decimals: decimal,
  sizes: size,
  factors: factor,
  probabilities: probability,
  integers: integer,
  units: unit,
  dateTimes: dateTime,
};

/** A list written in one element has many members; the first that fails is told, with its number. */
const listProblem = (check: Check, written: string): string | null => {
  const members = listMembers(written);
  if (members.length === 0) return "The list is empty. Each column needs at least one value.";
  for (const [index, member] of members.entries()) {
    const wrong = check(member);
    if (wrong !== null) return `Value ${index + 1}, "${member.slice(0, 60)}", ${wrong}`;
  }
  return null;
};

/** What is wrong with the text of an element of this kind, as a sentence; null when it holds. */
export const valueProblem = (kind: string, written: string): string | null => {
  const list = lists[kind];
  if (list) return listProblem(list, written);
  const check = single[kind];
  if (!check) throw new Error(`No kind of value is called ${kind}.`);
  const wrong = check(written);
  if (wrong === null) return null;
  if (written !== written.trim() && check(written.trim()) === null)
    return `"${written.trim().slice(0, 60)}" has blanks around it. The value stands alone in its element.`;
  return written.trim() === "" ? `The element is empty: it ${wrong}` : `"${written.slice(0, 60)}" ${wrong}`;
};

/** Before 3.2 the schema let any text stand for a word, also none; only what identifies something must be there. */
export const isFreeBefore32 = (kind: string, written: string): boolean =>
  ["word", "content", "uri", "base64"].includes(kind) || (kind === "identifier" && /\S/.test(written));
