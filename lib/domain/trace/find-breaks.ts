import { type Chain, type ChainEdge, type ChainNode, chainEnds, keyOf } from "./chain";

export type BreakCode =
  | "no-certificate"
  | "not-in-date"
  | "gap-in-time"
  | "no-uncertainty"
  | "smaller-than-parent"
  | "end-not-reached"
  | "not-characterised"
  | "circle";

/** Where the chain does not hold, said in words: the page draws it, the assessor reads it. */
export type ChainBreak = {
  readonly code: BreakCode;
  /** The node it is found at. */
  readonly key: string;
  readonly title: string;
  readonly text: string;
};

export type Indexed = {
  readonly nodes: ReadonlyMap<string, ChainNode>;
  readonly beneath: ReadonlyMap<string, readonly ChainEdge[]>;
};

export const indexChain = ({ nodes, edges }: Chain): Indexed => {
  const beneath = new Map<string, ChainEdge[]>();
  for (const edge of edges) beneath.set(edge.from, [...(beneath.get(edge.from) ?? []), edge]);
  return { nodes: new Map(nodes.map((node) => [keyOf(node), node])), beneath };
};

/** The days a step was used on: those of the run above it, or that of the calibration made with it. */
type Days = { readonly from: string; readonly to: string };

type Step = { readonly upper: ChainNode; readonly lower: ChainNode; readonly edge: ChainEdge };

const broken = (code: BreakCode, at: ChainNode, text: string): ChainBreak => ({
  code,
  key: keyOf(at),
  title: at.title,
  text,
});

/** What stands between a run and a standard: in date on the days of the run, and with a U. */
const breaksOfUse = ({ lower, edge }: Step, days: Days | null): readonly ChainBreak[] => {
  if (edge.certificate === "")
    return [
      broken(
        "no-certificate",
        lower,
        "no calibration certificate; the effect is bounded by limits in the budget",
      ),
    ];
  const isInDate =
    days === null ||
    ((edge.performedOn === null || edge.performedOn <= days.from) &&
      (edge.validUntil === null || days.to <= edge.validUntil));
  return [
    ...(isInDate || days === null
      ? []
      : [
          broken(
            "not-in-date",
            lower,
            `calibration ${edge.certificate} (${edge.performedOn ?? "?"} to ${edge.validUntil ?? "?"}) not in date when it was used, ${days.from} to ${days.to}`,
          ),
        ]),
    ...(edge.expanded === null
      ? [
          broken(
            "no-uncertainty",
            lower,
            `certificate ${edge.certificate} states no uncertainty for what it was used for`,
          ),
        ]
      : []),
  ];
};

const standardUncertainty = ({ expanded, coverageFactor }: ChainEdge): number | null =>
  expanded === null ? null : expanded / (coverageFactor ?? 2);

/**
 * An institute's and an accredited laboratory's certificate: its U covers what lies behind it, and how it does was
 * judged by others (ILAC-P10:07/2020, 2, routes 1 and 2). Behind any other, each step states its own.
 */
const coveringRoutes: readonly string[] = ["nmi", "accredited"];

/** A step behind a calibration: there before it was made, still good when it was made, with a U no larger. */
const breaksOfParent = ({ upper, lower, edge }: Step, above: ChainEdge | null): readonly ChainBreak[] => {
  const madeOn = above?.performedOn ?? null;
  const used = madeOn === null ? null : `${upper.title} was made on ${madeOn}`;
  const isCovered =
    lower.kind === "si" || lower.facts.byRoute === true || coveringRoutes.includes(above?.route ?? "");
  const own = above ? standardUncertainty(above) : null;
  const parent = standardUncertainty(edge);
  return [
    ...(used && edge.performedOn !== null && madeOn !== null && edge.performedOn > madeOn
      ? [broken("gap-in-time", lower, `${used}, before this was calibrated (${edge.performedOn})`)]
      : []),
    ...(used && edge.validUntil !== null && madeOn !== null && edge.validUntil < madeOn
      ? [broken("gap-in-time", lower, `${used}, after this had run out (${edge.validUntil})`)]
      : []),
    ...(edge.expanded === null && !isCovered
      ? [broken("no-uncertainty", lower, "no uncertainty is stated for this step")]
      : []),
    ...(own !== null && parent !== null && above?.unit === edge.unit && parent > own
      ? [
          broken(
            "smaller-than-parent",
            upper,
            `states less uncertainty than ${lower.title}, which it stands on`,
          ),
        ]
      : []),
  ];
};

const breaksOfEnd = (
  node: ChainNode,
  edges: readonly ChainEdge[],
  above: ChainEdge | null,
): readonly ChainBreak[] => {
  if (edges.length > 0 || chainEnds.includes(node.kind)) return [];
  if (node.kind === "standard" && above === null)
    return [
      broken("no-certificate", node, "no calibration was accepted and in force on the day asked about"),
    ];
  // Said already, and better, where it is used without a certificate.
  if (above !== null && above.certificate === "" && !["parent", "route"].includes(above.role)) return [];
  return [
    broken(
      "end-not-reached",
      node,
      "the chain ends here, before the SI, a fixed point or a national standard",
    ),
  ];
};

const breaksOfFurnace = (node: ChainNode): readonly ChainBreak[] => {
  const { performedTo, characterisedUntil, characterisedOn, performedFrom } = node.facts;
  if (node.kind !== "run" || !performedTo || !performedFrom) return [];
  const isLate = characterisedUntil !== undefined && characterisedUntil < performedTo;
  const isEarly = characterisedOn !== undefined && characterisedOn > performedFrom;
  return isLate || isEarly
    ? [
        broken(
          "not-characterised",
          node,
          `the furnace's characterisation (${characterisedOn ?? "?"} to ${characterisedUntil ?? "?"}) was not in date on the days of the run`,
        ),
      ]
    : [];
};

const daysOf = (node: ChainNode): Days | null =>
  node.facts.performedFrom && node.facts.performedTo
    ? { from: node.facts.performedFrom, to: node.facts.performedTo }
    : null;

/**
 * Every place where a chain does not hold, from the things at its top. `on`: the day a standard at the top is asked
 * about; what stands above a run or a result has its own days.
 */
export const findBreaks = (
  chain: Chain,
  tops: readonly string[],
  on: string | null = null,
): readonly ChainBreak[] => {
  const { nodes, beneath } = indexChain(chain);
  const found: ChainBreak[] = [];
  const seen = new Set<string>();
  const visit = (key: string, above: ChainEdge | null, path: readonly string[]): void => {
    const node = nodes.get(key);
    if (!node) return;
    if (path.includes(key)) {
      found.push(broken("circle", node, "stands on itself: this is no chain"));
      return;
    }
    const edges = beneath.get(key) ?? [];
    found.push(...breaksOfEnd(node, edges, above), ...breaksOfFurnace(node));
    // Judged once for each way into it, followed once.
    const isNew = !seen.has(key);
    seen.add(key);
    for (const edge of edges) {
      const lower = nodes.get(edge.to);
      if (!lower) continue;
      const step = { upper: node, lower, edge };
      if (node.kind === "calibration")
        found.push(...(lower.kind === "result" ? [] : breaksOfParent(step, above)));
      else if (lower.kind === "standard" && edge.role !== "parent")
        found.push(...breaksOfUse(step, daysOf(node)));
      else if (node.kind === "standard" && edge.role === "calibration" && path.length === 0)
        found.push(...breaksOfUse({ ...step, lower: node }, on === null ? null : { from: on, to: on }));
      else if (edge.role === "parent") found.push(...breaksOfParent(step, above));
      if (isNew) visit(edge.to, edge, [...path, key]);
    }
  };
  for (const top of tops) visit(top, null, []);
  return [...new Map(found.map((one) => [`${one.code} ${one.key} ${one.text}`, one])).values()];
};
