import type { ServicePolicy } from "./service-policy";
import type { EquipmentState } from "./types";

/** Work that comes back: every so many days since it was last done, or since the equipment was first verified. */
export type Recurring = {
  readonly everyDays: number | null;
  /** ISO day; null = never. */
  readonly lastOn: string | null;
};

/** What the logbook says of a piece of equipment on a day, as far as it decides whether it may be used. */
export type ServiceStanding = {
  /** The day from which its intervals count where the work was never done; null = not known. */
  readonly since: string | null;
  readonly check: Recurring;
  readonly maintenance: Recurring;
  /** What the chart of its checks says of the last one, in words; null = nothing. */
  readonly chartBreach: string | null;
  /** The day of an anneal that no passed check has followed. */
  readonly uncheckedAnneal: string | null;
};

export type ServiceGround =
  | "suspect"
  | "not-in-service"
  | "check-overdue"
  | "maintenance-overdue"
  | "chart-breached"
  | "anneal-unchecked";

export type ServiceFinding = {
  readonly ground: ServiceGround;
  readonly message: string;
  /** It cannot be chosen; otherwise whoever chooses it is warned. */
  readonly blocks: boolean;
};

export type ServiceFacts = {
  readonly tag: string;
  readonly state: EquipmentState;
  readonly standing: ServiceStanding;
};

const dayMilliseconds = 86_400_000;

/** The last day on which recurring work is still in time; null where none is planned. */
export const dueDay = ({ everyDays, lastOn }: Recurring, since: string | null): string | null => {
  if (everyDays === null) return null;
  const from = lastOn ?? since;
  // Planned, and nobody knows since when: it is due at once.
  if (from === null) return "0001-01-01";
  return new Date(Date.parse(`${from}T00:00:00Z`) + everyDays * dayMilliseconds).toISOString().slice(0, 10);
};

const overdue = (work: Recurring, since: string | null, day: string): string | null => {
  const due = dueDay(work, since);
  if (due === null || due >= day) return null;
  return work.lastOn === null ? "was never done" : `was due on ${due}`;
};

const remedies: Readonly<Record<Exclude<EquipmentState, "in-service">, string>> = {
  received: "verify it and put it into service first",
  verified: "put it into service first",
  suspect: "verify it anew and put it back in service first",
  "under-repair": "verify it anew and put it back in service first",
  retired: "record another",
};

/** Whatever is not in service cannot be used: no matter of policy. */
export const outOfService = ({ tag, state }: Pick<ServiceFacts, "tag" | "state">): ServiceFinding | null =>
  state === "in-service"
    ? null
    : {
        ground: state === "suspect" ? "suspect" : "not-in-service",
        message: `${tag} is ${state.replace("-", " ")}. Choose another, or ${remedies[state]}.`,
        blocks: true,
      };

/** Everything against using it on a day, what blocks it first. Calibration is judged elsewhere. */
export const serviceFindings = (
  { tag, state, standing }: ServiceFacts,
  policy: ServicePolicy,
  day: string,
): readonly ServiceFinding[] => {
  const out = outOfService({ tag, state });
  if (out) return [out];
  const found: ServiceFinding[] = [];
  const say = (ground: ServiceGround, rule: ServicePolicy[keyof ServicePolicy], message: string) =>
    found.push({ ground, message, blocks: rule === "block" });
  const check = overdue(standing.check, standing.since, day);
  if (check)
    say(
      "check-overdue",
      policy.overdueCheck,
      `The intermediate check of ${tag} ${check}. Record it in its logbook, or choose another.`,
    );
  const maintenance = overdue(standing.maintenance, standing.since, day);
  if (maintenance)
    say(
      "maintenance-overdue",
      policy.overdueMaintenance,
      `The maintenance of ${tag} ${maintenance}. Record it in its logbook, or choose another.`,
    );
  if (standing.chartBreach !== null)
    say(
      "chart-breached",
      policy.chartBreach,
      `The chart of ${tag} is out of control: ${standing.chartBreach}. Find out why and check it again, or choose another.`,
    );
  if (standing.uncheckedAnneal !== null)
    say(
      "anneal-unchecked",
      policy.uncheckedAnneal,
      `${tag} was annealed on ${standing.uncheckedAnneal} and no check has passed since. Check it, or choose another.`,
    );
  return found.toSorted((one, other) => Number(other.blocks) - Number(one.blocks));
};

/** Why it cannot be chosen on a day as far as its state and its logbook go, or null. */
export const serviceProblem = (...asked: Parameters<typeof serviceFindings>): ServiceFinding | null =>
  serviceFindings(...asked).find(({ blocks }) => blocks) ?? null;
