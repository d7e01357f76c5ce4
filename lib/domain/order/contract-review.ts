import type { TypeLetter } from "../evidence/schema";
import { ok, type Result, refuse } from "../refusal";
import type { DecisionRuleKind, TemperatureUnit, ToleranceChoice } from "./labels";
import { temperatureUnitLabels, toleranceLabels } from "./labels";
import type { LineMarks } from "./line-marks";
import { notDoneNotices, type PossiblePoint, waysOut } from "./not-done";
import type { LineOptions } from "./options";
import { type RuleSet, ruleSetLabels } from "./rule-set";
import type { Setpoint } from "./setpoint";
import { setpointTolerances } from "./setpoint-tolerances";
import { canOrderBecome, type OrderState } from "./transitions";
import { termsOfUseText, type UseTerms } from "./use-terms";

export type ReviewedOrder = {
  readonly state: OrderState;
  readonly decisionRule: DecisionRuleKind;
  readonly decisionRuleAgreedBy: string | null;
  /** YYYY-MM-DD */
  readonly decisionRuleAgreedOn: string | null;
  readonly ruleSet?: RuleSet;
  readonly lines: readonly {
    readonly position: number;
    readonly typeLetter: TypeLetter;
    readonly temperatureUnit: TemperatureUnit;
    readonly setpoints: readonly Setpoint[];
    readonly tolerance: ToleranceChoice;
    readonly ownLimit?: number | null;
    readonly useTerms?: UseTerms;
    readonly options?: LineOptions;
    readonly marks?: LineMarks;
    readonly quantity?: number;
  }[];
};

export type FurnaceRange = {
  readonly name: string;
  readonly minimumCelsius: number;
  readonly maximumCelsius: number;
};

/** What the laboratory has to do the work with: its furnaces, and what follows at each point from all that is in service. */
type ReviewMeans = {
  readonly furnaces: readonly FurnaceRange[];
  readonly points: readonly PossiblePoint[];
};

/** `field`: of the form, where it is missing. missing: the order is not complete; notice: it can be accepted once the customer has been told. */
export type ReviewFinding = {
  readonly kind: "missing" | "notice";
  readonly message: string;
  readonly field?: string;
};

const missing = (message: string, field: string): ReviewFinding => ({ kind: "missing", message, field });
/** Named as the form names it. */
const fieldOf = ({ position }: { readonly position: number }, name: string): string =>
  `lines.${position - 1}.${name}`;
const notice = (message: string): ReviewFinding => ({ kind: "notice", message });

const agreementFindings = (order: ReviewedOrder): readonly ReviewFinding[] => {
  const hasClass = order.lines.some((line) => line.tolerance !== "none");
  if (order.decisionRule === "none")
    return hasClass
      ? [
          notice(
            "A tolerance is named, but no statement of conformity will be made: no decision rule is agreed.",
          ),
        ]
      : [];
  // ISO/IEC 17025:2017, 7.1.3: specification and decision rule defined, communicated and agreed.
  return [
    ...(order.decisionRuleAgreedBy
      ? []
      : [
          missing(
            "The decision rule is not agreed: write who agreed to it for the customer.",
            "decisionRuleAgreedBy",
          ),
        ]),
    ...(order.decisionRuleAgreedOn
      ? []
      : [missing("The decision rule is not agreed: write the day it was agreed.", "decisionRuleAgreedOn")]),
  ];
};

/** By a provider or at the customer's site: our furnaces say nothing of it. */
const isElsewhere = ({ marks }: ReviewedOrder["lines"][number]): boolean =>
  marks !== undefined && (marks.providerId !== null || marks.performedAt === "customer-site");

/** Nobody is told of a point that no furnace reaches and then sold it: it is changed, or it leaves the house. */
const furnaceFinding = (
  line: ReviewedOrder["lines"][number],
  furnaces: readonly FurnaceRange[],
): readonly ReviewFinding[] => {
  if (isElsewhere(line)) return [];
  const beyond = line.setpoints.filter(
    ({ celsius }) =>
      !furnaces.some((furnace) => celsius >= furnace.minimumCelsius && celsius <= furnace.maximumCelsius),
  );
  if (beyond.length === 0) return [];
  const unit = temperatureUnitLabels[line.temperatureUnit];
  const points = beyond.map(({ typed }) => `${typed} ${unit}`).join(", ");
  const said = `Line ${line.position}: ${points} cannot be reached here`;
  // A laboratory that has written nothing down yet may have what it takes.
  if (furnaces.length === 0) return [notice(`${said}; no furnace is recorded yet.`)];
  const reach = furnaces.map((f) => `${f.minimumCelsius} to ${f.maximumCelsius} °C (${f.name})`).join(", ");
  return [missing(`${said}; the furnaces reach ${reach}. ${waysOut}`, fieldOf(line, "setpoints"))];
};

/** A correction is never carried beyond the lowest and highest setpoint; the gate of the run asks for it again. */
const rangeOfUseFinding = (line: ReviewedOrder["lines"][number]): readonly ReviewFinding[] => {
  const { useTerms, setpoints } = line;
  const [lowest, highest] = [setpoints[0]?.celsius, setpoints.at(-1)?.celsius];
  if (!useTerms || lowest === undefined || highest === undefined) return [];
  const { useFromCelsius, useToCelsius } = useTerms;
  if (useFromCelsius === null || useToCelsius === null) return [];
  return lowest <= useFromCelsius && highest >= useToCelsius
    ? []
    : [
        notice(
          `Line ${line.position}: the setpoints do not cover the range of use. ${termsOfUseText(useTerms, line.temperatureUnit)}`,
        ),
      ];
};

/** ISO/IEC 17025:2017, 7.1.1 c: the customer is told, and approves, before work leaves the house. */
const optionFindings = (line: ReviewedOrder["lines"][number]): readonly ReviewFinding[] => [
  ...(line.options?.correctionTable && line.setpoints.length < 2
    ? [
        missing(
          `Line ${line.position}: a table of corrections runs between setpoints; there is one alone.`,
          fieldOf(line, "setpoints"),
        ),
      ]
    : []),
  ...(line.marks && line.marks.providerId !== null
    ? [notice(`Line ${line.position} is subcontracted: the customer is told, and approves it.`)]
    : []),
  ...(line.marks?.performedAt === "customer-site"
    ? [
        notice(
          `Line ${line.position} is done at the customer’s site (${line.marks.siteAddress}): what is expected of the place is agreed beforehand.`,
        ),
      ]
    : []),
];

/** What a person must know who uses a class there, as that its limit is a guide only. */
const notedTolerances = (line: ReviewedOrder["lines"][number]): readonly ReviewFinding[] =>
  setpointTolerances(line)
    .filter((point) => point.state === "defined" && point.reason !== "")
    .map((point) =>
      notice(
        `Line ${line.position}: ${toleranceLabels[line.tolerance]} at ${point.setpoint} (${point.tolerance}): ${point.reason}.`,
      ),
    );

const lineFindings = (
  line: ReviewedOrder["lines"][number],
  furnaces: readonly FurnaceRange[],
): readonly ReviewFinding[] => {
  if (line.setpoints.length === 0)
    return [missing(`Line ${line.position} has no setpoints yet.`, fieldOf(line, "setpoints"))];
  const points = setpointTolerances(line);
  const undefinedAt = points.filter((point) => point.state === "not-defined");
  return [
    ...furnaceFinding(line, furnaces),
    ...rangeOfUseFinding(line),
    ...optionFindings(line),
    ...(undefinedAt.length === 0
      ? []
      : [
          notice(
            `Line ${line.position}: ${toleranceLabels[line.tolerance]} of type ${line.typeLetter} has no tolerance defined at ${undefinedAt.map((point) => point.setpoint).join(", ")}; nothing can be stated there.`,
          ),
        ]),
    ...notedTolerances(line),
  ];
};

/**
 * Of each roll both ends are reported: an odd number of pieces leaves one roll with one end, whatever comes. What is said
 * of both ends together stands on one certificate for them.
 */
const rollFindings = ({ ruleSet = "none", lines }: ReviewedOrder): readonly ReviewFinding[] =>
  ruleSet === "none"
    ? []
    : lines.flatMap(({ position, quantity = 0, options, marks }) => [
        // What a provider measures gets no certificate of ours.
        ...(quantity % 2 === 0 || (marks && marks.providerId !== null)
          ? []
          : [
              notice(
                `Line ${position}: under “${ruleSetLabels[ruleSet]}” both ends of each roll are measured, and ${quantity} ${quantity === 1 ? "sensor is" : "sensors are"} ordered: of one roll at least one end would come alone. No certificate is signed for it before the other end is here, or the customer agreed to one end.`,
              ),
            ]),
        ...(options && options.report !== "per-lot"
          ? [
              notice(
                `Line ${position}: average and spread of the two ends of a roll stand on one certificate for the lot. With one certificate for each sensor, as ordered, each states its own end alone.`,
              ),
            ]
          : []),
      ]);

/** Of what is found, what an offer says beside its own remarks on points, scope, rule and place. */
export const offeredFindings = (order: ReviewedOrder): readonly string[] =>
  [
    ...order.lines.filter((line) => !isElsewhere(line)).flatMap((line) => rangeOfUseFinding(line)),
    ...order.lines.flatMap((line) => notedTolerances(line)),
    ...rollFindings(order),
  ].map(({ message }) => message);

/** What a person who accepts the order must see first (ISO/IEC 17025:2017, 7.1.1 to 7.1.5). */
export const reviewOrder = (
  order: ReviewedOrder,
  furnaces: readonly FurnaceRange[],
): readonly ReviewFinding[] => [
  ...agreementFindings(order),
  ...order.lines.flatMap((line) => lineFindings(line, furnaces)),
  ...rollFindings(order),
];

type Review = {
  readonly order: ReviewedOrder;
  readonly means: ReviewMeans;
  readonly toldCustomer: boolean;
  readonly remedy: string;
  /** What the order was accepted with: no gap of today's, though told again. */
  readonly stands?: readonly ReviewFinding[];
};

/** Complete, and with nothing in it the customer has not heard of (7.1.4): at acceptance as at each later change. */
const decideReviewed = ({
  order,
  means,
  toldCustomer,
  remedy,
  stands = [],
}: Review): Result<{ readonly told: readonly string[] }> => {
  const findings = reviewOrder(order, means.furnaces);
  const gaps = findings.filter(
    ({ kind, message }) => kind === "missing" && !stands.some((one) => one.message === message),
  );
  if (gaps.length > 0)
    return refuse(
      "rule",
      `The order is not complete. ${gaps.map((gap) => gap.message).join(" ")} ${remedy}`,
      Object.fromEntries(gaps.flatMap(({ field, message }) => (field ? [[field, message]] : []))),
    );
  const told = [...findings.map((finding) => finding.message), ...notDoneNotices(means.points)];
  if (told.length > 0 && !toldCustomer)
    return refuse("rule", `The customer has to hear of this first: ${told.join(" ")} Nothing was changed.`, {
      toldCustomer: "Tick this once the customer has been told and agrees.",
    });
  return ok({ told });
};

/** Only a recorded order is accepted, once it holds the review. */
export const decideAcceptance = (
  order: ReviewedOrder,
  means: ReviewMeans,
  toldCustomer: boolean,
): Result<{ readonly told: readonly string[] }> =>
  canOrderBecome(order.state, "accepted")
    ? decideReviewed({ order, means, toldCustomer, remedy: "Amend it, then accept." })
    : refuse("wrong-state", `This order is ${order.state}; only a recorded order can be accepted.`);

/**
 * What an accepted order is to become holds the same review as its acceptance (7.1.6). What it was accepted with does not
 * stop another change: lines with their certificate cannot change any more, and a furnace may be gone since.
 */
export const decideChangedReview = (
  changed: ReviewedOrder,
  before: ReviewedOrder,
  means: ReviewMeans,
  toldCustomer: boolean,
): Result<{ readonly told: readonly string[] }> =>
  decideReviewed({
    order: changed,
    means,
    toldCustomer,
    remedy: "Nothing was changed; what you typed is still here.",
    stands: reviewOrder(before, means.furnaces),
  });
