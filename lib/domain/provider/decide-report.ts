import { isSameSetpoint } from "../parts/same-setpoint";
import { ok, type Result, refuse } from "../refusal";
import type { ReportResults } from "./report-results";
import type { RecordReportInput } from "./report-schema";

export type ReportDecision = "accepted" | "rejected" | null;

type Recording = {
  readonly sensor: string;
  readonly state: string;
  /** null: its line is done here. */
  readonly provider: string | null;
  /** On the day of the certificate, and not suspended since. */
  readonly isApproved: boolean;
  /** By the custody log. */
  readonly wasSent: boolean;
  /** What was decided on each earlier record, the oldest first; null: nothing yet. */
  readonly earlier: readonly ReportDecision[];
  readonly orderedCelsius: readonly number[];
  readonly isPdf: boolean;
  readonly today: string;
  /** Taken in on, YYYY-MM-DD; null: not known. When it went to them is kept as it was recorded, which may be later. */
  readonly takenInOn: string | null;
};

const kept = "Nothing was stored; what you typed is still here.";

const notNow = (facts: Recording): Result<never> | null => {
  const { sensor, provider } = facts;
  if (provider === null)
    return refuse(
      "rule",
      `The line of ${sensor} is done here: no provider measures it. Change the order first. ${kept}`,
    );
  if (facts.earlier.at(-1) === null)
    return refuse(
      "wrong-state",
      `A record of ${sensor} waits for its second person. Have it decided first. ${kept}`,
    );
  if (!["received", "issued", "collected"].includes(facts.state))
    return refuse("wrong-state", `${sensor} is in a run here. Take it out of the run first. ${kept}`);
  if (!facts.wasSent)
    return refuse(
      "rule",
      `By its custody log ${sensor} never went to ${provider}. Record first that it was sent there. ${kept}`,
    );
  return null;
};

const stated = (input: RecordReportInput): RecordReportInput["results"] =>
  input.results.filter(({ value }) => value !== "");

/** A certificate of this calibration is not older than the sensor's stay here. */
const dayProblem = ({ sensor, today, takenInOn }: Recording, issuedOn: string): string | null => {
  if (issuedOn > today) return `${issuedOn} has not come yet: today is ${today}.`;
  return takenInOn !== null && issuedOn < takenInOn
    ? `On ${issuedOn} ${sensor} was not here: it was taken in on ${takenInOn}. Write the day their certificate was issued.`
    : null;
};

/** A deviation larger than this is a slip of the pen or of the unit: common practice, no source. */
const believable = (celsius: number): number => Math.max(50, 0.1 * Math.abs(celsius));

const valueProblem = (unit: RecordReportInput["unit"], row: RecordReportInput["results"][number]) => {
  const limit = believable(Number(row.nominalCelsius));
  return unit === "celsius" && row.value !== "" && Math.abs(Number(row.value)) > limit
    ? `A deviation of ${row.value} °C at ${row.nominalCelsius} °C is more than ${limit} °C: check the figure, and the unit.`
    : null;
};

const fieldsOf = (facts: Recording, input: RecordReportInput): Record<string, string> => {
  const fields: Record<string, string> = {};
  const day = dayProblem(facts, input.issuedOn);
  if (day !== null) fields.issuedOn = day;
  else if (!facts.isApproved)
    fields.issuedOn = `${facts.provider} was not approved on that day, or is suspended. Have it approved first (Providers).`;
  if (facts.earlier.length > 0 && input.correction === "")
    fields.correction = "It was recorded before: say why it is recorded once more.";
  if (facts.earlier.length === 0 && input.correction !== "")
    fields.correction = "It is the first record: there is nothing to correct.";
  if (!facts.isPdf) fields.document = "This is no PDF: choose the certificate's file.";
  if (stated(input).length === 0)
    fields["results.0.value"] = "Write the result at one setpoint at least, as the certificate states it.";
  for (const [index, row] of input.results.entries()) {
    const { orderedCelsius } = row;
    const problem = valueProblem(input.unit, row);
    if (problem !== null) fields[`results.${index}.value`] = problem;
    const isFirst = input.results.findIndex((one) => isSameSetpoint(one.orderedCelsius, orderedCelsius));
    if (!facts.orderedCelsius.some((one) => isSameSetpoint(one, orderedCelsius)) || isFirst !== index)
      fields[`results.${index}.value`] = "This is no setpoint of the order. Reload the page.";
  }
  return fields;
};

/** Whether a provider's certificate may be recorded for this sensor, and what is kept of its figures. */
export const decideRecordReport = (facts: Recording, input: RecordReportInput): Result<ReportResults> => {
  const why = notNow(facts);
  if (why) return why;
  const fields = fieldsOf(facts, input);
  if (Object.keys(fields).length > 0) return refuse("invalid", kept, fields);
  return ok({ unit: input.unit, points: stated(input).map((row) => ({ ...row })) });
};

type Deciding = {
  readonly sensor: string;
  readonly personId: string;
  readonly recordedById: string;
  readonly standing: ReportDecision;
  readonly decision: "accepted" | "rejected";
  readonly reason: string;
  /** Its line still goes to the provider it was recorded of. */
  readonly isStillTheirs: boolean;
};

/** Held against the certificate by another person than recorded it; once. */
export const decideReportDecision = (facts: Deciding): Result<"accepted" | "rejected"> => {
  if (facts.standing !== null)
    return refuse("wrong-state", `It was ${facts.standing} already. Nothing was changed.`);
  if (facts.recordedById === facts.personId)
    return refuse(
      "rule",
      "You recorded this certificate yourself. Another person has to hold the record against it; nothing was changed.",
    );
  if (facts.decision === "rejected")
    return facts.reason === ""
      ? refuse("invalid", "Nothing was decided.", { reason: "Say what does not agree with the certificate." })
      : ok("rejected");
  return facts.isStillTheirs
    ? ok("accepted")
    : refuse(
        "rule",
        `The line of ${facts.sensor} does not go to this provider any more. Reject the record, or change the order back. Nothing was changed.`,
      );
};
