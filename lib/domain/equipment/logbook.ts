import { z } from "zod";

const figure = z.number("Write a number, such as -0.4.");
const name = (missing: string, most = 120) =>
  z.string().trim().min(1, missing).max(most, `At most ${most} characters.`);

/** A value found against the one expected: what a check is, and what its chart is drawn from. */
const checked = {
  /** Always in the same words, so that the points of one quantity stand on one chart. */
  quantity: name("Say what was compared with what, such as REF-S-01 at 1000 °C."),
  expected: figure,
  found: figure,
  /** Half-width of what still passes. */
  limit: z.number("Write the limit as a number.").positive("Larger than nought."),
  unit: z.enum(["°C", "µV", "Ω"], "Choose the unit."),
};

const annealCelsius = z
  .number("Write the temperature in °C.")
  .min(200, "At least 200 °C.")
  .max(1600, "At most 1600 °C.");

/** What a person may write into the logbook, each kind with its figures. */
export const EntryFigures = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("verification"),
    /** ISO/IEC 17025 6.4.4: the specified requirements it was held against. */
    against: name("Say what it was held against, such as its order or our requirement for it.", 300),
  }),
  z.strictObject({ kind: z.literal("intermediate-check"), ...checked }),
  z.strictObject({
    kind: z.literal("maintenance"),
    plan: z.enum(["planned", "unplanned"], "Say whether it was planned."),
  }),
  z.strictObject({
    kind: z.literal("damage"),
    /** The last day on which it is known to have been sound. */
    soundOn: z.iso.date("Write a day as 2026-03-31.").optional(),
  }),
  z.strictObject({ kind: z.literal("repair"), by: name("Say which workshop or firm did it.") }),
  z.strictObject({
    kind: z.literal("adjustment"),
    quantity: name("Say what was adjusted."),
    before: figure,
    after: figure,
    unit: name("Write the unit.", 20),
  }),
  z.strictObject({
    kind: z.literal("anneal"),
    method: z.enum(["furnace", "electrical"], "Choose how it was annealed."),
    celsius: annealCelsius,
    hours: z.number("Write the hours.").positive("More than nought.").max(1000),
    /** Held at a lower temperature afterwards, or cooled slowly through it. */
    thenCelsius: annealCelsius.optional(),
    thenHours: z.number("Write the hours.").positive("More than nought.").max(1000).optional(),
  }),
  z.strictObject({ kind: z.literal("check-after-anneal"), ...checked }),
  z.strictObject({ kind: z.literal("move"), to: name("Say where it is now.", 200) }),
  z.strictObject({ kind: z.literal("note") }),
]);
export type EntryFigures = z.output<typeof EntryFigures>;
export type EntryKind = EntryFigures["kind"] | "label";
export type CheckFigures = Extract<EntryFigures, { kind: "intermediate-check" | "check-after-anneal" }>;

/** Printed with every label; only the platform writes it. */
export const LabelFigures = z.strictObject({ kind: z.literal("label"), dueOn: z.iso.date().nullable() });

export const entryKinds = [
  "verification",
  "intermediate-check",
  "maintenance",
  "damage",
  "repair",
  "adjustment",
  "anneal",
  "check-after-anneal",
  "move",
  "note",
] as const satisfies readonly EntryFigures["kind"][];

export type EntryOutcome = "passed" | "failed" | "none";

/** A line of the logbook, read back. `id` rises in the order of writing. */
export type LogEntry = {
  readonly id: number;
  readonly kind: EntryKind;
  /** ISO day. */
  readonly happenedOn: string;
  readonly outcome: EntryOutcome;
  readonly summary: string;
  readonly figures: EntryFigures | z.output<typeof LabelFigures>;
};

export const isCheck = (entry: LogEntry): entry is LogEntry & { readonly figures: CheckFigures } =>
  entry.kind === "intermediate-check" || entry.kind === "check-after-anneal";

/** Stored figures read back; they were judged when they were written, so a misfit is a defect and throws. */
export const readEntryFigures = (stored: string): LogEntry["figures"] =>
  z.union([EntryFigures, LabelFigures]).parse(JSON.parse(stored));
