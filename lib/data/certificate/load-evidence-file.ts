import type { EvidenceFile, EvidencePart } from "@/lib/domain/certificate/evidence-file/evidence-file";
import { evidenceOfSensors } from "@/lib/domain/evidence/evidence-of-sensors";
import { floatsOfBytes } from "@/lib/domain/evidence/readings-bytes";
import type { Evidence } from "@/lib/domain/evidence/schema";
import type { SetKind } from "@/lib/domain/parts/decide-set";
import { restoreEvidence } from "@/lib/domain/run/stored-evidence";
import { splitLeaves } from "../evidence/block-hash";
import { blocksBehindDigest } from "../evidence/blocks-digest";
import { loadReadings } from "../evidence/read-scan-channels";
import { hex } from "../hex";
import type { Tx } from "../in-scope";

/** One sensor, one set, one evaluation that a certificate speaks of. */
export type EvidenceMember = {
  readonly tag: string;
  readonly kind: SetKind;
  readonly evaluationId: string;
};

const channelsOf = async (
  tx: Tx,
  runId: string,
  load: Evidence["load"],
  upToSequence: number,
): Promise<Evidence["scans"]["channels"]> => {
  const channels = load.map(({ channel }) => channel);
  const readings = await loadReadings(tx, runId, { channels, upToSequence });
  return channels.flatMap((channel) => {
    const found = readings.get(channel);
    if (!found) return [];
    const polarity = Array.from(found.polarity, (sign): 1 | -1 => (sign < 0 ? -1 : 1));
    // + 0: JSON writes −0 as 0; the block says where it was.
    const microvolts = Array.from(found.values, (value) => value + 0);
    return [{ channel, seconds: Array.from(found.times), microvolts, polarity }];
  });
};

const negativeZerosOf = (values: Uint8Array): readonly number[] =>
  Array.from(floatsOfBytes(values)).flatMap((value, at) => (Object.is(value, -0) ? [at] : []));

const blocksOf = async (
  tx: Tx,
  runId: string,
  channels: readonly string[],
  upToSequence: number,
): Promise<EvidencePart["blocks"]> => {
  const blocks = await tx.scanBlock.findMany({
    where: { runId, sequence: { lte: upToSequence } },
    select: {
      sequence: true,
      leaves: true,
      channels: {
        where: { channel: { in: [...channels] } },
        select: { channel: true, ordinal: true, count: true, salt: true, values: true },
        orderBy: { ordinal: "asc" },
      },
    },
    orderBy: { sequence: "asc" },
  });
  return blocks.map(({ sequence, leaves, channels: own }) => ({
    sequence,
    leaves: splitLeaves(leaves).map(hex),
    channels: own.map(({ values, salt, ...rest }) => {
      const negativeZeros = negativeZerosOf(values);
      return {
        ...rest,
        salt: hex(salt),
        ...(negativeZeros.length > 0 ? { negativeZeros: [...negativeZeros] } : {}),
      };
    }),
  }));
};

const partOf = async (tx: Tx, evaluationId: string, items: EvidencePart["items"]): Promise<EvidencePart> => {
  const evaluation = await tx.evaluation.findUniqueOrThrow({ where: { id: evaluationId } });
  const { runId } = evaluation;
  const tags = items.map(({ tag }) => tag);
  const run = await tx.run.findUniqueOrThrow({ where: { id: runId }, select: { number: true } });
  const seen = await blocksBehindDigest(tx, runId, evaluation.blocksDigest);
  if (seen === undefined)
    throw new Error(`the blocks of run ${run.number} are not those it was evaluated from`);
  const head = evidenceOfSensors(restoreEvidence(evaluation.evidence, []), tags);
  const channels = await channelsOf(tx, runId, head.load, seen);
  return {
    items,
    run: run.number,
    evaluation: evaluation.sequence,
    engineVersion: evaluation.engineVersion,
    inputsDigest: hex(evaluation.inputsDigest),
    evidence: { ...head, scans: { ...head.scans, channels } },
    blocksDigest: hex(evaluation.blocksDigest),
    blocks: await blocksOf(
      tx,
      runId,
      channels.map(({ channel }) => channel),
      seen,
    ),
  };
};

/** Everything the figures of one certificate rest on; in the laboratory's scope, since evaluations are its own. */
export const loadEvidenceFile = async (
  tx: Tx,
  certificate: string,
  members: readonly EvidenceMember[],
): Promise<EvidenceFile> => {
  const parts: EvidencePart[] = [];
  // One part a run: sensors of a lot share their references' readings.
  for (const id of new Set(members.map(({ evaluationId }) => evaluationId))) {
    const own = members.filter(({ evaluationId }) => evaluationId === id);
    parts.push(
      await partOf(
        tx,
        id,
        own.map(({ tag, kind }) => ({ tag, set: kind })),
      ),
    );
  }
  return { format: "emfolio-certificate-evidence", version: 1, certificate, parts };
};
