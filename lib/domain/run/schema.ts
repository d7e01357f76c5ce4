import { z } from "zod";
import { seenWhole } from "../typed-text";
import { roomMoments } from "./room-figures";

const runNumber = z.string().min(1).max(40);
const version = z.coerce.number("The form has lost its version. Reload the page.").int().min(1);
/** A number a form left empty or unreadable arrives as NaN, which zod refuses with this sentence. */
const figure = (message: string) => z.number(message);
const name = (message: string) =>
  z.string(message).trim().min(1, message).max(40, "At most 40 characters.").superRefine(seenWhole);

/** One row of the furnace load as the technician fills it in. */
export const PlaceInput = z.strictObject({
  place: name("Name the place, such as 1 or centre."),
  item: z.discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("sensor"), tag: z.string().min(1) }),
    z.strictObject({ kind: z.literal("reference"), tag: z.string().min(1) }),
    z.strictObject({ kind: z.literal("shorted") }),
  ]),
  channel: name("Write the scanner's channel."),
  junctionId: z.uuid("Choose the reference junction."),
  /** Left out: what the junction's certificate says. */
  junctionCelsius: figure("Write the junction's temperature, such as 0.")
    .min(-5, "A reference junction stands between -5 and 60 °C.")
    .max(60, "A reference junction stands between -5 and 60 °C.")
    .optional(),
  /** A lead or compensating cable of the laboratory's between sensor and junction; left out: the sensor's own. */
  leadId: z.uuid("Choose the lead, or none.").optional(),
  immersionMillimetre: figure("Write the immersion in mm, such as 380.")
    .positive("The immersion is larger than nought.")
    .max(3000, "No furnace is that long.")
    .optional(),
});
export type PlaceInput = z.output<typeof PlaceInput>;

export const CreateRunInput = z.strictObject({
  configurationId: z.uuid("Choose the furnace configuration."),
  voltmeterId: z.uuid("Choose the voltmeter."),
  scannerId: z.uuid("Choose the scanner."),
  /** Its key; the run follows the revision that is current at the moment. */
  procedure: z
    .string("Choose the procedure.")
    .min(1, "Choose the procedure.")
    .max(60)
    .default("tube-furnace"),
  /** Of those the sensors are ordered at; none given: all of them. */
  setpointsCelsius: z.array(figure("Choose setpoints.")).max(60).default([]),
  places: z.array(PlaceInput).min(2, "Load at least one sensor and one reference.").max(80),
  note: z.string().trim().max(2000, "At most 2000 characters.").superRefine(seenWhole).default(""),
});
export type CreateRunInput = z.output<typeof CreateRunInput>;

export const RecordTipCheckInput = z.strictObject({
  run: runNumber,
  place: z.string().min(1),
  riseMicrovolt: figure("Write the rise in µV, such as 42.").min(-100_000).max(100_000),
  onlyThisChannel: z.boolean(),
});

export const ReceiveReadingsInput = z.strictObject({
  run: runNumber,
  fileName: z.string().max(200).nullable(),
  bytes: z.custom<Uint8Array>((value) => value instanceof Uint8Array, "The file did not arrive."),
  /** For a first file in seconds: when its zero was, ISO 8601. */
  startedAt: z.iso
    .datetime({ offset: true, error: "Write the moment like 2026-03-02T09:30:00+01:00." })
    .optional(),
});

export const TypedReading = z.strictObject({
  seconds: figure("Write the seconds, such as 30."),
  channel: z.string().trim().min(1, "Choose the channel."),
  microvolts: figure("Write the emf in µV, sign included, such as -10503."),
  polarity: z.union([z.literal(1), z.literal(-1)], "Choose + or −."),
});
export type TypedReading = z.output<typeof TypedReading>;

export const TypeReadingsInput = z.strictObject({
  run: runNumber,
  startedAt: z.iso
    .datetime({ offset: true, error: "Write the moment like 2026-03-02T09:30:00+01:00." })
    .optional(),
  first: z
    .array(TypedReading)
    .min(1, "Type at least one reading.")
    .max(500, "At most 500 readings at a time."),
  second: z.array(TypedReading).max(500, "At most 500 readings at a time."),
});

export const AcceptWindowInput = z
  .strictObject({
    run: runNumber,
    setpoint: z.number().int().min(1),
    fromSeconds: figure("Write where the window begins, in seconds."),
    toSeconds: figure("Write where the window ends, in seconds."),
    /** Why a window is accepted that does not meet the criterion. */
    reason: z.string().trim().max(600, "At most 600 characters.").superRefine(seenWhole).default(""),
    /** The readings that were on the screen (hex); left out by callers who have just loaded them. */
    blocksDigest: z
      .string()
      .regex(/^[0-9a-f]{64}$/)
      .optional(),
  })
  .refine(({ fromSeconds, toSeconds }) => toSeconds > fromSeconds, {
    path: ["toSeconds"],
    message: "The end has to lie after the beginning. Write a later end, or an earlier beginning.",
  });

export const StateSensorSetpointInput = z.strictObject({
  run: runNumber,
  sensor: z.string().min(1),
  setpoint: z.number().int().min(1),
  state: z.enum(["measured", "invalid", "not-reached"], "Choose the state."),
  reason: z.string().trim().max(600, "At most 600 characters.").superRefine(seenWhole).default(""),
});

/** The room as the instrument shows it: its correction is added by the platform. */
export const RecordRoomInput = z.strictObject({
  run: runNumber,
  moment: z.enum(roomMoments, "Choose whether it is the start or the end."),
  instrument: z.string("Choose the instrument.").min(1, "Choose the instrument."),
  celsius: figure("Write °C as the instrument shows it, such as 23.4.")
    .min(0, "A room in which people work lies between 0 and 50 °C.")
    .max(50, "A room in which people work lies between 0 and 50 °C."),
  percent: figure("Write per cent relative humidity, such as 41.")
    .min(0, "Relative humidity lies between 0 and 100 %.")
    .max(100, "Relative humidity lies between 0 and 100 %.")
    .optional(),
  /** Asked for where the same moment was recorded before. */
  reason: z.string().trim().max(600, "At most 600 characters.").superRefine(seenWhole).default(""),
});
export type RecordRoomInput = z.output<typeof RecordRoomInput>;

export const EvaluateRunInput = z.strictObject({ run: runNumber });

export const SubmitRunInput = z.strictObject({
  run: runNumber,
  version,
  /** Asked for when not every tip was warmed: why, for the signatory to weigh. */
  tipCheckReason: z.string().trim().max(600, "At most 600 characters.").superRefine(seenWhole).default(""),
});

export const ExportEvidenceInput = z.strictObject({ run: runNumber });
