import type { ChainTree } from "./chain-tree";

const roleWords: Readonly<Record<string, string>> = {
  run: "Run",
  reference: "Reference",
  voltmeter: "Voltmeter",
  scanner: "Scanner",
  junction: "Reference junction",
  thermometer: "Thermometer of the junction",
  lead: "Lead",
  calibration: "Calibration",
  parent: "Behind it",
  route: "By its route",
  "in-house": "Our own result",
};

const kindWords: Readonly<Record<string, string>> = {
  result: "Result",
  run: "Run",
  standard: "Standard",
  calibration: "Calibration",
  "national-standard": "National standard",
  "fixed-point": "Fixed point",
  si: "SI",
};

/** What a node is here: by the role it is used in, else by its kind. */
export const roleWord = ({ edge, node }: Pick<ChainTree, "edge" | "node">): string => {
  // A place that says that nothing is recorded is no standard.
  if (node.kind === "standard" && node.facts.byRoute) return "";
  if (!edge || edge.role === "parent" || edge.role === "route") return kindWords[node.kind] ?? node.kind;
  return roleWords[edge.role] ?? edge.role;
};

/** Three digits at most: U is stated with two, and a half-width with what it was given with. */
const figure = (value: number): string => String(Number(value.toPrecision(3)));

/** "Reference REF-01": what it is, and its name. */
export const nameOf = (tree: Pick<ChainTree, "edge" | "node">): string => {
  const word = roleWord(tree);
  const { title } = tree.node;
  // "National standard of the volt", "Reference standard of the issuer" say themselves what they are.
  const says = ` ${title.toLowerCase()} `.includes(` ${word.toLowerCase()} `);
  return word === "" || says ? title : `${word} ${title}`;
};

/** "U = 0.3 °C (k = 2) at 600 °C"; empty where the step states none, and for the run: that U is the result's own. */
export const uncertaintyWord = ({ edge }: Pick<ChainTree, "edge">): string => {
  if (!edge || edge.expanded === null || edge.role === "run") return "";
  const factor = edge.coverageFactor === null ? "" : ` (k = ${figure(edge.coverageFactor)})`;
  const at = edge.atCelsius === null ? "" : ` at ${figure(edge.atCelsius)} °C`;
  return `U = ${figure(edge.expanded)} ${edge.unit}${factor}${at}`;
};

const percent = (share: number): string =>
  share > 0 && share < 0.01 ? "< 1 %" : `${Math.round(share * 100)} %`;

const whoseShare: Readonly<Record<string, string>> = {
  run: ", furnace and sensor",
  reference: ", all references together",
};

/** How much of the result's u² comes in by a step; several references share theirs. */
export const shareWord = ({
  share,
  isLargest,
  edge,
}: Pick<ChainTree, "share" | "isLargest" | "edge">): string => {
  if (share === null || share === 0) return "";
  const whose = whoseShare[edge?.role ?? ""] ?? "";
  return `${isLargest ? "largest step: " : ""}${percent(share)} of u²${whose}`;
};

export const daysWord = ({ edge }: Pick<ChainTree, "edge">): string =>
  edge?.performedOn
    ? `${edge.performedOn}${edge.validUntil ? ` to ${edge.validUntil}` : ""}`
    : (edge?.validUntil ?? "");
