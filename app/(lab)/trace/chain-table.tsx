import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { Hash } from "@/app/_ui/hash";
import { StateMark } from "@/app/_ui/state-mark";
import { routeLabels } from "@/lib/domain/certificate/labels";
import type { ChainTree } from "@/lib/domain/trace/chain-tree";
import { daysWord, nameOf, shareWord, uncertaintyWord } from "@/lib/domain/trace/chain-words";
import { recordHref } from "./record-href";
import { stateWord } from "./tree-view";

type Line = {
  readonly tree: ChainTree;
  readonly above: ChainTree | null;
  readonly href: string | undefined;
};

const linesOf = (
  tree: ChainTree,
  above: ChainTree | null,
  hrefAbove: string | undefined,
): readonly Line[] => {
  const href = recordHref(tree.node, hrefAbove);
  return [{ tree, above, href }, ...tree.children.flatMap((child) => linesOf(child, tree, href))];
};

const markOf = (tree: ChainTree) => {
  if (tree.breaks.length > 0) return "out-of-date";
  return tree.edge === null ? "measured" : "in-date";
};

/** Where there is nothing to say of days: what was asked about, or a step that a certificate only names. */
const plainState = ({ edge, node }: ChainTree): string => {
  if (edge !== null) return "as the certificate names it";
  return node.kind === "result" ? "as printed" : "asked about";
};

const said = (...texts: readonly string[]): string => texts.filter((text) => text !== "").join(", ");

const cellsOf = ({ tree, above, href }: Line) => {
  const { node, edge } = tree;
  const name = nameOf(tree);
  return {
    what: href ? <Link href={href}>{name}</Link> : name,
    carries: above ? nameOf(above) : "",
    certificate: edge ? said(edge.certificate, edge.issuer, edge.accreditation) : node.detail,
    route: edge ? (routeLabels[edge.route] ?? edge.route) : "",
    days: daysWord(tree),
    uncertainty: said(uncertaintyWord(tree), shareWord(tree)),
    state: <StateMark state={markOf(tree)} label={stateWord(tree) || plainState(tree)} />,
    document: edge?.evidenceSha256 ? <Hash value={edge.evidenceSha256} label="Hash of its document" /> : "",
  };
};

/** The drawing's twin: each step with all that is kept of it. */
export function ChainTable({ tree, caption }: { readonly tree: ChainTree; readonly caption: string }) {
  return (
    <DataTable
      caption={caption}
      captionUnseen
      columns={[
        { key: "what", header: "What" },
        { key: "carries", header: "Carries" },
        { key: "certificate", header: "Certificate, issuer" },
        { key: "route", header: "Route" },
        { key: "days", header: "Performed to valid until" },
        { key: "uncertainty", header: "Uncertainty" },
        { key: "state", header: "State" },
        { key: "document", header: "Document" },
      ]}
      rows={linesOf(tree, null, undefined).map((line) => ({
        key: line.tree.id,
        tone: line.tree.breaks.length > 0 ? ("bad" as const) : undefined,
        cells: cellsOf(line),
      }))}
    />
  );
}
