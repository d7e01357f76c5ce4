import { loadToIssue } from "@/lib/data/certificate/load-to-issue";
import { hex } from "@/lib/data/hex";
import { inScope, type Tx } from "@/lib/data/in-scope";
import { sha256 } from "@/lib/data/sha256";
import { certificateRendererVersion } from "@/lib/documents/certificate/render-certificate";
import { sameBytes } from "@/lib/domain/audit/chain";
import { CertificateContent, type CertificateRow } from "@/lib/domain/certificate/content";
import { canonicalContent } from "@/lib/domain/certificate/content-hash";
import { mediaTypes } from "@/lib/domain/certificate/media-types";
import type { EvaluatedPoint, MeasuredPoint } from "@/lib/domain/evidence/evaluation";
import { noteEndings } from "./endings";
import { certificateFact, dccFact, documentFact } from "./facts";
import { type Makers, makers } from "./makers";
import { Broken, counted, type Facts, laboratory } from "./step";

type Named = { readonly evaluationId: string; readonly sensorId: string; readonly runId: string };

/** The evaluation that a certificate, or one part of it, names, with its points in the order of the run. */
const loadMeasured = async (tx: Tx, { evaluationId, sensorId, runId }: Named) => {
  const evaluation = await tx.evaluation.findUniqueOrThrow({ where: { id: evaluationId } });
  const results = await tx.result.findMany({ where: { evaluationId, sensorId } });
  const setpoints = await tx.runSetpoint.findMany({ where: { runId }, orderBy: { position: "asc" } });
  const points = setpoints.flatMap(({ id: setpointId }) =>
    results
      .filter((row) => row.setpointId === setpointId)
      .map((row) => JSON.parse(row.point) as EvaluatedPoint),
  );
  return { evaluation, points };
};

const loadCertificate = (id: string) =>
  inScope(laboratory, async (tx) => {
    const certificate = await tx.certificate.findUniqueOrThrow({
      where: { id },
      include: { files: { orderBy: { renderedAt: "asc" } } },
    });
    const parts = await tx.certificatePart.findMany({
      where: { certificateId: id },
      orderBy: { position: "asc" },
    });
    const measured = [];
    for (const part of parts) measured.push(await loadMeasured(tx, part));
    return { ...certificate, ...(await loadMeasured(tx, certificate)), parts: measured };
  });

type StoredCertificate = Awaited<ReturnType<typeof loadCertificate>>;

/** Certificates of before scopes were stated say nothing of one; where a row does, it is what was evaluated. */
const statesScope = ({ scope }: CertificateRow, point: MeasuredPoint): boolean =>
  scope === undefined ? true : point.scope.state === scope;

const statesPoint = (row: CertificateRow, point: EvaluatedPoint | undefined): boolean => {
  if (!point || row.state !== point.state) return false;
  if (point.state !== "measured") return true;
  if (!statesScope(row, point)) return false;
  const { degreesOfFreedom: _unprinted, ...printed } = point.printed;
  return Object.entries(printed).every(([name, text]) => row[name as keyof typeof printed] === text);
};

type Measured = Awaited<ReturnType<typeof loadMeasured>>;
type Said = Pick<CertificateContent, "rows"> & { readonly evidence: { readonly inputsDigest: string } };

const demandMeasured = (record: string, { rows, evidence }: Said, { evaluation, points }: Measured): void => {
  if (evidence.inputsDigest !== hex(evaluation.inputsDigest))
    throw new Broken(record, "its content names other inputs than its evaluation's");
  if (rows.length !== points.length || !rows.every((row, at) => statesPoint(row, points[at])))
    throw new Broken(record, "its content states other results than its evaluation's");
};

const demandContent = (record: string, stored: StoredCertificate): void => {
  if (!sameBytes(sha256(new TextEncoder().encode(stored.content)), stored.contentHash))
    throw new Broken(record, "its content is not what was signed");
  const content = CertificateContent.safeParse(JSON.parse(stored.content));
  if (!content.success || canonicalContent(content.data) !== stored.content)
    throw new Broken(record, "its content is not of the form this version knows");
  const { number, sets = [] } = content.data;
  if (number !== stored.number) throw new Broken(record, `its content states the number ${number}`);
  demandMeasured(record, content.data, stored);
  if (sets.length !== stored.parts.length)
    throw new Broken(
      record,
      `its content states ${sets.length} sets, and ${stored.parts.length} are recorded`,
    );
  for (const [at, set] of sets.entries())
    demandMeasured(`${record}, set ${at + 1}`, set, stored.parts[at] as Measured);
};

/** The PDF before its seal and the DCC, made anew from the content: by the same renderer, the same bytes. */
const demandSameBytes = async (
  record: string,
  { id, files }: StoredCertificate,
  { render, attach }: Makers,
): Promise<void> => {
  const given = await inScope(laboratory, (tx) => loadToIssue(tx, id));
  if (!given) throw new Broken(record, "it is gone");
  const { content, evidence, mark, signedAt } = given;
  const rendered = await render(content, { draft: false, mark });
  const made = await attach(rendered, { content, evidence, at: signedAt });
  for (const { bytes, mediaType, unsealedSha256 } of files) {
    if (mediaType !== mediaTypes.pdf) {
      if (!sameBytes(made.dcc, bytes))
        throw new Broken(record, "written anew from its content, its DCC has other bytes");
    } else if (!sameBytes(sha256(made.pdf), unsealedSha256 ?? sha256(bytes)))
      throw new Broken(record, "rendered anew from its content, its document has other bytes");
  }
};

/** How many documents were made anew and compared, and how many are another renderer's: of those, only the hash. */
const demandDocuments = async (record: string, stored: StoredCertificate, facts: Facts, tools: Makers) => {
  const { files, id } = stored;
  for (const { bytes, mediaType, rendererVersion, sha256: said } of files) {
    if (!sameBytes(sha256(bytes), said))
      throw new Broken(record, "the bytes of its document are not those stored at issue");
    facts.set(
      ...(mediaType === mediaTypes.pdf
        ? documentFact(id, hex(said), rendererVersion)
        : dccFact(id, hex(said))),
    );
  }
  const own = files.filter(({ rendererVersion }) => rendererVersion === certificateRendererVersion);
  if (own.length > 0) await demandSameBytes(record, { ...stored, files: own }, tools);
  return { rendered: own.length, otherRenderer: files.length - own.length };
};

/** The numbers of a year have neither gap nor repeat: a missing one is a certificate that is gone. */
const demandGapless = (numbers: readonly string[]): void => {
  const last = new Map<string, number>();
  for (const number of numbers) {
    const [, year, count] = /^(.*-\d{4})-(\d+)$/.exec(number) ?? [];
    if (year === undefined)
      throw new Broken(`certificate ${number}`, "this is no number of the laboratory's");
    const expected = (last.get(year) ?? 0) + 1;
    if (Number(count) !== expected)
      throw new Broken(`certificate ${number}`, `number ${expected} of ${year} is missing before it`);
    last.set(year, expected);
  }
};

/** Hashes every certificate's content anew, compares it with its results, and renders its document byte for byte. */
export const rederiveCertificates = async (facts: Facts, tools: Makers = makers): Promise<string> => {
  const certificates = await inScope(laboratory, (tx) =>
    tx.certificate.findMany({ select: { id: true, number: true } }),
  );
  const ordered = certificates.toSorted((a, b) => a.number.localeCompare(b.number, "en", { numeric: true }));
  demandGapless(ordered.map(({ number }) => number));
  await noteEndings(facts, new Map(certificates.map(({ id, number }) => [id, number])));
  const seen = { rendered: 0, otherRenderer: 0, pending: 0 };
  for (const { id, number } of ordered) {
    const stored = await loadCertificate(id);
    const record = `certificate ${number}`;
    demandContent(record, stored);
    facts.set(...certificateFact(id, number, hex(stored.contentHash)));
    if (stored.files.length === 0) seen.pending += 1;
    const { rendered, otherRenderer } = await demandDocuments(record, stored, facts, tools);
    seen.rendered += rendered;
    seen.otherRenderer += otherRenderer;
  }
  const others =
    seen.otherRenderer === 0 ? "" : `; ${seen.otherRenderer} by another renderer: only their hash compared`;
  const pending = seen.pending === 0 ? "" : `; ${seen.pending} not rendered yet`;
  return `${counted(ordered.length, "certificate")} hashed and compared with their results, ${counted(seen.rendered, "document")} rendered anew${others}${pending}`;
};
