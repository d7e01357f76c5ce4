import type { FormState } from "@/lib/web/form-state";

/** One order line as it is typed. */
export type LineDraft = {
  readonly typeLetter: string;
  readonly construction: string;
  readonly protection: string;
  readonly quantity: string;
  readonly temperatureUnit: string;
  readonly setpoints: string;
  readonly tolerance: string;
  readonly ownLimit: string;
  readonly useFrom: string;
  readonly useTo: string;
  readonly maximum: string;
  readonly intervalChoice: string;
  readonly largestInterval: string;
  readonly groupName: string;
  readonly sets: string;
  readonly annealCelsius: string;
  readonly annealHours: string;
  readonly tableStep: string;
  /** "on" or "", as a box is sent. */
  readonly coefficients: string;
  readonly budget: string;
  readonly evidence: string;
  readonly report: string;
  readonly countingRule: string;
  readonly language: string;
  readonly form: string;
  readonly formAgreement: string;
  readonly performedAt: string;
  readonly siteAddress: string;
  readonly providerId: string;
  /** Of a line that is stored already: a change keeps it and its sensors. */
  readonly lineId: string;
};

export type LineField = keyof LineDraft;

export const lineFields = [
  "typeLetter",
  "construction",
  "protection",
  "quantity",
  "temperatureUnit",
  "setpoints",
  "tolerance",
  "ownLimit",
  "useFrom",
  "useTo",
  "maximum",
  "intervalChoice",
  "largestInterval",
  "groupName",
  "sets",
  "annealCelsius",
  "annealHours",
  "tableStep",
  "coefficients",
  "budget",
  "evidence",
  "report",
  "countingRule",
  "language",
  "form",
  "formAgreement",
  "performedAt",
  "siteAddress",
  "providerId",
  "lineId",
] as const satisfies readonly LineField[];

export const emptyLine: LineDraft = {
  typeLetter: "K",
  construction: "",
  protection: "metal-sheath",
  quantity: "1",
  temperatureUnit: "C",
  setpoints: "",
  tolerance: "none",
  ownLimit: "",
  useFrom: "",
  useTo: "",
  maximum: "",
  intervalChoice: "none",
  largestInterval: "",
  groupName: "",
  sets: "as-received",
  annealCelsius: "",
  annealHours: "",
  tableStep: "",
  coefficients: "",
  budget: "",
  evidence: "",
  report: "per-sensor",
  countingRule: "later-counts",
  language: "en",
  form: "full",
  formAgreement: "",
  performedAt: "laboratory",
  siteAddress: "",
  providerId: "",
  lineId: "",
};

/** The next line is mostly like the one before, but for what it is about and who does it: leaving the house is said anew. */
export const lineAfter = (last: LineDraft | undefined): LineDraft => ({
  ...(last ?? emptyLine),
  ...{ construction: "", quantity: "1", groupName: "", providerId: "", lineId: "" },
});

/** Fields behind the line's disclosure: it stands open where one of them says something or is refused. */
export const optionFields = lineFields.slice(lineFields.indexOf("groupName"), lineFields.indexOf("lineId"));

const pattern = /^lines\.(\d{1,3})\./;

const single = (value: string | string[] | undefined): string | undefined =>
  Array.isArray(value) ? value[0] : value;

/** The lines a refused form held, so that none is lost, with or without JavaScript. */
export const keptLines = (state: FormState): readonly LineDraft[] | null => {
  if (state.status !== "refused") return null;
  const { values } = state;
  const indexes = Object.keys(values).flatMap((name) => pattern.exec(name)?.[1] ?? []);
  if (indexes.length === 0) return null;
  const count = Math.max(...indexes.map(Number)) + 1;
  return Array.from({ length: count }, (_, index) => {
    const typed = lineFields.flatMap((field) => {
      const value = single(values[`lines.${index}.${field}`]);
      return value === undefined ? [] : [[field, value]];
    });
    return { ...emptyLine, ...Object.fromEntries(typed) };
  });
};

export const lineErrors = (state: FormState, index: number): Readonly<Partial<Record<LineField, string>>> =>
  state.status === "refused"
    ? Object.fromEntries(
        lineFields.flatMap((field) => {
          const message = state.fields[`lines.${index}.${field}`];
          return message ? [[field, message]] : [];
        }),
      )
    : {};
