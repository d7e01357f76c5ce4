import { z } from "zod";
import { defineEvent } from "../audit/define-event";

const run = z.string().min(1);
const celsius = z.number();
const hex = z.string().regex(/^[0-9a-f]{64}$/);
const degrees = (value: number): string => `${Number(value.toFixed(2))} °C`;
const count = (n: number, one: string): string => `${n} ${one}${n === 1 ? "" : "s"}`;

/** Facts about this noun that the audit log can hold; gathered in `domain/audit/events`. */
export const runEvents = {
  created: defineEvent({
    action: "run.created",
    entityKind: "run",
    payload: z.strictObject({
      run,
      configuration: z.string(),
      procedure: z.string(),
      sensors: z.array(z.string()),
      references: z.array(z.string()),
      setpointsCelsius: z.array(celsius),
    }),
    sentence: (p) =>
      `created run ${p.run} with ${count(p.sensors.length, "sensor")} (${p.sensors.join(", ")}) at ${p.setpointsCelsius.map(degrees).join(", ")}`,
  }),
  tipCheckRecorded: defineEvent({
    action: "run.tip-check-recorded",
    entityKind: "run",
    payload: z.strictObject({
      run,
      place: z.string(),
      channel: z.string(),
      riseMicrovolt: z.number(),
      onlyThisChannel: z.boolean(),
      passed: z.boolean(),
    }),
    sentence: (p) =>
      `warmed the tip in place ${p.place} of run ${p.run}: ${p.riseMicrovolt} µV on channel ${p.channel}${p.onlyThisChannel ? "" : ", other channels moved too"}${p.passed ? "" : " (not passed)"}`,
  }),
  roomRecorded: defineEvent({
    action: "run.room-recorded",
    entityKind: "run",
    payload: z.strictObject({
      run,
      moment: z.enum(["start", "end"]),
      instrument: z.string(),
      celsius,
      percent: z.number().nullable(),
      outside: z.string(),
      /** Said where the same moment was recorded before. */
      reason: z.string().min(1).optional(),
    }),
    sentence: (p) =>
      `recorded the room at the ${p.moment} of run ${p.run} by ${p.instrument}: ${degrees(p.celsius)}${p.percent === null ? "" : `, ${p.percent} % relative humidity`}${p.outside ? ` (${p.outside})` : ""}${p.reason ? `, again: ${p.reason}` : ""}`,
  }),
  readingsReceived: defineEvent({
    action: "run.readings-received",
    entityKind: "run",
    payload: z.strictObject({
      run,
      block: z.number().int(),
      source: z.enum(["file", "typed"]),
      fileName: z.string().nullable(),
      readings: z.number().int(),
      sha256: hex,
      root: hex,
    }),
    sentence: (p) =>
      p.source === "typed"
        ? `typed ${count(p.readings, "reading")} of run ${p.run} twice (block ${p.block})`
        : `uploaded ${p.fileName ? `“${p.fileName}”` : "a readings file"} with ${count(p.readings, "reading")} to run ${p.run} (block ${p.block})`,
  }),
  windowAccepted: defineEvent({
    action: "run.window-accepted",
    entityKind: "run",
    payload: z.strictObject({
      run,
      setpointCelsius: celsius,
      fromSeconds: z.number(),
      toSeconds: z.number(),
      origin: z.enum(["proposed", "moved"]),
      meets: z.boolean(),
      reason: z.string(),
    }),
    sentence: (p) =>
      `${p.origin === "proposed" ? "accepted the proposed" : "moved and accepted the"} stability window at ${degrees(p.setpointCelsius)} in run ${p.run}${p.meets ? "" : `, though it does not meet the criterion: ${p.reason}`}`,
  }),
  sensorStated: defineEvent({
    action: "run.sensor-stated",
    entityKind: "run",
    payload: z.strictObject({
      run,
      sensor: z.string(),
      setpointCelsius: celsius,
      state: z.enum(["measured", "invalid", "not-reached"]),
      reason: z.string(),
    }),
    sentence: (p) =>
      `stated sensor ${p.sensor} at ${degrees(p.setpointCelsius)} in run ${p.run} as ${p.state.replace("-", " ")}${p.reason ? `: ${p.reason}` : ""}`,
  }),
  evaluated: defineEvent({
    action: "run.evaluated",
    entityKind: "run",
    payload: z.strictObject({
      run,
      evaluation: z.number().int(),
      engineVersion: z.string(),
      inputsDigest: hex,
      results: z.number().int(),
      findings: z.number().int(),
    }),
    sentence: (p) =>
      `evaluated run ${p.run} (evaluation ${p.evaluation}): ${count(p.results, "result")}, ${count(p.findings, "finding")}`,
  }),
  submitted: defineEvent({
    action: "run.submitted",
    entityKind: "run",
    payload: z.strictObject({ run, evaluation: z.number().int(), tipCheckReason: z.string() }),
    sentence: (p) =>
      `submitted run ${p.run} (evaluation ${p.evaluation}) for review${p.tipCheckReason ? `; tips not all checked: ${p.tipCheckReason}` : ""}`,
  }),
  evidenceExported: defineEvent({
    action: "run.evidence-exported",
    entityKind: "run",
    payload: z.strictObject({ run, readings: z.number().int(), sha256: hex }),
    sentence: (p) => `exported the evidence of run ${p.run} with ${count(p.readings, "reading")}`,
  }),
} as const;
