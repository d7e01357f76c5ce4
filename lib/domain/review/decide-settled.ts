import { ok, type Result, refuse } from "../refusal";

/** A remark with what was said to it, as far as a sign-off must know. */
export type RemarkStanding = {
  /** Tag; null = of the whole run. */
  readonly sensor: string | null;
  /** "1000 °C"; null = of the sensor. */
  readonly setpoint: string | null;
  readonly text: string;
  readonly isSettled: boolean;
};

const shown = 80;

const subjectOf = ({ sensor, setpoint }: RemarkStanding): string =>
  sensor === null ? "the run" : setpoint === null ? sensor : `${sensor} at ${setpoint}`;

/** A remark nobody has settled stops the sign-off of its sensor; one of the whole run, of every sensor. */
export const decideSettled = (
  remarks: readonly RemarkStanding[],
  /** Tags of the sensors to be signed for. */
  sensors: readonly string[],
): Result<null> => {
  const open = remarks.filter(
    ({ isSettled, sensor }) => !isSettled && (sensor === null || sensors.includes(sensor)),
  );
  const [first] = open;
  if (!first) return ok(null);
  const text = first.text.length > shown ? `${first.text.slice(0, shown)}…` : first.text;
  const more = open.length > 1 ? `, and ${open.length - 1} more` : "";
  return refuse(
    "rule",
    `A remark on ${subjectOf(first)} is not settled: “${text}”${more}. Nothing was signed off; answer it where it stands and settle it.`,
  );
};
