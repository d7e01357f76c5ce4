import { z } from "zod";

/**
 * The chain as a directed graph: a thing stands on other things, each step one calibration or one use, down to a
 * national standard, a fixed point or the SI (ISO/IEC 17025:2017, 6.5.1). What is frozen, and how it is keyed, is in
 * decision 0016.
 */

export const chainKinds = [
  "result",
  "run",
  "standard",
  "calibration",
  "national-standard",
  "fixed-point",
  "si",
] as const;
export type ChainKind = (typeof chainKinds)[number];

/** Where a chain may end: what realises a unit, or its definition. */
export const chainEnds: readonly ChainKind[] = ["national-standard", "fixed-point", "si"];

/** Facts kept with a node; which of them are there depends on its kind. */
export const NodeFacts = z.object({
  /** Result: the certificate it stands in, and what that says of it. */
  certificate: z.string().optional(),
  sensor: z.string().optional(),
  setpoint: z.string().optional(),
  /** Position of the setpoint in its run. */
  position: z.number().optional(),
  errorCelsius: z.string().optional(),
  expandedCelsius: z.string().optional(),
  coverageFactor: z.string().optional(),
  /** Result: part of u_c² that comes from each role, 0.25 is a quarter. */
  shares: z.record(z.string(), z.number()).optional(),
  /** Run at one setpoint. */
  run: z.string().optional(),
  celsius: z.number().optional(),
  performedFrom: z.string().optional(),
  performedTo: z.string().optional(),
  characterisedOn: z.string().optional(),
  characterisedUntil: z.string().optional(),
  /** Standard and calibration. */
  equipmentId: z.string().optional(),
  tag: z.string().optional(),
  equipmentKind: z.string().optional(),
  calibrationId: z.string().optional(),
  /** What the calibration's certificate says of its traceability. */
  statement: z.string().optional(),
  /** End that only the route of the certificate above it names: nothing further is recorded. */
  byRoute: z.boolean().optional(),
});
export type NodeFacts = z.infer<typeof NodeFacts>;

export type ChainNode = {
  readonly kind: ChainKind;
  /** The record it stands for, or a text that names it; unique within its kind. */
  readonly recordId: string;
  readonly title: string;
  readonly detail: string;
  readonly facts: NodeFacts;
  /** Longest way down to an end: every edge leads to a smaller one, so the graph has no circle. */
  readonly height: number;
};

export type ChainEdge = {
  readonly from: string;
  readonly to: string;
  readonly role: string;
  readonly certificate: string;
  readonly issuer: string;
  readonly accreditation: string;
  readonly route: string;
  readonly performedOn: string | null;
  readonly validUntil: string | null;
  /** U of this step at the point used. */
  readonly expanded: number | null;
  readonly unit: string;
  readonly coverageFactor: number | null;
  readonly atCelsius: number | null;
  /** Part of the result's u_c² that comes in by this step, where the budget tells; 0.25 is a quarter. */
  readonly sensitivity: number | null;
  /** SHA-256 of the document of the calibration, hex. */
  readonly evidenceSha256: string | null;
};

export type Chain = { readonly nodes: readonly ChainNode[]; readonly edges: readonly ChainEdge[] };

/** What an edge names a node by. */
export const keyOf = ({ kind, recordId }: Pick<ChainNode, "kind" | "recordId">): string =>
  `${kind} ${recordId}`;

/** A step that says nothing but that it is there. */
export const plainEdge = (from: string, to: string, role: string): ChainEdge => ({
  from,
  to,
  role,
  certificate: "",
  issuer: "",
  accreditation: "",
  route: "",
  performedOn: null,
  validUntil: null,
  expanded: null,
  unit: "",
  coverageFactor: null,
  atCelsius: null,
  sensitivity: null,
  evidenceSha256: null,
});
