import type { DecisionRule, Evidence, TypeLetter } from "../evidence/schema";
import { expectedWithin, type SetpointScope, setpointScope } from "./against-scope";
import type { AskedTolerance } from "./asked-tolerance";
import type { FurnaceRange } from "./contract-review";
import { lineDecidability, type PointDecidability } from "./decidability";
import { type ExpectedUncertainty, expectedUncertainty } from "./expected-uncertainty";
import type { Bench } from "./ideal-run";
import type { Protection } from "./labels";
import type { LineMarks } from "./line-marks";
import { noFurnaceReaches } from "./not-done";
import type { Setpoint } from "./setpoint";

/** What the laboratory has today, and what it may claim with it. */
export type CapabilitySources = {
  /** Configurations with an accepted characterisation in date, and standards with a valid calibration. */
  readonly benches: readonly Bench[];
  readonly furnaces: readonly FurnaceRange[];
  readonly scope: Evidence["scope"];
};

/** `elsewhere`: not by these furnaces and standards, so nothing follows from them. */
export type CanBeDone = "yes" | "no" | "elsewhere";

export type CapabilityAnswer = PointDecidability & {
  readonly scope: SetpointScope;
  readonly can: CanBeDone;
  /** Why not, or where; "" where it can be done here. */
  readonly why: string;
};

export type CapabilityLine = AskedTolerance & {
  readonly position: number;
  readonly typeLetter: TypeLetter;
  readonly protection: Protection;
  readonly setpoints: readonly Setpoint[];
  readonly marks?: Pick<LineMarks, "performedAt" | "providerId">;
};

const byProvider = "Subcontracted, so what the provider can do counts and not the figures here.";
const isSubcontracted = ({ marks }: CapabilityLine): boolean =>
  marks !== undefined && marks.providerId !== null;

const possibilityOf = (
  line: CapabilityLine,
  celsius: number,
  expected: ExpectedUncertainty,
  furnaces: readonly FurnaceRange[],
): Pick<CapabilityAnswer, "can" | "why"> => {
  if (isSubcontracted(line)) return { can: "elsewhere", why: byProvider };
  if (line.marks?.performedAt === "customer-site")
    return {
      can: "elsewhere",
      why: "At the customer’s site: the figures here are those of the laboratory’s own furnaces.",
    };
  if (!furnaces.some((one) => celsius >= one.minimumCelsius && celsius <= one.maximumCelsius))
    return { can: "no", why: noFurnaceReaches };
  return expected.kind === "unknown" ? { can: "no", why: expected.reason } : { can: "yes", why: "" };
};

/**
 * What the platform answers of an order before it is accepted (ISO/IEC 17025:2017, 7.1.1 b and d, 7.1.3): at each setpoint
 * whether it can be done, inside the scope or not, with what U, and whether class and rule as asked could be decided.
 */
export const orderCapability = (
  lines: readonly CapabilityLine[],
  rule: DecisionRule,
  { benches, furnaces, scope }: CapabilitySources,
): readonly CapabilityAnswer[] =>
  lines.flatMap((line) => {
    const measured = new Map(
      line.setpoints.map(({ celsius }) => [celsius, expectedUncertainty(benches, { ...line, celsius })]),
    );
    const at = (celsius: number) => measured.get(celsius) as ExpectedUncertainty;
    // Neither our scope nor our U belongs to what another laboratory measures and signs.
    const isAway = isSubcontracted(line);
    const reported = (celsius: number): ExpectedUncertainty =>
      isAway
        ? { kind: "unknown", reason: byProvider }
        : expectedWithin(scope, { ...line, celsius }, at(celsius));
    return lineDecidability(line, rule, reported).map((point, index) => {
      const { celsius } = line.setpoints[index] as Setpoint;
      return {
        ...point,
        scope: setpointScope(isAway ? undefined : scope, { ...line, celsius }),
        ...possibilityOf(line, celsius, at(celsius), furnaces),
      };
    });
  });

/** The points of which the customer should hear before the order is accepted: nothing could pass there. */
export const undecidablePoints = (answers: readonly CapabilityAnswer[]): readonly string[] =>
  answers.flatMap(({ state, position, setpoint }) =>
    state === "not-decidable" ? [`Line ${position}: ${setpoint}`] : [],
  );

export const outsideScopePoints = (answers: readonly CapabilityAnswer[]): readonly string[] =>
  answers.flatMap(({ scope, position, setpoint }) =>
    scope.state === "outside" ? [`Line ${position}: ${setpoint}`] : [],
  );

/** "5 of 6 points can be done; 1 outside the scope; 2 not decidable." */
export const capabilitySummary = (answers: readonly CapabilityAnswer[]): string => {
  if (answers.length === 0) return "";
  const count = (of: (answer: CapabilityAnswer) => boolean): number => answers.filter(of).length;
  const outside = count(({ scope }) => scope.state === "outside");
  const undecidable = count(({ state }) => state === "not-decidable");
  const elsewhere = count(({ can }) => can === "elsewhere");
  return `${[
    `${count(({ can }) => can === "yes")} of ${answers.length} point${answers.length === 1 ? "" : "s"} can be done here`,
    ...(elsewhere > 0 ? [`${elsewhere} elsewhere`] : []),
    ...(outside > 0 ? [`${outside} outside the scope`] : []),
    ...(undecidable > 0 ? [`${undecidable} not decidable`] : []),
  ].join("; ")}.`;
};

/** Of an order that is still being typed. */
export type TypedCapability = {
  readonly answers: readonly CapabilityAnswer[];
  readonly summary: string;
};
