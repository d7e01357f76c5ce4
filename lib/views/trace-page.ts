import { loadStanding } from "@/lib/data/certificate/standing";
import type { Tx } from "@/lib/data/in-scope";
import { loadLaterChanges } from "@/lib/data/trace/load-later-changes";
import { loadTraceParts } from "@/lib/data/trace/load-trace-parts";
import { readChain } from "@/lib/data/trace/read-chain";
import { CertificateContent } from "@/lib/domain/certificate/content";
import type { Actor } from "@/lib/domain/staff/actor";
import { type Chain, keyOf } from "@/lib/domain/trace/chain";
import { chainFrom } from "@/lib/domain/trace/chain-from";
import { chainTree } from "@/lib/domain/trace/chain-tree";
import { composeTrace } from "@/lib/domain/trace/compose-trace";
import { findBreaks } from "@/lib/domain/trace/find-breaks";
import { largestStep } from "@/lib/domain/trace/largest-step";
import { laterFlags } from "@/lib/domain/trace/later-flags";
import { answer, found } from "./view";

type Measured = { readonly evaluationId: string; readonly sensorId: string };
type CertificateRow = Measured & { readonly id: string };

/**
 * As frozen; where it is not yet (signed before there was a graph), composed from the same records, and said so. With
 * the certificate's own results by their records: those of an amendment stand under the number they were first stated by.
 */
const loadChain = async (tx: Tx, row: CertificateRow, { evaluationId, sensorId }: Measured) => {
  const results = await tx.result.findMany({
    where: { evaluationId, sensorId, state: "measured" },
    select: { id: true },
  });
  const ids = results.map(({ id }) => id);
  const frozen = await readChain(tx, "result", ids);
  if (frozen.nodes.length > 0) return { ...frozen, own: new Set(ids) };
  const composed = composeTrace((await loadTraceParts(tx, row.id)).parts);
  return { ...composed, frozenAt: null, own: new Set(ids) };
};

/** Each sensor and set that the certificate speaks of, and the one asked for: by its place or by its label (its last set), else what it is filed under. */
const loadPart = async (tx: Tx, row: CertificateRow, content: CertificateContent, of: string | null) => {
  const { sets } = content;
  if (!sets) return { measured: row as Measured, said: content, parts: [] };
  const rows = await tx.certificatePart.findMany({
    where: { certificateId: row.id },
    orderBy: { position: "asc" },
    select: { sensorId: true, evaluationId: true },
  });
  const filed = rows.findIndex(
    (part) => part.sensorId === row.sensorId && part.evaluationId === row.evaluationId,
  );
  const asked = /^\d+$/.test(of ?? "") ? Number(of) - 1 : sets.findLastIndex(({ item }) => item.tag === of);
  const at = sets[asked] && rows[asked] ? asked : Math.max(0, filed);
  return {
    measured: rows[at] ?? row,
    said: sets[at] ?? content,
    parts: sets.map(({ item, kind, run }, index) => ({
      place: index + 1,
      tag: item.tag,
      serial: item.serial,
      kind,
      run: run.number,
      isChosen: index === at,
    })),
  };
};

const byTemperature = (chain: Chain, own: ReadonlySet<string>) =>
  chain.nodes
    .filter(({ kind, recordId }) => kind === "result" && own.has(recordId))
    .sort((a, b) => (a.facts.position ?? 0) - (b.facts.position ?? 0));

/** As printed on a certificate, a setpoint may be rounded: 600 °F is 315.556 °C. */
const isAt = (celsius: number | undefined, asked: number | null): boolean =>
  celsius !== undefined && asked !== null && Math.abs(celsius - asked) < 0.005;

/**
 * The chain of one result of a certificate, as frozen at sign-off, with what was recorded since as known on a day, and what
 * became of the certificate: ten statements, transaction and scope included, whatever is stored.
 */
export const tracePageView = (
  actor: Actor,
  number: string,
  asked: {
    readonly celsius: number | null;
    readonly on: string;
    /** Of a certificate for several sensors or sets: which of them, by its place from 1, or by its label. */
    readonly of?: string | null;
  },
) =>
  answer(actor, "laboratory.read", async (tx) => {
    const row = found(await tx.certificate.findUnique({ where: { number } }));
    const content = CertificateContent.parse(JSON.parse(row.content));
    const { measured, said, parts } = await loadPart(tx, row, content, asked.of ?? null);
    const whole = await loadChain(tx, row, measured);
    const results = byTemperature(whole, whole.own);
    const chosen = results.find(({ facts }) => isAt(facts.celsius, asked.celsius)) ?? results[0];
    const top = chosen ? keyOf(chosen) : "";
    const chain = chainFrom(whole, top);
    const breaks = findBreaks(chain, [top]);
    const largest = largestStep(chain, top);
    return {
      number,
      standing: await loadStanding(tx, row.id),
      item: said.item,
      run: said.run.number,
      performedFrom: said.performedFrom,
      performedTo: said.performedTo,
      /** Empty where it speaks of one sensor and one set. */
      parts,
      statement: content.traceabilityStatement,
      on: asked.on,
      results: results.map(({ facts }) => ({
        celsius: facts.celsius ?? 0,
        setpoint: facts.setpoint ?? "",
        errorCelsius: facts.errorCelsius ?? "",
        expandedCelsius: facts.expandedCelsius ?? "",
        isChosen: facts.celsius === chosen?.facts.celsius,
      })),
      tree: chainTree(chain, top, breaks, largest),
      breaks,
      largest,
      later: laterFlags(await loadLaterChanges(tx, chain, asked.on)),
      frozenAt: whole.frozenAt?.toISOString() ?? null,
      isFrozenLater: whole.frozenAt !== null && whole.frozenAt > row.signedAt,
      /** With the certificate that this one amends: it measured nothing anew. */
      isFrozenEarlier: whole.frozenAt !== null && whole.frozenAt < row.signedAt,
    };
  });

export type TracePage = Awaited<ReturnType<typeof tracePageView>>;
