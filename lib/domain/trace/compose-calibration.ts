import { routeLabels } from "../certificate/labels";
import { type Chain, type ChainEdge, type ChainKind, type ChainNode, keyOf, plainEdge } from "./chain";
import { statedUncertaintyAt } from "./stated-uncertainty";
import type { TraceCalibration, TraceEquipment, TraceParent } from "./trace-parts";

type Owner = Pick<TraceEquipment, "id" | "tag">;

/** A node with all that it stands on. */
export type Branch = Chain & { readonly top: ChainNode };

const said = (...texts: readonly string[]): string => texts.filter((text) => text !== "").join(", ");

/**
 * An end is named by what it is, so that two calibrations that reach the same one meet there. A standard with something
 * beneath it is that one certificate's word for it: another certificate may name the same with other steps.
 */
const parentNode = (parent: TraceParent, height: number): ChainNode => {
  const { kind, title, identity, issuer, certificate } = parent;
  const named = [title, identity, issuer, certificate].filter((text) => text !== "").join(" | ");
  const isEnd = height === 0 && kind !== "laboratory-standard";
  return {
    kind: kind === "laboratory-standard" ? "standard" : kind,
    recordId: isEnd ? named : `parent/${parent.id}`,
    title,
    detail: said(identity, issuer, certificate),
    facts: {},
    height,
  };
};

const parentEdge = (from: string, to: ChainNode, parent: TraceParent): ChainEdge => ({
  ...plainEdge(from, keyOf(to), "parent"),
  certificate: parent.certificate,
  issuer: parent.issuer,
  route: parent.route,
  performedOn: parent.performedOn,
  validUntil: parent.validUntil,
  expanded: parent.expanded,
  unit: parent.unit,
  coverageFactor: parent.coverageFactor,
});

/** The parents that stand `below` one position, each with what it stands on in turn; `below < position` ends it. */
const parentBranches = (
  all: readonly TraceParent[],
  below: number | null,
): readonly (Branch & { readonly parent: TraceParent })[] =>
  all
    .filter((parent) => parent.below === below)
    .map((parent) => {
      const beneath = parentBranches(all, parent.position);
      const top = parentNode(parent, 1 + Math.max(-1, ...beneath.map((branch) => branch.top.height)));
      return {
        parent,
        top,
        nodes: [top, ...beneath.flatMap(({ nodes }) => nodes)],
        edges: beneath.flatMap((branch) => [
          parentEdge(keyOf(top), branch.top, branch.parent),
          ...branch.edges,
        ]),
      };
    });

/** Routes whose certificate is itself the evidence of what lies beyond it: ILAC-P10:07/2020, 2, routes 1 and 2. */
const routeEnds: Readonly<Record<string, { readonly kind: ChainKind; readonly before: string }>> = {
  nmi: { kind: "national-standard", before: "" },
  accredited: { kind: "si", before: "by way of " },
};

/** Where a certificate names nothing behind itself, its route is the last word, and says so. */
const routeEnd = (calibration: TraceCalibration): ChainNode => {
  const route = routeLabels[calibration.route] ?? "route not recorded";
  const end = routeEnds[calibration.route];
  if (end)
    return {
      kind: end.kind,
      recordId: `route/${calibration.route}/${calibration.issuer}`,
      title: `${end.before}${calibration.issuer}`,
      detail: `${route}; the steps behind it are not recorded here`,
      facts: { byRoute: true },
      height: 0,
    };
  return {
    kind: "standard",
    recordId: `unrecorded/${calibration.id ?? calibration.certificate}`,
    title: `Nothing recorded behind ${calibration.certificate}`,
    detail: route,
    facts: { byRoute: true },
    height: 0,
  };
};

const calibrationNode = (calibration: TraceCalibration, owner: Owner, height: number): ChainNode => ({
  kind: "calibration",
  recordId: calibration.id ?? `unrecorded/${owner.tag}/${calibration.certificate}`,
  title: calibration.certificate,
  detail: said(calibration.issuer, calibration.accreditation),
  facts: {
    tag: owner.tag,
    ...(owner.id === null ? {} : { equipmentId: owner.id }),
    ...(calibration.id === null ? {} : { calibrationId: calibration.id }),
    ...(calibration.statement === "" ? {} : { statement: calibration.statement }),
  },
  height,
});

const inHouseBranch = (
  calibration: TraceCalibration,
  owner: Owner,
  { certificate, results }: NonNullable<TraceCalibration["inHouse"]>,
): Branch => {
  const top = calibrationNode(calibration, owner, 1 + Math.max(-1, ...results.map(({ height }) => height)));
  return {
    top,
    nodes: [top],
    // The results were frozen with their own certificate; from here on the chain is theirs.
    edges: results.map((result) => ({
      ...plainEdge(keyOf(top), keyOf({ kind: "result", recordId: result.recordId }), "in-house"),
      certificate,
      issuer: calibration.issuer,
      route: "in-house",
      performedOn: calibration.performedOn,
      expanded: result.expandedCelsius,
      unit: "°C",
      coverageFactor: result.coverageFactor,
      atCelsius: result.celsius,
    })),
  };
};

/** A calibration with all that it stands on: our own results, what its certificate names, or what its route says. */
export const composeCalibration = (calibration: TraceCalibration, owner: Owner): Branch => {
  if (calibration.inHouse && calibration.inHouse.results.length > 0)
    return inHouseBranch(calibration, owner, calibration.inHouse);
  const parents = parentBranches(calibration.parents, null);
  if (parents.length === 0) {
    const end = routeEnd(calibration);
    const top = calibrationNode(calibration, owner, 1);
    const edge = {
      ...plainEdge(keyOf(top), keyOf(end), "route"),
      issuer: calibration.issuer,
      route: calibration.route,
    };
    return { top, nodes: [top, end], edges: [edge] };
  }
  const top = calibrationNode(
    calibration,
    owner,
    1 + Math.max(...parents.map((branch) => branch.top.height)),
  );
  return {
    top,
    nodes: [top, ...parents.flatMap(({ nodes }) => nodes)],
    edges: parents.flatMap((branch) => [parentEdge(keyOf(top), branch.top, branch.parent), ...branch.edges]),
  };
};

/** What an edge says of a calibration: whose, when, how sure at the point it was used at. */
export const calibrationEdge = (
  from: string,
  to: ChainNode,
  role: string,
  calibration: TraceCalibration | null,
  atCelsius: number | null,
): ChainEdge => {
  if (!calibration) return { ...plainEdge(from, keyOf(to), role), atCelsius };
  const stated = statedUncertaintyAt(calibration.findings, atCelsius);
  return {
    ...plainEdge(from, keyOf(to), role),
    certificate: calibration.certificate,
    issuer: calibration.issuer,
    accreditation: calibration.accreditation,
    route: calibration.route,
    performedOn: calibration.performedOn || null,
    validUntil: calibration.dueOn || null,
    expanded: stated?.expanded ?? null,
    unit: stated?.unit ?? "",
    coverageFactor: stated?.coverageFactor ?? null,
    atCelsius,
    evidenceSha256: calibration.documentSha256,
  };
};
