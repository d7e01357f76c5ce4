import { withStandings } from "@/lib/data/certificate/with-standings";
import type { Tx } from "@/lib/data/in-scope";
import { isUuid } from "@/lib/data/is-uuid";
import { resultsStandingOn } from "@/lib/data/sql/results-standing-on";
import { loadLaterChanges } from "@/lib/data/trace/load-later-changes";
import { loadTraceCalibrations } from "@/lib/data/trace/load-trace-calibrations";
import { acceptedInForce, loadUsedEquipment, type UsedEquipment } from "@/lib/data/trace/load-used-equipment";
import { readChain } from "@/lib/data/trace/read-chain";
import type { Actor } from "@/lib/domain/staff/actor";
import { keyOf, NodeFacts } from "@/lib/domain/trace/chain";
import { chainTree } from "@/lib/domain/trace/chain-tree";
import { composeStandard, mergeChains } from "@/lib/domain/trace/compose-trace";
import { findBreaks } from "@/lib/domain/trace/find-breaks";
import { laterFlags } from "@/lib/domain/trace/later-flags";
import { answer, found } from "./view";

export const resultsOnPage = 50;

const loadEquipment = async (tx: Tx, id: string): Promise<UsedEquipment> =>
  found((await loadUsedEquipment(tx, isUuid(id) ? [id] : [], isUuid(id) ? [] : [id]))[0]);

/** The standard with what it stands on, on a day: the calibration accepted by then and in force. */
const loadStandardChain = async (tx: Tx, equipment: UsedEquipment, on: string) => {
  const calibrationId = acceptedInForce(equipment, on, new Date(`${on}T23:59:59.999Z`));
  const calibrations = await loadTraceCalibrations(tx, calibrationId ? [calibrationId] : []);
  const calibration = calibrationId ? (calibrations.get(calibrationId) ?? null) : null;
  const own = composeStandard({
    equipment: {
      id: equipment.id,
      tag: equipment.tag,
      kind: equipment.kind,
      description: `${equipment.maker} ${equipment.model}`.trim(),
      serial: equipment.serial,
    },
    calibration,
  });
  const inHouse = calibration?.inHouse?.results.map(({ recordId }) => recordId) ?? [];
  const beneath = inHouse.length === 0 ? { nodes: [], edges: [] } : await readChain(tx, "result", inHouse);
  return { top: keyOf(own.top), chain: mergeChains([own, beneath]) };
};

const resultOf = (row: Awaited<ReturnType<typeof resultsStandingOn>>[number]) => {
  const facts = NodeFacts.parse(JSON.parse(row.facts));
  return {
    id: row.recordId,
    title: row.title,
    certificate: facts.certificate ?? "",
    celsius: facts.celsius ?? 0,
    run: facts.run ?? "",
    performedTo: facts.performedTo ?? "",
    errorCelsius: facts.errorCelsius ?? "",
    expandedCelsius: facts.expandedCelsius ?? "",
  };
};

/** What became of the certificates that state these results, by their numbers. */
const standingsOf = async (tx: Tx, results: readonly { readonly certificate: string }[]) => {
  const certificates = await tx.certificate.findMany({
    where: { number: { in: [...new Set(results.map(({ certificate }) => certificate))] } },
    select: { id: true, number: true },
  });
  return new Map((await withStandings(tx, certificates)).map(({ number, standing }) => [number, standing]));
};

/** Both ends of one standard: what it stands on, as of a day, and every result that stands on it, through others too. */
export const traceStandardView = (
  actor: Actor,
  id: string,
  asked: { readonly on: string; readonly calibrationId: string | null; readonly page: number },
) =>
  answer(actor, "laboratory.read", async (tx) => {
    const equipment = await loadEquipment(tx, id);
    const { top, chain } = await loadStandardChain(tx, equipment, asked.on);
    const breaks = findBreaks(chain, [top], asked.on);
    const chosen = equipment.calibrations.find((one) => one.id === asked.calibrationId);
    const used = chosen ? [chosen.id] : [...equipment.calibrations.map((one) => one.id), "none"];
    const rows = await resultsStandingOn(
      tx,
      "standard",
      used.map((one) => `${equipment.id}/${one}`),
      { limit: resultsOnPage, offset: (asked.page - 1) * resultsOnPage },
    );
    const results = rows.map(resultOf);
    const standings = await standingsOf(tx, results);
    return {
      equipment: { id: equipment.id, tag: equipment.tag, kind: equipment.kind, serial: equipment.serial },
      on: asked.on,
      page: asked.page,
      calibrations: equipment.calibrations.map((one) => ({
        id: one.id,
        certificate: one.certificate,
        isChosen: one.id === chosen?.id,
      })),
      tree: chainTree(chain, top, breaks, null),
      breaks,
      later: laterFlags(await loadLaterChanges(tx, chain, asked.on)),
      results: results.map((one) => ({
        ...one,
        standing: standings.get(one.certificate) ?? ({ kind: "valid" } as const),
      })),
      count: rows[0]?.count ?? 0,
    };
  });

export type TraceStandardPage = Awaited<ReturnType<typeof traceStandardView>>;
